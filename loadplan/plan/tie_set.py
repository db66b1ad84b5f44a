"""A set: the main tie-downs of one article, by how many of each assembly it has."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from loadplan.plan.blocks import Block

Chosen = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class TieSet:
    """``chosen`` is (place of the assembly on the menu, how many), in the order of the menu."""

    chosen: Chosen

    @property
    def tie_downs(self) -> int:
        """How many tie-downs it has."""
        return sum(number for _, number in self.chosen)

    def mixed(self, block: Block) -> int:
        """Different (tension member, tensioner) pairs beyond the first."""
        return len({int(block.menu.pair[place]) for place, _ in self.chosen}) - 1

    def strength(self, block: Block) -> Fraction:
        """Rated strength issued, exact."""
        assemblies = block.menu.assemblies
        terms = (number * assemblies[place].strength for place, number in self.chosen)
        return sum(terms, Fraction(0))

    def enough(self, block: Block) -> bool:
        """Whether it meets count and need, in whole numbers, and finds places."""
        reach = block.reach
        value = sum(number * reach.values[place] for place, number in self.chosen)
        return value >= reach.need and reach.fewest <= self.tie_downs <= block.room


def enumerate_sets(
    block: Block,
    price: list[float],
    per_extra_pair: float,
    budget: float,
    have: dict[int, int],
    tick: Callable[[], None],
) -> Iterator[tuple[float, TieSet]]:
    """Every set that is enough, cannot lose its last assembly, and costs at most ``budget``.

    ``price`` is the cost of one tie-down of each assembly, none below nought; ``per_extra_pair``
    the cost of each pair beyond the first. ``have`` is what there is of each kind of gear (and of
    winches, at -1) for this article alone. ``tick`` is called at every step and may raise to end a
    search that runs too long. A set with tie-downs to spare is never needed: each
    stage likes it less.
    """
    order = sorted(range(len(price)), key=lambda place: (price[place], place))
    values = block.reach.values
    best, rate = [0] * (len(order) + 1), [math.inf] * (len(order) + 1)
    for at in range(len(order) - 1, -1, -1):
        best[at] = max(best[at + 1], values[order[at]])
        rate[at] = min(rate[at + 1], price[order[at]] / values[order[at]])
    needs = [_needs(block, place) for place in order]
    stock = _stock_from(block, order)
    search = _Search(block, price, per_extra_pair, order, best, rate, needs, stock, tick)
    yield from _extend(search, 0, budget, have)


@dataclass(frozen=True, slots=True)
class _Search:
    """What stays the same during one enumeration.

    ``best`` is the greatest value and ``rate`` the least price per value from a place on;
    ``stock`` the tension members, and what tightens them, that tie-downs from there on can take.
    """

    block: Block
    price: list[float]
    per_extra_pair: float
    order: list[int]
    best: list[int]
    rate: list[float]
    needs: list[tuple[tuple[int, int], ...]]
    stock: list[tuple[tuple[int, ...], tuple[int, ...]]]
    tick: Callable[[], None]


def _needs(block: Block, place: int) -> tuple[tuple[int, int], ...]:
    row = block.menu.uses[place]
    found = [(int(gear), int(row[gear])) for gear in row.nonzero()[0]]
    if block.menu.winch[place]:
        found.append((-1, 1))
    return tuple(found)


def _extend(
    search: _Search,
    start: int,
    budget: float,
    have: dict[int, int],
    chosen: Chosen = (),
    number: int = 0,
    value: int = 0,
    spent: float = 0.0,
) -> Iterator[tuple[float, TieSet]]:
    """Sets that go on from ``chosen`` with assemblies from ``start`` in the order of price."""
    reach, room = search.block.reach, search.block.room
    pair = search.block.menu.pair
    used = {pair[place] for place, _ in chosen}
    search.tick()
    if start < len(search.order):
        still = min(sum(have[g] for g in kinds) for kinds in search.stock[start])
        if number + still < reach.fewest or value + still * search.best[start] < reach.need:
            return
    for at in range(start, len(search.order)):
        place = search.order[at]
        price = search.price[place]
        if search.best[at] == 0:
            return
        lacking = max(1, reach.fewest - number, -(-(reach.need - value) // search.best[at]))
        extra = 0.0 if not used or pair[place] in used else search.per_extra_pair
        least = spent + max(lacking * price, (reach.need - value) * search.rate[at])
        if least > budget:
            return
        if number + lacking > room or least + extra > budget:
            continue
        left = dict(have)
        for more in range(1, room - number + 1):
            cost = spent + more * price + extra
            if cost > budget or not _take(left, search.needs[at]):
                break
            now = value + more * reach.values[place]
            taken = (*chosen, (place, more))
            if now >= reach.need and number + more >= reach.fewest:
                yield cost, TieSet(tuple(sorted(taken)))
                break
            yield from _extend(search, at + 1, budget, left, taken, number + more, now, cost)


def _stock_from(block: Block, order: list[int]) -> list[tuple[tuple[int, ...], tuple[int, ...]]]:
    """Per place in the order, the kinds of gear of which every tie-down from there on takes one.

    First the tension members, then what tightens them: the tensioner, or the member itself where
    it brings its own.
    """
    index = {gear: place for place, gear in enumerate(block.menu.gear)}
    found: list[tuple[tuple[int, ...], tuple[int, ...]]] = []
    members: dict[int, None] = {}
    tight: dict[int, None] = {}
    for place in reversed(order):
        assembly = block.menu.assemblies[place]
        members[index[assembly.member]] = None
        tight[index[assembly.tensioner or assembly.member]] = None
        found.append((tuple(members), tuple(tight)))
    return found[::-1]


def _take(left: dict[int, int], needs: tuple[tuple[int, int], ...]) -> bool:
    for gear, pieces in needs:
        if left[gear] < pieces:
            return False
        left[gear] -= pieces
    return True
