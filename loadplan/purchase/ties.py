"""Purchases of one cost and one number of pieces, of which one may make the better plan."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from loadplan.purchase.program import Array
from loadplan.purchase.purchase import Purchase
from loadplan.purchase.search import Search

Box = tuple[Array, Array]


def equals_of(search: Search, purchase: Purchase, most: int) -> list[Purchase] | None:
    """Every other purchase of the same cost and pieces with which as many loads can be ready.

    ``search`` holds the ready loads and the cost. None where there are more than ``most``, or
    where the time came before all were found.
    """
    taken = dict(purchase.lines)
    mine = np.array([taken.get(offer, 0) for offer in search.program.offers], dtype=float)
    boxes = list(_around(mine, (np.zeros(len(mine)), search.most)))
    found: list[Purchase] = []
    while boxes:
        box = boxes.pop()
        other = search.bought_within(*box, purchase.pieces)
        if not other.proved:
            return None
        if other.values is None:
            continue
        numbers = other.values[search.program.bought]
        found.append(search.purchase(other.values, bound=None, proved=purchase.proved))
        if len(found) > most:
            return None
        boxes += _around(numbers, box)
    return found


def _around(numbers: Array, box: Box) -> Iterator[Box]:
    """Boxes that hold everything in ``box`` but ``numbers``, and nothing twice."""
    lower, upper = box
    for place, number in enumerate(numbers):
        for first, last in ((lower[place], number - 1), (number + 1, upper[place])):
            if first <= last:
                low, high = lower.copy(), upper.copy()
                low[:place] = high[:place] = numbers[:place]
                low[place], high[place] = first, last
                yield low, high
