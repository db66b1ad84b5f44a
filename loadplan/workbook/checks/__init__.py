"""Checks across rows: generators that yield problems, one module per subject."""
