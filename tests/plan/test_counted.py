"""What is said of counted articles cuts off no set that a plan could want, and no plan is worse."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations_with_replacement
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.plan import small
from loadplan.plan.compact import Compact
from loadplan.plan.counted import OfPair
from loadplan.plan.counted_rows import strong_ones
from loadplan.plan.reach import Reach, reach_of
from loadplan.plan.small import SmallSolve
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS
from loadplan.plan.stages import strength_step
from loadplan.workbook.read import read_day
from tests.bench.generate import generate
from tests.bench.many_kinds import many_kinds
from tests.bench.sheet import Rows, write_workbook
from tests.oracle.day import read_day as read_apart
from tests.oracle.optimum import optimum
from tests.plan.test_complete_program import optimum as by_patterns
from tests.plan.test_complete_program import tight_day
from tests.plan.test_fill import bounder_of

LIMIT = 120


def reach(values: list[int], need: int, fewest: int) -> Reach:
    return reach_of([Fraction(one) for one in values], Fraction(need), fewest)


def sets_of(one: Reach, most: int) -> Iterator[tuple[int, ...]]:
    """The values of every set of up to ``most`` tie-downs that is enough and spares none."""
    for number in range(one.fewest, most + 1):
        for chosen in combinations_with_replacement(sorted(set(one.values)), number):
            spare = sum(chosen) - one.need
            if spare >= 0 and (number == one.fewest or spare < min(chosen)):
                yield chosen


@given(
    st.lists(st.integers(1, 12), min_size=1, max_size=5),
    st.integers(1, 50),
    st.integers(1, 4),
)
def test_no_set_without_a_tie_down_to_spare_is_cut_off(
    values: list[int], need: int, fewest: int
) -> None:
    one = reach(values, need, fewest)
    least = min(one.alone)
    for chosen in sets_of(one, 7):
        for tier, must in strong_ones(one):
            strong = sum(value >= tier for value in chosen)
            assert strong + must * (len(chosen) - least) >= must


def test_how_many_must_be_strong() -> None:
    # Four tie-downs for 20: 6 + 6 + 4 + 4, or 6 + 6 + 6 + 2; never one of 6 and three of 4. All in
    # their common unit, 2.
    assert list(strong_ones(reach([2, 4, 6], 20, 4))) == [(3, 2), (2, 3)]
    assert list(strong_ones(reach([5], 20, 4))) == []


def test_how_many_of_a_pair() -> None:
    # 4 do alone with the best shackles, 6 with any; beside another pair 5 at the most.
    assert (
        OfPair(least=4, enough=6, pieces=9).alone,
        OfPair(least=4, enough=6, pieces=9).beside,
    ) == (
        6,
        5,
    )
    few = OfPair(least=4, enough=6, pieces=3)
    assert (few.alone, few.beside) == (0, 3)


@pytest.mark.parametrize("seed", range(8))
def test_the_compact_program_has_the_same_optimum(seed: int) -> None:
    one = tight_day(seed)
    assert by_compact(one) == by_patterns(one)


def by_compact(one: Day) -> list[Fraction]:
    """The value of every stage by the compact program alone."""
    bounder = bounder_of(one)
    master, selection = bounder.master, bounder.selection
    selection.ready = {}
    compact, found = Compact.of(master, selection), []
    for priority in (1, 2):
        values = compact.most_ready(priority).values
        assert values is not None
        goes = values[master.going].round()
        selection.ready[priority] = round(float(goes[selection.priority == priority].sum()))
        found.append(Fraction(selection.ready[priority]))
    for stage, step in ((TIE_DOWNS, 1.0), (MIXED_SETS, 1.0), (STRENGTH, strength_step(bounder))):
        outcome = compact.least(stage, step)
        assert outcome.values is not None
        value = master.value(stage, outcome.values)
        found.append(Fraction(round(value)))
        master.add_stage(stage, value)
    return found


def written(rows: Rows, folder: Path) -> Path:
    path = folder / "day.xlsx"
    write_workbook(rows, path)
    return path


@pytest.mark.parametrize(("seed", "factor"), [(2, 0.75), (4, 1.0)])
def test_shackles_of_which_there_are_few(tmp_path: Path, seed: int, factor: float) -> None:
    path = written(many_kinds(3, seed, factor, True, shackles=True), tmp_path)
    plan = plan_day(read_day(path), time_limit=LIMIT)
    assert all(stage.proved for stage in plan.stages)
    best = optimum(read_apart(path), LIMIT)
    assert [stage.value for stage in plan.stages] == best.values


@pytest.mark.parametrize("seed", [2])
@pytest.mark.parametrize("few", [0, 25])
def test_whole_numbers_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, seed: int, few: int
) -> None:
    """The way of days on which no plan is found that reaches every bound."""
    path = written(generate(4, seed, tight=True), tmp_path)
    least = plan_day(read_day(path), time_limit=LIMIT)
    assert least.proved
    asked: list[bool] = []

    def whole(self: SmallSolve, step: float, *, wide: bool) -> None:
        asked.append(wide)
        made(self, step, wide=wide)

    made = SmallSolve._in_whole_numbers
    monkeypatch.setattr(SmallSolve, "_in_whole_numbers", whole)
    monkeypatch.setattr(small, "FIRST_TRY", 0.0)
    monkeypatch.setattr(small, "MOST_LOADS", few)
    plan = plan_day(read_day(path), time_limit=LIMIT)
    assert len(asked) == 1
    proved = [stage.proved for stage in plan.stages]
    assert all(proved[: len(proved) - 2]), "loads ready and tie-downs, even of many loads"
    for stage, other in zip(plan.stages, least.stages, strict=True):
        if stage.proved:
            assert stage.value == other.value
