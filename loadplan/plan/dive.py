"""Diving: a good whole plan for one set of loads, found by settling a few sets at a time.

Each step settles the sets that the linear solution is surest of and solves again, pricing in new
sets that suit what is left. Loads are free to stay, at a price beyond any gain, so that there is
always a solution to go on from. What is found is a plan, not a bound.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.partly import partly_settled
from loadplan.plan.pricing import improving_sets, prices_of
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.whole import SURE

Array = np.ndarray[Any, np.dtype[Any]]
_LIKELY = 0.6  # how much of a set a linear solution has
_TINY = 1e-6
_PRICED = 3  # rounds of pricing a step
_SETS_A_ROUND = 2
_SHARE = 0.04  # of the sets, settled in one step at least
_FREED = 12  # sets freed again at a dead end, then half as many more, ...
_TRIES = 6
_SECONDS = 2.0


@dataclass(slots=True)
class Dive:
    """One dive for ``stage`` with the stages before it held.

    ``settled`` are the columns fixed so far, surest first.
    """

    bounder: Bounder
    stage: StageCost
    settled: list[int] = field(default_factory=list)

    def run(self, goes: Array) -> Array | None:
        """The values of a plan with exactly ``goes`` ready; None where the dive found none."""
        master = self.bounder.master
        master.release_ready()
        try:
            ended = self._down(goes)
            return None if ended is None else self._rest(goes) if ended else self._up(goes)
        except OutOfTimeError:
            return None
        finally:
            self._free(len(self.settled))
            master.hold_ready(self.bounder.selection.ready)

    def _down(self, goes: Array) -> bool | None:
        """Settle sets until all are (True) or there is no way on (False); None without time."""
        master = self.bounder.master
        master.hold_loads(np.zeros(len(goes)), goes)
        diving = self._diving()
        while not self.bounder.clock.over():
            outcome = self._solved(diving)
            if outcome.status is Status.LIMIT:
                return None
            values = outcome.values
            if values is None:
                return False
            if float(values[master.going].sum()) < goes.sum() - _TINY:
                return False
            batch = self._surest(values)
            if not batch:
                return True
            master.settle(batch)
            self.settled += batch
        return None

    def _up(self, goes: Array) -> Array | None:
        """From a dead end, free the last sets again, more and more of them, and solve for these."""
        sets = self.bounder.master.arrays.sets_for(goes)
        free = _FREED
        for _ in range(_TRIES):
            self._free(min(len(self.settled), max(0, free - (sets - len(self.settled)))))
            found = self._rest(goes)
            if found is not None or not self.settled or self.bounder.clock.over():
                return found
            free += free // 2
        return None

    def _free(self, number: int) -> None:
        """Free the last ``number`` sets that were settled."""
        kept = len(self.settled) - number
        self.bounder.master.unsettle(self.settled[kept:])
        del self.settled[kept:]

    def _diving(self) -> StageCost:
        """The stage, with each load that goes worth more than it can cost."""
        cost = self.bounder.master.traits.cost(self.stage)
        worth = 20.0 * float(np.abs(cost).max(initial=1.0))
        return replace(self.stage, every=worth)

    def _solved(self, diving: StageCost) -> Outcome:
        """The linear solution with what is settled, priced for a few rounds."""
        master = self.bounder.master
        blocks = master.blocks_of(self.settled)
        for _ in range(_PRICED):
            outcome = master.relax(diving, self.bounder.clock.left())
            if outcome.values is None:
                return outcome
            prices = prices_of(master, diving, outcome)
            if not master.add_sets(improving_sets(master, prices, _SETS_A_ROUND, blocks)):
                return outcome
        return master.relax(diving, self.bounder.clock.left())

    def _surest(self, values: Array) -> list[int]:
        """The columns to settle next, surest first; none when every set is."""
        master = self.bounder.master
        done = master.blocks_of(self.settled)
        mine = values[master.base :]
        order = [int(c) for c in np.argsort(-mine, kind="stable") if mine[c] > _TINY]
        rest = [(c + master.base, master.sets[c][0]) for c in order]
        rest = [(column, block) for column, block in rest if block not in done]
        sure = [column for column, _ in rest if values[column] >= SURE]
        if sure or not rest:
            return sure
        most = max(1, math.ceil(_SHARE * len(master.arrays.blocks)))
        found: dict[int, int] = {}
        for column, block in rest:
            if len(found) >= most or (found and values[column] < _LIKELY):
                break
            found.setdefault(block, column)
        return list(found.values())

    def _rest(self, goes: Array) -> Array | None:
        fixed = self.settled
        return partly_settled(self.bounder, self.stage, goes, fixed, math.inf, _SECONDS)
