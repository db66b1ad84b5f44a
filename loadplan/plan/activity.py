"""An activity: a variable that takes gear."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import pulp

from loadplan.day.article import Routing


@dataclass(frozen=True, slots=True, kw_only=True)
class Activity:
    """What one unit of a variable makes and takes.

    ``tie_downs`` of ``routing`` it makes; ``strength`` is the rated strength it issues; ``uses``
    and ``protectors`` are the pieces it takes out of the pools, ``winches`` those of the trailer.
    Gear that ``Fixed`` has put on already is not among them.
    """

    variable: pulp.LpVariable
    load: int
    routing: Routing
    tie_downs: int
    strength: Fraction
    uses: tuple[tuple[str, int], ...]
    protectors: int = 0
    winches: int = 0
