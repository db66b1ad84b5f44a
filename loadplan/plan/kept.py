"""The least of a problem at its linear bound, soon: what is whole in fractions is kept.

Where the question is whether something goes at all, or with how few pieces, most tie-downs of a
linear solution are whole. The solver's own search comes to the same after presolve and cuts, which
take ten times as long.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock
from loadplan.plan.matrix import Matrix
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.solver import Solver

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6
_SLACK = 1e-5
_SECONDS = 1.0  # for the rest: where it is hard, the whole problem is hardly harder


def least_with_kept(matrix: Matrix, cost: Array, seconds: float) -> Outcome:
    """The least of ``cost``, by column: whole numbers, few of them or none.

    Optimal with values where a solution as low as the linear bound was found, infeasible where
    there is none even in fractions. Everything else is told as a limit, and may be solved.
    """
    clock, solver = Clock(seconds), Solver(matrix.linear())
    (priced,) = np.nonzero(cost)
    none, bound = np.zeros(0), 0.0
    if len(priced):
        solver.price(cost, afresh=True)
        linear = solver.relax(clock.left())
        if linear.values is None:
            return linear
        bound = math.ceil(linear.bound - _SLACK)
        solver.keep_within(cost, bound)
    # Of all solutions at the bound the one that takes least of everything has fewest fractions.
    solver.price(np.ones(len(cost)), afresh=True)
    linear = solver.relax(clock.left())
    if linear.values is not None:
        values = _with_kept(matrix, cost, bound, linear.values, min(_SECONDS, clock.left()))
        if values is not None:
            return Outcome(Status.OPTIMAL, values, bound, none, none)
    elif linear.status is Status.INFEASIBLE and not len(priced):
        return linear
    return Outcome(Status.LIMIT, None, bound if len(priced) else -math.inf, none, none)


def _with_kept(
    matrix: Matrix, cost: Array, bound: float, linear: Array, seconds: float
) -> Array | None:
    """A solution worth ``bound`` that has what is whole and not nought in ``linear``."""
    rounded = np.round(linear)
    kept = (np.abs(linear - rounded) < _TINY) & (rounded > 0)
    lower = np.where(kept, rounded, matrix.lower)
    upper = np.where(kept, rounded, matrix.upper)
    solver = Solver(replace(matrix, lower=lower, upper=upper))
    if cost.any():
        solver.keep_within(cost, bound)
    solver.price(np.zeros(len(cost)))
    return solver.solve(seconds, 1.0).values
