"""The columns of a program of one article alone: how many tie-downs are of each place."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.blocks import Block

Array = np.ndarray[Any, np.dtype[Any]]
Row = tuple[Array, float, float]  # weights of the columns, and the least and most of their sum


@dataclass(frozen=True, slots=True, eq=False)
class ArticleColumns:
    """What is counted, one entry per column, and the rows that make it a set that is enough.

    ``uses`` are pieces of each kind of gear, ``pair`` the number of the (tension member,
    tensioner), -1 for none; what need not be ``whole`` is so wherever all else is. ``places`` turns
    the numbers of the columns into how many tie-downs are of each place on the menu.
    """

    price: Array
    most: Array
    uses: Array
    winch: Array
    pair: Array
    whole: Array
    rows: tuple[Row, ...]
    places: Callable[[Sequence[int]], dict[int, int]]


def columns_of_places(block: Block, price: Array, most: Array) -> ArticleColumns:
    """A column for each place on the menu of ``block``."""
    number = np.arange(len(price))
    need = block.reach.need
    value = np.array([value / need for value in block.reach.values])
    return ArticleColumns(
        price=price,
        most=most,
        uses=block.menu.uses,
        winch=block.menu.winch,
        pair=block.menu.pair,
        whole=np.ones(len(price), dtype=bool),
        rows=(
            (1.0 * (number < block.main), block.reach.fewest, block.room),
            *rows_apart(block, len(price), 0),
            (value, just_enough(block), np.inf),
        ),
        places=lambda numbers: {place: n for place, n in enumerate(numbers) if n},
    )


def rows_apart(block: Block, columns: int, before: int) -> list[Row]:
    """That of each group apart as many are taken as it has; its places come ``before`` later."""
    number = np.arange(columns) - before
    return [
        (1.0 * ((number >= one.first) & (number < one.end)), one.number, one.number)
        for one in block.apart
    ]


def just_enough(block: Block) -> float:
    """The share of the need above which a whole sum of values is all of it."""
    return 1.0 - 0.5 / block.reach.need
