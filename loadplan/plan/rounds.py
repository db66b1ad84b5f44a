"""What rounded limits on gear add to the price of a set, by the pieces of each kind it takes."""

from __future__ import annotations

from collections.abc import Mapping

Rounds = Mapping[tuple[int, int], float]
ByGear = dict[int, list[tuple[int, float]]]


def rounds_by_gear(rounds: Rounds) -> ByGear:
    """The divisors of each kind of gear with their worth, of the price of each ⌊pieces / k⌋."""
    by_gear: ByGear = {}
    for (gear, divisor), worth in rounds.items():
        by_gear.setdefault(gear, []).append((divisor, worth))
    return by_gear


def rounded(rounds: ByGear, gear: int, before: int, after: int) -> float:
    """What the rounded limits add when ``after`` pieces of a kind are used, not ``before``."""
    worth = rounds.get(gear, ())
    return sum(one * (after // divisor - before // divisor) for divisor, one in worth)
