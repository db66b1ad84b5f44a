"""A tie-down as planned: which pieces go where."""

from __future__ import annotations

from dataclasses import dataclass

from loadplan.day.article import Routing


@dataclass(frozen=True, slots=True, kw_only=True)
class TieDown:
    """One complete assembly at one position of one article, named by ``Gear`` ids alone.

    ``tensioner`` is None where the tension member brings its own, needs none, or is tightened
    by a winch of the trailer; the kind of ``member`` tells which. ``shackle`` names the one kind
    of shackle, ``shackles`` how many of it. ``protectors`` are (id, pieces) pairs. Strengths are
    not held here: they follow from the pieces (:mod:`loadplan.wll`).
    """

    load: str
    article: str
    position: str
    number: int
    routing: Routing
    member: str
    tensioner: str | None = None
    shackle: str | None = None
    shackles: int = 0
    protectors: tuple[tuple[str, int], ...] = ()
    accessory: bool = False

    def pieces(self) -> dict[str, int]:
        """How many pieces of each kind of gear this tie-down takes."""
        found: dict[str, int] = {self.member: 1}
        if self.tensioner is not None:
            found[self.tensioner] = found.get(self.tensioner, 0) + 1
        if self.shackle is not None and self.shackles:
            found[self.shackle] = found.get(self.shackle, 0) + self.shackles
        for gear, pieces in self.protectors:
            found[gear] = found.get(gear, 0) + pieces
        return found


# A plan not judged yet: ids of the ready loads in workbook order, and their tie-downs.
Shown = tuple[tuple[str, ...], tuple[TieDown, ...]]
