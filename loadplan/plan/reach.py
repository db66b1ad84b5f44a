"""What one article asks, in whole numbers: values, need, and how few tie-downs can do."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from loadplan.plan.patterns import minimal_patterns
from loadplan.plan.sets import ArticleSets

MOST_PATTERNS = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """The need and the assemblies' values of one article in a common whole unit.

    ``fewest`` is the count asked for; ``alone``, per assembly, how many of it alone meet need and
    count. Where some tie-downs are settled apart, their ``values`` come after the main ones',
    ``fewest`` is what the rest must number, and ``alone`` is with the best of those.
    """

    need: int
    values: tuple[int, ...]
    fewest: int
    alone: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiers:
    """The tiers of an article's values and the minimal patterns of its mixed sets.

    ``tier`` is each assembly's index into ``levels`` (greatest value first). ``patterns`` go up to
    ``longest`` tie-downs; larger mixed sets are left to an ordinary covering row.
    """

    levels: tuple[int, ...]
    tier: tuple[int, ...]
    patterns: tuple[tuple[int, ...], ...]
    longest: int


def common_unit(values: Sequence[Fraction]) -> Fraction:
    """The greatest unit of which all ``values`` are whole multiples; 1 where they are all nought.

    A need is rounded up to a multiple of it: sums reach the one where they reach the other, and a
    solver's floating numbers cannot take a need that sums just miss for one that they meet.
    """
    scale = math.lcm(*(value.denominator for value in values))
    return Fraction(math.gcd(*(int(value * scale) for value in values)) or scale, scale)


def reach_of(
    values: Sequence[Fraction], need: Fraction, fewest: int, helped: Sequence[Fraction] = ()
) -> Reach:
    """The :class:`Reach` of an article whose main tie-downs add any of ``values`` each.

    ``helped`` are the values of the choices apart; the first ``len(values)`` of the result are the
    main ones.
    """
    every = (*values, *helped)
    unit = common_unit(every)
    whole = tuple(int(value / unit) for value in every)
    least = math.ceil(need / unit)
    alone = tuple(max(fewest, -(-least // value)) for value in whole[: len(values)])
    return Reach(need=least, values=whole, fewest=fewest, alone=alone)


def reach_of_simple(article: ArticleSets) -> Reach:
    """The :class:`Reach` of a simple article, of the assemblies of its one class."""
    (place,), (strength,) = article.classes, article.demand.strengths
    credit = strength.credit_of(place.routing)
    values = [credit * assembly.wll for assembly in place.assemblies]
    return reach_of(values, strength.need, article.fewest())


def tiers_of(reach: Reach, room: int) -> Tiers:
    """The tiers of ``reach`` and the patterns of its mixed sets, in ``room`` places."""
    levels = tuple(sorted(set(reach.values), reverse=True))
    index = {value: place for place, value in enumerate(levels)}
    start = max(2, min(reach.alone, default=reach.fewest))
    patterns, longest = _patterns(levels, reach.need, start, min(start + 1, room))
    tier = tuple(index[value] for value in reach.values)
    return Tiers(levels=levels, tier=tier, patterns=patterns, longest=longest)


@lru_cache(maxsize=512)
def _patterns(
    tiers: tuple[int, ...], need: int, start: int, end: int
) -> tuple[tuple[tuple[int, ...], ...], int]:
    """Minimal patterns of ``start`` to ``end`` tie-downs, and the size up to which they go.

    Kept: a held load is looked at in several programs of much the same articles.
    """
    found: list[tuple[int, ...]] = []
    for size in range(start, end + 1):
        more = minimal_patterns(tiers, need, size, MOST_PATTERNS - len(found))
        if more is None:
            return tuple(found), size - 1
        found += more
    return tuple(found), end
