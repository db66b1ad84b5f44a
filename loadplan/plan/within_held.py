"""Which columns could be in a plan whose earlier stages are as they are held."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from loadplan.plan.master import Master
from loadplan.plan.variables import CoupledArticle

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6


def within_held(master: Master, goes: Array, could: Array) -> tuple[Array, list[int]]:
    """Leave out columns that alone would use up more of a held stage than it has to spare.

    Every article takes at least the least of its own columns. Where those add up to what is
    held, each must be at its least, and the row that held the stage can go: it would touch
    every column.
    """
    variables, loose = master.program.variables.articles, master.program.variables.loose
    going = np.nonzero(goes)[0]
    if any(isinstance(one, CoupledArticle) for load in going for one in variables[load]):
        return could, []
    rows: list[int] = []
    block = np.array([number for number, _ in master.sets], dtype=np.int64)
    for stage, row in master.stage_rows:
        most = master.held[row]
        if math.isinf(most):
            continue
        cost = master.traits.cost(stage)
        fixed = sum(len(one.spots) for load in going for one in loose[load])
        sets, mine = cost[master.base :], could[master.base :]
        least = np.full(len(master.arrays.blocks), np.inf)
        np.minimum.at(least, block[mine], sets[mine])
        taken = float(least[np.isfinite(least)].sum()) + fixed * stage.tie_downs
        spare = most - taken
        could = could.copy()
        could[master.base :] &= sets - least[block] <= spare + _TINY
        if abs(spare) <= _TINY:
            rows.append(row)
    return could, rows
