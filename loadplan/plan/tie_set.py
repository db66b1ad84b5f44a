"""A set: the main tie-downs of one article, by how many of each assembly it has."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.blocks import Block

Array = np.ndarray[Any, np.dtype[Any]]
Chosen = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class TieSet:
    """``chosen`` is (place on the menu, how many), in the order of the menu."""

    chosen: Chosen

    @property
    def tie_downs(self) -> int:
        """How many tie-downs it has, those settled apart included."""
        return sum(number for _, number in self.chosen)

    def main(self, block: Block) -> int:
        """How many free main tie-downs it has."""
        return sum(number for place, number in self.chosen if place < block.main)

    def mixed(self, block: Block) -> int:
        """Different (tension member, tensioner) pairs of main tie-downs beyond the first."""
        pairs = {int(block.menu.pair[place]) for place, _ in self.chosen}
        return len(pairs - {-1}) - 1

    def strength(self, block: Block) -> float:
        """Rated strength issued, summed exactly."""
        unit, strengths = block.menu.exact
        return sum([number * strengths[place] for place, number in self.chosen]) / unit

    def uses(self, block: Block) -> Array:
        """The pieces of each kind of gear that it takes."""
        none = np.zeros(len(block.menu.gear), dtype=np.int64)
        return sum((number * block.menu.uses[place] for place, number in self.chosen), none)

    def enough(self, block: Block) -> bool:
        """Whether it meets count and need, in whole numbers, and finds places."""
        reach = block.reach
        value = sum(number * reach.values[place] for place, number in self.chosen)
        return value >= reach.need and reach.fewest <= self.main(block) <= block.room
