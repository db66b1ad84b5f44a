"""What loads come to at the least, each with the whole cage: bounds that need no solving."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import numpy as np

from loadplan.plan.blocks import Arrays, Block
from loadplan.plan.pricing import cheapest
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_ROUNDING = 1e-6


def least_alone(arrays: Arrays, stage: StageCost, ready: Mapping[int, int]) -> float:
    """A bound of ``stage`` over every plan with so many loads ``ready`` of each priority.

    Of each priority the loads are taken that come to least. Nought for the stages of ready loads;
    mixed sets there need be none.
    """
    if not (stage.tie_downs or stage.strength):
        return 0.0
    least = each_alone(arrays, stage)
    total = 0.0
    for priority, number in ready.items():
        same = [
            float(least[place])
            for place, one in enumerate(arrays.sets.loads)
            if one.possible and one.load.priority == priority
        ]
        total += sum(sorted(same)[:number])
    return total


def each_alone(arrays: Arrays, stage: StageCost) -> Array:
    """What each load comes to at the least."""
    least = np.zeros(len(arrays.sets.loads))
    for block in arrays.blocks:
        least[block.load] += _of_block(block, stage)
    return least


def _of_block(block: Block, stage: StageCost) -> float:
    """What any set of a block comes to at the least."""
    cost = stage.tie_downs + stage.strength * block.menu.strength
    least = cheapest(block, np.asarray(cost, dtype=float), 0.0)
    return math.ceil(least - _ROUNDING) if stage.tie_downs else least
