"""The columns of a load sheet, left to right, with their widths in pixels."""

from __future__ import annotations

from loadplan.day.units import Units

TICK, NUMBER, PLACE, HOOK = 0, 1, 2, 3
MEMBER, TENSIONER, CONNECTOR, ANCHOR, TIE_POINT = 4, 5, 6, 7, 8
WLL, WEAKEST, CREDIT, CREDITED = 9, 10, 11, 12
LAST = CREDITED
WIDTHS = (30, 28, 98, 214, 58, 62, 64, 54, 58, 60, 102, 42, 62)
SPLIT = MEMBER


def headings(units: Units) -> tuple[str, ...]:
    """Headings of the tie-down table."""
    unit = units.mass
    return (
        "Tick",
        "No.",
        "Position",
        "What to hook up",
        f"Member WLL [{unit}]",
        f"Tensioner WLL [{unit}]",
        f"Connector WLL [{unit}]",
        f"Anchor WLL [{unit}]",
        f"Tie point WLL [{unit}]",
        f"Tie-down WLL [{unit}]",
        "Weakest part",
        "Credit",
        f"Credited WLL [{unit}]",
    )


def cell(row: int, column: int) -> str:
    """Address such as ``J12`` of a cell counted from 0."""
    return f"{'ABCDEFGHIJKLM'[column]}{row + 1}"
