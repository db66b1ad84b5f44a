"""Letting more loads go by hand rules: some are taken off and placed again in another order.

Ruin and recreate, after G. Schrimpf and others, Journal of Computational Physics 159 (2000); from
memory.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from random import Random
from typing import Any

import numpy as np

from loadplan.plan.alone import each_alone
from loadplan.plan.bounds import Bounder
from loadplan.plan.one_that_stays import one_that_stays
from loadplan.plan.placing import Placing
from loadplan.plan.stage_cost import TIE_DOWNS

Array = np.ndarray[Any, np.dtype[Any]]
_FEWEST, _MOST = 3, 12  # loads taken off at once
_APART = 0.4  # share by which a load's tie-downs are misjudged, so that each order is another
_IDLE = 8  # times as many tries as there are loads, none of which let more go, at which it ends


@dataclass(slots=True)
class Reshuffle:
    """Betters a plan in loads ready, priority by priority, and beside that in tie-downs.

    Around a load that stays some of those out with it are taken off. Then it, they and the others
    that stay are placed anew, those first that are of a better priority or take less; what is not
    as good is undone. Ends with the time, when no try has let more go for long, or when ``most`` of
    each priority go.
    """

    bounder: Bounder
    most: dict[int, int]

    def run(self, values: Array) -> Array:
        """The best plan found from ``values`` on."""
        placing = Placing(self.bounder.master, {}, alike=True, mixed=False)
        placing.take_on(values)
        search = _Search(self.bounder, placing)
        before, idle = search.ready(), 0
        now = before
        while idle < _IDLE * len(search.priority) and not self.bounder.clock.over():
            if now == self.most or not search.step():
                break
            earlier, now = now, search.ready()
            idle = 0 if now != earlier else idle + 1
        return values if now == before else placing.values()


class _Search:
    """The plan as it is, and the order of its random steps, the same on every run."""

    def __init__(self, bounder: Bounder, placing: Placing):
        self.placing, self.random = placing, Random(0)
        loads = placing.arrays.sets.loads
        self.priority = [one.load.priority for one in loads]
        self.fewest = each_alone(placing.arrays, TIE_DOWNS).tolist()
        self.movable = [
            load
            for load in range(len(loads))
            if bounder.selection.possible[load] and placing.by_hand(load)
        ]
        self.value = self._value()

    def ready(self) -> dict[int, int]:
        """How many loads of each priority go."""
        found = Counter(self.priority[load] for load in self.placing.placed)
        return {priority: found[priority] for priority in sorted(set(self.priority))}

    def step(self) -> bool:
        """One try; False where no load stays that could go."""
        placed = self.placing.placed
        stay = [load for load in self.movable if load not in placed]
        if not stay:
            return False
        centre = one_that_stays(stay, self.priority, self.random)
        beside = self._beside(centre)
        going = [load for load in beside if load in placed]
        off = {load: self.placing.take_off(load) for load in self._some(going, centre)}
        order = [load for load in beside if load not in placed]
        chance = {load: self.random.uniform(1 - _APART, 1 + _APART) for load in order}
        order.sort(key=lambda load: (self.priority[load], self.fewest[load] * chance[load]))
        added = [load for load in order if self.placing.place(load)]
        after = self._value()
        if after <= self.value:
            self.value = after
            return True
        for load in added:
            self.placing.take_off(load)
        for load, as_it_was in off.items():
            self.placing.put_back(load, as_it_was)
        return True

    def _some(self, going: list[int], centre: int) -> list[int]:
        """Loads to take off: a few, and any number of those of a later priority than ``centre``."""
        later = [load for load in going if self.priority[load] > self.priority[centre]]
        others = [load for load in going if self.priority[load] <= self.priority[centre]]
        number = min(len(others), self.random.randint(_FEWEST, _MOST))
        found = self.random.sample(others, number)
        return found + self.random.sample(later, self.random.randint(0, len(later)))

    def _beside(self, load: int) -> list[int]:
        """The loads out at some moment with ``load``, itself among them."""
        beside = self.placing.pools.beside(load).tolist()
        return [one for one in self.movable if beside[one]]

    def _value(self) -> list[int]:
        """The less the better: loads that go by priority, less than nought, then tie-downs."""
        tie_downs = sum(one.tie_downs for one in self.placing.placed.values())
        return [*(-number for number in self.ready().values()), tie_downs]
