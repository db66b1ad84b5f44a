"""The selection: which loads go, as a small program of its own.

Every linear solve of the master says, through its duals, something that holds whatever loads go:
that some weights over the loads cannot exceed a limit (they take that much scarce gear), or that
a stage's value is at least a constant plus weights over the loads. The selection keeps these cuts
and answers in whole loads, so a bound it gives holds over every set of ready loads.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from loadplan.plan.matrix import INFINITE, Matrix, matrix_of_rows
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_SMALL = 1e-9
_MOST = 8192.0
_OFF = 2e-7  # by which a bound in such units may be off


@dataclass(frozen=True, slots=True, eq=False)
class Cut:
    """Σ weights · goes ≤ limit; for a value cut, limit − Σ weights · goes ≤ the stage's value.

    ``depth`` is how many stages were held when it was found: it holds as long as they are.
    """

    weights: Array
    limit: float
    depth: int


@dataclass(slots=True)
class Selection:
    """Loads by priority, those that can go at all, and what is known of sets of them."""

    priority: Array
    possible: Array
    cuts: list[Cut] = field(default_factory=list)
    values: dict[str, list[Cut]] = field(default_factory=dict)
    ready: dict[int, int] = field(default_factory=dict)

    def forget(self, depth: int) -> None:
        """Drop the cuts that were found with more than ``depth`` stages held."""
        self.cuts = [cut for cut in self.cuts if cut.depth <= depth]
        for name, cuts in self.values.items():
            self.values[name] = [cut for cut in cuts if cut.depth <= depth]

    def number_ready(self, goes: Array) -> dict[int, int]:
        """How many loads of each priority are among those that go."""
        priorities = np.unique(self.priority).tolist()
        return {one: round(float(goes[self.priority == one].sum())) for one in priorities}

    def most_ready(self, stage: StageCost, seconds: float) -> tuple[Array | None, float]:
        """Loads of which as many as possible are of the stage's priority; those after it stay.

        Answers with the loads (None if none were found in time) and the greatest number there
        could be.
        """
        upper = np.where(self.priority <= stage.priority, self.possible, 0.0)
        same = 1.0 * (self.priority == stage.priority)
        # What is known of the stage's value, which is as many loads below nought, as limits.
        known = [
            Cut(same - cut.weights, -cut.limit, cut.depth)
            for cut in self.values.get(stage.name, ())
        ]
        found, bound = self._solve(-same, upper, None, seconds, 1.0, known)
        return found, -bound

    def most_so_far(self, stage: StageCost, seconds: float) -> float:
        """A number of loads of the stage's priority that no plan has more of; always finite.

        All that can go where the solver comes to no bound in ``seconds``, and where as many loads
        of the priorities before it as are held cannot go together: of those nothing follows then.
        """
        _, bound = self.most_ready(stage, seconds)
        most = float(self.possible[self.priority == stage.priority].sum())
        return min(bound, most) if math.isfinite(bound) else most

    def least(self, stage: StageCost, seconds: float, step: float) -> tuple[Array | None, float]:
        """Loads, as many ready as held, for which ``stage`` could be least; and that least."""
        return self._solve(
            np.zeros(len(self.priority)), self.possible, self.values[stage.name], seconds, step
        )

    def _solve(
        self,
        cost: Array,
        upper: Array,
        values: list[Cut] | None,
        seconds: float,
        step: float,
        known: Sequence[Cut] = (),
    ) -> tuple[Array | None, float]:
        loads = len(self.priority)
        rows = [(cut.weights, 0.0, -INFINITE, cut.limit) for cut in (*self.cuts, *known)]
        rows += [
            (1.0 * (self.priority == priority), 0.0, float(number), INFINITE)
            for priority, number in self.ready.items()
        ]
        # The last column is the stage's value, in units of which no cut has very many.
        unit = _unit(values or ())
        rows += [(cut.weights / unit, 1.0, cut.limit / unit, INFINITE) for cut in values or ()]
        solver = Solver(_matrix(rows, np.append(upper, 0.0 if values is None else INFINITE)))
        solver.price(np.append(cost, 0.0 if values is None else 1.0))
        outcome = solver.solve(seconds, step / unit)
        goes = None if outcome.values is None else np.round(outcome.values[:loads])
        return goes, unit * outcome.bound - (_OFF * unit if unit > 1.0 else 0.0)


def _unit(values: Sequence[Cut]) -> float:
    """A power of two by which the limits of ``values`` are no more than ``_MOST``.

    The solver keeps its rows to a ten millionth, which is nothing of a value of fifty million: it
    refused its own answers.
    """
    greatest = max((abs(cut.limit) for cut in values), default=0.0)
    return 2.0 ** max(0, math.ceil(math.log2(max(1.0, greatest / _MOST))))


def _matrix(rows: list[tuple[Array, float, float, float]], upper: Array) -> Matrix:
    dense = np.array([np.append(weights, last) for weights, last, _, _ in rows])
    dense = dense.reshape(len(rows), len(upper))
    dense[np.abs(dense) < _SMALL] = 0.0
    whole = np.ones(len(upper), dtype=bool)
    whole[-1] = False
    low, high = [low for _, _, low, _ in rows], [high for _, _, _, high in rows]
    return matrix_of_rows(dense, low, high, upper, whole)
