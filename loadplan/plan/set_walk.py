"""Walking through the sets of one article that cost little enough."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from loadplan.plan.ahead import Ahead, Offer
from loadplan.plan.blocks import Block, Needs
from loadplan.plan.rounds import ByGear, Rounds, rounded, rounds_by_gear
from loadplan.plan.stock import Stock, stock_from
from loadplan.plan.tie_set import Chosen, TieSet
from loadplan.plan.within import places_within

_SLACK = 1e-7
_COARSE, _FINE = 64, 1024  # parts into which the bound cuts the need
_ENDLESS = 1e300


def enumerate_sets(
    block: Block,
    price: list[float],
    per_extra_pair: float,
    budget: float,
    have: dict[int, int],
    tick: Callable[[], None],
    rounds: Rounds | None = None,
    scarce: Mapping[int, float] | None = None,
    *,
    most_pairs: float = math.inf,
) -> Iterator[tuple[float, TieSet]]:
    """Every set that is enough, has no tie-down to spare, and costs at most ``budget``.

    ``price`` is the cost of one tie-down of each assembly, none below nought; ``per_extra_pair``
    the cost of each pair beyond the first; ``rounds`` the price of each ⌊pieces / k⌋ of a kind of
    gear (gear, k), on top. ``have`` is what there is of each kind of gear (and of winches, at -1)
    for this article alone. ``tick`` is called at every step and may raise to end a search that
    runs too long. A set with tie-downs to spare is never needed: each stage likes it less.

    ``scarce`` is what a piece of each kind of gear is worth to the article, none below nought
    (:func:`loadplan.plan.scarcity.scarcity`): tie-downs that share scarce gear are bounded together
    by it. Any worth is right; a good one makes the walk short. Given it, even if empty, the bound
    is finer too, which pays where there are very many sets. Sets of more than ``most_pairs`` pairs
    are left out.
    """
    fine, scarce = scarce is not None, scarce or {}
    needs_at = block.menu.needs[: block.main]
    full = [
        price[place] + sum(scarce.get(gear, 0.0) * pieces for gear, pieces in needs)
        for place, needs in enumerate(needs_at)
    ]
    could = places_within(block, price, budget)
    order = [place for place in _in_order(block, full, fine) if could[place]]
    needs = [needs_at[place] for place in order]
    pair = 0.0 if block.apart or block.menu.shared_pairs else per_extra_pair
    by_gear = rounds_by_gear(rounds or {})
    offers = [
        _offer(block, place, full[place], pair, needs[at], have, by_gear)
        for at, place in enumerate(order)
    ]
    search = _Search(
        block=block,
        price=price,
        per_extra_pair=per_extra_pair,
        order=order,
        ahead=Ahead(block.reach.need, block.reach.fewest, offers, _FINE if fine else _COARSE),
        pair=pair,
        needs=needs,
        stock=stock_from(block, order, have),
        all=have,
        rounds=by_gear,
        scarce=tuple(scarce.items()),
        most_pairs=most_pairs,
        tick=tick,
    )
    least = [min(price[one.first : one.end], default=0.0) * one.number for one in block.apart]
    rest = [sum(least[at:]) for at in range(len(least) + 1)]
    yield from _settle_apart(search, rest, 0, budget, have, _Begun((), 0, 0.0, frozenset()))


def _in_order(block: Block, price: list[float], by_worth: bool) -> list[int]:
    """The main places, cheapest first: per tie-down, or ``by_worth`` per part of the need."""
    values = block.reach.values

    def key(place: int) -> tuple[float, int]:
        return (price[place] / values[place] if by_worth else price[place], place)

    return sorted(range(block.main), key=key)


@dataclass(frozen=True, slots=True)
class _Begun:
    """What is settled so far: the places, their value and price, the main pairs in use."""

    chosen: Chosen
    value: int
    spent: float
    pairs: frozenset[int]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Search:
    """What stays the same during one enumeration.

    ``ahead`` bounds what lacks of a set and counts ``pair`` for each pair in it; ``stock`` is what
    tie-downs from a place of ``order`` on can be made of; ``all`` is what there is of each kind of
    gear before anything is taken; ``scarce`` what a piece of it is worth, which the prices in
    ``ahead`` have on top.
    """

    block: Block
    price: list[float]
    per_extra_pair: float
    order: list[int]
    ahead: Ahead
    pair: float
    needs: list[Needs]
    stock: Stock
    all: dict[int, int]
    rounds: ByGear
    scarce: tuple[tuple[int, float], ...]
    most_pairs: float
    tick: Callable[[], None]

    def on_top(self, left: dict[int, int], needs: Needs) -> float:
        """What the rounded limits add when ``needs`` have been taken, ``left`` being left."""
        used = ((gear, self.all[gear] - left[gear], pieces) for gear, pieces in needs)
        return sum(rounded(self.rounds, gear, now - pieces, now) for gear, now, pieces in used)


def _offer(
    block: Block,
    place: int,
    price: float,
    pair: float,
    needs: Needs,
    have: dict[int, int],
    rounds: ByGear,
) -> Offer:
    """The assembly at ``place``, as often as one article could take it."""
    most = min((have[gear] // pieces for gear, pieces in needs), default=block.room)
    value = block.reach.values[place]
    enough = max(block.reach.fewest, -(-block.reach.need // value))
    numbers = range(1, min(most, block.room, enough) + 1)
    costs = [pair + number * price for number in numbers]
    for gear, pieces in needs:
        if gear in rounds:
            on_top = (rounded(rounds, gear, 0, number * pieces) for number in numbers)
            costs = [cost + more for cost, more in zip(costs, on_top, strict=True)]
    return Offer(value=value, costs=tuple(costs))


def _settle_apart(
    search: _Search,
    rest: list[float],
    at: int,
    budget: float,
    have: dict[int, int],
    begun: _Begun,
) -> Iterator[tuple[float, TieSet]]:
    """Settle the ``at``-th group apart in every way within ``budget``, then the main ones.

    ``rest`` is the least price of that group and all after it.
    """
    block = search.block
    if at == len(block.apart):
        if begun.value >= block.reach.need and block.reach.fewest == 0:
            yield begun.spent, TieSet(tuple(sorted(begun.chosen)))
        else:
            yield from _extend(search, budget, have, begun)
        return
    group = block.apart[at]
    places = sorted(range(group.first, group.end), key=lambda place: (search.price[place], place))
    for chosen, left, on_top in _choose(search, places, group.number, have):
        price = sum(number * search.price[place] for place, number in chosen)
        pairs = {int(block.menu.pair[place]) for place, _ in chosen} - {-1}
        new = len(begun.pairs | pairs) - max(1, len(begun.pairs)) if begun.pairs | pairs else 0
        spent = begun.spent + price + new * search.per_extra_pair + on_top
        if spent + rest[at + 1] > budget or len(begun.pairs | pairs) > search.most_pairs:
            continue
        value = begun.value + sum(n * block.reach.values[place] for place, n in chosen)
        more = _Begun((*begun.chosen, *chosen), value, spent, begun.pairs | pairs)
        yield from _settle_apart(search, rest, at + 1, budget, left, more)


def _choose(
    search: _Search, places: list[int], number: int, have: dict[int, int]
) -> Iterator[tuple[Chosen, dict[int, int], float]]:
    """Every way to take ``number`` of ``places`` out of ``have``; what it leaves, what is on top.

    What is on top is the price that the rounded limits add.
    """
    search.tick()
    if number == 0:
        yield (), have, 0.0
        return
    for at, place in enumerate(places):
        left, on_top = dict(have), 0.0
        needs = search.block.menu.needs[place]
        for more in range(1, number + 1):
            if not _take(left, needs):
                break
            on_top += search.on_top(left, needs)
            for rest, last, top in _choose(search, places[at + 1 :], number - more, dict(left)):
                yield ((place, more), *rest), last, on_top + top


def _extend(
    search: _Search, budget: float, have: dict[int, int], begun: _Begun
) -> Iterator[tuple[float, TieSet]]:
    """Sets that go on from ``begun`` with main assemblies in the order of price.

    All steps share one ``left``: what a step takes of it is put back at its end.
    """
    block, left = search.block, dict(have)
    need, fewest, room = block.reach.need, block.reach.fewest, block.room
    price = [search.price[place] for place in search.order]
    values = [block.reach.values[place] for place in search.order]
    pairs = [1 << int(block.menu.pair[place]) for place in search.order]
    order, needs, end = search.order, search.needs, len(search.order)
    shared = block.menu.shared_pairs
    tick, least, falls_short = search.tick, search.ahead.least, search.stock.falls_short

    def end_of(start: int, number: int, value: int, spent: float, used: int) -> int:
        """The place from ``start`` on at which nothing within ``budget`` begins any more."""
        tick()
        if start == end or (number < fewest and falls_short(start, fewest - number, left)):
            return start
        # The first pair of a set is free.
        spare = budget - spent + (0.0 if used else search.pair) + _SLACK
        if search.scarce:
            spare += sum([each * left[gear] for gear, each in search.scarce])
        lacks = least(fewest - number, need - value)
        return bisect_right(lacks, min(_ENDLESS, spare), start)

    def walk(
        places: range, chosen: Chosen, number: int, value: int, spent: float, used: int
    ) -> Iterator[tuple[float, TieSet]]:
        for at in places:
            each, gain, mine = price[at], values[at], needs[at]
            pair, on_top = used | pairs[at], 0.0
            before = spent
            if used and pair != used:
                if pair.bit_count() > search.most_pairs:
                    continue
                before += search.per_extra_pair
            taken, most = 0, room - number
            for gear, pieces in mine:
                if left[gear] < most * pieces:
                    most = left[gear] // pieces
            for more in range(1, most + 1):
                for gear, pieces in mine:
                    left[gear] -= pieces
                taken = more
                if search.rounds:
                    on_top += search.on_top(left, mine)
                cost = before + more * each + on_top
                if cost > budget:
                    break
                now, so_many = value + more * gain, number + more
                so_far = (*chosen, (order[at], more))
                if now >= need and so_many >= fewest:
                    if _spares_none(block, so_far, so_many, now):
                        yield cost, TieSet(tuple(sorted(so_far)))
                    break
                stop = end_of(at + 1, so_many, now, cost, pair)
                if stop > at + 1 and (pair.bit_count() < search.most_pairs or shared):
                    yield from walk(range(at + 1, stop), so_far, so_many, now, cost, pair)
            for gear, pieces in mine:
                left[gear] += taken * pieces

    used = sum(1 << pair for pair in begun.pairs)
    stop = end_of(0, 0, begun.value, begun.spent, used)
    yield from walk(range(stop), begun.chosen, 0, begun.value, begun.spent, used)


def _spares_none(block: Block, chosen: Chosen, number: int, value: int) -> bool:
    """Whether no free tie-down of a set that is enough could be left out."""
    reach = block.reach
    if number == reach.fewest:
        return True
    spare = value - reach.need
    return all(reach.values[place] > spare for place, _ in chosen if place < block.main)


def _take(left: dict[int, int], needs: Needs) -> bool:
    for gear, pieces in needs:
        if left[gear] < pieces:
            return False
        left[gear] -= pieces
    return True
