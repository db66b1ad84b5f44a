"""What a search at one set of ready loads came to."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]


class Ending(Enum):
    """How the search at one set of loads ended."""

    LEAST = auto()  # found, and nothing there is less
    NONE = auto()  # nothing there beats what it had to beat
    OPEN = auto()  # time or size ran out first


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """The least found at one set of loads; ``values`` None where nothing beat the target.

    No plan for these loads is worth less than ``bound``.
    """

    ending: Ending
    value: float
    values: Array | None
    bound: float = -math.inf
