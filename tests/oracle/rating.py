"""What one piece is good for: marked, else the table, else one third of its breaking strength."""

from __future__ import annotations

import math
from fractions import Fraction

from tests.oracle.cells import Size
from tests.oracle.tables import look_up


def rate(
    kind: str,
    grade: str,
    size: Size | None,
    marked: Fraction | None,
    breaking: Fraction | None,
    metric: bool,
) -> Fraction | None:
    """The WLL in the day's unit; None is unknown."""
    if marked is not None:
        return marked
    default = look_up(kind, grade, size) if size is not None else None
    if default is not None:
        return Fraction(default[0] if metric else default[1])
    if breaking is not None:
        # To the nearest whole unit; a half goes down.
        return Fraction(math.ceil(breaking / 3 - Fraction(1, 2)))
    return None
