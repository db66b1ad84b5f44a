"""Raising a linear bound by rounded sums of rows, and leaving out what can be in no better plan.

The sets an article can have are many, and the linear solution mixes them. Rounded sums of its rows
take most of that away: a proof that takes the solver's own search minutes is often there after a
few rounds, and where it is not, the columns that are left are fewer.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock
from loadplan.plan.matrix import Matrix
from loadplan.plan.rounded_sums import SummedRows
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver

Array = np.ndarray[Any, np.dtype[Any]]
_ROUNDS = 60
_TRIED = 100  # columns a round whose fractions are looked at
_FEW_ROWS = 1_000  # of so few rows more is tried, as a round does not take long
_MOST_TIMES = 4  # the weights of few rows are taken up to so many times
_A_ROUND = 40  # rounded sums added in one round
_GAIN = 0.01  # share of what is left: a round with less is poor
_POOR_ROUNDS, _POOR_SHORT_ROUNDS = 5, 10  # that many in turn end it; the latter with few rows
_FEWER = 0.8  # share of the columns that may be left where the others are taken away
_TINY = 1e-6


@dataclass(frozen=True, slots=True, eq=False)
class Raised:
    """No solution worth ``below`` or less is worth less than ``bound``: none at all if infinite.

    Such a solution takes none of the columns that ``could`` leaves out. ``values`` is the last
    linear solution, None where there is none.
    """

    bound: float
    could: Array
    values: Array | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Raising:
    """Raises the linear bound of ``matrix``, by column and with every column whole.

    Only solutions worth ``below`` or less matter.
    """

    matrix: Matrix
    cost: Array
    below: float

    def run(self, clock: Clock) -> Raised:
        """Go on until nothing is left, hardly anything is gained, or the time is up."""
        left = _Left(self.matrix, self.cost)
        most_poor = _POOR_SHORT_ROUNDS if left.few_rows() else _POOR_ROUNDS
        least, poor = -math.inf, 0
        for _ in range(_ROUNDS):
            outcome = left.solver.relax(clock.left())
            if outcome.status is Status.INFEASIBLE or outcome.bound > self.below + _TINY:
                return Raised(math.inf, left.could())
            if outcome.values is None:
                break
            left.values = outcome.values
            gain = outcome.bound - least
            poor = poor + 1 if gain < _GAIN * (self.below - outcome.bound) else 0
            least = max(least, outcome.bound)
            left.leave_out(outcome.reduced > self.below - outcome.bound + _TINY)
            if poor >= most_poor or clock.over() or not left.another_round():
                break
        return Raised(least, left.could(), left.solution())


class _Left:
    """What is left of a problem while its bound is raised.

    ``values`` is the last linear solution, over the columns that have not been taken away.
    """

    def __init__(self, matrix: Matrix, cost: Array):
        self.solver = Solver(matrix.linear(), presolve=False)
        self.solver.price(cost, afresh=True)
        self.values: Array | None = None
        self._rows, self._own_rows = SummedRows(matrix), len(matrix.row_lower)
        self._every, self._columns = len(cost), np.arange(len(cost))
        self._lower, self._upper = matrix.lower, matrix.upper.copy()

    def few_rows(self) -> bool:
        """Whether a round does not take long."""
        return self._own_rows <= _FEW_ROWS

    def could(self) -> Array:
        """Which columns of the problem have not been left out."""
        could = np.zeros(self._every, dtype=bool)
        could[self._columns] = self._upper > 0
        return could

    def solution(self) -> Array | None:
        """The last linear solution over every column of the problem, if there is one."""
        if self.values is None:
            return None
        values = np.zeros(self._every)
        values[self._columns] = self.values
        return values

    def leave_out(self, dear: Array) -> None:
        """Leave out the columns that are too ``dear`` to be in a solution that matters."""
        (columns,) = np.nonzero(dear & (self._upper > 0) & (self._lower == 0))
        if len(columns):
            self._upper[columns] = 0.0
            self.solver.bound_columns(columns, self._upper[columns], self._upper[columns])

    def another_round(self) -> bool:
        """Add rounded sums that the last linear solution breaks, in place of those it leaves idle.

        False where there are none.
        """
        assert self.values is not None
        activity = self.solver.activity(self.values)
        # Taking columns away loses the inverse of the basis that these weights come from.
        weights = np.array(list(self.solver.weights_of_fractions(self.values, _TRIED)))
        if not len(weights):
            return False
        self._take_away()
        most = _MOST_TIMES if self.few_rows() else 1
        several = np.concatenate(
            [sign * n * weights for n in range(1, most + 1) for sign in (1, -1)]
        )
        found = list(self._rows.rounded(several, activity, self.values, self._upper, _A_ROUND))
        if not found:
            return False
        (idle,) = np.nonzero(self._rows.slack(activity) > _TINY)
        idle = idle[idle >= self._own_rows]
        self.solver.remove_rows(idle)
        self._rows.remove(idle)
        self.solver.at_most([(one.columns, one.coefficients, one.most) for one in found])
        self._rows.add(found)
        return True

    def _take_away(self) -> None:
        """Take the columns away that are left out, once they are many: they still cost time."""
        gone = self._upper <= 0
        if np.count_nonzero(~gone) > _FEWER * len(gone):
            return
        assert self.values is not None
        self.solver.remove_columns(np.nonzero(gone)[0])
        self._rows.leave_out(gone)
        self._columns, self.values = self._columns[~gone], self.values[~gone]
        self._lower, self._upper = self._lower[~gone], self._upper[~gone]
