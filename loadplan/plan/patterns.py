"""Tier patterns: the fewest-strength ways in which mixed tie-downs can reach a need.

A tier is one value that a tie-down of an article can have. A pattern says how many tie-downs an
article has at each tier or above, and is minimal: lower one of them by a tier and the need is
missed. Any set of tie-downs that reaches the need is at least as strong, tier by tier, as some
minimal pattern of its size.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

_MOST_STEPS = 20_000


def minimal_patterns(
    tiers: Sequence[int], need: int, size: int, most: int
) -> list[tuple[int, ...]] | None:
    """All minimal patterns of ``size`` tie-downs, or None where there are more than ``most``.

    ``tiers`` are the distinct values from the greatest to the least; ``need`` is in the same
    whole units. Each pattern holds, per tier, the number of tie-downs at that tier or above.
    """
    steps = iter(range(_MOST_STEPS))
    try:
        found = list(islice(_minimal(tiers, need, size, 0, steps), most + 1))
    except _TooManyError:
        return None
    if len(found) > most:
        return None
    return [_cumulate(chosen, len(tiers)) for chosen in found]


class _TooManyError(Exception):
    """The search for patterns took more steps than it is worth."""


def _minimal(
    tiers: Sequence[int], need: int, size: int, start: int, steps: Iterator[int]
) -> Iterator[tuple[int, ...]]:
    """Tier indices, never falling (strongest first), of the minimal patterns from ``start`` on."""
    if next(steps, None) is None:
        raise _TooManyError
    if size == 0:
        if need <= 0:
            yield ()
        return
    for index in range(start, len(tiers)):
        if tiers[index] * size < need:
            return
        for rest in _minimal(tiers, need - tiers[index], size - 1, index, steps):
            chosen = (index, *rest)
            if _is_minimal(tiers, need, chosen):
                yield chosen


def _is_minimal(tiers: Sequence[int], need: int, chosen: tuple[int, ...]) -> bool:
    """Whether lowering any one of ``chosen`` by a tier misses ``need``."""
    spare = sum(tiers[index] for index in chosen) - need
    last = len(tiers) - 1
    return all(index == last or tiers[index] - tiers[index + 1] > spare for index in set(chosen))


def _cumulate(chosen: tuple[int, ...], tiers: int) -> tuple[int, ...]:
    return tuple(sum(1 for index in chosen if index <= tier) for tier in range(tiers))
