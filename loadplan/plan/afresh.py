"""Some loads planned afresh by the compact program, everything else as a plan has it.

What the others take is off the pools, so the program is as small as the loads are few; and it
chooses among every set there is, not only among those that some price has brought up.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.matrix import Matrix
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True)
class Afresh:
    """The loads ``free``, going or not, to be planned afresh in the plan ``values``.

    As many loads of each priority must go as in ``ready``, over the whole day. The stages that the
    master holds are kept; where one of them is of mixed sets, ``search`` must count pairs.
    """

    search: CompleteSearch
    values: Array
    free: Collection[int]
    ready: dict[int, int]

    def least(self, stage: StageCost, step: float, below: float, seconds: float) -> Array | None:
        """The values of the least plan in ``stage``, worth ``below`` or less.

        Plans lie ``step`` apart. None where none is found in ``seconds``.
        """
        search, master = self.search, self.search.master
        free = np.zeros(len(master.going), dtype=bool)
        free[list(self.free)] = True
        rest = np.where(free[master.traits.load[: len(self.values)]], 0.0, np.round(self.values))
        (keep,) = np.nonzero((search.load < 0) | free[search.load])
        part = self._part(rest, keep)
        solver = Solver(part.linear())
        self._hold(solver, rest, keep)
        cost = search.cost(stage)[keep]
        solver.keep_within(cost, below - master.value(stage, rest))
        solver.price(cost, afresh=True)
        # Most tries are in vain already in fractions, which is known in a quarter of the time.
        clock = Clock(seconds)
        if solver.relax(clock.left()).status is Status.INFEASIBLE:
            return None
        solver.forget()
        solver.in_whole_numbers(part.whole)
        outcome = solver.solve(clock.left(), step)
        if outcome.values is None:
            return None
        whole = np.zeros(len(search.load))
        whole[keep] = outcome.values
        found = search.read(whole)
        found[: len(rest)] += rest
        return found

    def _part(self, rest: Array, keep: Array) -> Matrix:
        """The program of the columns ``keep``, with what ``rest`` leaves in the pools."""
        search, master = self.search, self.search.master
        _, out = master.limits.taken(master.traits, rest)
        left = master.arrays.pools.usable - out
        whole = search.apart.matrix
        upper = whole.upper.copy()
        for gear, columns in search.out.items():
            upper[columns] = left[:, gear]
        part = whole.part(keep, whole.lower, upper)
        return replace(part, whole=whole.whole[keep]).without_empty_rows()

    def _hold(self, solver: Solver, rest: Array, keep: Array) -> None:
        """Hold what the master holds, less what ``rest`` comes to, and the loads ready."""
        search, master = self.search, self.search.master
        for stage, row in master.stage_rows:
            most = master.held[row] - master.value(stage, rest)
            solver.keep_within(search.cost(stage)[keep], most)
        for priority, number in self.ready.items():
            same = master.traits.priority[master.going] == priority
            goes = np.zeros(len(search.load))
            goes[search.going[same]] = -1.0
            solver.keep_within(goes[keep], float(rest[master.going[same]].sum()) - number)
