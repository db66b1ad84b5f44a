"""The selection's bounds, held against every set of loads there is."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loadplan.plan.selection import Cut, Selection
from loadplan.plan.stage_cost import STRENGTH

LOADS = 5
weights = st.lists(st.integers(-100, 100), min_size=LOADS, max_size=LOADS)


@settings(deadline=None)
@pytest.mark.parametrize("size", [1, 1_000, 100_000])
@given(
    cuts=st.lists(st.tuples(weights, st.integers(-100, 500)), min_size=1, max_size=4),
    ready=st.integers(0, LOADS),
)
def test_values_however_great(size: int, cuts: list[tuple[list[int], int]], ready: int) -> None:
    """Up to fifty million, as the rated strength of a thousand loads."""
    selection = Selection(np.ones(LOADS, dtype=int), np.ones(LOADS), ready={1: ready})
    selection.values[STRENGTH.name] = [
        Cut(size * np.array(one, dtype=float), size * float(limit), 0) for one, limit in cuts
    ]
    goes, bound = selection.least(STRENGTH, 10.0, 0.1)
    every = (np.array(one) for one in product((0, 1), repeat=LOADS) if sum(one) >= ready)
    least = min(
        max(0, *(size * (limit - int(np.dot(one, chosen))) for one, limit in cuts))
        for chosen in every
    )
    assert goes is not None
    assert bound <= least + 1e-6
    # The solver may end a tenth of a step early, and the unit takes its share.
    assert bound >= least - 0.1 - 0.002
