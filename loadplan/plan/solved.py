"""What a solve came to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]


class Status(Enum):
    """How a solve ended; values may be read only where a solution was found."""

    OPTIMAL = auto()
    INFEASIBLE = auto()
    LIMIT = auto()


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a solve found.

    ``values`` is None where no solution was found. ``bound`` holds for every solution of the
    problem as it was posed. ``reduced`` (per column) and ``prices`` (per row) are the duals of a
    linear solve, empty after a whole-number one.
    """

    status: Status
    values: Array | None
    bound: float
    reduced: Array
    prices: Array
