"""A coverage-guided fuzzer over the workbook reader; run by hand, see ``__main__``."""
