"""Traits: what each column of the master counts for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.blocks import Arrays
from loadplan.plan.program import Program
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.variables import SimpleArticle

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Traits:
    """What each column counts for, one entry per column.

    ``load`` it belongs to; ``priority`` of the load if it says that the load goes, else 0;
    ``tie_downs``, ``mixed`` and ``strength`` per unit; ``uses`` pieces of each kind of gear.
    """

    load: Array
    priority: Array
    tie_downs: Array
    mixed: Array
    strength: Array
    uses: Array

    def cost(self, stage: StageCost) -> Array:
        """Each column's cost in ``stage``."""
        cost: Array = stage.tie_downs * self.tie_downs + stage.mixed * self.mixed
        cost = cost + stage.strength * self.strength
        return np.asarray(cost + self.of_going(stage), dtype=float)

    def of_going(self, stage: StageCost) -> Array:
        """What a column costs in ``stage`` only because it says that a load goes."""
        before = self.priority.max(initial=0) - self.priority
        every = stage.every * stage.rank**before * (self.priority > 0)
        if stage.priority:
            every = every + (self.priority == stage.priority)
        return np.asarray(-every, dtype=float)

    def and_those(self, others: Traits) -> Traits:
        """These columns, then ``others``."""
        names = Traits.__slots__
        both = ((getattr(self, name), getattr(others, name)) for name in names)
        return Traits(*(np.concatenate(pair) for pair in both))


def traits_of(arrays: Arrays, program: Program) -> Traits:
    """The traits of the program's own variables."""
    variables = program.variables
    place = {variable: number for number, variable in enumerate(variables.all)}
    count = len(variables.all)
    traits = Traits(
        load=np.zeros(count, dtype=np.int64),
        priority=np.zeros(count, dtype=np.int64),
        tie_downs=np.zeros(count, dtype=np.int64),
        mixed=np.zeros(count, dtype=np.int64),
        strength=np.zeros(count),
        uses=np.zeros((count, len(arrays.gear)), dtype=np.int64),
    )
    for load, one in enumerate(arrays.sets.loads):
        ready = place[variables.ready[load]]
        traits.load[ready], traits.priority[ready] = load, one.load.priority
        for gear, variable in variables.protectors[load].items():
            traits.load[place[variable]] = load
            traits.uses[place[variable], arrays.index[gear]] = 1
        for article in variables.articles[load]:
            if not isinstance(article, SimpleArticle):
                traits.mixed[ready] -= int(article.sets.tied_down)
                for used in article.used.values():
                    traits.load[place[used]], traits.mixed[place[used]] = load, 1
    for activity in variables.activities:
        at = place[activity.variable]
        traits.load[at] = activity.load
        traits.tie_downs[at] = activity.tie_downs
        traits.strength[at] = float(activity.strength)
        for gear, pieces in activity.uses:
            traits.uses[at, arrays.index[gear]] = pieces
    return traits


def traits_of_sets(arrays: Arrays, new: Sequence[tuple[int, TieSet]]) -> Traits:
    """The traits of sets, each with the number of its block."""
    blocks = [arrays.blocks[number] for number, _ in new]
    sets = [chosen for _, chosen in new]
    uses = np.zeros((len(new), len(arrays.gear)), dtype=np.int64)
    for place, (block, chosen) in enumerate(zip(blocks, sets, strict=True)):
        uses[place] = chosen.uses(block)
    pairs = list(zip(blocks, sets, strict=True))
    return Traits(
        load=np.array([block.load for block in blocks]),
        priority=np.zeros(len(new), dtype=np.int64),
        tie_downs=np.array([chosen.tie_downs for chosen in sets]),
        mixed=np.array([chosen.mixed(block) for block, chosen in pairs]),
        strength=np.array([chosen.strength(block) for block, chosen in pairs]),
        uses=uses,
    )
