"""A trailer and what it offers to tie down to."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from loadplan.day.row import Row


@dataclass(frozen=True, slots=True, kw_only=True)
class Trailer:
    """One row of ``Trailers``; a trailer only named on ``Loads`` has nothing but its id.

    ``anchors`` None: the count is not given. ``anchor_wll`` None: unrated.
    """

    id: str
    deck_length: Fraction | None = None
    deck_width: Fraction | None = None
    deck_height: Fraction | None = None
    payload: Fraction | None = None
    anchors: int | None = None
    anchor_wll: Fraction | None = None
    winches: int = 0
    front_structure: bool = False
    row: Row | None = field(default=None, compare=False, repr=False)
