"""What the rest of a set costs at least: a bound for walking through an article's sets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """One assembly as the bound sees it: ``costs[n - 1]`` is the price of n tie-downs of it.

    ``value`` is what each adds to the article's need. It can be taken ``len(costs)`` times at most.
    """

    value: int
    costs: tuple[float, ...]


@dataclass(slots=True, eq=False)
class Ahead:
    """The least price of the tie-downs still lacking, from each place on in a list of offers.

    A relaxation: every offer is taken whole or in part for itself, whatever gear it shares with
    others, and values are rounded up to one of ``parts`` of the need. No set costs less.
    """

    need: int
    fewest: int
    offers: Sequence[Offer]
    parts: int
    _least: Array = field(init=False)
    _rows: dict[tuple[int, int], list[float]] = field(init=False, default_factory=dict)
    _seen: dict[tuple[int, int], list[float]] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        offers = self.offers
        counts, parts, pad = self.fewest + 1, self.parts + 1, max(1, self.fewest)
        least = np.full((len(offers) + 1, counts, parts), np.inf)
        least[-1, 0, 0] = 0.0
        wide = np.empty((pad + counts, 2 * parts))
        # From the last offer to the first.
        for at in range(len(offers) - 1, -1, -1):
            after, here = least[at + 1], least[at]
            # Beyond nothing lacking there is nothing lacking: the edges are repeated.
            wide[pad:, parts:] = after
            wide[pad:, :parts] = after[:, :1]
            wide[:pad] = wide[pad]
            here[:] = after
            for number, cost in enumerate(offers[at].costs, 1):
                gain = min(parts, -(-number * offers[at].value * self.parts // self.need))
                top, left = pad - min(number, pad), parts - gain
                np.minimum(here, wide[top : top + counts, left : left + parts] + cost, out=here)
        self._least = np.ascontiguousarray(least.transpose(1, 2, 0))

    def least(self, number: int, value: int) -> list[float]:
        """From each place on, the least price of ``number`` tie-downs worth ``value``."""
        asked = number, value
        if asked not in self._seen:
            parts = min(self.parts, max(0, -(-value * self.parts // self.need)))
            key = (min(self.fewest, max(0, number)), parts)
            if key not in self._rows:
                self._rows[key] = self._least[key].tolist()
            self._seen[asked] = self._rows[key]
        return self._seen[asked]
