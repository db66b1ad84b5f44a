"""Purchases of one cost and one number of pieces: which of them makes the best plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loadplan.purchase.purchase import Purchase, purchase_of
from loadplan.purchase.search import Search

_MOST_STEPS = 20_000


def equals_of(search: Search, purchase: Purchase, most: int) -> list[Purchase] | None:
    """Every other purchase of the same cost and pieces with which the held loads can be ready.

    None where there are more than ``most``, or too many to look through in time.
    """
    taken = dict(purchase.lines)
    mine = tuple(taken.get(offer, 0) for offer in search.program.offers)
    found: list[Purchase] = []
    for steps, numbers in enumerate(_same(search, purchase)):
        if steps > _MOST_STEPS or search.clock.over() or len(found) > most:
            return None
        if numbers is None or numbers == mine:
            continue
        can = search.can_buy(numbers)
        if can is None:
            return None
        if can:
            lines = tuple(zip(search.program.offers, numbers, strict=True))
            found.append(purchase_of(lines, proved=purchase.proved))
    return None if len(found) > most else found


def _same(search: Search, purchase: Purchase) -> Iterator[tuple[int, ...] | None]:
    """Numbers of pieces per offer that sum to the same cost and pieces; None for a step."""
    prices = [int(price) for price in search.prices]
    upper = [int(most) for most in search.most]
    cost = int(purchase.cost / search.step)
    yield from _fill(prices, upper, (), cost, purchase.pieces)


def _fill(
    prices: Sequence[int], upper: Sequence[int], chosen: tuple[int, ...], cost: int, pieces: int
) -> Iterator[tuple[int, ...] | None]:
    at = len(chosen)
    yield None
    if at == len(prices):
        if cost == 0 and pieces == 0:
            yield chosen
        return
    rest = prices[at:]
    if not min(rest) * pieces <= cost <= max(rest) * pieces:
        return
    for number in range(min(upper[at], pieces) + 1):
        left = cost - number * prices[at]
        if left < 0:
            return
        yield from _fill(prices, upper, (*chosen, number), left, pieces - number)
