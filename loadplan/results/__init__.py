"""The results workbook: pages for people and flat sheets, from one plan."""
