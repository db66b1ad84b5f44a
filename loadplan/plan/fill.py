"""Filling a plan up: loads that stay are let in where the loads out beside them can make room.

Large neighbourhood search, after P. Shaw, Principles and Practice of Constraint Programming 1998;
from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from random import Random
from typing import Any

import numpy as np

from loadplan.plan.afresh import Afresh
from loadplan.plan.bounds import Bounder
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.put_back import put_back
from loadplan.plan.short import TIE_DOWNS_WORTH
from loadplan.plan.stage_cost import GOING, StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_FEWEST, _MOST, _GROWTH = 12, 48, 1.5  # loads that go, and as many that stay, planned at once
_BEST = 0.5  # how often a load of the best priority is let in
_IDLE = 1  # times as many tries as loads stay, none of which let more go, before more are planned
_AT_ONCE = 50  # loads that stay, tried at once in what is left
_SECONDS = 3.0  # for one try
_GREATEST = 100.0  # times as much as a load of the last priority one of the first is worth


@dataclass(slots=True)
class Fill:
    """Lets more loads go, priority by priority, until ``most`` of each do.

    At first all that stay are tried in what the plan leaves. Then some of those out beside one that
    stays are planned afresh together with it, so that one more of its priority goes and none less
    of those before; of the others as many as there is still gear for.
    """

    bounder: Bounder
    search: CompleteSearch
    most: dict[int, int]
    random: Random = field(default_factory=lambda: Random(0))

    def run(self, values: Array) -> Iterator[Array]:
        """Better and better plans from ``values`` on. Raises ``OutOfTimeError``."""
        worth = self._worth()
        stay = self._by_priority(values)
        for first in range(0, len(stay), _AT_ONCE):
            some = stay[first : first + _AT_ONCE]
            left = Afresh(self.search, values, some, self._ready(values))
            below = self._value(worth, values) - TIE_DOWNS_WORTH / 2
            found = left.least(worth, 1.0, below, self._seconds(_SECONDS))
            if found is not None:
                values = found
                yield values
        size, idle = float(_FEWEST), 0
        while self._ready(values) != self.most and size <= _MOST:
            stay = self._staying(values)
            if not stay or self.bounder.clock.over():
                return
            found = self._with_one_more(values, stay, int(size), worth)
            idle += 1
            if found is not None:
                values, idle = found, 0
                yield values
            if idle >= _IDLE * len(stay):
                size, idle = _GROWTH * size, 0

    def _with_one_more(
        self, values: Array, stay: list[int], size: int, worth: StageCost
    ) -> Array | None:
        """A plan in which one more goes of the priority of some load that stays."""
        priority, now = self.bounder.selection.priority, self._ready(values)
        load = self._one_of(stay)
        mine = int(priority[load])
        if now[mine] >= self.most.get(mine, now[mine] + 1):
            return None
        ready = {one: number for one, number in now.items() if one < mine}
        ready[mine] = now[mine] + 1
        out = self._out_with(load)
        later = out & (priority > mine)
        without = np.where(later[self._load_of(values)], 0.0, values)
        free = self._beside(values, load, out & ~later, size)
        found = Afresh(self.search, without, free, ready).least(
            worth, 1.0, np.inf, self._seconds(_SECONDS)
        )
        if found is None or not later.any():
            return found
        order = sorted(np.nonzero(later)[0].tolist(), key=lambda one: (priority[one], one))
        found = put_back(self.bounder.master, found, values, order)
        goes = np.round(found[self.bounder.master.going]) > 0
        lost = [one for one in order if not goes[one]][:_AT_ONCE]
        again = Afresh(self.search, found, lost, self._ready(found))
        below = self._value(worth, found) - TIE_DOWNS_WORTH / 2
        more = again.least(worth, 1.0, below, self._seconds(_SECONDS))
        return found if more is None else more

    def _one_of(self, stay: list[int]) -> int:
        """A load that stays, half the time one of the best priority among them."""
        priority = self.bounder.selection.priority
        best = min(priority[load] for load in stay)
        if self.random.random() < _BEST:
            stay = [load for load in stay if priority[load] == best]
        return self.random.choice(stay)

    def _out_with(self, load: int) -> Array:
        """Marks the loads that could go and are out at some moment with ``load``, itself too."""
        pools = self.bounder.master.arrays.pools
        out = (pools.first <= pools.last[load]) & (pools.last >= pools.first[load])
        return np.asarray(out & (self.bounder.selection.possible > 0))

    def _beside(self, values: Array, load: int, out: Array, size: int) -> set[int]:
        """``load``, and of those ``out`` with it so many that go and that stay."""
        goes = np.round(values[self.bounder.master.going]) > 0
        found = {load}
        for some in (out & goes, out & ~goes):
            those = np.nonzero(some)[0].tolist()
            found.update(self.random.sample(those, min(size, len(those))))
        return found

    def _load_of(self, values: Array) -> Array:
        """The load of each column that ``values`` has."""
        return self.bounder.master.traits.load[: len(values)]

    def _by_priority(self, values: Array) -> list[int]:
        """Loads that could go and do not, those of the best priority first."""
        priority = self.bounder.selection.priority
        return sorted(self._staying(values), key=lambda load: (priority[load], load))

    def _staying(self, values: Array) -> list[int]:
        """Loads that could go and do not."""
        goes = np.round(values[self.bounder.master.going]) > 0
        stay: list[int] = np.nonzero(~goes & (self.bounder.selection.possible > 0))[0].tolist()
        return stay

    def _ready(self, values: Array) -> dict[int, int]:
        """How many loads of each priority go."""
        priority = self.bounder.selection.priority
        goes = np.round(values[self.bounder.master.going])
        return {
            one: round(float(goes[priority == one].sum())) for one in np.unique(priority).tolist()
        }

    def _worth(self) -> StageCost:
        """What loads that go are worth, and what their tie-downs cost."""
        priority = self.bounder.selection.priority
        rank = _GREATEST ** (1 / max(1, int(priority.max() - priority.min())))
        return replace(GOING, every=TIE_DOWNS_WORTH, rank=rank, tie_downs=1)

    def _value(self, stage: StageCost, values: Array) -> float:
        return self.bounder.master.value(stage, values)

    def _seconds(self, most: float) -> float:
        return min(most, self.bounder.clock.left())
