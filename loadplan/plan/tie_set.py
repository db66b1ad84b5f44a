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
    """``chosen`` is (place on the menu, how many), in the order of the menu."""

    chosen: Chosen

    @property
    def tie_downs(self) -> int:
        """How many tie-downs it has, those settled apart included."""
        return sum(number for _, number in self.chosen)

    def main(self, block: Block) -> int:
        """How many free main tie-downs it has."""
        return sum(number for place, number in self.chosen if place < block.main)

    def mixed(self, block: Block) -> int:
        """Different (tension member, tensioner) pairs of main tie-downs beyond the first."""
        pairs = {int(block.menu.pair[place]) for place, _ in self.chosen}
        return len(pairs - {-1}) - 1

    def strength(self, block: Block) -> Fraction:
        """Rated strength issued, exact."""
        assemblies = block.menu.assemblies
        terms = (number * assemblies[place].strength for place, number in self.chosen)
        return sum(terms, Fraction(0))

    def enough(self, block: Block) -> bool:
        """Whether it meets count and need, in whole numbers, and finds places."""
        reach = block.reach
        value = sum(number * reach.values[place] for place, number in self.chosen)
        return value >= reach.need and reach.fewest <= self.main(block) <= block.room


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
    order = sorted(range(block.main), key=lambda place: (price[place], place))
    values = block.reach.values
    best, rate = [0] * (len(order) + 1), [math.inf] * (len(order) + 1)
    for at in range(len(order) - 1, -1, -1):
        best[at] = max(best[at + 1], values[order[at]])
        rate[at] = min(rate[at + 1], price[order[at]] / values[order[at]])
    needs = [_needs(block, place) for place in order]
    stock = _stock_from(block, order)
    caps = _caps_from(block, needs, have)
    search = _Search(block, price, per_extra_pair, order, best, rate, needs, stock, caps, tick)
    least = [min(price[one.first : one.end], default=0.0) * one.number for one in block.apart]
    ahead = [sum(least[at:]) for at in range(len(least) + 1)]
    yield from _settle_apart(search, ahead, 0, budget, have, _Begun((), 0, 0.0, frozenset()))


@dataclass(frozen=True, slots=True)
class _Begun:
    """What is settled apart so far: the places, their value and price, the main pairs in use."""

    chosen: Chosen
    value: int
    spent: float
    pairs: frozenset[int]


def _settle_apart(
    search: _Search,
    ahead: list[float],
    at: int,
    budget: float,
    have: dict[int, int],
    begun: _Begun,
) -> Iterator[tuple[float, TieSet]]:
    """Settle the ``at``-th group apart in every way within ``budget``, then the main ones.

    ``ahead`` is the least price of that group and all after it.
    """
    block = search.block
    if at == len(block.apart):
        if begun.value >= block.reach.need and block.reach.fewest == 0:
            yield begun.spent, TieSet(tuple(sorted(begun.chosen)))
        else:
            yield from _extend(search, 0, budget, have, begun, ())
        return
    group = block.apart[at]
    places = sorted(range(group.first, group.end), key=lambda place: (search.price[place], place))
    for chosen, left in _choose(search, places, group.number, have):
        price = sum(number * search.price[place] for place, number in chosen)
        pairs = {int(block.menu.pair[place]) for place, _ in chosen} - {-1}
        new = len(begun.pairs | pairs) - max(1, len(begun.pairs)) if begun.pairs | pairs else 0
        spent = begun.spent + price + new * search.per_extra_pair
        if spent + ahead[at + 1] > budget:
            continue
        value = begun.value + sum(n * block.reach.values[place] for place, n in chosen)
        more = _Begun((*begun.chosen, *chosen), value, spent, begun.pairs | pairs)
        yield from _settle_apart(search, ahead, at + 1, budget, left, more)


def _choose(
    search: _Search, places: list[int], number: int, have: dict[int, int]
) -> Iterator[tuple[Chosen, dict[int, int]]]:
    """Every way to take ``number`` of ``places`` out of ``have``, and what it leaves."""
    search.tick()
    if number == 0:
        yield (), have
        return
    for at, place in enumerate(places):
        left = dict(have)
        needs = _needs(search.block, place)
        for more in range(1, number + 1):
            if not _take(left, needs):
                break
            for rest, last in _choose(search, places[at + 1 :], number - more, dict(left)):
                yield ((place, more), *rest), last


@dataclass(frozen=True, slots=True)
class _Search:
    """What stays the same during one enumeration.

    ``best`` is the greatest value and ``rate`` the least price per value from a place on;
    ``stock`` the tension members, and what tightens them, that tie-downs from there on can take;
    ``caps`` the most tie-downs that one assembly from there on makes, 0 where pairs may repeat.
    """

    block: Block
    price: list[float]
    per_extra_pair: float
    order: list[int]
    best: list[int]
    rate: list[float]
    needs: list[tuple[tuple[int, int], ...]]
    stock: list[tuple[tuple[int, ...], tuple[int, ...]]]
    caps: list[int]
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
    begun: _Begun,
    chosen: Chosen,
    number: int = 0,
) -> Iterator[tuple[float, TieSet]]:
    """Sets that go on from ``chosen`` with assemblies from ``start`` in the order of price.

    ``begun`` is everything so far, ``chosen`` of that the ``number`` free main tie-downs.
    """
    reach, room = search.block.reach, search.block.room
    pair, used = search.block.menu.pair, begun.pairs
    value, spent = begun.value, begun.spent
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
        least = spent + max(lacking * price, (reach.need - value) * search.rate[at])
        if search.caps[at]:
            # Every assembly from here on is a pair of its own and makes so many at most.
            new = -(-lacking // search.caps[at]) - (0 if used else 1)
            least += new * search.per_extra_pair
        if least > budget:
            return
        extra = 0.0 if not used or pair[place] in used else search.per_extra_pair
        if number + lacking > room or spent + lacking * price + extra > budget:
            continue
        left = dict(have)
        for more in range(1, room - number + 1):
            cost = spent + more * price + extra
            if cost > budget or not _take(left, search.needs[at]):
                break
            now = value + more * reach.values[place]
            taken = (*chosen, (place, more))
            so_far = _Begun((*begun.chosen, (place, more)), now, cost, used | {int(pair[place])})
            if now >= reach.need and number + more >= reach.fewest:
                yield cost, TieSet(tuple(sorted(so_far.chosen)))
                break
            yield from _extend(search, at + 1, budget, left, so_far, taken, number + more)


def _caps_from(
    block: Block, needs: list[tuple[tuple[int, int], ...]], have: dict[int, int]
) -> list[int]:
    """Per place in the order, the most tie-downs that one assembly from there on can make."""
    found = [0] * len(needs)
    if block.apart or block.menu.shared_pairs:
        return found
    most = 1
    for at in range(len(needs) - 1, -1, -1):
        makes = min((have[gear] // pieces for gear, pieces in needs[at]), default=block.room)
        most = max(most, min(makes, block.room))
        found[at] = most
    return found


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
