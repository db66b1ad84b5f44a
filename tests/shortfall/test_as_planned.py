"""What a held load lacks beside the plan as it stands."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadplan.api import plan_day
from loadplan.day.article import Routing
from loadplan.day.day import Day
from loadplan.day.gear import FixedPiece
from loadplan.day.load import Load
from loadplan.judge.pool import pieces_out
from loadplan.outcome.tie_down import TieDown
from loadplan.plan.clock import Clock
from loadplan.plan.sets import sets_of
from loadplan.shortfall import planned, servable
from loadplan.shortfall.as_planned import lacking_beside, left_beside
from loadplan.shortfall.explain import _BESIDE, _LATER, _UNSETTLED, explain
from tests.plan.build import binder, chain, day, machine
from tests.shortfall.test_explain import HOUR, two_loads


def test_what_the_other_load_leaves_is_not_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    for module in (servable, planned):
        monkeypatch.setattr(module, "MOST_TOGETHER", 1)  # nothing can be asked of two together
    plan = plan_day(two_loads())
    assert plan.ready == ("a",)
    (one,) = plan.shortages
    assert (one.load, one.article, one.pieces, one.why) == ("b", "B", 2, _BESIDE)
    assert "B38" in one.short_of
    (told,) = plan.explained
    assert told.why == _UNSETTLED
    assert told.conflicts == ()
    assert told.remarks[0] == _BESIDE


def test_not_told_without_time() -> None:
    plan = plan_day(two_loads(), explained=False)
    sets = sets_of(plan.day)
    assert lacking_beside(plan, sets, Clock(0.0)) == {}
    assert lacking_beside(plan, sets, Clock(10.0)) == {"b": {"B38": 2}}


def test_kinds_of_which_nothing_is_left_are_asked_for() -> None:
    one = two_loads()
    few = tuple(replace(g, quantity=4) if g.id == "B38" else g for g in one.gear)
    plan = plan_day(replace(one, gear=few), explained=False)
    assert plan.ready == ("a",)
    assert lacking_beside(plan, sets_of(plan.day), Clock(10.0)) == {"b": {"B38": 4}}


def test_with_those_pieces_it_goes() -> None:
    one = two_loads()
    plan = plan_day(one, explained=False)
    left = left_beside(one, pieces_out(one, plan.tie_downs, plan.ready), "b")
    assert plan_day(left, explained=False).ready == ()
    more = tuple(replace(g, quantity=g.quantity + 2 * (g.id == "B38")) for g in left.gear)
    assert plan_day(replace(left, gear=more), explained=False).ready == ("b",)


def test_a_kit_is_free_as_soon_as_its_trailer_is_back() -> None:
    loads = [
        Load(id="a", trailer="T", out=6 * HOUR, back=8 * HOUR),
        Load(id="b", trailer="T", out=8 * HOUR, back=10 * HOUR),
    ]
    gear = [chain("C", 6600, 4), replace(chain("K", 6600, 4), kept_on="T"), binder("B", 6600, 9)]
    articles = [machine("A", "a", 10_000), machine("B", "b", 10_000)]
    one = replace(day(loads, articles, gear), turnaround=600)
    tie_downs = [tie_down("a", member) for member in ("C", "K")]
    left = {g.id: g.quantity for g in left_beside(one, pieces_out(one, tie_downs, ["a"]), "b").gear}
    assert left == {"C": 3, "K": 4, "B": 9}


def tie_down(load: str, member: str) -> TieDown:
    return TieDown(
        load=load, article="A", position="mid left", number=1, routing=Routing.DIRECT, member=member
    )


def minutes_out(one: Day, members: list[tuple[str, int]], load: str) -> int:
    """The most pieces out on other loads in any minute that ``load`` has its gear."""
    mine, step = one.load_by_id[load], 60
    return max(
        sum(
            pieces
            for other, pieces in members
            if other != load
            and one.load_by_id[other].out <= at < one.load_by_id[other].back + one.turnaround
        )
        for at in range(mine.out, mine.back + one.turnaround, step)
    )


@given(
    spans=st.lists(
        st.tuples(st.integers(0, 40), st.integers(1, 30), st.integers(0, 3)), min_size=2, max_size=6
    ),
    turnaround=st.integers(0, 10),
    kept=st.integers(0, 2),
)
def test_what_is_left_minute_by_minute(
    spans: list[tuple[int, int, int]], turnaround: int, kept: int
) -> None:
    loads = [
        Load(id=str(n), out=60 * out, back=60 * (out + long))
        for n, (out, long, _) in enumerate(spans)
    ]
    # The last load stays, with some pieces on it already; the others go.
    last = loads[-1].id
    articles = [machine(f"M{load.id}", load.id, 10_000) for load in loads]
    fixed = [
        FixedPiece(load=last, article=f"M{last}", position="front left", number=n, gear="C")
        for n in range(1, kept + 1)
    ]
    one = day(loads, articles, [chain("C", 6600, 50)])
    one = replace(one, turnaround=60 * turnaround, fixed=tuple(fixed))
    taken = [(load.id, pieces) for load, (_, _, pieces) in zip(loads[:-1], spans, strict=False)]
    tie_downs = [tie_down(load, "C") for load, pieces in taken for _ in range(pieces)]
    out = pieces_out(one, tie_downs, [load.id for load in loads[:-1]])
    for load in (last, loads[0].id):
        others = [*taken, (last, kept)]
        (left,) = left_beside(one, out, load).gear
        assert left.quantity == 50 - minutes_out(one, others, load)


def test_a_load_that_another_plan_has_lacks_nothing_but_time() -> None:
    loads = [Load(id="a"), Load(id="b")]
    gear = [chain("C", 6600, 8), binder("B", 6600, 8)]
    one = day(loads, [machine("A", "a", 10_000), machine("B", "b", 10_000)], gear)
    proved = plan_day(one)
    assert proved.held == ()
    # A plan that the time limit left with one load, and with more gear on it than it needs.
    stages = tuple(replace(stage, proved=False) for stage in proved.stages)
    kept = tuple(t for t in proved.tie_downs if t.load == "a")
    wasted = tuple(replace(t, position="mid left", number=n) for n, t in enumerate(kept, 1))
    plan = replace(proved, ready=("a",), tie_downs=(*kept, *wasted), stages=stages, judgement=None)
    (told,) = explain(plan, 10).explained
    assert told.why == _LATER
    assert _BESIDE not in told.remarks
    (short,) = explain(plan, 10).shortages
    assert (short.short_of, short.pieces) == ("time to plan it", None)
