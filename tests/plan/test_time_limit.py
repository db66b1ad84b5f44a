"""The time limit holds inside every loop that can run long."""

from __future__ import annotations

import time
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest

from loadplan.day.load import Load
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.master import Master
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solved import Outcome
from loadplan.plan.stage_cost import TIE_DOWNS
from loadplan.plan.start import starting_sets
from loadplan.shortfall.conflicts import conflicts_of
from loadplan.shortfall.servable import Servable
from loadplan.workbook.read import read_day
from tests.bench.sheet import write_workbook
from tests.plan.build import binder, chain, day, machine
from tests.system.small_days import small_day


def test_a_clock_whose_time_is_up_ends_a_loop() -> None:
    with pytest.raises(OutOfTimeError):
        Clock(0.0).tick()


def test_a_clock_with_time_left_lets_it_go_on() -> None:
    Clock(60.0).tick()


def test_a_share_of_the_time_left_ends_sooner_and_is_given_back() -> None:
    clock = Clock(60.0)
    with clock.at_most(0.0), pytest.raises(OutOfTimeError):
        clock.tick()
    clock.tick()


def test_rounds_of_one_linear_solve_share_its_time(monkeypatch: pytest.MonkeyPatch) -> None:
    gear = [chain("C", Fraction(6600), 8), binder("B", Fraction(6600), 8)]
    arrays = Arrays(sets_of(day([Load(id="a")], [machine("A", "a", 10_000)], gear)))
    master = Master(arrays, build(arrays.sets, complete=False), Clock(60))
    master.add_sets(starting_sets(master))
    solve, given = master.solver.relax, []

    def slowly(seconds: float) -> Outcome:
        given.append(seconds)
        time.sleep(0.1)
        return solve(60.0)

    broken = iter([True, True, False])
    monkeypatch.setattr(master.solver, "relax", slowly)
    monkeypatch.setattr(master.limits, "keep_broken", lambda traits, values: next(broken))
    master.relax(TIE_DOWNS, 1.0)
    assert len(given) == 3
    assert all(later <= earlier - 0.1 for earlier, later in pairwise(given))


def test_no_conflict_is_looked_for_without_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(small_day(1), path)
    one = read_day(path)
    loads = [load.id for load in one.loads]
    ask = Servable.of(one, sets_of(one), Clock(0.0), loads)

    def never(self: Servable, loads: object) -> None:
        raise AssertionError("a program is built that there is no time to solve")

    monkeypatch.setattr(Servable, "relaxed", never)
    assert conflicts_of(one, ask, loads[1:], loads[0]) == ([], None)
