"""Loads that made way for others let go again as they were, as far as their gear is still there."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np

from loadplan.plan.master import Master

Array = np.ndarray[Any, np.dtype[Any]]


def put_back(master: Master, values: Array, before: Array, loads: Iterable[int]) -> Array:
    """The plan ``values`` with those of ``loads`` that it has gear for, as they are ``before``.

    In the order given; none of them may go in ``values``. Gear of a kit is always there: no other
    load of its trailer is out with one.
    """
    pools, traits = master.arrays.pools, master.traits
    before = np.round(before)
    pieces, _ = master.limits.taken(traits, before)
    pieces[:, pools.kit] = 0.0
    _, out = master.limits.taken(traits, values)
    left, found = pools.usable - out, values.copy()
    for load in loads:
        span = slice(int(pools.first[load]), int(pools.last[load]) + 1)
        if before[master.going[load]] and (left[span] >= pieces[load]).all():
            left[span] -= pieces[load]
            mine = traits.load[: len(before)] == load
            found[: len(before)][mine] = before[mine]
    return found
