"""A plan held against the least there is."""

from __future__ import annotations

from loadplan.outcome.day_plan import DayPlan


def order(plan: DayPlan) -> list[float]:
    """The stages' values, the smaller the better."""
    return [float(-one.value if one.greatest else one.value) for one in plan.stages]


def held_against(plan: DayPlan, least: DayPlan) -> None:
    """``plan`` is no better than the least, and as good where it says so."""
    assert order(plan) >= order(least)
    for mine, known in zip(plan.stages, least.stages, strict=True):
        assert mine.bound >= known.value if mine.greatest else mine.bound <= known.value
        if not mine.proved:
            break
        assert mine.value == known.value
