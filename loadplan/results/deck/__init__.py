"""The deck picture of one load: articles and tie-downs from above, heights from the side."""
