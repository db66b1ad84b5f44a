"""The rows of limits on gear against what each column takes, one by one."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.master import Master
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.start import starting_sets
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook


@pytest.fixture
def master(tmp_path: Path) -> Master:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(9, 3, tight=True), path)
    arrays = Arrays(sets_of(read_day(path)))
    found = Master(arrays, build(arrays.sets, complete=False), Clock(60))
    found.add_sets(starting_sets(found))
    found.keep_every_limit()
    return found


def test_each_row_has_what_the_loads_out_then_take(master: Master) -> None:
    pools, traits, matrix = master.arrays.pools, master.traits, master.solver.matrix()
    rows = np.zeros((master.solver.rows, master.solver.columns))
    for column in range(master.solver.columns):
        span = slice(int(matrix.starts[column]), int(matrix.starts[column + 1]))
        rows[matrix.places[span], column] = matrix.coefficients[span]
    assert master.limits.pool
    for (moment, gear), row in master.limits.pool.items():
        out = (pools.first[traits.load] <= moment) & (moment <= pools.last[traits.load])
        assert rows[row].tolist() == (out * traits.uses[:, gear]).tolist()
        assert matrix.row_upper[row] == pools.usable[moment, gear]


def test_no_limit_that_columns_could_break_is_left_out(master: Master) -> None:
    pools, traits = master.arrays.pools, master.traits
    for moment in range(len(pools.moments)):
        out = (pools.first[traits.load] <= moment) & (moment <= pools.last[traits.load])
        most = (out * master.upper) @ traits.uses
        for gear in np.nonzero((most > pools.usable[moment]) & ~pools.kit)[0]:
            assert (moment, int(gear)) in master.limits.pool


def test_a_limit_is_kept_once(master: Master) -> None:
    before = master.solver.rows
    master.keep_every_limit()
    assert master.solver.rows == before


@pytest.mark.parametrize("share", [0.0, 0.25])
def test_spread_limits_keep_back_a_share_of_every_pool(master: Master, share: float) -> None:
    pools, traits = master.arrays.pools, master.traits
    (cage,) = np.nonzero(~pools.kit)
    rows = master.limits.spread(traits, 2, share)
    assert len(rows) == 2 * len(cage) + int(pools.kit.sum()) * len(pools.first)
    number = len(pools.moments)
    expected = [(moment, gear) for moment in (number // 4, 3 * number // 4) for gear in cage]
    for (moment, gear), (columns, weights, most) in zip(expected, rows, strict=False):
        usable = int(pools.usable[moment, gear])
        assert most == usable - round(share * usable)
        out = (pools.first[traits.load] <= moment) & (moment <= pools.last[traits.load])
        taken = np.where(out, traits.uses[:, gear], 0)
        assert (np.nonzero(taken)[0] == columns).all()
        assert (taken[columns] == weights).all()
