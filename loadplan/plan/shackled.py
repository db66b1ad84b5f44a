"""Pairs and shackles apart: the tie-downs of an article counted by each, and joined afterwards.

Where every (tension member, tensioner) pair may go with every kind of shackle and a tie-down is as
strong as the weaker of the two, it is enough to count pairs and shackles. Joined strongest to
strongest, as many tie-downs have any given strength as there are pairs and as there are shackles
that have it, whichever are fewer. Fifty pairs and four kinds of shackle are 54 columns, not 200.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.article_columns import ArticleColumns, Row, just_enough, rows_apart
from loadplan.plan.article_rows import made_of
from loadplan.plan.blocks import Block, Menu

Array = np.ndarray[Any, np.dtype[Any]]
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """The main places of a menu by pair (rows) and kind of shackle (columns).

    ``pairs`` and ``shackles`` are the values that a tie-down with each has at the most.
    """

    places: Array
    pairs: tuple[int, ...]
    shackles: tuple[int, ...]

    @property
    def strengths(self) -> list[int]:
        """Every value that a tie-down can have, the least first."""
        return sorted({min(pair, end) for pair in self.pairs for end in self.shackles})

    def joined(self, pairs: Sequence[int], shackles: Sequence[int]) -> dict[int, int]:
        """How many tie-downs are of each place, with so many of each pair and kind of shackle."""
        found: dict[int, int] = {}
        strongest = _each(pairs, self.pairs), _each(shackles, self.shackles)
        for pair, shackle in zip(*strongest, strict=True):
            place = int(self.places[pair, shackle])
            found[place] = found.get(place, 0) + 1
        return found


def columns_apart(
    block: Block, price: Array, most: Array, have: dict[int, int]
) -> ArticleColumns | None:
    """Columns for pairs, for kinds of shackle, for strengths, and for what ``block`` has apart.

    None where its main places are no table of pairs and shackles. The column of a strength is how
    many tie-downs have it: c_t ≤ Σ pairs that have it, c_t ≤ Σ shackles that have it, and
    Σ (t − the next strength below) c_t reaches the need. ``price`` and ``most`` are of each
    place, ``have`` what there is of each kind of gear.
    """
    table = table_of(block)
    if table is None:
        return None
    places, menu = table.places, block.menu
    sums = sums_of(price[places])
    if sums is None:
        return None
    strengths = table.strengths
    apart = slice(block.main, len(price))
    shackles = _shackles(menu, places)
    none = np.zeros((len(strengths), len(menu.gear)))
    pairs = menu.uses[places[:, 0]] - shackles[0]
    ends = np.cumsum([len(table.pairs), len(table.shackles), len(strengths)])
    between, behind = np.zeros(ends[2] - ends[0]), len(price) - block.main
    return ArticleColumns(
        price=np.concatenate((*sums, np.zeros(len(strengths)), price[apart])),
        most=np.concatenate(
            (
                np.minimum(made_of(np.concatenate((pairs, shackles)), have), block.room),
                np.full(len(strengths), float(block.room)),
                most[apart],
            )
        ),
        uses=np.concatenate((pairs, shackles, none, menu.uses[apart])),
        winch=np.concatenate((menu.winch[places[:, 0]], between, menu.winch[apart])),
        pair=np.concatenate((menu.pair[places[:, 0]], between - 1, menu.pair[apart])),
        whole=np.concatenate((np.ones(ends[1]), np.zeros(len(strengths)), np.ones(behind))).astype(
            bool
        ),
        rows=(
            *_strong(block, table),
            *rows_apart(block, ends[2] + behind, ends[2] - block.main),
        ),
        places=lambda numbers: (
            table.joined(numbers[: ends[0]], numbers[ends[0] : ends[1]])
            | {place: n for place, n in enumerate(numbers[ends[2] :], block.main) if n}
        ),
    )


def sums_of(weights: Array) -> tuple[Array, Array] | None:
    """Weights of pairs and of shackles of which ``weights`` are the sums; None without any."""
    pairs, shackles = weights[:, 0], weights[0] - weights[0, 0]
    off = np.abs(pairs[:, None] + shackles - weights).max()
    return (pairs, shackles) if off <= _ROUNDING * np.abs(weights).max() else None


def table_of(block: Block) -> Table | None:
    """The main places of ``block`` as such a table; None where they are none."""
    menu = block.menu.assemblies[: block.main]
    names = list(dict.fromkeys(one.shackle for one in menu))
    if len(names) < 2 or None in names:
        return None
    pairs = list(dict.fromkeys(one.pair for one in menu))
    places = np.full((len(pairs), len(names)), -1)
    for place, one in enumerate(menu):
        places[pairs.index(one.pair), names.index(one.shackle)] = place
    if (places < 0).any():
        return None
    values = [[block.reach.values[place] for place in row] for row in places.tolist()]
    of_pairs = tuple(max(row) for row in values)
    of_shackles = tuple(max(column) for column in zip(*values, strict=True))
    weaker = [[min(pair, shackle) for shackle in of_shackles] for pair in of_pairs]
    return Table(places, of_pairs, of_shackles) if weaker == values else None


def _shackles(menu: Menu, places: Array) -> Array:
    """The pieces that the shackles of one tie-down take, by kind of shackle and of gear."""
    pieces = np.zeros((places.shape[1], len(menu.gear)), dtype=np.int64)
    for at, place in enumerate(places[0].tolist()):
        one = menu.assemblies[place]
        pieces[at, menu.gear.index(one.shackle or "")] = one.shackles
    return pieces


def _strong(block: Block, table: Table) -> list[Row]:
    """As many shackles as pairs, a number of them that does, and strong enough."""
    strengths = table.strengths
    pairs, shackles = np.array(table.pairs), np.array(table.shackles)
    gains = np.array([float(gain) for gain in np.diff([0, *strengths])]) / block.reach.need
    values = [value / block.reach.need for value in block.reach.values[block.main :]]
    last, none = np.zeros(len(values)), np.zeros(len(strengths))
    ones, others = np.ones(len(pairs)), np.ones(len(shackles))
    rows: list[Row] = [
        (_row(ones, 0.0 * others, none, last), block.reach.fewest, block.room),
        (_row(ones, -others, none, last), 0.0, 0.0),
        (_row(0.0 * ones, 0.0 * others, gains, np.array(values)), just_enough(block), np.inf),
    ]
    for strength, here in zip(strengths, np.eye(len(strengths)), strict=True):
        rows.append((_row(-1.0 * (pairs >= strength), 0.0 * others, here, last), -np.inf, 0.0))
        rows.append((_row(0.0 * ones, -1.0 * (shackles >= strength), here, last), -np.inf, 0.0))
    return rows


def _row(*parts: Array) -> Array:
    return np.concatenate(parts)


def _each(numbers: Sequence[int], values: Sequence[int]) -> list[int]:
    """Every tie-down's pair or shackle, the strongest first."""
    order = sorted(range(len(numbers)), key=lambda at: -values[at])
    return [at for at in order for _ in range(numbers[at])]
