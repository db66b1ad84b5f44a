"""The cheapest set of one article as a small program of its own.

For articles whose sets are too many to walk through one by one: many places, little of each kind
of gear, most of it free.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from loadplan.plan.article_columns import columns_of_places
from loadplan.plan.article_rows import Rows, at_most, most_of
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.shackled import columns_apart
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver
from loadplan.plan.tie_set import TieSet

Array = np.ndarray[Any, np.dtype[Any]]
_STEP = 1e-6


def cheapest_set(
    block: Block,
    price: Array,
    per_extra_pair: float,
    rounds: dict[tuple[int, int], float],
    have: dict[int, int],
    clock: Clock,
    *,
    most_pairs: float = math.inf,
) -> TieSet | None:
    """The set of ``block`` with the least price; None where what there is makes no set at all.

    Prices, ``have`` and ``most_pairs`` are as in
    :func:`loadplan.plan.set_walk.enumerate_sets`; ``rounds`` is the price of each ⌊pieces / k⌋ of a
    kind of gear (gear, k). Raises ``OutOfTimeError`` where the time comes first.
    """
    most = np.minimum(at_most(block), most_of(block, have))
    parts = columns_apart(block, price, most, have) or columns_of_places(block, price, most)
    counted, pairs = len(parts.price), int(block.menu.pair.max()) + 1
    rows = Rows(counted + pairs + len(rounds))
    for weights, low, high in parts.rows:
        rows.add(weights, low=low, high=high)
    for used in np.nonzero(parts.uses.any(axis=0))[0]:
        rows.add(parts.uses[:, used], high=have[int(used)])
    rows.add(parts.winch, high=have[-1])
    for pair in range(pairs):
        mine = 1.0 * (parts.pair == pair)
        of_it = min(float(block.room + len(block.apart)), float(parts.most @ mine))
        rows.add(mine, extra=(counted + pair, -of_it), high=0)
    for place, (gear, k) in enumerate(rounds):
        rows.add(parts.uses[:, gear], extra=(counted + pairs + place, -k), high=k - 1)
    if most_pairs < pairs:
        rows.add(np.repeat((0.0, 1.0), (counted, pairs)), high=most_pairs)
    upper = np.concatenate((parts.most, np.ones(pairs), np.full(len(rounds), block.room * 9.0)))
    cost = np.concatenate((parts.price, np.full(pairs, per_extra_pair), [*rounds.values()]))
    solver = Solver(rows.matrix(upper, parts.whole), searches=False)
    solver.price(cost)
    outcome = solver.solve(clock.left(), _STEP)
    if outcome.status is Status.LIMIT:
        raise OutOfTimeError
    if outcome.values is None:
        return None
    numbers = np.round(outcome.values[:counted]).astype(int).tolist()
    return TieSet(tuple(sorted(parts.places(numbers).items())))
