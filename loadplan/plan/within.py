"""Which assemblies could be in a set that costs little enough."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from loadplan.plan.blocks import Block

Array = np.ndarray[Any, np.dtype[Any]]
_SLACK = 1e-7
_ROUNDING = 1e-9
_MIXES = np.linspace(0.0, 1.0, 6)[:, None]  # of need and count, in what a tie-down is worth


def places_within(block: Block, price: list[float], budget: float) -> Array:
    """Marks the main places of ``block`` that could be in a set that costs ``budget`` at most.

    ``price`` is that of one tie-down at each place. By fractions: let a tie-down at place a be
    worth w_a = m · its share of the need + (1 − m) / count, for any m from 0 to 1. A set is worth 1
    or more and so costs at least β = min price_a / w_a; with place a in it, price_a + (1 − w_a) β.
    """
    main, fewest = np.array(price[: block.main]), block.reach.fewest
    if block.apart or not len(main) or budget == math.inf:
        return np.asarray(main <= budget)
    share = np.minimum(block.value[: block.main], 1.0)
    mixes = _MIXES if fewest else _MIXES[-1:]
    worth = mixes * share + (1.0 - mixes) / max(1, fewest)
    least = (main / worth).min(axis=1, keepdims=True)
    bound = (main + np.maximum(0.0, 1.0 - worth) * least).max(axis=0)
    return np.asarray(bound <= budget + _SLACK + _ROUNDING * abs(budget))
