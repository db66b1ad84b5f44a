"""Where the bound of one set of loads is raised: a plan at that bound, or what is left to search.

With rounded sums of rows most sets are whole in the linear solution. They are kept and the rest is
solved for in whole numbers; as often as not the plan that comes of it is at the bound itself.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock
from loadplan.plan.master import Master
from loadplan.plan.matrix import Matrix
from loadplan.plan.partly import with_kept, with_settled
from loadplan.plan.raised_bound import Raised, Raising
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.whole import whole_sets

Array = np.ndarray[Any, np.dtype[Any]]
_RAISING = 0.6  # share of the time left, for raising the bound
_SECONDS = 4.0  # for what is not whole in a linear solution


@dataclass(frozen=True, slots=True, eq=False)
class RaisedPlan:
    """Plans worth ``below`` or less in ``stage``, whose values lie ``step`` apart.

    ``whole`` has all columns of the master, with the bounds to solve with; what ``could`` leaves
    out is in no such plan.
    """

    master: Master
    stage: StageCost
    whole: Matrix
    below: float
    step: float
    clock: Clock

    def bound(self, could: Array) -> Raised:
        """The bound raised, and the columns of ``could`` that are left."""
        (keep,) = np.nonzero(could)
        part = self.whole.part(keep, self.whole.lower, self.whole.upper)
        cost = self.master.traits.cost(self.stage)[keep]
        with self.clock.at_most(_RAISING):
            raised = Raising(part, cost, self.below).run(self.clock)
        left, values = np.zeros(len(could), dtype=bool), np.zeros(len(could))
        left[keep] = raised.could
        if raised.values is not None:
            values[keep] = raised.values
        return replace(raised, could=left, values=None if raised.values is None else values)

    def outcome(self, raised: Raised, *, plan: bool) -> Outcome:
        """Infeasible where ``raised`` leaves nothing, optimal with a plan at its bound.

        Else as at a limit, with a plan where one was found; none is looked for without ``plan``.
        """
        none = np.zeros(0)
        if raised.bound == math.inf:
            return Outcome(Status.INFEASIBLE, None, math.inf, none, none)
        found = self._with_whole_sets(raised) if plan else None
        at_bound = found is not None and self._value(found) - self.step < raised.bound
        status = Status.OPTIMAL if at_bound else Status.LIMIT
        return Outcome(status, found, raised.bound, none, none)

    def _value(self, values: Array) -> float:
        return self.master.value(self.stage, values)

    def _with_whole_sets(self, raised: Raised) -> Array | None:
        """The best plan with the sets that are whole in the linear solution; None if there is none.

        One at the bound does: nothing is better.
        """
        master = self.master
        if raised.values is None:
            return None
        settled = whole_sets(master, raised.values)
        whole = with_kept(master, self.whole, settled, raised.values)
        halves = with_settled(master, self.stage, whole, raised.could, settled, self.clock.tick)
        seconds = min(_SECONDS, self.clock.left())
        # Most often there is a plan at the bound, sooner found than the least of all.
        at_bound = halves.any_within(raised.bound + 0.5 * self.step, seconds)
        if at_bound is not None:
            return at_bound
        return halves.least(self.below, min(_SECONDS, self.clock.left()))
