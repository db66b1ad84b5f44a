"""Conflicts and ways out of generated days, held against an optimum found independently."""

from __future__ import annotations

from pathlib import Path

import pytest

from loadplan import read_day
from loadplan.api import plan_day
from loadplan.outcome.held import Conflict
from loadplan.shortfall import planned, servable
from loadplan.shortfall.explain import _OPEN, _UNSETTLED
from loadplan.terminal import summary
from tests.bench.sheet import Rows, write_workbook
from tests.oracle.day import read_day as read_apart
from tests.oracle.optimum import optimum
from tests.system.small_days import small_day

SEEDS = (1, 3, 9, 25)


def rows_of(rows: Rows, loads: set[str], more: dict[str, int]) -> Rows:
    """The day with ``loads`` alone and so many ``more`` pieces of each kind."""
    cargo = [row for row in rows["Cargo"] if str(row["Load"]).strip().casefold() in loads]
    articles = {row["Article"] for row in cargo}
    return {
        name: [
            {**row, "Quantity": int(str(row["Quantity"] or 1)) + more.get(str(row["Gear"]), 0)}
            if name == "Gear"
            else row
            for row in (cargo if name == "Cargo" else sheet)
            if name != "Loads" or str(row["Load"]).strip().casefold() in loads
            if name != "Added weight" or row["Article"] in articles
        ]
        for name, sheet in rows.items()
    }


def all_go(rows: Rows, loads: set[str], more: dict[str, int], folder: Path) -> bool:
    """Whether the second opinion has every one of ``loads`` ready."""
    path = folder / "part.xlsx"
    write_workbook(rows_of(rows, loads, more), path)
    best = optimum(read_apart(path), 30)
    assert best.stages
    return len(best.ready) == len(loads)


def check(rows: Rows, one: Conflict, folder: Path) -> None:
    """Together they cannot go, without any one of them they can, with the need they can."""
    assert one.irreducible
    assert one.least
    loads = {load.casefold() for load in one.loads}
    plenty = {str(row["Gear"]): 99 for row in rows["Gear"] if str(row["Gear"]) not in one.gear}
    assert not all_go(rows, loads, {}, folder)
    assert not all_go(rows, loads, plenty, folder)
    for load in loads:
        assert len(loads) == 1 or all_go(rows, loads - {load}, {}, folder)
    for kind in one.gear:
        assert all_go(rows, loads, {**plenty, kind: 99}, folder)
    short = one.need - one.usable
    if len(one.gear) == 1:
        assert all_go(rows, loads, {**plenty, one.gear[0]: short}, folder)
        assert not all_go(rows, loads, {**plenty, one.gear[0]: short - 1}, folder)


@pytest.mark.parametrize("seed", SEEDS)
def test_conflicts_of_small_days(seed: int, tmp_path: Path) -> None:
    rows = small_day(seed)
    path = tmp_path / "day.xlsx"
    write_workbook(rows, path)
    plan = plan_day(read_day(path))
    found = [one.conflicts[0] for one in plan.explained if one.conflicts]
    assert found
    for one in found:
        check(rows, one, tmp_path)


def test_of_too_many_loads_nothing_is_said_to_be_known(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(small_day(SEEDS[0]), path)
    day = read_day(path)
    settled = plan_day(day)
    for module in (servable, planned):
        monkeypatch.setattr(module, "MOST_TOGETHER", 1)
    plan = plan_day(day)
    assert plan.held == settled.held
    together = [one.load for one in settled.explained if any(c.loads[1:] for c in one.conflicts)]
    assert together
    for one in plan.explained:
        if one.load in together:
            assert not one.conflicts
            assert one.why == _UNSETTLED
            assert not one.ways
            assert _OPEN in one.remarks
            told = next(line for line in summary(plan) if f"held: {one.load} " in line)
            assert "no way out was found" not in told
            assert "plan again with a longer time limit" in told
