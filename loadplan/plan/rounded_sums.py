"""Rounded sums of rows: what every solution in whole numbers keeps, and a linear one may break.

A sum of rows Σ u (a · x) ≤ Σ u b with u ≥ 0 stays true when every coefficient is rounded down, and
with whole x the limit may then be rounded down too (Chvátal 1973, Gomory 1958). The multipliers
come from the simplex as floating numbers; any others would do as well, so they are rounded to parts
of one unit, and everything after that is reckoned exactly in whole numbers of such parts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.matrix import Matrix

Array = np.ndarray[Any, np.dtype[Any]]
_WHOLE = 2.0**34  # multipliers are whole numbers of this part
_ALMOST = 2.0**12  # of such parts: what a coefficient may lack of a whole number
_NEAR = 1e-6  # how near to its upper bound a column is at it
_LARGEST = 10_000.0  # coefficients beyond are strengths: rounding them tells nothing
_EXACT = 2.0**51  # floating numbers are whole and exact up to well beyond
_BROKEN = 1e-3  # by less is not worth a row
_ROWS_AT_ONCE = 500
_ALIKE = 0.5  # of two rows more parallel than this one is enough
_TINY = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class RoundedSum:
    """Σ coefficients · x over ``columns`` is ``most`` or less."""

    columns: Array
    coefficients: Array
    most: float

    def excess(self, values: Array) -> float:
        """By how much ``values`` break it."""
        return float(self.coefficients @ values[self.columns]) - self.most

    def length(self) -> float:
        """The Euclidean length of its coefficients."""
        return float(np.linalg.norm(self.coefficients))


@dataclass(frozen=True, slots=True, eq=False)
class _Bounds:
    """From which bound each column is counted: its upper one where it is ``full``.

    ``least`` is that bound, ``fixed`` are columns that cannot leave it.
    """

    least: Array
    full: Array
    fixed: Array

    @classmethod
    def of(cls, lower: Array, upper: Array, values: Array) -> _Bounds:
        fixed = (lower == upper) | (upper <= 0)
        full = (upper - values <= _NEAR) & ~fixed
        return cls(np.where(full | fixed, upper, lower), full, fixed)

    def at(self, columns: Array) -> _Bounds:
        """Those of some columns."""
        return _Bounds(self.least[columns], self.full[columns], self.fixed[columns])

    def down(self, total: Array) -> tuple[Array, Array]:
        """The coefficients of a sum, or of several, rounded down; and how much too large they are.

        A coefficient that lacks next to nothing of a whole number is rounded up to it.
        """
        turned = np.where(self.full, -total, total)
        turned[..., self.fixed] = 0.0
        down = np.floor_divide(turned + _ALMOST, _WHOLE)
        more = np.maximum(down * _WHOLE - turned, 0.0)
        return np.where(self.full, -down, down), more


@dataclass(frozen=True, slots=True, eq=False)
class _Sums:
    """Sums of ``rows``, of columns and coefficients, each of which is ``limits`` or less.

    ``numbers`` has one sum a row: how often it takes each, in parts of one.
    """

    rows: list[tuple[Array, Array]]
    limits: Array
    numbers: Array

    def total(self, place: int, width: int) -> Array:
        """What one sum comes to in each of ``width`` columns."""
        total, numbers = np.zeros(width), self.numbers[place]
        for row in np.nonzero(numbers)[0].tolist():
            columns, coefficients = self.rows[row]
            total[columns] += numbers[row] * coefficients
        return total

    def totals(self, held: Array, width: int) -> Array:
        """What every sum comes to in the columns ``held`` of ``width``."""
        place = np.full(width, -1)
        place[held] = np.arange(len(held))
        total = np.zeros((len(self.numbers), len(held)))
        # A few rows at a time: all of a large day's at once take hundreds of megabytes.
        for first in range(0, len(self.rows), _ROWS_AT_ONCE):
            rows = self.rows[first : first + _ROWS_AT_ONCE]
            dense = np.zeros((len(rows), len(held)))
            for number, (columns, coefficients) in enumerate(rows):
                here = place[columns]
                dense[number, here[here >= 0]] = coefficients[here >= 0]
            total += self.numbers[:, first : first + _ROWS_AT_ONCE] @ dense
        return total


class SummedRows:
    """The rows of a whole-number problem that may be summed: those in whole numbers throughout.

    ``matrix`` is by column, and all its columns must be whole. Rows added later are numbered on.
    """

    def __init__(self, matrix: Matrix):
        by_row = matrix.rowwise()
        ends = by_row.starts[1:-1]
        columns, values = np.split(by_row.places, ends), np.split(by_row.coefficients, ends)
        self._rows = list(zip(columns, values, strict=True))
        self._low, self._high = matrix.row_lower, matrix.row_upper
        self._whole = np.array([_is_whole(values) for _, values in self._rows], dtype=bool)
        self._lower = matrix.lower
        groups = list(self._groups(matrix))
        sizes = [len(one) for one in groups]
        self._grouped = np.concatenate([np.zeros(0, dtype=np.int64), *groups])
        self._sizes = np.array(sizes, dtype=np.int64)
        self._starts = np.cumsum(self._sizes) - self._sizes

    def _groups(self, matrix: Matrix) -> Iterator[Array]:
        """Columns of which exactly one is 1, each in one group at the most."""
        fixed = matrix.lower == matrix.upper
        taken = fixed | (matrix.lower != 0)
        for row in np.nonzero(matrix.row_lower == matrix.row_upper)[0].tolist():
            columns, coefficients = self._rows[row]
            mine = fixed[columns]
            rest = self._high[row] - float(coefficients[mine] @ matrix.lower[columns[mine]])
            free = columns[~mine]
            ones = bool(np.all(coefficients[~mine] == 1.0))
            if rest == 1.0 and ones and len(free) and not taken[free].any():
                taken[free] = True
                yield free

    def add(self, found: Sequence[RoundedSum]) -> None:
        """Let rounded sums be summed too."""
        self._rows += [(one.columns, one.coefficients) for one in found]
        self._low = np.append(self._low, [-np.inf] * len(found))
        self._high = np.append(self._high, [one.most for one in found])
        self._whole = np.append(self._whole, np.ones(len(found), dtype=bool))

    def remove(self, numbers: Array) -> None:
        """Forget the rows of these numbers; those behind them move up."""
        gone = set(numbers.tolist())
        self._rows = [row for number, row in enumerate(self._rows) if number not in gone]
        self._low = np.delete(self._low, numbers)
        self._high = np.delete(self._high, numbers)
        self._whole = np.delete(self._whole, numbers)

    def leave_out(self, gone: Array) -> None:
        """Forget the columns marked in ``gone``, which are 0 throughout; those behind move up."""
        kept = ~gone
        place = np.cumsum(kept) - 1
        self._rows = [
            (place[columns[kept[columns]]], values[kept[columns]]) for columns, values in self._rows
        ]
        self._lower = self._lower[kept]
        if len(self._grouped):
            mine = kept[self._grouped]
            sizes = np.add.reduceat(mine.astype(np.int64), self._starts)
            self._grouped = place[self._grouped[mine]]
            self._sizes = sizes[sizes > 0]
            self._starts = np.cumsum(self._sizes) - self._sizes

    def slack(self, activity: Array) -> Array:
        """By how much each row stays below its limit."""
        return self._high - activity

    def rounded(
        self, weights: Array, activity: Array, values: Array, upper: Array, most: int
    ) -> Iterator[RoundedSum]:
        """Up to ``most`` rounded sums of the rows that ``values`` break, the furthest away first.

        No two are much alike in the columns that are not 0. ``weights`` has one sum a row, of which
        only the fractions matter. ``activity`` is what each row comes to at the linear solution
        ``values``, whose columns go up to ``upper``.
        """
        sums = self._sums(weights, activity)
        bounds = _Bounds.of(self._lower, upper, values)
        places, coefficients = _furthest(sums, values, bounds)
        kept = np.zeros((most, coefficients.shape[1]))
        found = 0
        for place, row in zip(places, coefficients, strict=True):
            if found == most:
                return
            if float(np.abs(kept[:found] @ row).max(initial=0.0)) > _ALIKE:
                continue
            made = self._down(sums, place, bounds, upper)
            if made is not None and made.excess(values) > _BROKEN:
                kept[found], found = row, found + 1
                yield made

    def _sums(self, weights: Array, activity: Array) -> _Sums:
        """The sums of rows in whole numbers by the fractions of ``weights``, each row at its limit.

        Sums with other rows in them, or too large to be exact, are left out.
        """
        # Of the thousands of rows of a large day a few hundred have a weight.
        (used,) = np.nonzero((np.abs(weights) > _TINY).any(axis=0))
        low, high, weights = self._low[used], self._high[used], weights[:, used]
        at_high = high - activity[used] <= activity[used] - low
        signs, limits = np.where(at_high, 1.0, -1.0), np.where(at_high, high, -low)
        bad = ~(self._whole[used] & np.isfinite(limits) & (limits == np.round(limits)))
        limits[bad] = 0.0
        weights = weights[~(np.abs(weights[:, bad]) > _TINY).any(axis=1)]
        weights[np.abs(weights) <= _TINY] = 0.0
        weights[:, bad] = 0.0
        numbers = np.mod(np.round(weights * signs * _WHOLE), _WHOLE)
        numbers = numbers[numbers @ np.abs(limits) < _EXACT]
        rows = [self._rows[number] for number in used.tolist()]
        signed = [(row[0], sign * row[1]) for sign, row in zip(signs, rows, strict=True)]
        return _Sums(signed, limits, numbers)

    def _down(self, sums: _Sums, place: int, bounds: _Bounds, upper: Array) -> RoundedSum | None:
        """The sum at ``place`` rounded down; None where it is too large to be exact."""
        total = sums.total(place, len(upper))
        if float(np.abs(total).max()) >= _EXACT:
            return None
        limit = float(sums.numbers[place] @ sums.limits) - float(total @ bounds.least)
        coefficients, more = bounds.down(total)
        limit += self._at_most(more, upper - self._lower, bounds.full)
        most = float(np.floor_divide(limit, _WHOLE)) + float(coefficients @ bounds.least)
        return self._sparse(coefficients, most, upper)

    def _at_most(self, more: Array, room: Array, full: Array) -> float:
        """What ``more`` per unit of each column above its lower bound comes to at the most."""
        alone = np.ones(len(more), dtype=bool)
        alone[self._grouped] = full[self._grouped]
        (columns,) = np.nonzero(more * alone)
        found = float(more[columns] @ room[columns])
        if len(self._grouped):
            mine = np.where(full[self._grouped], 0.0, more[self._grouped])
            found += float(np.maximum.reduceat(mine, self._starts).sum())
        return found

    def _sparse(self, whole: Array, most: float, upper: Array) -> RoundedSum:
        """The same with as many zeros as the groups allow."""
        if len(self._grouped):
            mine = np.where(upper[self._grouped] > 0, whole[self._grouped], np.inf)
            least = np.minimum.reduceat(mine, self._starts)
            least[np.isinf(least)] = 0.0
            whole[self._grouped] -= np.repeat(least, self._sizes)
            most -= float(least.sum())
        whole[upper <= 0] = 0.0
        (columns,) = np.nonzero(whole)
        return RoundedSum(columns.astype(np.int32), whole[columns], most)


def _is_whole(values: Array) -> bool:
    return bool(np.all(values == np.round(values)) and np.all(np.abs(values) <= _LARGEST))


def _furthest(sums: _Sums, values: Array, bounds: _Bounds) -> tuple[list[int], Array]:
    """The places of the sums that ``values`` break, furthest away first.

    As far as the columns tell that are not 0 there; with the direction of each in these.
    """
    (held,) = np.nonzero(values > _TINY)
    mine, total = bounds.at(held), sums.totals(held, len(values))
    limit = sums.numbers @ sums.limits - total @ mine.least
    coefficients, _ = mine.down(total)
    most = np.floor_divide(limit, _WHOLE) + coefficients @ mine.least
    excess = coefficients @ values[held] - most
    lengths = np.maximum(np.linalg.norm(coefficients, axis=1), _TINY)
    order = np.argsort(-excess / lengths, kind="stable")
    order = order[excess[order] > _BROKEN]
    return order.tolist(), coefficients[order] / lengths[order, np.newaxis]
