"""What a linear solution has whole: sets to keep while the rest is solved for."""

from __future__ import annotations

from typing import Any

import numpy as np

from loadplan.plan.master import Master

Array = np.ndarray[Any, np.dtype[Any]]
SURE = 0.999  # how much of a set


def whole_sets(master: Master, linear: Array) -> list[int]:
    """The columns of the sets that the values of a linear solution have whole."""
    columns: list[int] = (np.nonzero(linear[master.base :] > SURE)[0] + master.base).tolist()
    return columns
