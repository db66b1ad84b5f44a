"""Placing loads one by one by hand rules, in what the loads placed so far leave of the gear."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from itertools import islice
from typing import Any

import numpy as np

from loadplan.day.article import Routing
from loadplan.plan.assembly import Assembly
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Steps, TooManyStepsError
from loadplan.plan.master import Master
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.sets_of_one import sets_of_one
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.variables import SimpleArticle

Array = np.ndarray[Any, np.dtype[Any]]
_TRIES = 50
_MOST_STEPS = 5_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A load that goes: its sets (block, set), the program's own variables, and its gear.

    ``tie_downs`` are those of the sets.
    """

    sets: tuple[tuple[int, TieSet], ...]
    units: Mapping[int, int]
    taken: Mapping[int, int]
    tie_downs: int


class Placing:
    """The loads that go, and the gear that they leave.

    ``kept`` are sets (block, set) that their loads are to take as far as there is gear for them; it
    is kept for them from the start. With ``alike`` an article takes tie-downs that are all alike
    where there is gear for as few as it could do with; without ``mixed`` it takes no others.
    """

    def __init__(
        self, master: Master, kept: Mapping[int, TieSet], *, alike: bool, mixed: bool = True
    ):
        self.master, self.arrays, self.kept = master, master.arrays, dict(kept)
        self.alike, self.mixed = alike, mixed
        self.pools = self.arrays.pools
        self.left = self.pools.usable.copy()
        self.kit_left = self.pools.kit_usable.copy()
        self.placed: dict[int, Placed] = {}
        self._own: dict[str | None, Array] = {}
        for number, one in kept.items():
            self._reserve(number, one, 1)

    def take_on(self, values: Array) -> None:
        """Place the loads of a plan as they are in it."""
        traits, base = self.master.traits, self.master.base
        (columns,) = np.nonzero(np.round(values))
        going = {int(self.master.going[load]): load for load in range(len(self.master.going))}
        of_load: dict[int, list[int]] = {
            going[column]: [] for column in columns.tolist() if column in going
        }
        for column in columns.tolist():
            if column not in going and int(traits.load[column]) in of_load:
                of_load[int(traits.load[column])].append(column)
        for load, mine in of_load.items():
            pieces = np.round(values[mine]).astype(np.int64) @ traits.uses[mine]
            taken = {int(gear): int(pieces[gear]) for gear in np.nonzero(pieces)[0]}
            units = {at: round(float(values[at])) for at in mine if at < base}
            sets = tuple(self.master.sets[at - base] for at in mine if at >= base)
            self.put_back(load, _placed(sets, units, taken))

    def place(self, load: int) -> bool:
        """Let a load go if there is gear for it; answers whether it does."""
        found = self._place(load)
        if found is not None:
            self.placed[load] = found
        return found is not None

    def take_off(self, load: int) -> Placed:
        """Let a load stay, and free its gear."""
        found = self.placed.pop(load)
        self._take(load, {gear: -pieces for gear, pieces in found.taken.items()})
        return found

    def put_back(self, load: int, as_it_was: Placed) -> None:
        """Let a load go as it did before."""
        self._take(load, as_it_was.taken)
        self.placed[load] = as_it_was

    def value(self, stage: StageCost) -> float:
        """What the plan comes to in ``stage``."""
        cost, blocks, going = self.master.traits.cost(stage), self.arrays.blocks, self.master.going
        own = sum(float(cost[going[load]]) for load in self.placed)
        for one in self.placed.values():
            own += sum(number * float(cost[at]) for at, number in one.units.items())
            own += sum(
                stage.tie_downs * tied.tie_downs
                + stage.mixed * tied.mixed(blocks[number])
                + stage.strength * tied.strength(blocks[number])
                for number, tied in one.sets
            )
        return own

    def values(self) -> Array:
        """The value of every column of the master, to which the sets are added."""
        chosen = [tied for one in self.placed.values() for tied in one.sets]
        self.master.add_sets(chosen)
        values = np.zeros(len(self.master.traits.load))
        values[[self.master.column_of(one) for one in chosen]] = 1
        for load, one in self.placed.items():
            values[self.master.going[load]] = 1
            for at, number in one.units.items():
                values[at] = number
        return values

    def by_hand(self, load: int) -> bool:
        """Whether hand rules can tie a load down: sections of their own are left to the program."""
        articles = self.master.program.variables.articles[load]
        return all(isinstance(article, SimpleArticle) for article in articles)

    def _place(self, load: int) -> Placed | None:
        """One load out of what is left; None if it must stay."""
        if not self.by_hand(load):
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
        taken = {
            gear: number - have[gear]
            for gear, number in before.items()
            if gear >= 0 and number != have[gear]
        }
        self._take(load, taken)
        return _placed(tuple(sets), units, taken)

    def _have(self, load: int) -> dict[int, int]:
        span = slice(int(self.pools.first[load]), int(self.pools.last[load]) + 1)
        least = np.where(self.pools.kit, self.kit_left[load], self.left[span].min(axis=0))
        one = self.arrays.sets.loads[load]
        if one.trailer not in self._own:
            kept_on = [gear.kept_on in (None, one.trailer) for gear in self.arrays.sets.gear]
            self._own[one.trailer] = np.array(kept_on)
        have = dict(enumerate(np.where(self._own[one.trailer], least, 0).tolist()))
        have[-1] = one.demand.winches.at_most
        return have

    def _best_set(self, block: Block, have: dict[int, int]) -> TieSet | None:
        best = self._all_alike(block, have) if self.alike else None
        if self.mixed and (best is None or best.tie_downs > min(block.alone)):
            found = [one for one in (best, *self._that_issue_least(block, have)) if one is not None]
            best = min(
                found,
                key=lambda one: (one.tie_downs, one.mixed(block), one.strength(block), one.chosen),
                default=None,
            )
        if best is not None:
            self._use(block, best, have)
        return best

    def _all_alike(self, block: Block, have: dict[int, int]) -> TieSet | None:
        """The fewest tie-downs of one assembly, that issue least; None where there is no such."""
        return min(
            sets_of_one(block, have),
            key=lambda one: (one.tie_downs, one.strength(block), one.chosen),
            default=None,
        )

    def _that_issue_least(self, block: Block, have: dict[int, int]) -> list[TieSet]:
        price = block.menu.strength.tolist()
        steps = Steps(_MOST_STEPS)
        sets = enumerate_sets(block, price, 0.0, float("inf"), have, steps.tick)
        found: list[TieSet] = []
        with suppress(TooManyStepsError):
            found += [one for _, one in islice(sets, _TRIES)]
        return found

    def _use(self, block: Block, one: TieSet, have: dict[int, int]) -> None:
        for place, number in one.chosen:
            for gear in block.menu.uses[place].nonzero()[0]:
                have[int(gear)] -= number * int(block.menu.uses[place, gear])
            have[-1] -= number * int(block.menu.winch[place])

    def _reserve(self, number: int, one: TieSet, times: int) -> None:
        """Take what a set uses out of what is left, or with −1 put it back."""
        block = self.arrays.blocks[number]
        uses = one.uses(block)
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

    def _take(self, load: int, taken: Mapping[int, int]) -> None:
        span = slice(int(self.pools.first[load]), int(self.pools.last[load]) + 1)
        for gear, pieces in taken.items():
            if self.pools.kit[gear]:
                self.kit_left[load, gear] -= pieces
            else:
                self.left[span, gear] -= pieces


def _placed(
    sets: tuple[tuple[int, TieSet], ...], units: Mapping[int, int], taken: Mapping[int, int]
) -> Placed:
    tie_downs = sum(one.tie_downs for _, one in sets)
    return Placed(sets=sets, units=units, taken=taken, tie_downs=tie_downs)
