"""The least plan with some sets settled: everything else in whole numbers, over the sets known."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.halves import Halves, halved
from loadplan.plan.master import Master
from loadplan.plan.matrix import Matrix
from loadplan.plan.pricing import improving_sets, prices_of
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_PRICED, _SETS_A_ROUND = 4, 3
_MANY = 5_000  # variables beside the sets
_TINY = 1e-6


def partly_settled(
    bounder: Bounder,
    stage: StageCost,
    goes: Array,
    settled: Sequence[int],
    below: float,
    seconds: float,
) -> Array | None:
    """The values of the least plan of ``stage`` with ``goes`` ready.

    It has the sets of the columns ``settled`` and is worth ``below`` at most; None where none is
    found in ``seconds``. Only sets that are columns already, and pairs made of their halves, are
    looked at, and on a large day the accessories of settled loads stay as the linear solution has
    them, so a better plan may exist.
    """
    master = bounder.master
    linear = _price(bounder, stage, goes, settled)
    if linear is None:
        return None
    master.keep_every_limit()
    lower, upper = np.zeros(len(master.upper)), master.upper.copy()
    lower[master.going], upper[master.going] = goes, goes
    could = goes[master.traits.load] > 0
    could[master.going] = True
    whole = replace(master.solver.matrix(), lower=lower, upper=upper)
    whole = with_kept(master, whole, settled, linear)
    halves = with_settled(master, stage, whole, could, settled)
    return halves.least(below, min(seconds, bounder.clock.left()))


def with_settled(
    master: Master,
    stage: StageCost,
    whole: Matrix,
    could: Array,
    settled: Sequence[int],
    tick: Callable[[], None] = lambda: None,
) -> Halves:
    """The problem over the columns ``could``, with the sets of the columns ``settled`` kept.

    ``whole`` has all the master's columns with the bounds to solve with; ``tick`` is as in
    :func:`loadplan.plan.choices.choices`.
    """
    done, could = master.blocks_of(settled), could.copy()
    could[master.base :] &= np.array([block not in done for block, _ in master.sets], bool)
    could[list(settled)] = True
    lower = whole.lower.copy()
    lower[list(settled)] = 1.0
    return halved(master, replace(whole, lower=lower), stage, could, lower == 0, tick)


def _price(bounder: Bounder, stage: StageCost, goes: Array, settled: Sequence[int]) -> Array | None:
    """Price in sets that suit what is settled; the linear values, None where nothing does."""
    master = bounder.master
    done = master.blocks_of(settled)
    master.release_ready()
    master.hold_loads(goes, goes)
    master.settle(settled)
    try:
        for _ in range(_PRICED):
            outcome = master.relax(stage, bounder.clock.left())
            if outcome.values is None:
                return None
            prices = prices_of(master, stage, outcome)
            if not master.add_sets(improving_sets(master, prices, _SETS_A_ROUND, done)):
                break
        return outcome.values
    finally:
        master.unsettle(settled)
        master.hold_ready(bounder.selection.ready)


def with_kept(master: Master, whole: Matrix, settled: Sequence[int], linear: Array) -> Matrix:
    """``whole`` with what the ``linear`` solution has of loads that are wholly settled, if many.

    Of the program's own columns, accessories above all, where they are whole there already.
    """
    if master.base <= _MANY:
        return whole
    done = master.blocks_of(settled)
    loads = np.ones(len(master.going), dtype=bool)
    loads[[block.load for n, block in enumerate(master.arrays.blocks) if n not in done]] = False
    own = np.arange(master.base)
    near = np.abs(linear[own] - np.round(linear[own])) < _TINY
    mine = loads[master.traits.load[own]] & near
    mine[master.going] = False
    kept = own[mine]
    lower, upper = whole.lower.copy(), whole.upper.copy()
    lower[kept] = upper[kept] = np.round(linear[kept])
    return replace(whole, lower=lower, upper=upper)
