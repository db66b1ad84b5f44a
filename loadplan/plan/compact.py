"""The stages in whole numbers by the complete program without its patterns, loads free to go.

It is small. Where an article can choose among very many sets it answers at once what prices over
those sets cannot tell: how many loads can be ready, in how few tie-downs, and which loads can go
together. Of small days it settles every stage.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.master import Master
from loadplan.plan.matrix import INFINITE
from loadplan.plan.solver import Outcome, Solver, Status
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_MOST_SHRUNK = 20  # loads of which a least conflict is looked for


@dataclass(slots=True)
class Compact:
    """The program of a day without patterns, asked again and again.

    ``ready`` is how many loads are held ready at each priority, ``held`` the value at which each
    stage is. ``answers`` are the sets of loads that are known to have a plan, or none.
    """

    search: CompleteSearch
    priority: Array
    clock: Clock
    ready: dict[int, int] = field(default_factory=dict)
    held: dict[StageCost, float] = field(default_factory=dict)
    answers: dict[tuple[bool, bytes], bool] = field(default_factory=dict)

    @classmethod
    def of(cls, master: Master, priority: Array) -> Compact:
        """The program of the master's day."""
        return cls(CompleteSearch.of(master, patterns=False), priority, master.clock)

    def most_ready(self, priority: int) -> Outcome:
        """As many loads of ``priority`` as can be, those before it held; the bound is below 0.

        Answers, like ``least``, with the master's values.
        """
        solver = self._solver()
        cost = np.zeros(solver.columns)
        cost[self._going[self.priority == priority]] = -1.0
        return self._least(solver, cost, 1.0)

    def least(self, stage: StageCost, step: float) -> Outcome:
        """The least of ``stage`` with as many loads ready as are held, and the stages held.

        Raises ``OutOfTimeError`` where no plan at all is found in time.
        """
        return self._least(self._solver(), self.search.cost(stage), step)

    def can_go(self, goes: Array) -> bool:
        """Whether a plan has exactly ``goes`` ready; if so, the master knows its sets."""
        return self._can_go(goes, held=True)

    def conflict(self, goes: Array) -> list[int] | None:
        """Loads of ``goes`` that cannot all go, though they could with any one left out.

        None where they could with no stage held, or are too many to look for it.
        """
        loads = [int(load) for load in np.nonzero(goes)[0]]
        if len(loads) > _MOST_SHRUNK or self._can_go(goes, held=False):
            return None
        for load in list(loads):
            rest = np.zeros(len(goes))
            rest[[one for one in loads if one != load]] = 1.0
            if not self._can_go(rest, held=False):
                loads.remove(load)
        return loads

    @property
    def _going(self) -> Array:
        return self.search.going

    def _can_go(self, goes: Array, *, held: bool) -> bool:
        key = (held, goes.tobytes())
        if key not in self.answers:
            solver = self._solver(goes, held=held)
            solver.price(np.zeros(solver.columns))
            outcome = solver.solve(self.clock.left(), 1.0)
            if outcome.status is Status.LIMIT and outcome.values is None:
                raise OutOfTimeError
            if outcome.values is not None:
                self.search.translate(outcome.values)
            self.answers[key] = outcome.values is not None
        return self.answers[key]

    def _least(self, solver: Solver, cost: Array, step: float) -> Outcome:
        solver.price(cost)
        outcome = solver.solve(self.clock.left(), step)
        if outcome.values is None:
            raise OutOfTimeError
        values = self.search.translate(outcome.values)
        return Outcome(outcome.status, values, outcome.bound, outcome.reduced, outcome.prices)

    def _solver(self, goes: Array | None = None, *, held: bool = True) -> Solver:
        """The program with exactly ``goes`` ready, or else as many as are held."""
        solver = Solver(self.search.matrix)
        if goes is not None:
            solver.bound_columns(self._going, goes, goes)
        else:
            for priority, number in self.ready.items():
                mine = self._going[self.priority == priority]
                solver.add_row(mine, np.ones(len(mine)), float(number), INFINITE)
        for stage, most in self.held.items() if held else ():
            cost = self.search.cost(stage)
            (columns,) = np.nonzero(cost)
            solver.add_row(columns, cost[columns], -INFINITE, most)
        return solver
