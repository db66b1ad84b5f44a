"""The cheapest purchase that lets given loads be ready at once."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.purchase.program import purchase_program
from loadplan.purchase.purchase import Purchase
from loadplan.purchase.search import Search


def cheapest_purchase(
    day: Day, loads: Collection[str], offers: Sequence[Price], *, seconds: float
) -> Purchase | None:
    """The purchase of least cost with which all of ``loads`` can be ready at once.

    Of several that cost the same, one of the fewest pieces. Every other load of ``day`` is held
    and keeps only what ``Fixed`` has put on it. ``offers`` are plain values and need not be the
    day's own: a specification, a price of 0 or more, and the most pieces to be had (None: any
    number). An offer of a kind that is owned and good is more of it; any other is a kind of its
    own (:func:`loadplan.purchase.owned.gear_ids`).

    None where it is proved that no purchase of ``offers`` does it. Raises ``OutOfTimeError`` where
    ``seconds`` passed before either was known; a purchase found by then whose cost or pieces are
    not proved least says so.
    """
    return settle(Search(purchase_program(day, loads, offers), Clock(seconds)))


def settle(search: Search) -> Purchase | None:
    """The purchase of least cost, then fewest pieces, with every load of ``search`` ready."""
    if sum(search.possible) < len(search.program.ready):
        return None
    search.hold_ready(search.possible)
    return cheapest_now(search)


def cheapest_now(search: Search) -> Purchase | None:
    """The purchase of least cost, then fewest pieces, with what ``search`` holds ready."""
    search.clock.stage = "cost of the purchase"
    least = search.least_cost()
    if least.values is None:
        if least.proved:
            return None
        raise OutOfTimeError
    if not least.proved:
        bound: Fraction = search.step * max(0, least.bound)
        return search.purchase(least.values, bound=bound, proved=False)
    if search.one_price:
        return search.purchase(least.values, bound=None, proved=True)
    search.spend(search.cost(least.values))
    search.clock.stage = "pieces of the purchase"
    fewest = search.fewest_pieces(least.values)
    values = least.values if fewest.values is None else fewest.values
    return search.purchase(values, bound=None, proved=fewest.proved)
