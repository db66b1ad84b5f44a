"""A bound of one stage, and the values that it may have."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Bound:
    """A bound of one stage.

    ``least`` holds for every plan; ``goes`` are the loads that came nearest to it. Infinite and
    None where no set of loads is left.
    """

    least: float
    goes: Array | None


def up(value: float, step: float) -> float:
    """The least multiple of ``step`` not below ``value``, as far as rounding errors let tell.

    Where nothing is known ``value`` is infinite, and stays so.
    """
    if math.isinf(value):
        return value
    return step * math.ceil(value / step - 1e-5)
