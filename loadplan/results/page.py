"""Print set-up: paper by unit system, margins, footers, repeated heading rows."""

from __future__ import annotations

from typing import Any

from loadplan.day.units import Units
from loadplan.tables.clean import clean

_LETTER, _A4 = 1, 9
_SIDE, _TOP, _FOOT = 0.35, 0.35, 0.55
_LONGEST = 50


def set_page(page: Any, units: Units, *, landscape: bool) -> None:
    """Letter for US units, A4 for metric; narrow margins with room for the footer."""
    page.set_paper(_LETTER if units is Units.US else _A4)
    if landscape:
        page.set_landscape()
    else:
        page.set_portrait()
    page.set_margins(left=_SIDE, right=_SIDE, top=_TOP, bottom=_FOOT)


def set_footer(page: Any, left: str, right: str) -> None:
    """``left``, page x of y, ``right`` at the foot of every page."""
    text = f"&L&8 {_fit(left)}&C&8 page &P of &N&R&8 {_fit(right)}"
    page.set_footer(text, {"margin": 0.25, "scale_with_doc": False})


def _fit(text: str) -> str:
    """Footers hold 255 characters; an ampersand is doubled, so that it prints."""
    return clean(text)[:_LONGEST].replace("&", "&&")
