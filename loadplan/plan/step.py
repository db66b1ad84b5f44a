"""The step between values: the greatest amount that all of them are whole numbers of."""

from __future__ import annotations

import math
from collections.abc import Collection
from fractions import Fraction


def common_step(values: Collection[Fraction]) -> Fraction:
    """The greatest amount that every one of ``values`` is a whole number of; 0 where all are 0."""
    scale = math.lcm(*(value.denominator for value in values))
    return Fraction(math.gcd(*(int(value * scale) for value in values)), scale)
