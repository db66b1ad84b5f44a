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
from loadplan.plan.rounded_sums import RoundedSum, SummedRows
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver

Array = np.ndarray[Any, np.dtype[Any]]
_ROUNDS = 60
_TRIED = 100  # columns a round whose fractions are looked at
_LOOKED_AT, _A_ROUND = 100, 40  # rounded sums made, and added, in one round
_ALIKE = 0.98  # of two rows more parallel than this one is enough
_GAIN, _POOR_ROUNDS = 0.01, 6  # share of what is left; so many rounds in turn with less end it
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
        solver, rows = Solver(self.matrix.linear(), presolve=False), SummedRows(self.matrix)
        solver.price(self.cost, afresh=True)
        upper, values = self.matrix.upper.copy(), None
        least, poor = -math.inf, 0
        for _ in range(_ROUNDS):
            outcome = solver.relax(clock.left())
            if outcome.status is Status.INFEASIBLE or outcome.bound > self.below + _TINY:
                return Raised(math.inf, upper > 0)
            if outcome.values is None:
                break
            values = outcome.values
            gain = outcome.bound - least
            poor = poor + 1 if gain < _GAIN * (self.below - outcome.bound) else 0
            least = max(least, outcome.bound)
            self._leave_out(solver, outcome.reduced, outcome.bound, upper)
            if poor >= _POOR_ROUNDS or clock.over():
                break
            activity = solver.activity(outcome.values)
            found = self._broken(solver, rows, activity, outcome.values, upper)
            if not found:
                break
            (idle,) = np.nonzero(rows.slack(activity) > _TINY)
            idle = idle[idle >= len(self.matrix.row_lower)]
            solver.remove_rows(idle)
            rows.remove(idle)
            solver.at_most([(one.columns, one.coefficients, one.most) for one in found])
            rows.add(found)
        return Raised(least, upper > 0, values)

    def _leave_out(self, solver: Solver, reduced: Array, bound: float, upper: Array) -> None:
        """Leave out the columns whose reduced cost is more than what separates the bounds."""
        beyond = (reduced > self.below - bound + _TINY) & (upper > 0) & (self.matrix.lower == 0)
        (columns,) = np.nonzero(beyond)
        if len(columns):
            upper[columns] = 0.0
            solver.bound_columns(columns, upper[columns], upper[columns])

    def _broken(
        self, solver: Solver, rows: SummedRows, activity: Array, values: Array, upper: Array
    ) -> list[RoundedSum]:
        """Rounded sums that ``values`` break, those furthest away first, no two nearly alike."""
        weights = np.array(list(solver.weights_of_fractions(values, _TRIED)))
        if not len(weights):
            return []
        both = np.concatenate((weights, -weights))
        chosen: list[RoundedSum] = []
        kept = np.zeros((_A_ROUND, len(values)))
        for made in rows.rounded(both, activity, values, upper, _LOOKED_AT):
            row = kept[: len(chosen), made.columns] @ made.coefficients
            if float(np.abs(row).max(initial=0.0)) <= _ALIKE * made.length():
                kept[len(chosen), made.columns] = made.coefficients / made.length()
                chosen.append(made)
            if len(chosen) == _A_ROUND:
                break
        return chosen
