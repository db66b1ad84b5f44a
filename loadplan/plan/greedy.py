"""A plan by hand rules, to start from and for when the time is up before there is a better one.

Loads in the order of priority; each takes the fewest tie-downs it finds in what the others have
left, then the least mixed, then the least strength. There are several hand rules: who of a priority
is first, and whether an article takes tie-downs that are all alike where there are such, as few as
it could do with, or looks among the sets that issue least. The best of their plans is taken.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

import numpy as np

from loadplan.plan.alone import each_alone
from loadplan.plan.master import Master
from loadplan.plan.placing import Placing
from loadplan.plan.stage_cost import STRENGTH, TIE_DOWNS, every_stage
from loadplan.plan.tie_set import TieSet

Array = np.ndarray[Any, np.dtype[Any]]
_FEW = 60  # loads, for which every hand rule is tried


def greedy(master: Master, kept: Iterable[tuple[int, TieSet]] = ()) -> Array:
    """The values of a plan that keeps every limit; loads it cannot place stay.

    ``kept`` are sets (block, set) to use as far as there is gear for them.
    """
    loads = master.arrays.sets.loads
    first: dict[int, TieSet] = dict(kept)
    stages = every_stage(one.load.priority for one in loads)
    every = orders(master)
    plans = [
        _in_order(master, first, order, alike=alike)
        for alike in ((True, False) if len(loads) <= _FEW else (True,))
        for order in every
    ]
    return min(plans, key=lambda plan: [plan.value(stage) for stage in stages]).values()


def orders(master: Master) -> tuple[list[int], ...]:
    """Loads that could go by priority, then departure, how few tie-downs, and for how long."""
    arrays = master.arrays
    loads, pools = arrays.sets.loads, arrays.pools
    fewest, least = each_alone(arrays, TIE_DOWNS), each_alone(arrays, STRENGTH)
    long = fewest * (pools.last - pools.first + 1)
    possible = [place for place, one in enumerate(loads) if one.possible]
    keys: tuple[Callable[[int], tuple[float, ...]], ...] = (
        lambda place: (loads[place].load.out,),
        lambda place: (fewest[place], least[place]),
        lambda place: (long[place],),
    )
    return tuple(
        sorted(possible, key=lambda place: (loads[place].load.priority, *key(place), place))
        for key in keys
    )


def _in_order(
    master: Master, kept: Mapping[int, TieSet], order: Sequence[int], *, alike: bool
) -> Placing:
    placing = Placing(master, kept, alike=alike)
    # A second time round there may be gear that was kept for loads that stay.
    for load in (*order, *order):
        if load not in placing.placed:
            placing.place(load)
    return placing
