"""Plans of small days whose best plan is known by a hand sum."""

from __future__ import annotations

from fractions import Fraction

import pytest

from loadplan.api import plan_day
from loadplan.day.load import Load
from loadplan.outcome.day_plan import DayPlan
from loadplan.plan.small import SmallSolve
from tests.plan.build import binder, chain, day, machine


def values(plan: DayPlan) -> list[Fraction]:
    assert plan.proved
    return [stage.value for stage in plan.stages]


def test_one_machine_takes_one_tie_down_at_each_corner() -> None:
    # 16,000 lb asks for 8,000; four chains of 6,600 with binders of 5,400 direct credit
    # 4 x 1/2 x 5,400 = 10,800. Strength issued 4 x (6,600 + 5,400) = 48,000.
    plan = plan_day(
        day(
            [Load(id="1")], [machine("M", "1", 16_000)], [chain("C", 6600, 4), binder("B", 5400, 4)]
        )
    )
    assert values(plan) == [1, 4, 0, 48_000]
    assert [t.position for t in plan.tie_downs] == [
        "front left",
        "front right",
        "rear left",
        "rear right",
    ]


def test_heavy_gear_stays_in_the_cage_when_light_gear_will_do() -> None:
    gear = [chain("heavy", 6600, 4), chain("light", 4000, 4), binder("B", 5400, 8)]
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 12_000)], gear))
    # 12,000 / 2 = 6,000 <= 4 x 1/2 x 4,000 = 8,000; 4 x (4,000 + 5,400) = 37,600.
    assert values(plan) == [1, 4, 0, 37_600]
    assert {t.member for t in plan.tie_downs} == {"light"}


def test_a_mixed_set_costs_and_is_taken_only_to_save_a_tie_down() -> None:
    gear = [chain("heavy", 6600, 2), chain("light", 4000, 4), binder("B", 6600, 8)]
    # 20,000 / 2 = 10,000: 2 x 3,300 + 2 x 2,000 = 10,600 with four; light alone would need five.
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 20_000)], gear))
    assert values(plan) == [1, 4, 1, 2 * 6600 + 2 * 4000 + 4 * 6600]


@pytest.mark.parametrize(("turnaround", "ready"), [(0, 2), (60, 1)])
def test_gear_is_free_exactly_at_back_plus_turnaround(turnaround: int, ready: int) -> None:
    loads = [Load(id="am", out=6 * 3600, back=12 * 3600), Load(id="pm", out=12 * 3600)]
    plan = plan_day(
        day(
            loads,
            [machine("M1", "am", 10_000), machine("M2", "pm", 10_000)],
            [chain("C", 6600, 4), binder("B", 6600, 4)],
            turnaround,
        )
    )
    assert len(plan.ready) == ready
    assert plan.proved


def test_the_first_priority_goes_before_two_of_the_second() -> None:
    loads = [Load(id="a", priority=1), Load(id="b", priority=2), Load(id="c", priority=2)]
    articles = [
        machine("A", "a", 60_000, 30),
        machine("B", "b", 10_000),
        machine("C", "c", 10_000),
    ]
    # 60,000 / 2 = 30,000 = 8 x 1/2 x 7,500: the first load alone takes all eight.
    gear = [chain("C", 7500, 8), binder("B", 7500, 8)]
    plan = plan_day(day(loads, articles, gear))
    assert plan.ready == ("a",)
    assert values(plan)[:3] == [1, 0, 8]
    assert {(s.load, s.pieces, s.short_of) for s in plan.shortages} == {
        (load, 4, words)
        for load in ("b", "c")
        for words in (
            "3/8 in chain, 7,500 lb or more (such as C)",
            "lever binder for 3/8 in chain, 7,500 lb or more (such as B)",
        )
    }


def test_an_aggregate_exactly_equal_to_the_need_is_enough_and_a_pound_more_is_not() -> None:
    # Common practice, no source: four direct tie-downs of 4,000 lb hold up to 16,000 lb.
    gear = [chain("C", 4000, 4), binder("B", 7000, 4)]
    assert len(plan_day(day([Load(id="1")], [machine("M", "1", 16_000)], gear)).ready) == 1
    held = plan_day(day([Load(id="1")], [machine("M", "1", 16_001)], gear))
    assert held.ready == ()
    assert held.tie_downs == ()


def test_a_load_no_gear_could_hold_says_by_how_much() -> None:
    gear = [chain("C", 4000, 40), binder("B", 7000, 40)]
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 60_000)], gear))
    (shortage,) = plan.shortages
    assert shortage.why == (
        "aggregate WLL: 30,000 is needed; with the strongest gear that suits it at every place "
        "it would reach 24,000."
    )


def test_the_same_day_gives_the_same_plan_in_any_row_order() -> None:
    loads = [Load(id=str(n)) for n in range(3)]
    articles = [machine(f"M{n}", str(n), 9_000 + 1_500 * n) for n in range(3)]
    gear = [chain("x", 4700, 9), chain("y", 5400, 5), binder("B", 5400, 9), binder("D", 6600, 5)]
    first = plan_day(day(loads, articles, gear))
    again = plan_day(day(loads[::-1], articles[::-1], gear[::-1]))
    assert set(first.tie_downs) == set(again.tie_downs)
    assert first.stages[-1].value == again.stages[-1].value


def test_no_time_is_needed_for_a_load_that_takes_what_it_would_with_all_the_gear() -> None:
    gear = [chain("C", 6600, 4), binder("B", 5400, 4)]
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 16_000)], gear), time_limit=0)
    assert plan.proved
    assert [int(stage.value) for stage in plan.stages] == [1, 4, 0, 4 * 6600 + 4 * 5400]


def test_no_time_at_all_still_gives_a_judged_plan_marked_as_not_proved() -> None:
    gear = [chain("few", 4000, 2), chain("C", 6600, 4), binder("B", 5400, 4)]
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 16_000)], gear), time_limit=0)
    assert plan.ready == ("1",)
    assert not plan.proved
    assert plan.remarks == (
        "The time limit of 0 s came before everything was proved. This is the best plan found; "
        "a better one may exist.",
    )


def test_a_search_that_ends_early_is_not_told_as_the_time_limit(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(SmallSolve, "_run", lambda _: None)
    gear = [chain("few", 4000, 2), chain("C", 6600, 4), binder("B", 5400, 4)]
    plan = plan_day(day([Load(id="1")], [machine("M", "1", 16_000)], gear), time_limit=60)
    assert not plan.proved
    assert plan.remarks == (
        "Not everything could be proved; the search ended before the time limit of 60 s. "
        "This is the best plan found; a better one may exist.",
    )
