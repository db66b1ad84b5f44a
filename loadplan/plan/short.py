"""A first plan where the cage is too short for every load.

One linear solution, over the sets there are to start from and with the limits of a few moments
spread over the day, says which loads should go and with what. The hand rules then place what it
has as far as there is gear for it, and the rest around that.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.greedy import greedy
from loadplan.plan.master import Master
from loadplan.plan.stage_cost import GOING, StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.whole import SURE

Array = np.ndarray[Any, np.dtype[Any]]
_KEPT_BACK = 0.03  # share of a pool's pieces that the linear solution goes without
_MOMENTS = 13  # whose limits it keeps
_HAS = (SURE, 0.5)  # how much of a set it has, to be placed first
TIE_DOWNS_WORTH = 100.0  # tie-downs that a load is worth where they are counted too
_RANK = 100.0  # how many times as much as one of the next priority a load is worth, at the most
_GREATEST = 1e6  # how many times as much as one of the last


def first_plan(bounder: Bounder, rough: Array) -> Array:
    """The values of a plan with many loads ready, not the most; ``rough`` if that has more."""
    master, rank = bounder.master, by_rank(bounder)
    stage = replace(rank, every=TIE_DOWNS_WORTH, tie_downs=1)
    linear = master.roughly(stage, _MOMENTS, _KEPT_BACK, bounder.clock.left()).values
    if linear is None:
        return rough
    plans = [rough, *(greedy(master, _sets(master, linear, has)) for has in _HAS)]
    return min(plans, key=lambda values: master.value(rank, values))


def by_rank(bounder: Bounder) -> StageCost:
    """Loads that go, each worth many of the priorities after its own."""
    priority = bounder.selection.priority
    span = int(priority.max() - priority.min())
    rank = min(_RANK, _GREATEST ** (1 / max(1, span)))
    return replace(GOING, rank=float(int(rank)))


def _sets(master: Master, linear: Array, has: float) -> list[tuple[int, TieSet]]:
    """The sets that a linear solution has at least ``has`` of, of loads that go as much."""
    (columns,) = np.nonzero(linear[master.base :] > has)
    going = linear[master.going] > has
    sets = (master.sets[column] for column in columns.tolist())
    return [one for one in sets if going[master.arrays.blocks[one[0]].load]]
