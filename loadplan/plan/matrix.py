"""A program as arrays, for the solver."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
import pulp

Array = np.ndarray[Any, np.dtype[Any]]
INFINITE = math.inf


@dataclass(frozen=True, slots=True)
class Matrix:
    """A problem as arrays; ``whole`` marks the columns that must be whole.

    ``starts``, ``places`` and ``coefficients`` hold its entries row by row (``places`` are
    columns), or column by column (``places`` are rows) where ``by_column``.
    """

    lower: Array
    upper: Array
    whole: Array
    row_lower: Array
    row_upper: Array
    starts: Array
    places: Array
    coefficients: Array
    by_column: bool = False

    def columnwise(self) -> Matrix:
        """The same problem with its entries column by column, from row by row."""
        return self._turned(len(self.lower))

    def rowwise(self) -> Matrix:
        """The same problem with its entries row by row, from column by column."""
        return self._turned(len(self.row_lower))

    def linear(self) -> Matrix:
        """The same problem without whole numbers."""
        return replace(self, whole=np.zeros(len(self.lower), dtype=bool))

    def _turned(self, number: int) -> Matrix:
        """The entries the other way, in which there are ``number`` columns or rows."""
        order = np.argsort(self.places, kind="stable")
        counts = np.bincount(self.places, minlength=number)
        lines = np.repeat(np.arange(len(self.starts) - 1, dtype=np.int32), np.diff(self.starts))
        return replace(
            self,
            starts=np.concatenate(([0], np.cumsum(counts))),
            places=lines[order],
            coefficients=self.coefficients[order],
            by_column=not self.by_column,
        )

    def part(self, keep: Array, lower: Array, upper: Array) -> Matrix:
        """The whole-number problem over the columns ``keep``, with new bounds; by column only."""
        sizes = np.diff(self.starts)[keep]
        starts = np.concatenate(([0], np.cumsum(sizes)))
        entries = np.repeat(self.starts[:-1][keep] - starts[:-1], sizes) + np.arange(starts[-1])
        return replace(
            self,
            lower=lower[keep],
            upper=upper[keep],
            whole=np.ones(len(keep), dtype=bool),
            starts=starts.astype(np.int32),
            places=self.places[entries],
            coefficients=self.coefficients[entries],
        )

    def without_empty_rows(self) -> Matrix:
        """The problem without the rows that no column stands in; by column only."""
        used, places = np.unique(self.places, return_inverse=True)
        return replace(
            self,
            row_lower=self.row_lower[used],
            row_upper=self.row_upper[used],
            places=places.astype(np.int32),
        )

    def with_columns(
        self,
        columns: Sequence[Mapping[int, float]],
        upper: Array,
        whole: Array,
        rows: Sequence[tuple[float, float]],
    ) -> Matrix:
        """The problem with more columns, from 0 to ``upper``, and more rows; by column only.

        Each column is its rows with its entries in them; each row of ``rows`` its two sides, and
        has entries in the new columns only.
        """
        sizes = np.cumsum([0, *(len(entries) for entries in columns)])
        places = [row for entries in columns for row in entries]
        values = [value for entries in columns for value in entries.values()]
        low, high = [low for low, _ in rows], [high for _, high in rows]
        return replace(
            self,
            lower=np.concatenate((self.lower, np.zeros(len(columns)))),
            upper=np.concatenate((self.upper, upper)),
            whole=np.concatenate((self.whole, whole)),
            row_lower=np.concatenate((self.row_lower, low)),
            row_upper=np.concatenate((self.row_upper, high)),
            starts=np.concatenate((self.starts[:-1], self.starts[-1] + sizes)).astype(np.int32),
            places=np.concatenate((self.places, np.array(places, dtype=np.int32))).astype(np.int32),
            coefficients=np.concatenate((self.coefficients, np.array(values, dtype=float))),
        )


def matrix_of_rows(
    dense: Array, row_lower: Sequence[float], row_upper: Sequence[float], upper: Array, whole: Array
) -> Matrix:
    """The problem of ``dense`` rows over columns from 0 to ``upper``."""
    at, places = np.nonzero(dense)
    counts = np.bincount(at, minlength=len(dense))
    return Matrix(
        lower=np.zeros(len(upper)),
        upper=upper,
        whole=whole,
        row_lower=np.array(row_lower, dtype=float),
        row_upper=np.array(row_upper, dtype=float),
        starts=np.concatenate(([0], np.cumsum(counts))).astype(np.int32),
        places=places.astype(np.int32),
        coefficients=dense[at, places],
    )


def matrix_of(problem: pulp.LpProblem, variables: Sequence[pulp.LpVariable]) -> Matrix:
    """The arrays of ``problem``; ``variables`` are all of its variables, in column order."""
    place = {variable: index for index, variable in enumerate(variables)}
    starts, columns, coefficients, lows, highs = [0], [], [], [], []
    for constraint in problem.constraints.values():
        for variable, coefficient in constraint.items():
            columns.append(place[variable])
            coefficients.append(coefficient)
        starts.append(len(columns))
        side = -constraint.constant
        lows.append(-INFINITE if constraint.sense == pulp.LpConstraintLE else side)
        highs.append(INFINITE if constraint.sense == pulp.LpConstraintGE else side)
    return Matrix(
        lower=np.array([variable.lowBound for variable in variables], dtype=float),
        upper=np.array([variable.upBound for variable in variables], dtype=float),
        whole=np.array([variable.cat == pulp.LpInteger for variable in variables], dtype=bool),
        row_lower=np.array(lows, dtype=float),
        row_upper=np.array(highs, dtype=float),
        starts=np.array(starts, dtype=np.int32),
        places=np.array(columns, dtype=np.int32),
        coefficients=np.array(coefficients, dtype=float),
    )
