"""Moments that matter for a pool, by hand."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.cliques import cliques


def test_gear_that_is_back_at_a_moment_goes_out_again_at_it() -> None:
    moments, spans = cliques([(6, 9), (9, 12)])
    assert moments == [6, 9]
    assert spans == [(0, 0), (1, 1)]


def test_departures_without_a_return_between_them_are_one_moment() -> None:
    moments, spans = cliques([(6, 12), (7, 10), (11, 13)])
    assert moments == [7, 11]
    assert spans == [(0, 1), (0, 0), (1, 1)]


@given(st.lists(st.tuples(st.integers(0, 30), st.integers(1, 10)), max_size=12))
def test_every_departure_is_covered_by_a_moment_with_all_that_are_out(
    raw: list[tuple[int, int]],
) -> None:
    trips = [(out, out + long) for out, long in raw]
    moments, spans = cliques(trips)
    at = [{n for n, (a, b) in enumerate(spans) if a <= r <= b} for r in range(len(moments))]
    for moment, there in zip(moments, at, strict=True):
        assert there == {n for n, (out, free) in enumerate(trips) if out <= moment < free}
    for out, _ in trips:
        together = {n for n, (a, b) in enumerate(trips) if a <= out < b}
        assert any(together <= there for there in at)
