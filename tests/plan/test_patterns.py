"""Minimal patterns against an exhaustive list."""

from __future__ import annotations

from itertools import combinations_with_replacement

from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.patterns import minimal_patterns


def test_four_tie_downs_of_two_tiers_by_hand() -> None:
    # 4 x 2,000 = 8,000 and 3 x 3,000 + 2,000 = 11,000: a need of 10,500 takes three strong ones.
    assert minimal_patterns([3000, 2000], 10_500, 4, 10) == [(3, 4)]


def test_too_many_patterns_are_left_to_the_covering_row() -> None:
    assert minimal_patterns([7, 5, 3, 2], 17, 4, 1) is None


@given(
    st.lists(st.integers(1, 12), min_size=1, max_size=4, unique=True),
    st.integers(1, 4),
    st.integers(1, 40),
)
def test_patterns_are_exactly_the_minimal_multisets(
    values: list[int], size: int, need: int
) -> None:
    tiers = sorted(values, reverse=True)
    enough = [
        chosen
        for chosen in combinations_with_replacement(range(len(tiers)), size)
        if sum(tiers[n] for n in chosen) >= need
    ]
    counts = {tuple(sum(n <= tier for n in c) for tier in range(len(tiers))) for c in enough}
    least = {
        one
        for one in counts
        if not any(
            other != one and all(a <= b for a, b in zip(other, one, strict=True))
            for other in counts
        )
    }
    assert set(minimal_patterns(tiers, need, size, 1000) or []) == least
