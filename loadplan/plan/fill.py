"""Filling a plan up: loads that stay are let in where the loads out beside them can make room."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.stretch import Stretch

Array = np.ndarray[Any, np.dtype[Any]]
_FREE = (48, 96)  # sets freed at once
_SECONDS = 3.0


@dataclass(slots=True)
class Fill:
    """Lets more loads go, or more of a better priority instead of others, as ``rank`` has it.

    ``lean`` is what the gear of a plan with more loads is to be least in.
    """

    bounder: Bounder
    rank: StageCost
    lean: StageCost

    def run(self, values: Array) -> Array:
        """The best plan found from ``values`` on."""
        found = [values]
        self.bounder.master.keep_every_limit()
        with suppress(OutOfTimeError):
            for better in self._better(values):
                found.append(better)
        return found[-1]

    def _better(self, values: Array) -> Iterator[Array]:
        for free in _FREE:
            for load in self._staying(values):
                if self.bounder.clock.over():
                    return
                if values[self.bounder.master.going[load]] > 0.5:
                    continue
                blocks, loads = self._beside(values, load, free)
                value = self.bounder.master.value(self.rank, values)
                again = Stretch(self.bounder, self.rank, values, blocks, loads)
                better = again.better(value - 0.5, _SECONDS)
                if better is not None:
                    values = self._leaner(better, blocks)
                    yield values

    def _leaner(self, values: Array, blocks: set[int]) -> Array:
        """The same loads with less gear, so that there is more for others."""
        value = self.bounder.master.value(self.lean, values)
        leaner = Stretch(self.bounder, self.lean, values, blocks).better(value - 1.0, _SECONDS)
        return values if leaner is None else leaner

    def _staying(self, values: Array) -> list[int]:
        """Loads that could go and do not, the most important first."""
        master, selection = self.bounder.master, self.bounder.selection
        stay = (values[master.going] < 0.5) & (selection.possible > 0)
        return sorted(np.nonzero(stay)[0].tolist(), key=lambda one: (selection.priority[one], one))

    def _beside(self, values: Array, load: int, free: int) -> tuple[set[int], list[int]]:
        """Blocks of ``load`` and of those out with it, about ``free``; and who may go or stay.

        Nearest departures first. Any load that stays may go, and one that goes may stay for the
        sake of a better priority.
        """
        master, selection = self.bounder.master, self.bounder.selection
        pools = master.arrays.pools
        out = (pools.first <= pools.last[load]) & (pools.last >= pools.first[load])
        goes = values[master.going] > 0.5
        near = np.nonzero(out & (goes | (selection.possible > 0)))[0]
        order = sorted(
            near.tolist(), key=lambda one: (one != load, abs(pools.first[one] - pools.first[load]))
        )
        chosen: set[int] = set()
        loads: list[int] = []
        for one in order:
            mine = master.arrays.of_load[one]
            if len(chosen) + len(mine) > free and one != load:
                break
            chosen.update(mine)
            if not goes[one] or selection.priority[one] > selection.priority[load]:
                loads.append(one)
        return chosen, loads
