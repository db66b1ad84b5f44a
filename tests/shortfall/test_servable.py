"""Questions of a day: at other times, and with plans that are judged."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from loadplan import read_day
from loadplan.day.day import Day
from loadplan.day.gear import FixedPiece
from loadplan.judge.judge import judge
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.sets import sets_of
from loadplan.shortfall.delay import moved
from loadplan.shortfall.servable import Servable
from tests.bench.sheet import write_workbook
from tests.shortfall.test_explain import two_loads
from tests.system.small_days import small_day


def asked(day: Day) -> Servable:
    return Servable.of(day, sets_of(day), Clock(600), [load.id for load in day.loads])


@pytest.mark.parametrize("seed", [2, 5, 11])
def test_a_day_at_other_times_is_the_same_program_as_one_made_for_it(
    seed: int, tmp_path: Path
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(small_day(seed), path)
    day = read_day(path)
    ask = asked(day)
    for load, minutes in ((day.loads[0], 95), (day.loads[-1], 240)):
        later = moved(day, load.id, minutes)
        here, fresh = ask.at_times_of(later, Clock(600)).program, asked(later).program
        assert here.day.load_by_id == later.load_by_id
        for name in ("lower", "upper", "row_lower", "row_upper", "starts", "places"):
            assert np.array_equal(getattr(here.matrix, name), getattr(fresh.matrix, name))
        assert np.array_equal(here.matrix.coefficients, fresh.matrix.coefficients)


def test_a_plan_at_other_times_is_judged_ready() -> None:
    # a and b take 8 of 6 binders while both are out, and go one after the other.
    day = two_loads()
    ask, later = asked(day), moved(day, "b", 120)
    assert ask.plan(["a", "b"]) is None
    plan = ask.at_times_of(later, Clock(600)).plan(["a", "b"])
    assert plan is not None
    ready, tie_downs = plan
    assert (set(ready), len(tie_downs)) == ({"a", "b"}, 8)
    assert not judge(later, ready, tie_downs).disagreements
    assert judge(day, ready, tie_downs).disagreements


def test_a_plan_of_some_loads_has_no_others() -> None:
    plan = asked(two_loads()).plan(["b"])
    assert plan is not None
    assert (plan[0], {one.load for one in plan[1]}) == (("b",), {"b"})


def test_gear_already_on_a_load_is_out_with_it_at_the_new_time() -> None:
    # Three binders are on a: b lacks one of its four until a is back or has not left.
    on = [
        FixedPiece(load="a", article="A", position=at, number=1, gear=gear)
        for at in ("front left", "front right", "rear left")
        for gear in ("C", "B38")
    ]
    day = replace(two_loads(), fixed=tuple(on))
    ask = asked(day)
    assert ask.plan(["b"]) is None
    assert ask.at_times_of(moved(day, "b", 120), Clock(600)).plan(["b"]) is not None


def test_no_time_is_told() -> None:
    day = two_loads()
    with pytest.raises(OutOfTimeError):
        asked(day).at_times_of(day, Clock(0)).plan(["a"])
