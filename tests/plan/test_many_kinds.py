"""Days with little of each of many kinds: prices give way to the compact program.

Held against the independent reader and model in ``tests/oracle``.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from loadplan.api import plan_day
from loadplan.plan.compact import Compact
from loadplan.plan.master import Master
from loadplan.plan.selection import Selection
from loadplan.workbook.read import read_day
from tests.bench.many_kinds import many_kinds
from tests.bench.sheet import write_workbook
from tests.oracle.day import read_day as read_apart
from tests.oracle.optimum import optimum

LIMIT = 120


@pytest.mark.parametrize(
    ("seed", "factor", "anchors"),
    [(1, 0.5, True), (1, 0.75, True), (2, 0.5, True), (2, 0.75, False), (4, 0.75, True)],
)
def test_the_least_of_every_stage(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, seed: int, factor: float, anchors: bool
) -> None:
    asked: list[Compact] = []

    def of(master: Master, selection: Selection) -> Compact:
        asked.append(made(master, selection))
        return asked[-1]

    made = Compact.of
    monkeypatch.setattr(Compact, "of", of)
    path = tmp_path / "day.xlsx"
    write_workbook(many_kinds(4, seed, factor, anchors), path)
    plan = plan_day(read_day(path), time_limit=LIMIT)
    assert asked, "the day is one of those the compact program is for"
    assert all(stage.proved for stage in plan.stages)
    best = optimum(read_apart(path), LIMIT)
    assert [stage.value for stage in plan.stages] == best.values


def test_time_up_says_what_is_not_proved(tmp_path: Path) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(many_kinds(25, 3, 0.75), path)
    plan = plan_day(read_day(path), time_limit=1)
    assert not plan.stages[-1].proved
    for stage in plan.stages:
        better = stage.value - stage.bound if stage.greatest else stage.bound - stage.value
        assert better <= 0, "no plan beats its bound"
