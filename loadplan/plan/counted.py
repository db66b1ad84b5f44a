"""Articles whose main tie-downs are counted, not listed in sets: what is known of their counts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import pulp

from loadplan.plan.reach import Reach

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
    reach: Reach,
    pairs: list[Pair],
    pieces: dict[Pair, int],
    binary: Callable[[], pulp.LpVariable] | None,
) -> Counted:
    """What is known of an article whose assemblies are of ``pairs``, in the order of its reach.

    ``pieces`` is how many of each pair there could be at all; without ``binary`` nothing counts
    pairs.
    """
    alone: dict[Pair, list[int]] = {}
    for pair, number in zip(pairs, reach.alone, strict=True):
        alone.setdefault(pair, []).append(number)
    known = {
        pair: OfPair(least=min(numbers), enough=max(numbers), pieces=pieces[pair])
        for pair, numbers in alone.items()
    }
    chosen = {} if binary is None else {pair: binary() for pair in known}
    return Counted(reach, known, chosen, None if binary is None else binary())
