"""A stretch of the day solved again: some sets are free, everything else stays as a plan has it.

What stays is taken off the limits, and only what is free becomes a program: on a large day a
hundredth of the whole.
"""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.halves import halved
from loadplan.plan.matrix import Matrix
from loadplan.plan.pricing import improving_sets, prices_of
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_PRICED, _SETS_A_ROUND = 4, 3
_MANY = 1_500  # variables beside the sets
_TINY = 1e-6


@dataclass(frozen=True, slots=True)
class Stretch:
    """The sets of the blocks ``free``, to be chosen anew in the plan ``values``.

    Accessories and edge protectors are free too: of every load, or on a large day of the loads
    that have a free set. Of ``loads``, whose blocks are all free, it is free whether they go.
    ``usable`` are the columns to choose from besides those of the plan and those after them; where
    they are given, no sets are priced in.
    """

    bounder: Bounder
    stage: StageCost
    values: Array
    free: Collection[int]
    loads: Collection[int] = ()
    usable: Array | None = None

    def better(self, below: float, seconds: float) -> Array | None:
        """The values of the least plan worth ``below`` or less; None where none is found in time.

        Only sets that are columns already or are priced in on the way, and pairs made of their
        halves, are looked at, so a better plan may exist.
        """
        master = self.bounder.master
        least = self._price() if self.usable is None else -math.inf
        could = self._could()
        matrix, fixed = self._rest(could)
        most = below - float(master.traits.cost(self.stage) @ fixed)
        if least > most + _TINY:
            return None
        halves = halved(master, matrix, self.stage, could, np.ones(len(could), dtype=bool))
        found = halves.least(most, min(seconds, self.bounder.clock.left()))
        if found is None:
            return None
        found[: len(fixed)] += fixed
        # The sets that were added last may come up against a limit that nothing came up to before.
        return None if master.limits.keep_broken(master.traits, found) else found

    def _price(self) -> float:
        """Price in sets that suit what stays; what is free comes to this in fractions."""
        master = self.bounder.master
        settled = set(range(len(master.arrays.blocks))) - set(self.free)
        least = -math.inf
        for _ in range(_PRICED):
            could = self._could()
            matrix, _ = self._rest(could)
            (keep,) = np.nonzero(could)
            part = matrix.part(keep, matrix.lower, matrix.upper)
            solver = Solver(part.linear())
            solver.price(master.traits.cost(self.stage)[keep])
            outcome = solver.relax(self.bounder.clock.left())
            if outcome.values is None:
                return -math.inf
            least = outcome.bound
            prices = prices_of(master, self.stage, outcome)
            if not master.add_sets(improving_sets(master, prices, _SETS_A_ROUND, settled)):
                break
        return least

    def _could(self) -> Array:
        """The columns that are free."""
        master = self.bounder.master
        blocks = master.arrays.blocks
        free = np.zeros(len(blocks), dtype=bool)
        free[list(self.free)] = True
        loads = np.round(self.values[master.going]) > 0
        if master.base > _MANY:
            loads = np.zeros(len(loads), dtype=bool)
            loads[[blocks[number].load for number in self.free]] = True
        loads[list(self.loads)] = True
        could: Array = loads[master.traits.load]
        could[master.base :] = free[np.array([block for block, _ in master.sets], dtype=np.int64)]
        if self.usable is not None:
            usable = np.ones(len(could), dtype=bool)
            usable[: len(self.usable)] = self.usable
            usable[: len(self.values)] |= self.values > 0.5
            could &= usable
        could[master.going] = False
        could[master.going[list(self.loads)]] = True
        return could

    def _rest(self, could: Array) -> tuple[Matrix, Array]:
        """The program of the columns that ``could`` change, and what the others stay at."""
        master = self.bounder.master
        fixed = np.zeros(len(could))
        fixed[: len(self.values)] = np.round(self.values)
        fixed[could] = 0.0
        taken = master.solver.activity(fixed)
        return master.solver.columns_alone(could, master.upper, taken), fixed
