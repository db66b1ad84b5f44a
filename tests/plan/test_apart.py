"""A program with pairs and shackles apart has the same least, and its plans are the program's."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

import numpy as np
import pytest

from loadplan.day.load import Load
from loadplan.plan.apart import apart
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.master import Master
from loadplan.plan.matrix import Matrix, matrix_of
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solved import Status
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from tests.plan.build import day, gear_with_shackles, machine

Array = np.ndarray[Any, np.dtype[Any]]
SECONDS = 60.0


def search_of(number: int, *, pairs: bool) -> CompleteSearch:
    """Three loads out at once, two of whose machines take shackles, and little gear."""
    random = Random(number)
    gear = gear_with_shackles(random, 3, 7, 5)
    loads = [Load(id=str(n)) for n in range(3)]
    articles = [
        replace(machine(f"M{n}", str(n), random.randrange(6_000, 13_000, 500)), shackles=ends)
        for n, ends in enumerate((2, 1, 0))
    ]
    sets = sets_of(day(loads, articles, gear))
    master = Master(Arrays(sets), build(sets, complete=False), Clock(SECONDS))
    return CompleteSearch.of(master, patterns=False, pairs=pairs)


def activity(matrix: Matrix, values: Array) -> Array:
    """What each row, given row by row, comes to."""
    rows = np.repeat(np.arange(len(matrix.row_lower)), np.diff(matrix.starts))
    terms = matrix.coefficients * values[matrix.places]
    return np.bincount(rows, weights=terms, minlength=len(matrix.row_lower))


@pytest.mark.parametrize("stage", [TIE_DOWNS, MIXED_SETS, STRENGTH], ids=lambda stage: stage.name)
@pytest.mark.parametrize("number", range(12))
def test_the_same_least_and_a_plan_of_the_program_itself(number: int, stage: StageCost) -> None:
    search = search_of(number, pairs=stage is MIXED_SETS)
    whole = matrix_of(search.program.problem, search.program.variables.all)
    assert len(search.apart.articles) == 2, "the machines with shackles"
    assert len(search.apart.matrix.lower) < len(whole.lower)
    plain = replace(search)
    plain.apart = apart(whole, [])
    for going in ([1, 1, 1], [1, 1, 0], [0, 1, 1], [1, 0, 0]):
        found = []
        for one in (plain, search):
            solver = one.solver()
            solver.bound_columns(one.going, np.array(going, float), np.array(going, float))
            solver.price(one.cost(stage))
            outcome = solver.solve(SECONDS, 1.0)
            found.append(outcome.status)
            if outcome.values is not None:
                values = one.apart.values(outcome.values)
                sums = activity(whole, values)
                assert (sums >= whole.row_lower - 1e-6).all()
                assert (sums <= whole.row_upper + 1e-6).all()
                found.append(round(float(plain.cost(stage) @ values), 6))
        assert found[: len(found) // 2] == found[len(found) // 2 :]
        assert Status.LIMIT not in found


def test_a_weight_that_is_neither_a_sum_nor_a_strengths_leaves_an_article_as_it_is() -> None:
    search = search_of(1, pairs=False)
    whole = matrix_of(search.program.problem, search.program.variables.all)
    odd = whole.coefficients.copy()
    first, second = search.apart.articles
    (entries,) = np.nonzero(whole.places == first.z[0, 0])
    odd[entries] += 0.25
    split = apart(replace(whole, coefficients=odd), [first, second])
    assert split.articles == (second,)
