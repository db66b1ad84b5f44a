"""What is denied without whole numbers, against the answers in whole numbers."""

from __future__ import annotations

from pathlib import Path

import pytest

from loadplan import read_day
from loadplan.plan.clock import Clock
from loadplan.plan.sets import sets_of
from loadplan.shortfall.near import near
from loadplan.shortfall.servable import Servable
from tests.bench.sheet import write_workbook
from tests.system.small_days import small_day

SECONDS = 30.0


@pytest.mark.parametrize("seed", [1, 3, 9, 25])
def test_a_denial_holds_in_whole_numbers(seed: int, tmp_path: Path) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(small_day(seed), path)
    day = read_day(path)
    sets = sets_of(day)
    ask = Servable.of(day, sets, Clock(600), [load.id for load in day.loads])
    loads = [one.load.id for one in sets.loads if one.possible]
    relaxed = ask.relaxed(loads)
    denied = 0
    for load in loads:
        for asked in (near(day, loads, load), [one for one in loads if one != load]):
            for free in ((), ask.kinds[::2], ask.kinds):
                denial = relaxed.denial(asked, free, SECONDS)
                if denial is None:
                    continue
                denied += 1
                plenty = [kind for kind in ask.kinds if kind not in denial.kinds]
                assert set(denial.loads) <= set(asked)
                assert not set(denial.kinds) & set(free)
                assert ask.can(denial.loads, plenty) is False
    assert denied
