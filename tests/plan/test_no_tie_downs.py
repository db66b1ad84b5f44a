"""An article that is held otherwise takes no tie-down, and makes up for no mixed set of another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from loadplan.day.article import Article, CargoClass
from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.plan import solve_day
from loadplan.plan.small import SmallSolve
from tests.plan.build import binder, chain, day, machine


def box(load: str) -> Article:
    """A container on the locks of its chassis."""
    plain = machine(f"B{load}", load, 40_000)
    return replace(plain, cargo_class=CargoClass.INTERMODAL_CONTAINER, details="chassis")


def mixing_issues_less() -> Day:
    """A container and a machine for which two weak and two strong chains issue least."""
    gear = [chain("s", 2500, 2), chain("l", 3000, 9), binder("b", 3000, 9)]
    return day([Load(id="1"), Load(id="2")], [box("1"), machine("M", "2", 10_000)], gear)


def by_prices(monkeypatch: pytest.MonkeyPatch) -> None:
    """As the day is planned by itself."""


def as_a_large_day(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)


def by_the_compact_program(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(SmallSolve, "_bounded", lambda self: False)


@pytest.mark.parametrize("way", [by_prices, as_a_large_day, by_the_compact_program])
def test_another_article_is_mixed_no_more_for_it(way, monkeypatch: pytest.MonkeyPatch) -> None:
    way(monkeypatch)
    plan = solve_day.solve_day(mixing_issues_less())
    assert plan.proved
    assert [int(stage.value) for stage in plan.stages] == [2, 4, 0, 4 * 3000 + 4 * 3000]
    assert {one.member for one in plan.tie_downs} == {"l"}


def test_a_day_of_nothing_else_is_proved_with_no_tie_down() -> None:
    plan = solve_day.solve_day(day([Load(id="1")], [box("1")], []))
    assert plan.proved
    assert [int(stage.value) for stage in plan.stages] == [1, 0, 0, 0]
