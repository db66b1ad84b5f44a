"""The columns of the board: ten for tables, then one for each slot of the clock."""

from __future__ import annotations

TABLE_WIDTHS = (150, 92, 54, 54, 56, 60, 156, 74, 64, 92)
LAST = len(TABLE_WIDTHS) - 1
FIRST_SLOT = len(TABLE_WIDTHS)
_SLOTS_WIDE, _LEAST, _MOST = 500, 10, 28
_LABEL = 34


def slot_width(count: int) -> int:
    """Width in pixels of one of ``count`` slots."""
    return max(_LEAST, min(_MOST, _SLOTS_WIDE // count))


def label_every(count: int) -> int:
    """How many slots a written time takes."""
    return -(-_LABEL // slot_width(count))


def widths(count: int) -> tuple[int, ...]:
    """Widths of all columns where there are ``count`` slots."""
    return (*TABLE_WIDTHS, *[slot_width(count)] * count)
