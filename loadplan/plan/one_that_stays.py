"""Which load that stays is to be let in next."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

_BEST = 0.5  # how often a load of the best priority is let in


def one_that_stays(stay: Sequence[int], priority: Sequence[int], random: Random) -> int:
    """A load of ``stay``, half the time one of the best ``priority`` among them."""
    best = min(priority[load] for load in stay)
    if random.random() < _BEST:
        stay = [load for load in stay if priority[load] == best]
    return random.choice(stay)
