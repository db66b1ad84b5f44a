"""The flat tables of a plan: pure rows, and their way into DataFrames and CSV files."""
