"""Whether the pieces that were already on are where they were."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from tests.oracle.day import Day, Fixed
from tests.oracle.results import Results, TieDown


def fixed_faults(day: Day, results: Results) -> Iterator[str]:
    """Every tie-down begun on a ready load is completed by one of its own there."""
    for fixed in day.fixed:
        if fixed.load not in results.ready:
            continue
        there = [
            t
            for t in results.tie_downs
            if (t.article, t.position, t.number) == (fixed.article, fixed.position, fixed.number)
        ]
        if not any(_holds(one, fixed) for one in there):
            yield f"{fixed.article}, {fixed.position} {fixed.number}: {fixed.pieces} not kept"


def _holds(one: TieDown, fixed: Fixed) -> bool:
    return not Counter(fixed.pieces) - one.pieces
