"""Polishing: a plan made better a stretch of the day at a time.

The sets of the loads that leave in one stretch are freed, the others kept, and what is free is
priced and solved again in whole numbers. Loads that are out together compete for the same gear.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from loadplan.plan.alone import each_alone
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.stretch import Stretch

Array = np.ndarray[Any, np.dtype[Any]]
_FREE = 8  # sets freed at once, later twice as many
_SECONDS, _LONGEST = 0.25, 4.0  # for each set freed, and at most


@dataclass(slots=True)
class Polish:
    """Betters a plan in ``stage``, the stages before it held; values lie ``step`` apart.

    ``free`` is how many sets are freed at once, and twice as many where that betters nothing, up
    to ``most`` times as many. ``usable`` is as in :class:`loadplan.plan.stretch.Stretch`.
    """

    bounder: Bounder
    stage: StageCost
    step: float
    free: int = _FREE
    most: int = 2
    usable: Array | None = None
    _least: Array = field(init=False)

    def __post_init__(self) -> None:
        self._least = each_alone(self.bounder.master.arrays, self.stage)

    def run(self, values: Array, enough: float = -math.inf) -> Array:
        """The best plan found from ``values`` on; stops at ``enough`` or less.

        Goes on until a whole round has bettered nothing, or the time is up.
        """
        found = [values]
        self.bounder.master.keep_every_limit()
        with suppress(OutOfTimeError):
            for better in self._better(values, enough):
                found.append(better)
        return found[-1]

    def could_gain(self, values: Array, stretch: set[int]) -> bool:
        """Whether the loads of ``stretch`` could come to less.

        Not where they come to what they do at the least, each with the whole cage. Accessories of
        other loads, where these are free too, are bettered with a stretch of their own.
        """
        master = self.bounder.master
        loads = list({master.arrays.blocks[number].load for number in stretch})
        (used,) = np.nonzero(values)
        now = np.bincount(
            master.traits.load[used],
            master.traits.cost(self.stage)[used] * values[used],
            len(self._least),
        )
        return bool((now - self._least)[loads].sum() > 0.5 * self.step)

    def _better(self, values: Array, enough: float) -> Iterator[Array]:
        """Better and better plans, by short stretches of the day and then by longer ones."""
        goes = np.round(values[self.bounder.master.going])
        order = self._by_departure(goes)
        free, start, since = self.free, 0, 0
        while not self.bounder.clock.over():
            value = self._value(values)
            if value <= enough + 0.5 * self.step:
                return
            stretch, loads = self._stretch(order, start, free)
            found = None
            if self.could_gain(values, stretch):
                again = Stretch(self.bounder, self.stage, values, stretch, usable=self.usable)
                found = again.better(value - 0.9 * self.step, self._seconds())
            start = (start + max(1, loads // 2)) % max(1, len(order))
            since += max(1, loads // 2)
            if found is not None:
                values, since = found, 0
                yield values
            if since >= len(order):
                if loads == len(order) or free >= self.most * self.free:
                    return
                free, since = 2 * free, 0

    def _seconds(self) -> float:
        return min(_LONGEST, _SECONDS * self.free)

    def _value(self, values: Array) -> float:
        return self.bounder.master.value(self.stage, values)

    def _by_departure(self, goes: Array) -> list[int]:
        pools = self.bounder.master.arrays.pools
        loads = [int(load) for load in np.nonzero(goes)[0]]
        return sorted(loads, key=lambda load: (pools.first[load], pools.last[load], load))

    def _stretch(self, order: list[int], start: int, free: int) -> tuple[set[int], int]:
        """The blocks, about ``free``, of the loads from ``start`` on, and how many loads."""
        blocks: set[int] = set()
        for number in range(len(order)):
            load = order[(start + number) % len(order)]
            mine = self.bounder.master.arrays.of_load[load]
            if blocks and len(blocks) + len(mine) > free:
                return blocks, number
            blocks.update(mine)
        return blocks, len(order)
