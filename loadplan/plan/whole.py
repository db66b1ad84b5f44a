"""What a linear solution has whole: sets to keep while the rest is solved for."""

from __future__ import annotations

import numpy as np

from loadplan.plan.master import Master
from loadplan.plan.solver import Outcome

SURE = 0.999  # how much of a set


def whole_sets(master: Master, linear: Outcome) -> list[int]:
    """The columns of the sets that a linear solution has whole; none where it has no values."""
    if linear.values is None:
        return []
    columns: list[int] = (np.nonzero(linear.values[master.base :] > SURE)[0] + master.base).tolist()
    return columns
