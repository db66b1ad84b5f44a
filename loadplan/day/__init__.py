"""The nouns of the input: what one day workbook says, resolved and exact."""
