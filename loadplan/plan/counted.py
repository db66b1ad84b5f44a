"""Articles whose main tie-downs are counted, not listed in sets: what is known of their counts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import pulp

from loadplan.plan.reach import Reach, reach_of_simple
from loadplan.plan.sets import ArticleSets, Sets

Pair = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class OfPair:
    """How many tie-downs of one pair a set may have.

    ``least`` is how many do alone with the best shackles, ``enough`` how many with any; ``pieces``
    how many there are.
    """

    least: int
    enough: int
    pieces: int

    @property
    def alone(self) -> int:
        """The most in a set of this pair alone; nought where there are too few."""
        return min(self.enough, self.pieces) if self.least <= self.pieces else 0

    @property
    def beside(self) -> int:
        """The most in a set with another pair: with one more, the others could be left out."""
        return min(self.enough - 1, self.pieces)


@dataclass(slots=True)
class Counted:
    """A simple article in the program without patterns.

    ``alone`` is, per pair, 1 where the article has that pair only, and ``mixed`` 1 where it has
    several; empty and None where nothing counts pairs.
    """

    reach: Reach
    pairs: dict[Pair, OfPair]
    alone: dict[Pair, pulp.LpVariable]
    mixed: pulp.LpVariable | None


def counted_of(
    sets: Sets, article: ArticleSets, binary: Callable[[], pulp.LpVariable] | None
) -> Counted:
    """What is known of a simple article; without ``binary`` nothing counts pairs."""
    (place,), reach = article.classes, reach_of_simple(article)
    numbers: dict[Pair, list[int]] = {}
    for assembly, number in zip(place.assemblies, reach.alone, strict=True):
        numbers.setdefault(assembly.pair, []).append(number)
    known = {
        pair: OfPair(least=min(alone), enough=max(alone), pieces=_pieces(sets, pair, place.room))
        for pair, alone in numbers.items()
    }
    chosen = {} if binary is None else {pair: binary() for pair in known}
    return Counted(reach, known, chosen, None if binary is None else binary())


def _pieces(sets: Sets, pair: Pair, room: int) -> int:
    """How many of ``pair`` all usable members and tensioners together make, up to ``room``."""
    gear = sets.day.gear_by_id
    return room if sets.plenty else min(room, *(gear[one].usable for one in pair if one in gear))
