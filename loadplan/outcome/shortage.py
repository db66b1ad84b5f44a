"""A shortage: what a held load is short of."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortage:
    """One missing kind of piece, or one demand no gear can meet, of a held load.

    ``short_of`` is words ("binder for 3/8 in chain, 5,400 lb or more"); ``pieces`` how many, None
    where no number of pieces would do. ``article`` is None where the whole load is meant.
    """

    load: str
    short_of: str
    why: str
    article: str | None = None
    pieces: int | None = None
    way_out: str = ""
