"""Choices: sets of one article alike in shape, as one choice of members and one of tensioners.

The shape of a set says how many tie-downs each of its pairs has: 4, or 3 and 1. Where the members
of a set of one shape are all different, or else its tensioners are, any members may go with any
tensioners and make as many pairs; everything the set takes is the sum of what the two take.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import groupby, permutations, product
from typing import Any

import numpy as np

from loadplan.plan.assembly import Assembly
from loadplan.plan.blocks import Block
from loadplan.plan.master import Master
from loadplan.plan.tie_set import TieSet

Array = np.ndarray[Any, np.dtype[Any]]
Rest = tuple[str, str]
Members = tuple[str, ...]
Rests = tuple[Rest, ...]
Shape = tuple[int, ...]
_Pair = tuple[Members, Rests]
_Class = tuple[int, Shape, bool]
_MOST_ALIKE = 4  # pairs of equal number: who goes with whom is tried in every order


@dataclass(frozen=True, slots=True)
class Choice:
    """Sets of one shape of which every one of ``members`` may go with every one of ``rests``.

    ``members`` are the tension members of a set, pair by pair as its shape has them; ``rests`` what
    goes with them (tensioner and shackle). ``columns`` are those of sets that have one already, all
    of a pair alike but for who goes with whom; ``set_of`` is a set of a pair, with its block's
    number. ``strength`` is what the rests of all tie-downs add to the rated strength issued.
    """

    members: tuple[Members, ...]
    rests: tuple[Rests, ...]
    columns: dict[_Pair, list[int]]
    set_of: Callable[[Members, Rests], tuple[int, TieSet]]
    strength: dict[Rests, float]


def choices(
    master: Master, usable: Array, tick: Callable[[], None] = lambda: None
) -> Iterator[Choice]:
    """Choices that take fewer columns than the sets of ``usable`` columns they stand for.

    ``tick`` is called for every way that members and rests are joined, and may raise.
    """
    parts: dict[int, _Parts] = {}
    for (number, shape, _), columns in _classes(master, usable).items():
        block = master.arrays.blocks[number]
        menu = id(block.menu)
        if menu not in parts:
            parts[menu] = _Parts.of(master, block)
        maker = _Maker(block, number, shape, parts[menu], tick)
        for members, rests in _complete(columns, maker):
            covered = {pair: columns[pair] for pair in product(members, rests) if pair in columns}
            strength = {rest: maker.strength(rest) for rest in rests}
            yield Choice(members, rests, covered, maker.set_of, strength)


def _classes(master: Master, usable: Array) -> dict[_Class, dict[_Pair, list[int]]]:
    """The usable columns by block, shape, and whether members or else tensioners all differ."""
    found: dict[_Class, dict[_Pair, list[int]]] = defaultdict(lambda: defaultdict(list))
    for column in (np.nonzero(usable[master.base :])[0] + master.base).tolist():
        number, one = master.sets[column - master.base]
        block = master.arrays.blocks[number]
        if block.apart:
            continue
        menu = block.menu.assemblies
        taken = sorted(((n, menu[place]) for place, n in one.chosen), key=lambda t: -t[0])
        shape = tuple(n for n, _ in taken)
        if max(Counter(shape).values(), default=0) > _MOST_ALIKE:
            continue
        members = _sorted_by(shape, [one.member for _, one in taken])
        rests = _sorted_by(shape, [_rest(one) for _, one in taken])
        differ = len(set(members)) == len(shape)
        if differ or len({tensioner for tensioner, _ in rests}) == len(shape):
            found[number, shape, differ][members, rests].append(column)
    return found


def _sorted_by(shape: Shape, parts: list[Any]) -> tuple[Any, ...]:
    """``parts`` in the order of ``shape``, those of equal number in an order of their own."""
    found: list[Any] = []
    for _, alike in groupby(zip(shape, parts, strict=True), key=lambda pair: pair[0]):
        found += sorted(part for _, part in alike)
    return tuple(found)


def _rest(assembly: Assembly) -> Rest:
    return assembly.tensioner or "", assembly.shackle or ""


@dataclass(frozen=True, slots=True)
class _Parts:
    """A menu's members and rests: where each pair of them stands, and each rest's own strength."""

    place: dict[tuple[str, Rest], int]
    own: dict[Rest, float]

    @classmethod
    def of(cls, master: Master, block: Block) -> _Parts:
        """The parts of the menu of ``block``, and of every other with the same."""
        menu, wll = block.menu.assemblies[: block.main], master.arrays.sets.cage.wll
        return cls(
            {(one.member, _rest(one)): place for place, one in enumerate(menu)},
            {_rest(one): float(one.strength - wll[one.member]) for one in menu},
        )


class _Maker:
    """Makes sets of one shape for one block out of members and rests."""

    def __init__(
        self, block: Block, number: int, shape: Shape, parts: _Parts, tick: Callable[[], None]
    ):
        self._tick, self.number, self.shape = tick, number, shape
        self._values, self._need = block.reach.values, block.reach.need
        self._place, self._own = parts.place, parts.own
        self._orders = list(_orders(shape))
        self._made: dict[_Pair, list[int] | None] = {}

    def strength(self, rests: Rests) -> float:
        """What ``rests`` add to the rated strength issued."""
        return sum(n * self._own[rest] for n, rest in zip(self.shape, rests, strict=True))

    def fits(self, members: Members, rests: Rests) -> bool:
        """Whether there is a way to join these members and rests that is enough."""
        pair = members, rests
        if pair not in self._made:
            self._made[pair] = self._joined(members, rests)
        return self._made[pair] is not None

    def set_of(self, members: Members, rests: Rests) -> tuple[int, TieSet]:
        """The set of these members and rests, which fit, with the number of its block."""
        # Known by now: a plan that was found in time is read though the time is up.
        places = self._made[members, rests]
        assert places is not None
        return self.number, TieSet(tuple(sorted(zip(places, self.shape, strict=True))))

    def _joined(self, members: Members, rests: Rests) -> list[int] | None:
        """The places on the menu of the first order of ``rests`` that is enough."""
        for order in self._orders:
            self._tick()
            pairs = zip(members, [rests[at] for at in order], strict=True)
            places = [self._place.get(pair, -1) for pair in pairs]
            if min(places) < 0:
                continue
            value = sum([n * self._values[one] for n, one in zip(self.shape, places, strict=True)])
            if value >= self._need:
                return places
        return None


def _orders(shape: Shape) -> Iterator[tuple[int, ...]]:
    """Every order of the pairs that leaves the numbers of the shape as they are."""
    runs = [
        [at for at, _ in alike] for _, alike in groupby(enumerate(shape), key=lambda one: one[1])
    ]
    for order in product(*(permutations(run) for run in runs)):
        yield tuple(at for run in order for at in run)


def _complete(
    columns: dict[_Pair, list[int]], maker: _Maker
) -> Iterator[tuple[tuple[Members, ...], tuple[Rests, ...]]]:
    """Members and rests of which every one may go with every other, where halves are fewer.

    Each time those that save most columns; what they stand for need not be looked at again.
    """
    left = set(columns)
    rests = {rest for _, rest in columns}
    fits = {
        member: frozenset(rest for rest in rests if maker.fits(member, rest))
        for member in {member for member, _ in columns}
    }
    while left:
        best: tuple[int, list[Members], list[Rests]] = (0, [], [])
        for shared in sorted({fits[member] for member, _ in left}, key=sorted):
            both = [pair for pair in left if pair[1] in shared and shared <= fits[pair[0]]]
            members, mine = sorted({m for m, _ in both}), sorted({rest for _, rest in both})
            saved = len(both) - len(members) - len(mine) - 1
            if saved > best[0]:
                best = saved, members, mine
        _, found, other = best
        if not found:
            return
        yield tuple(found), tuple(other)
        left -= set(product(found, other))
