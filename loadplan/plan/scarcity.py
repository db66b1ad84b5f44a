"""What a piece of each kind of gear is worth to one article that can choose among many."""

from __future__ import annotations

from typing import Any

import numpy as np

from loadplan.plan.article_rows import Rows, at_most, most_of
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Clock
from loadplan.plan.solver import Solver
from loadplan.problems import SolverFailed

Array = np.ndarray[Any, np.dtype[Any]]
_WINCHES = -1
_TINY = 1e-9


def scarcity(
    block: Block, price: Array, per_extra_pair: float, have: dict[int, int], clock: Clock
) -> dict[int, float]:
    """The worth of one piece by the cheapest set of ``block`` in fractions, where above nought.

    Prices and ``have`` are as in :func:`loadplan.plan.set_walk.enumerate_sets`; a pair is taken to
    cost the less per tie-down the more of it there could be. Empty where nothing is scarce.
    """
    main = block.main
    enough = [
        max(block.reach.fewest, -(-block.reach.need // value))
        for value in block.reach.values[:main]
    ]
    most = np.minimum(np.minimum(at_most(block), most_of(block, have))[:main], enough)
    rows = Rows(main)
    rows.add(np.ones(main), low=block.reach.fewest, high=block.room)
    values = [min(1.0, value / block.reach.need) for value in block.reach.values[:main]]
    rows.add(np.array(values), low=1.0)
    scarce = [int(gear) for gear in np.nonzero(block.menu.uses[:main].any(axis=0))[0]]
    for gear in scarce:
        rows.add(block.menu.uses[:main, gear], high=have[gear])
    rows.add(block.menu.winch[:main], high=have[_WINCHES])
    cost = price[:main] + per_extra_pair / np.maximum(1.0, most)
    unit = max(1.0, float(cost.max(initial=0.0)))
    solver = Solver(rows.matrix(most, np.zeros(main, dtype=bool)), presolve=False)
    solver.price(cost / unit)
    try:
        outcome = solver.relax(clock.left())
    except SolverFailed:
        return {}  # any worth is right, none at all too
    if outcome.values is None:
        return {}
    worth = -unit * outcome.prices[2:]
    return {
        gear: float(each)
        for gear, each in zip((*scarce, _WINCHES), worth, strict=True)
        if each > _TINY
    }
