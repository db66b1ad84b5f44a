"""How large a day workbook may be. Beyond any of these the file is refused.

They bound memory (about 512 MB) and time (about 10 s) for a hostile file, and leave room for days
far larger than a yard sends out. Counts are of the whole workbook, blank formatted cells and rows
among them.
"""

from __future__ import annotations

MOST_FILE_BYTES = 32 * 2**20
MOST_UNPACKED_BYTES = 128 * 2**20
MOST_PARTS = 2_000
MOST_SHEETS = 200
MOST_ROWS = 200_000
MOST_COLUMNS = 1_000
MOST_CELLS = 400_000
# Texts that cells share, each kept once in the file.
MOST_STRINGS = 400_000
# Everything else a workbook is made of: styles, drop-downs, conditional formats, merged cells.
MOST_OTHER_ELEMENTS = 100_000
# One tag or one text; a cell holds at most 32,767 characters, of three bytes each.
LONGEST_PIECE = 128 * 2**10
MOST_ID = 100
MOST_TEXT = 2_000
# A time on Loads further from the day than this is a slip.
MOST_DAYS_AWAY = 366
