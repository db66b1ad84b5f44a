"""Letting loads in: more go where the linear solution of the whole day has room for them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.partly import partly_settled
from loadplan.plan.short import TIE_DOWNS_WORTH
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.whole import whole_sets

Array = np.ndarray[Any, np.dtype[Any]]
_SECONDS = 5.0  # for what is not whole in the linear solution
_SOME = 1e-6  # of a load


def let_in(bounder: Bounder, rank: StageCost, values: Array) -> Iterator[Array]:
    """Better and better plans by ``rank``, from ``values`` on, as long as any is found.

    The loads of a plan go on going; where that lets none in, those may stay that are of a later
    priority than some load that stays. Raises ``OutOfTimeError``.
    """
    better: Array | None = values
    while better is not None:
        values = better
        goes = np.round(values[bounder.master.going])
        better = _with_more(bounder, rank, values, goes)
        if better is None:
            better = _with_more(bounder, rank, values, _must(bounder, goes))
        if better is not None:
            yield better


def _must(bounder: Bounder, goes: Array) -> Array:
    """The loads of ``goes`` of no later priority than every load that could go and does not."""
    selection = bounder.selection
    stay = (goes < selection.possible) & (selection.possible > 0)
    first = selection.priority[stay].min(initial=selection.priority.max())
    return np.where(selection.priority <= first, goes, 0.0)


def _with_more(bounder: Bounder, rank: StageCost, values: Array, must: Array) -> Array | None:
    """A plan in which the loads that ``must`` go, and by ``rank`` more than in ``values``."""
    master = bounder.master
    priced = replace(rank, every=TIE_DOWNS_WORTH, tie_downs=1)
    linear = bounder.solve_at(priced, must, bounder.selection.possible)
    if linear.values is None:
        return None
    may = np.where(linear.values[master.going] > _SOME, 1.0, 0.0)
    may = np.maximum(may, np.round(values[master.going]))
    below = master.value(rank, values) - 0.5
    kept = whole_sets(master, linear.values)
    return partly_settled(bounder, rank, must, kept, below, _SECONDS, may)
