"""The selection's bounds, held against every set of loads there is."""

from __future__ import annotations

from itertools import product
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loadplan.plan.bound import up
from loadplan.plan.selection import Cut, Selection
from loadplan.plan.settle import Settling
from loadplan.plan.stage_cost import STRENGTH, ready_stages

LOADS = 5
weights = st.lists(st.integers(-100, 100), min_size=LOADS, max_size=LOADS)


@settings(deadline=None)
@pytest.mark.parametrize("size", [1, 1_000, 100_000])
@given(
    cuts=st.lists(st.tuples(weights, st.integers(-100, 500)), min_size=1, max_size=4),
    ready=st.integers(0, LOADS),
)
def test_values_however_great(size: int, cuts: list[tuple[list[int], int]], ready: int) -> None:
    """Up to fifty million, as the rated strength of a thousand loads."""
    selection = Selection(np.ones(LOADS, dtype=int), np.ones(LOADS), ready={1: ready})
    selection.values[STRENGTH.name] = [
        Cut(size * np.array(one, dtype=float), size * float(limit), 0) for one, limit in cuts
    ]
    goes, bound = selection.least(STRENGTH, 10.0, 0.1)
    every = (np.array(one) for one in product((0, 1), repeat=LOADS) if sum(one) >= ready)
    least = min(
        max(0, *(size * (limit - int(np.dot(one, chosen))) for one, limit in cuts))
        for chosen in every
    )
    assert goes is not None
    assert bound <= least + 1e-6
    # The solver may end a tenth of a step early, and the unit takes its share.
    assert bound >= least - 0.1 - 0.002


@settings(deadline=None)
@given(cuts=st.lists(st.tuples(weights, st.integers(-100, 500)), max_size=4))
def test_the_most_so_far_is_never_too_few(cuts: list[tuple[list[int], int]]) -> None:
    """Against every set of loads, of which some cannot go and three are of a later priority."""
    priority, possible = np.array([1, 1, 2, 2, 2]), np.array([1.0, 1.0, 1.0, 0.0, 1.0])
    selection = Selection(priority, possible)
    selection.cuts = [Cut(np.array(one, dtype=float), float(limit), 0) for one, limit in cuts]
    stage = ready_stages((1, 2))[1]
    fit = [
        chosen
        for chosen in map(np.array, product((0, 1), repeat=LOADS))
        if (chosen <= possible).all() and all(np.dot(one, chosen) <= most for one, most in cuts)
    ]
    found = selection.most_so_far(stage, 10.0)
    most = max((int(chosen[priority == 2].sum()) for chosen in fit), default=2)
    assert found == pytest.approx(most)


@pytest.mark.parametrize("bound", [np.inf, -np.inf])
def test_where_the_solver_comes_to_no_bound_all_that_can_go_are_the_most(
    bound: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No time for any bound, or loads held of a priority before it that cannot go together."""
    monkeypatch.setattr(Selection, "most_ready", lambda *_: (None, bound))
    selection = Selection(np.array([1, 2, 2, 2]), np.array([1.0, 1.0, 0.0, 1.0]))
    assert selection.most_so_far(ready_stages((1, 2))[1], 1.0) == 2


def test_what_holds_at_one_set_of_loads_says_no_more_of_others_than_the_bound() -> None:
    """Fifty million a load would be lost in the solver's tolerance: the same loads came up again.

    A thousand loads of which 980 go, proved 11,450 lb above the bound of all.
    """
    bounder = SimpleNamespace(master=SimpleNamespace(stage_rows=[]))
    goes = np.array([1.0] * 980 + [0.0] * 20)
    cut = Settling(bounder, STRENGTH, 1.0)._only_there(goes, 49_453_816.0, 49_442_366.0)
    others = goes.copy()
    others[[0, -1]] = 0.0, 1.0
    assert cut.limit - cut.weights @ goes == 49_453_816.0
    assert cut.limit - cut.weights @ others == 49_442_366.0
    assert np.abs(cut.weights).max() == 11_450.0


def test_a_bound_that_is_not_known_stays_unknown() -> None:
    assert [up(-np.inf, 1.0), up(np.inf, 0.5)] == [-np.inf, np.inf]
    assert [up(2.1, 1.0), up(2.000001, 1.0), up(2.1, 0.5)] == [3.0, 2.0, 2.5]
