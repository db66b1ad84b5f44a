"""The cheapest set of one article as a small program of its own.

For articles whose sets are too many to walk through one by one: many places, little of each kind
of gear, most of it free.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from loadplan.plan.article_rows import Rows, at_most, most_of
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Clock, OutOfTimeError
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
) -> TieSet | None:
    """The set of ``block`` with the least price; None where what there is makes no set at all.

    Prices and ``have`` are as in :func:`loadplan.plan.tie_set.enumerate_sets`; ``rounds`` is the
    price of each ⌊pieces / k⌋ of a kind of gear (gear, k). Raises ``OutOfTimeError`` where the time
    comes first.
    """
    assemblies = len(price)
    pairs = int(block.menu.pair.max()) + 1
    most = np.minimum(at_most(block), most_of(block, have))
    rows = Rows(assemblies + pairs + len(rounds))
    number = np.arange(assemblies)
    rows.add(1.0 * (number < block.main), low=block.reach.fewest, high=block.room)
    for one in block.apart:
        here = 1.0 * ((number >= one.first) & (number < one.end))
        rows.add(here, low=one.number, high=one.number)
    margin = 0.5 / block.reach.need
    rows.add(np.array([v / block.reach.need for v in block.reach.values]), low=1.0 - margin)
    for used in np.nonzero(block.menu.uses.any(axis=0))[0]:
        rows.add(block.menu.uses[:, used], high=have[int(used)])
    rows.add(block.menu.winch, high=have[-1])
    for pair in range(pairs):
        most_of_it = -float(block.room + len(block.apart))
        rows.add(1.0 * (block.menu.pair == pair), extra=(assemblies + pair, most_of_it), high=0)
    for place, (gear, k) in enumerate(rounds):
        at = assemblies + pairs + place
        rows.add(block.menu.uses[:, gear], extra=(at, -k), high=k - 1)
    upper = np.concatenate((most, np.ones(pairs), np.full(len(rounds), float(block.room * 9))))
    cost = np.concatenate((price, np.full(pairs, per_extra_pair), [*rounds.values()]))
    solver = Solver(rows.matrix(upper))
    solver.price(cost)
    outcome = solver.solve(clock.left(), _STEP)
    if outcome.status is Status.LIMIT:
        raise OutOfTimeError
    if outcome.values is None:
        return None
    numbers = np.round(outcome.values[:assemblies]).astype(int)
    return TieSet(tuple((int(at), int(numbers[at])) for at in np.nonzero(numbers)[0]))
