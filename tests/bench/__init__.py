"""Generated days and measurements; nothing here is needed to use the package."""
