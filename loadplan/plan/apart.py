"""Pairs and shackles apart in a program that counts tie-downs: fewer columns, the same plans.

As in :mod:`loadplan.plan.shackled`, for every article that a program counts assembly by assembly:
z_ps tie-downs of pair p with shackle s become x_p pairs, u_s shackles and c_t tie-downs that have
strength t. What a row says of z is then said of the others: a weight that is the sum of one for the
pair and one for the shackle by x and u, a weight that follows from the strength by x and c.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from loadplan.plan.matrix import INFINITE, Matrix
from loadplan.plan.shackled import Table, sums_of

Array = np.ndarray[Any, np.dtype[Any]]
_Entries = dict[int, float]
_Sides = tuple[float, float]


@dataclass(frozen=True, slots=True, eq=False)
class Tabled:
    """Columns z of one article by place on its menu, and the table that the places make."""

    columns: Sequence[int]
    table: Table

    @property
    def z(self) -> Array:
        """The columns by pair and shackle."""
        return np.array(self.columns)[self.table.places]


@dataclass(frozen=True, slots=True, eq=False)
class Apart:
    """A problem with pairs and shackles apart, and the way back.

    ``keep`` are the columns that it still has, before those of ``articles`` in turn.
    """

    matrix: Matrix
    keep: Array
    articles: tuple[Tabled, ...]
    columns: int

    def column_of(self, columns: Array) -> Array:
        """Where columns are now that it still has."""
        return np.searchsorted(self.keep, columns)

    def of_columns(self, known: Array) -> Array:
        """What is ``known`` of every column, and is the same for all z of an article."""
        parts = [known[self.keep]]
        for one in self.articles:
            steps_up = len(one.table.strengths) - 1
            parts.append(np.repeat(known[one.columns[0]], sum(one.table.places.shape) + steps_up))
        return np.concatenate(parts)

    def cost(self, cost: Array) -> Array:
        """The cost of each column; of z it must be a sum of one for the pair and the shackle."""
        parts = [cost[self.keep]]
        for one in self.articles:
            sums = sums_of(cost[one.z])
            assert sums is not None
            parts += [*sums, np.zeros(len(one.table.strengths) - 1)]
        return np.concatenate(parts)

    def values(self, values: Array) -> Array:
        """The values of the problem's own columns."""
        found, at = np.zeros(self.columns), len(self.keep)
        found[self.keep] = values[:at]
        for one in self.articles:
            middle, end = at + len(one.table.pairs), at + sum(one.table.places.shape)
            numbers = np.round(values[at:end]).astype(int).tolist()
            pairs, shackles = numbers[: middle - at], numbers[middle - at :]
            for place, number in one.table.joined(pairs, shackles).items():
                found[one.columns[place]] = number
            at = end + len(one.table.strengths) - 1
        return found


def apart(matrix: Matrix, articles: Iterable[Tabled]) -> Apart:
    """``matrix``, by row, with pairs and shackles of ``articles`` apart where its rows allow it."""
    by_column = matrix.columnwise()
    split: list[Tabled] = []
    columns: list[_Entries] = []
    rows: list[_Sides] = []
    for one in articles:
        made = _split(by_column, one, len(matrix.row_lower) + len(rows))
        if made is not None:
            split.append(one)
            columns += made[0]
            rows += made[1]
    keep = np.setdiff1d(np.arange(len(matrix.lower)), [c for one in split for c in one.columns])
    part = by_column.part(keep, by_column.lower, by_column.upper)
    part = replace(part, whole=by_column.whole[keep])
    upper = [most for one in split for most in _upper(by_column, one)]
    whole = [counts for one in split for counts in _whole(one)]
    return Apart(
        matrix=part.with_columns(columns, np.array(upper), np.array(whole, dtype=bool), rows),
        keep=keep,
        articles=tuple(split),
        columns=len(matrix.lower),
    )


def _split(matrix: Matrix, one: Tabled, rows: int) -> tuple[list[_Entries], list[_Sides]] | None:
    """The entries of x, u and c, and the sides of the rows that tie them, from row ``rows`` on.

    None where some row weighs z in another way.
    """
    table, steps_up = one.table, len(one.table.strengths) - 1
    pairs, shackles = table.places.shape
    columns: list[_Entries] = [{} for _ in range(pairs + shackles + steps_up)]
    for row, weights in _rows_of(matrix, one.z):
        sums = sums_of(weights)
        if sums is not None:
            found = np.concatenate((*sums, np.zeros(steps_up)))
        else:
            # Fewer tie-downs may be said to have a strength than do: the row must ask for more.
            steps = _steps(table, weights)
            if steps is None or steps[1:].min(initial=0.0) < 0 or matrix.row_upper[row] < INFINITE:
                return None
            found = np.concatenate((np.full(pairs, steps[0]), np.zeros(shackles), steps[1:]))
        for at in np.nonzero(found)[0].tolist():
            columns[at][row] = float(found[at])
    return columns, _tie(table, columns, rows)


def _tie(table: Table, columns: list[_Entries], rows: int) -> list[_Sides]:
    """Tie x, u and c together in rows from ``rows`` on; their sides.

    As many shackles as pairs, and as many tie-downs of a strength as both have of it at the most.
    """
    pairs, shackles = table.places.shape
    sides = [(0.0, 0.0)]
    for at in range(pairs + shackles):
        columns[at][rows] = 1.0 if at < pairs else -1.0
    for number, strength in enumerate(table.strengths[1:], pairs + shackles):
        for first, values in ((0, table.pairs), (pairs, table.shackles)):
            row = rows + len(sides)
            sides.append((-INFINITE, 0.0))
            columns[number][row] = 1.0
            for at, value in enumerate(values, first):
                if value >= strength:
                    columns[at][row] = -1.0
    return sides


def _rows_of(matrix: Matrix, z: Array) -> Iterator[tuple[int, Array]]:
    """Every row that some column of ``z`` stands in, with their weights in it."""
    found: dict[int, Array] = defaultdict(lambda: np.zeros(z.shape))
    for place, column in np.ndenumerate(z):
        first, end = int(matrix.starts[column]), int(matrix.starts[column + 1])
        for row, weight in zip(
            matrix.places[first:end].tolist(), matrix.coefficients[first:end].tolist(), strict=True
        ):
            found[row][place] = weight
    yield from found.items()


def _steps(table: Table, weights: Array) -> Array | None:
    """The weight of the least strength, and what each strength has more than the one below.

    None where weights do not follow from the strength.
    """
    strengths = table.strengths
    found = np.full(len(strengths), np.nan)
    for (pair, shackle), weight in np.ndenumerate(weights):
        at = strengths.index(min(table.pairs[pair], table.shackles[shackle]))
        if not np.isnan(found[at]) and found[at] != weight:
            return None
        found[at] = weight
    return np.diff(found, prepend=0.0)


def _upper(matrix: Matrix, one: Tabled) -> list[float]:
    """How many of each pair, of each kind of shackle and of each strength there can be."""
    most = matrix.upper[one.z]
    room = float(most.sum())
    pairs = most.sum(axis=1).tolist()
    return [*pairs, *most.sum(axis=0).tolist(), *[room] * (len(one.table.strengths) - 1)]


def _whole(one: Tabled) -> list[bool]:
    """Whether pairs, shackles and strengths must be whole: strengths are wherever the rest is."""
    return [True] * sum(one.table.places.shape) + [False] * (len(one.table.strengths) - 1)
