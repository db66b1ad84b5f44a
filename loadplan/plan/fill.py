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
from loadplan.plan.one_that_stays import one_that_stays
from loadplan.plan.put_back import put_back
from loadplan.plan.short import TIE_DOWNS_WORTH
from loadplan.plan.stage_cost import GOING, StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_FEWEST, _MOST, _GROWTH = 12, 48, 1.5  # loads that go, and as many that stay, planned at once
_AT_ONCE = 50  # loads that stay, tried at once in what is left
_SECONDS = 3.0  # for one try
_GREATEST = 100.0  # times as much as a load of the last priority one of the first is worth


@dataclass(slots=True)
class Fill:
    """Lets more loads go, priority by priority, until ``most`` of each do.

    At first all that stay are tried in what the plan leaves. Then some of those out beside one that
    stays are planned afresh together with it, so that one more of its priority goes and none less
    of those before; of the others as many as there is still gear for. After as many tries in vain
    as there are loads that stay, more are planned at once.
    """

    bounder: Bounder
    search: CompleteSearch
    most: dict[int, int]
    random: Random = field(default_factory=lambda: Random(0))

    def run(self, values: Array) -> Iterator[Array]:
        """Better and better plans from ``values`` on. Raises ``OutOfTimeError``."""
        stay = self._by_priority(self._stays(values))
        for first in range(0, len(stay), _AT_ONCE):
            if self._ready(values) == self.most:
                return
            found = self._in_what_is_left(values, stay[first : first + _AT_ONCE])
            if found is not None:
                values = found
                yield values
        size, idle = float(_FEWEST), 0
        while self._ready(values) != self.most and size <= _MOST:
            stay = np.nonzero(self._stays(values))[0].tolist()
            if not stay or self.bounder.clock.over():
                return
            found = self._with_one_more(values, stay, int(size))
            idle += 1
            if found is not None:
                values, idle = found, 0
                yield values
            if idle >= len(stay):
                size, idle = _GROWTH * size, 0

    def _in_what_is_left(self, values: Array, loads: list[int]) -> Array | None:
        """A plan in which some of ``loads``, which stay, go with what the others leave."""
        worth = self._worth()
        below = self.bounder.master.value(worth, values) - TIE_DOWNS_WORTH / 2
        left = Afresh(self.search, values, loads, self._ready(values))
        return left.least(worth, 1.0, below, self._seconds())

    def _with_one_more(self, values: Array, stay: list[int], size: int) -> Array | None:
        """A plan in which one more goes of the priority of some load that stays."""
        master, priority = self.bounder.master, self.bounder.selection.priority
        load, now = one_that_stays(stay, priority.tolist(), self.random), self._ready(values)
        mine = int(priority[load])
        if now[mine] >= self.most.get(mine, now[mine] + 1):
            return None
        ready = {one: number for one, number in now.items() if one < mine}
        ready[mine] = now[mine] + 1
        out = master.arrays.pools.beside(load) & (self.bounder.selection.possible > 0)
        later = out & (priority > mine)
        without = np.where(later[master.traits.load[: len(values)]], 0.0, values)
        free = self._beside(values, load, out & ~later, size)
        again = Afresh(self.search, without, free, ready)
        found = again.least(self._worth(), 1.0, np.inf, self._seconds())
        if found is None or not later.any():
            return found
        found = put_back(master, found, values, self._by_priority(later))
        lost = self._by_priority(later & ~self._goes(found))[:_AT_ONCE]
        more = self._in_what_is_left(found, lost)
        return found if more is None else more

    def _beside(self, values: Array, load: int, out: Array, size: int) -> set[int]:
        """``load``, and of those ``out`` with it so many that go and that stay.

        Drawn by chance, the longer they are out together the sooner (weighted sampling after
        P. Efraimidis and P. Spirakis, Information Processing Letters 97 (2006); from memory).
        """
        goes, found = self._goes(values), {load}
        together = self.bounder.master.arrays.pools.together(load).tolist()
        for some in (out & goes, out & ~goes):
            those = np.nonzero(some)[0].tolist()
            drawn = {one: self.random.random() ** (1 / together[one]) for one in those}
            found.update(sorted(those, key=lambda one: -drawn[one])[:size])
        return found

    def _stays(self, values: Array) -> Array:
        """Marks the loads that could go and do not."""
        return np.asarray(~self._goes(values) & (self.bounder.selection.possible > 0))

    def _by_priority(self, marked: Array) -> list[int]:
        """The loads ``marked``, those of the best priority first."""
        loads = np.nonzero(marked)[0].tolist()
        return sorted(loads, key=lambda load: (self.bounder.selection.priority[load], load))

    def _goes(self, values: Array) -> Array:
        return np.asarray(np.round(values[self.bounder.master.going]) > 0)

    def _ready(self, values: Array) -> dict[int, int]:
        return self.bounder.selection.number_ready(self._goes(values))

    def _worth(self) -> StageCost:
        """What loads that go are worth, and what their tie-downs cost."""
        priority = self.bounder.selection.priority
        rank = _GREATEST ** (1 / max(1, int(priority.max() - priority.min())))
        return replace(GOING, every=TIE_DOWNS_WORTH, rank=rank, tie_downs=1)

    def _seconds(self) -> float:
        return min(_SECONDS, self.bounder.clock.left())
