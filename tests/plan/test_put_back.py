"""Loads put back: as they were, in order, and only as far as there is gear."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from loadplan.day.load import Load
from loadplan.judge.judge import judge
from loadplan.plan.afresh import Afresh
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.decode import decode
from loadplan.plan.greedy import greedy
from loadplan.plan.put_back import put_back
from loadplan.plan.stage_cost import TIE_DOWNS
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.plan.build import binder, chain, day, machine
from tests.plan.test_fill import bounder_of


@pytest.mark.parametrize("seed", range(1, 5))
def test_all_go_again_as_they_were_where_nothing_took_their_gear(seed: int, tmp_path: Path) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(20, seed, tight=True), path)
    bounder = bounder_of(read_day(path))
    master, values = bounder.master, greedy(bounder.master)
    loads = np.nonzero(values[master.going])[0].tolist()
    assert len(loads) >= 10
    without = np.where(np.isin(master.traits.load, loads[::2]), 0.0, values)
    assert without[master.going].sum() == len(loads) - len(loads[::2])
    assert (put_back(master, without, values, loads[::2]) == values).all()


@pytest.mark.parametrize("order", [[0, 1], [1, 0]])
def test_there_is_gear_for_the_first_of_two_beside_a_third(order: list[int]) -> None:
    loads = [Load(id=name, out=0, back=8) for name in "123"]
    machines = [machine(f"M{load.id}", load.id, 16_000) for load in loads]
    one = day(loads, machines, [chain("C", 6600, 8), binder("B", 5400, 8)])
    bounder = bounder_of(one)
    master = bounder.master
    search = CompleteSearch.of(master, patterns=False, pairs=False)
    none = np.zeros(len(master.upper))
    both = Afresh(search, none, [0, 1], {1: 2}).least(TIE_DOWNS, 1.0, np.inf, 30.0)
    third = Afresh(search, none, [2], {1: 1}).least(TIE_DOWNS, 1.0, np.inf, 30.0)
    assert both is not None
    assert third is not None
    assert np.round(third[master.going]).tolist() == [0, 0, 1]
    found = put_back(master, third, both, order)
    goes = np.round(found[master.going]).tolist()
    assert goes == [order == [0, 1], order == [1, 0], 1]
    assert judge(one, *decode(master, found)).disagreements == ()
