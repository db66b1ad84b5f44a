"""Hostile day workbooks; measured by hand, see ``__main__``."""
