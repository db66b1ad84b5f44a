"""The commodity sections, one module each: what a row must say, and what the section asks."""
