"""A plan by hand rules, for when the time is up before there is a better one.

Loads in the order of priority and departure; each takes the fewest tie-downs it finds in what the
others have left, then the least mixed, then the least strength.
"""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from itertools import islice
from typing import Any

import numpy as np

from loadplan.day.article import Routing
from loadplan.plan.assembly import Assembly
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Steps, TooManyStepsError
from loadplan.plan.master import Master
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.tie_set import Chosen, TieSet
from loadplan.plan.variables import SimpleArticle

Array = np.ndarray[Any, np.dtype[Any]]
_TRIES = 50
_MOST_STEPS = 5_000


def greedy(master: Master, kept: Iterable[tuple[int, TieSet]] = ()) -> Array:
    """The values of a plan that keeps every limit; loads it cannot place stay.

    ``kept`` are sets (block, set) to use as far as there is gear for them.
    """
    return _Greedy(master, dict(kept)).run()


class _Greedy:
    def __init__(self, master: Master, kept: dict[int, TieSet]):
        self.master, self.arrays, self.kept = master, master.arrays, kept
        self.pools = self.arrays.pools
        self.left = self.pools.usable.copy()
        self.kit_left = self.pools.kit_usable.copy()
        for number, one in kept.items():
            self._reserve(number, one, 1)

    def run(self) -> Array:
        chosen: list[tuple[int, TieSet]] = []
        units: dict[int, int] = {}
        loads = self.arrays.sets.loads
        order = sorted(
            range(len(loads)), key=lambda n: (loads[n].load.priority, loads[n].load.out, n)
        )
        possible = [load for load in order if loads[load].possible]
        # A second time round there may be gear that was kept for loads that stay.
        for load in (*possible, *possible):
            taken = None if int(self.master.going[load]) in units else self._place(load)
            if taken is not None:
                sets, variables = taken
                chosen += sets
                units[int(self.master.going[load])] = 1
                for variable, number in variables.items():
                    units[variable] = units.get(variable, 0) + number
        self.master.add_sets(chosen)
        values = np.zeros(len(self.master.traits.load))
        values[[self.master.column_of(one) for one in chosen]] = 1
        for at, number in units.items():
            values[at] = number
        return values

    def _place(self, load: int) -> tuple[list[tuple[int, TieSet]], dict[int, int]] | None:
        """Sets and program variables for one load, out of what is left; None if it must stay."""
        articles = self.master.program.variables.articles[load]
        if not all(isinstance(article, SimpleArticle) for article in articles):
            return None
        mine = [(number, self.arrays.blocks[number]) for number in self.arrays.of_load[load]]
        kept = {number: self.kept.pop(number) for number, _ in mine if number in self.kept}
        for number, one in kept.items():
            self._reserve(number, one, -1)
        have = self._have(load)
        before = dict(have)
        sets: list[tuple[int, TieSet]] = []
        for number, one in kept.items():
            self._use(self.arrays.blocks[number], one, have)
        if min(have.values()) < 0:
            kept, have = {}, dict(before)
        for number, block in mine:
            best = kept.get(number) or self._best_set(block, have)
            if best is None:
                return None
            sets.append((number, best))
        units = self._accessories(load, have)
        if units is None or not self._anchors(load, sets):
            return None
        if not self._protectors(load, sets, have, units):
            return None
        self._take(load, {gear: before[gear] - have[gear] for gear in before if gear >= 0})
        return sets, units

    def _have(self, load: int) -> dict[int, int]:
        span = slice(int(self.pools.first[load]), int(self.pools.last[load]) + 1)
        least = np.where(self.pools.kit, self.kit_left[load], self.left[span].min(axis=0))
        trailer = self.arrays.sets.loads[load].trailer
        own = [gear.kept_on in (None, trailer) for gear in self.arrays.sets.gear]
        have = dict(enumerate(np.where(own, least, 0).tolist()))
        have[-1] = self.arrays.sets.loads[load].demand.winches.at_most
        return have

    def _best_set(self, block: Block, have: dict[int, int]) -> TieSet | None:
        price = block.menu.strength.tolist()
        steps = Steps(_MOST_STEPS)
        sets = enumerate_sets(block, price, 0.0, float("inf"), have, steps.tick)
        found: list[tuple[int, int, float, Chosen, TieSet]] = []
        with suppress(TooManyStepsError):
            for cost, one in islice(sets, _TRIES):
                found.append((one.tie_downs, one.mixed(block), cost, one.chosen, one))
        if not found:
            return None
        best = min(found)[-1]
        self._use(block, best, have)
        return best

    def _use(self, block: Block, one: TieSet, have: dict[int, int]) -> None:
        for place, number in one.chosen:
            for gear in block.menu.uses[place].nonzero()[0]:
                have[int(gear)] -= number * int(block.menu.uses[place, gear])
            have[-1] -= number * int(block.menu.winch[place])

    def _reserve(self, number: int, one: TieSet, times: int) -> None:
        """Take what a set uses out of what is left, or with −1 put it back."""
        block = self.arrays.blocks[number]
        uses = sum(count * block.menu.uses[place] for place, count in one.chosen)
        pieces = {int(gear): times * int(uses[gear]) for gear in np.nonzero(uses)[0]}
        self._take(block.load, pieces)

    def _accessories(self, load: int, have: dict[int, int]) -> dict[int, int] | None:
        units: dict[int, int] = {}
        for one in self.master.program.variables.loose[load]:
            for _ in one.spots:
                at = self._cheapest(one.assemblies, have)
                if at is None:
                    return None
                for gear, pieces in one.assemblies[at].uses:
                    have[self.arrays.index[gear]] -= pieces
                for variable in one.take(one.assemblies[at]):
                    column = self.master.place[variable]
                    units[column] = units.get(column, 0) + 1
        return units

    def _cheapest(self, assemblies: tuple[Assembly, ...], have: dict[int, int]) -> int | None:
        fit = (
            (assembly.strength, at)
            for at, assembly in enumerate(assemblies)
            if all(have[self.arrays.index[gear]] >= pieces for gear, pieces in assembly.uses)
        )
        return min(fit, default=(0, None))[1]

    def _anchors(self, load: int, sets: list[tuple[int, TieSet]]) -> bool:
        limit = self.arrays.sets.loads[load].anchors
        if limit is None:
            return True
        taken = sum(
            count * float(self.arrays.blocks[n].anchors[place])
            for n, one in sets
            for place, count in one.chosen
        )
        loose = sum(len(one.spots) for one in self.master.program.variables.loose[load])
        return taken + loose * limit.per_tie_down[Routing.DIRECT] <= limit.at_most

    def _protectors(
        self,
        load: int,
        sets: list[tuple[int, TieSet]],
        have: dict[int, int],
        units: dict[int, int],
    ) -> bool:
        lacking = sum(self._protectors_of(number, one) for number, one in sets)
        for gear, variable in self.master.program.variables.protectors[load].items():
            taken = min(lacking, have[self.arrays.index[gear]])
            have[self.arrays.index[gear]] -= taken
            units[self.master.place[variable]] = taken
            lacking -= taken
        return lacking == 0

    def _protectors_of(self, number: int, one: TieSet) -> int:
        menu = self.arrays.blocks[number].menu
        return sum(count * int(menu.protectors[place]) for place, count in one.chosen)

    def _take(self, load: int, taken: dict[int, int]) -> None:
        span = slice(int(self.pools.first[load]), int(self.pools.last[load]) + 1)
        for gear, pieces in taken.items():
            if self.pools.kit[gear]:
                self.kit_left[load, gear] -= pieces
            else:
                self.left[span, gear] -= pieces
