"""The day workbook: its columns, its reader with every check, and the empty one to fill in."""
