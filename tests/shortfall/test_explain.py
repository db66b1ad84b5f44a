"""Held loads of small days whose reason and ways out are known by a hand sum."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.api import plan_day
from loadplan.day.article import Accessory
from loadplan.day.day import Day
from loadplan.day.gear import Condition, FixedPiece, Price
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.size import read_size
from loadplan.day.trailer import Trailer
from loadplan.outcome.held import Held, Way, WayOut
from loadplan.shortfall.delay import moved
from loadplan.shortfall.explain import explain
from loadplan.shortfall.servable import Answer, Servable
from tests.plan.build import binder, chain, day, machine

HOUR = 3600


def two_loads(**known: object) -> Day:
    """Loads a (06:00-10:00) and b (08:00-12:00), four tie-downs each; the cage makes six."""
    loads = [
        Load(id="a", out=6 * HOUR, back=10 * HOUR),
        Load(id="b", out=8 * HOUR, back=12 * HOUR, priority=2),
    ]
    articles = [machine("A", "a", 10_000), machine("B", "b", 10_000)]
    gear = [chain("C", 6600, 9), binder("B38", 6600, 6)]
    return replace(day(loads, articles, gear), **known)  # type: ignore[arg-type]


def held(one: Day, load: str) -> Held:
    plan = plan_day(one)
    assert plan.proved
    return next(found for found in plan.explained if found.load == load)


def way(one: Day, load: str, kind: Way) -> WayOut | None:
    return next((found for found in held(one, load).ways if found.way is kind), None)


def without(one: Day, loads: set[str]) -> Day:
    return replace(
        one,
        loads=tuple(load for load in one.loads if load.id not in loads),
        articles=tuple(article for article in one.articles if article.load not in loads),
    )


def with_more(one: Day, gear: str, pieces: int) -> Day:
    rows = (
        replace(row, quantity=row.quantity + pieces) if row.id == gear else row for row in one.gear
    )
    return replace(one, gear=tuple(rows))


def test_two_loads_and_the_binders_they_cannot_share() -> None:
    # 4 + 4 tie-downs take 8 binders and 8 chains; there are 6 binders and 9 chains.
    one = held(two_loads(), "b")
    (conflict,) = one.conflicts
    assert (conflict.loads, conflict.gear) == (("a", "b"), ("B38",))
    assert (conflict.need, conflict.usable) == (8, 6)
    assert conflict.irreducible
    assert conflict.least
    assert one.why == (
        "Its gear is out elsewhere. Loads a and b between 06:00 and 12:00 need 8 pieces of B38 "
        "(lever binder for 3/8 in chain); 6 are usable."
    )


def test_a_conflict_is_irreducible_in_loads_and_pieces() -> None:
    # Nine loads in three waves; only those out together stand against x.
    waves = [
        Load(id=f"w{n}", out=(n % 3) * 5 * HOUR, back=(n % 3 + 1) * 5 * HOUR) for n in range(9)
    ]
    late = Load(id="x", out=6 * HOUR, back=9 * HOUR, priority=3)
    articles = [machine(f"M{load.id}", load.id, 10_000) for load in [*waves, late]]
    one = day([*waves, late], articles, [chain("C", 6600, 99), binder("B38", 6600, 14)])
    (conflict,) = held(one, "x").conflicts
    # Three of a wave and x take 16 binders; 14 are usable.
    assert conflict.loads == ("w1", "w4", "w7", "x")
    assert (conflict.need, conflict.usable) == (16, 14)
    others = {load.id for load in one.loads} - set(conflict.loads)
    alone = without(one, others)
    assert len(plan_day(alone, explained=False).ready) == 3
    for load in conflict.loads:
        assert len(plan_day(without(alone, {load}), explained=False).ready) == 3
    assert len(plan_day(with_more(alone, "B38", 2), explained=False).ready) == 4
    assert len(plan_day(with_more(alone, "B38", 1), explained=False).ready) == 3


def test_a_load_too_big_for_the_whole_cage_stands_alone() -> None:
    one = day(
        [Load(id="1")],
        [machine("M", "1", 10_000)],
        [chain("C", 6600, 9), binder("B38", 6600, 3)],
    )
    assert held(one, "1").why == (
        "Load 1 alone between 00:00 and 24:00 needs 4 pieces of B38 (lever binder for 3/8 in "
        "chain); 3 are usable."
    )


def test_chain_and_binder_both_short_are_two_conflicts_and_two_rows() -> None:
    one = replace(two_loads(), gear=(chain("C", 6600, 5), binder("B38", 6600, 6)))
    plan = plan_day(one)
    assert [conflict.gear for conflict in plan.explained[0].conflicts] == [("B38",), ("C",)]
    assert {(row.short_of, row.pieces, row.article) for row in plan.shortages} == {
        ("3/8 in chain, 6,600 lb or more (such as C)", 3, "B"),
        ("lever binder for 3/8 in chain, 6,600 lb or more (such as B38)", 2, "B"),
    }


def test_the_least_delay_is_planned_and_a_minute_less_is_not_enough() -> None:
    # a is back at 10:00 and its binders are free 20 min 30 s later: b may leave at 10:21.
    one = two_loads(turnaround=20 * 60 + 30)
    found = way(one, "b", Way.DELAY)
    assert found is not None
    assert found.text == "Let load b leave at 10:21 instead of 08:00, back 14:21 instead of 12:00."
    assert found.price == "141 minutes"
    assert plan_day(moved(one, "b", 141)).ready == ("a", "b")
    assert plan_day(moved(one, "b", 140), explained=False).ready == ("a",)


def test_gear_that_is_on_another_load_may_be_waited_for() -> None:
    # Three of the six binders are on x, which is too heavy to go, until 10:00; b needs four.
    one = without(two_loads(), {"a"})
    x = Load(id="x", priority=9, out=6 * HOUR, back=10 * HOUR)
    on = tuple(
        FixedPiece(load="x", article="X", position=position, gear="B38")
        for position in ("front left", "front right", "rear left")
    )
    one = replace(
        one,
        loads=(*one.loads, x),
        articles=(*one.articles, machine("X", "x", 200_000)),
        fixed=on,
    )
    found = way(one, "b", Way.DELAY)
    assert found is not None
    assert found.text.startswith("Let load b leave at 10:00 instead of 08:00")
    assert found.price == "120 minutes"


def test_a_delay_never_runs_into_the_next_trip_of_the_trailer_or_driver() -> None:
    one = two_loads()
    for next_trip in (
        Load(id="c", trailer="T", out=13 * HOUR, back=20 * HOUR),
        Load(id="c", driver="Osk", out=13 * HOUR, back=20 * HOUR),
    ):
        a, b = one.loads
        b = replace(b, trailer=next_trip.trailer, driver=next_trip.driver)
        busy = replace(one, loads=(a, b, next_trip), trailers=(Trailer(id="T"),))
        delay = way(busy, "b", Way.DELAY)
        # b cannot be back by 13:00 if it leaves at 10:00; a can wait until b is back at 12:00.
        assert delay is not None
        assert delay.text.startswith("Let load a leave at 12:00 instead of 06:00")


def test_the_fewest_pieces_on_hold_that_would_do() -> None:
    spare = replace(binder("H", 6600, 5), condition=Condition.HOLD)
    one = two_loads()
    one = replace(one, gear=(*one.gear, spare))
    found = way(one, "b", Way.REPAIR)
    assert found is not None
    assert found.text == "Inspect and pass 2 x H, now on hold, as good."
    for pieces, ready in ((2, ("a", "b")), (1, ("a",))):
        good = replace(spare, id="good", quantity=pieces, condition=Condition.GOOD)
        then = replace(one, gear=(*one.gear, good))
        assert plan_day(then, explained=False).ready == ready


def test_the_cheapest_purchase_for_this_load_and_those_that_are_ready() -> None:
    one = two_loads()
    prices = (
        Price(specification=one.gear[1], price=Fraction(34), currency="USD", most=4),
        Price(specification=replace(binder("R", 9200, 1)), price=Fraction(70), currency="USD"),
    )
    found = way(replace(one, prices=prices), "b", Way.PURCHASE)
    assert found is not None
    assert found.text == "Buy 2 x B38 (lever binder for 3/8 in chain) at 34 USD."
    assert found.price == "68 USD"


def test_a_house_rule_that_costs_gear_is_named() -> None:
    # 10,000 lb needs 4 of 3,000 lb by the aggregate (6,000); 4,000 lb each bars the light chain.
    house = HouseRules(least_wll_each=Fraction(4000), stated={"Least WLL each": None})
    gear = [chain("light", 3000, 4), binder("B38", 6600, 4)]
    one = replace(day([Load(id="1")], [machine("M", "1", 10_000)], gear), house=house)
    found = held(one, "1")
    assert found.why == (
        "No gear in the cage could ever do it. M: No gear in the cage suits it: each tie-down must "
        "have 4,000 lb, and the strongest has 3,000 lb."
    )
    (only,) = found.ways
    assert only.way is Way.POLICY
    assert only.text == "Plan without the house rule Least WLL each (then: none)."
    assert plan_day(replace(one, house=HouseRules()), explained=False).ready == ("1",)


def test_the_least_important_load_makes_room() -> None:
    one = two_loads()
    loads = (*one.loads, Load(id="c", out=6 * HOUR, back=10 * HOUR))
    articles = (*one.articles, machine("M", "c", 10_000))
    b = replace(one.loads[1], out=6 * HOUR, back=23 * HOUR, priority=3)
    one = replace(one, loads=(loads[0], b, replace(loads[2], priority=2)), articles=articles)
    one = with_more(one, "B38", 4)
    found = way(one, "b", Way.SWAP)
    assert found is not None
    assert found.text == "Send load b (priority 3) in place of load c (priority 2)."
    assert found.elsewhere == "Load c stays; every other load that is ready stays ready."
    assert plan_day(without(one, {"c"}), explained=False).ready == ("a", "b")


def test_who_would_go_first_with_the_same_gear_is_said() -> None:
    # Passing two binders is enough for b or for c, and b has the better priority.
    one = two_loads()
    c = replace(one.loads[1], id="c", priority=3)
    spare = replace(binder("H", 6600, 2), condition=Condition.HOLD)
    one = replace(
        one,
        loads=(*one.loads, c),
        articles=(*one.articles, machine("M", "c", 10_000)),
        gear=(*one.gear, chain("more", 6600, 9), spare),
    )
    found = way(one, "c", Way.REPAIR)
    assert found is not None
    assert found.elsewhere == (
        "Every other load that is ready stays ready. By priority the plan may send load b with it "
        "instead: to send load c, give it the better priority on Loads."
    )
    good = replace(spare, id="good", condition=Condition.GOOD)
    then = replace(one, gear=(*one.gear, good))
    assert plan_day(then, explained=False).ready == ("a", "b")


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (
            {"reach": Fraction(25)},
            "No gear in the cage suits it: it needs tension members of 25 ft, but none that suits "
            "it has a length in the workbook.",
        ),
        (
            {"shackles": 2},
            "No gear in the cage suits it: it needs 2 shackles of one rated kind at each "
            "tie-down, and the cage has none.",
        ),
        (
            {"tie_point_wll": Fraction(800)},
            "aggregate WLL: 5,000 is needed; with the strongest gear that suits it at every place "
            "it would reach 4,800. The tie points of the article hold each tie-down to 800 lb.",
        ),
    ],
)
def test_what_no_gear_in_the_cage_could_do(change: dict[str, object], why: str) -> None:
    article = replace(machine("M", "1", 10_000), **change)  # type: ignore[arg-type]
    one = day([Load(id="1")], [article], [chain("C", 6600, 9), binder("B38", 6600, 9)])
    plan = plan_day(one)
    assert next((row.article, row.pieces, row.short_of) for row in plan.shortages) == (
        "M",
        None,
        "any gear that could do it",
    )
    assert plan.explained[0].why.endswith(why)


def test_a_piece_already_on_that_nothing_finishes() -> None:
    """A 5/16 chain is on, and every binder is for 3/8."""
    five_sixteenths = replace(chain("S", 4700, 1), size=read_size("5/16"))
    one = day([Load(id="1")], [machine("M", "1", 10_000)], [chain("C", 6600, 9), five_sixteenths])
    one = replace(
        one,
        gear=(*one.gear, binder("B38", 6600, 9)),
        fixed=(FixedPiece(load="1", article="M", position="front left", gear="S"),),
    )
    (row,) = plan_day(one).shortages
    assert (row.article, row.short_of) == ("M", "gear that finishes what is fixed on it")
    assert row.why.startswith("Nothing in the cage finishes the fixed tie-down at front left")
    assert plan_day(replace(one, fixed=())).ready == ("1",)


def test_anchor_points_that_no_cage_makes_up_for() -> None:
    # Four corners and a boom take 5 anchor points.
    article = replace(machine("M", "1", 10_000), accessories=(Accessory(name="boom"),))
    one = day([Load(id="1", trailer="T")], [article], [chain("C", 6600, 9), binder("B38", 6600, 9)])
    one = replace(one, trailers=(Trailer(id="T", anchors=4),))
    plan = plan_day(one)
    assert [(row.short_of, row.why) for row in plan.shortages] == [
        (
            "anchor points on the trailer",
            "At least 5 anchor points are needed, whatever number of pieces the cage has; the "
            "trailer has 4.",
        )
    ]
    assert plan.explained[0].ways == ()
    assert plan_day(replace(one, trailers=(Trailer(id="T", anchors=5),))).ready == ("1",)


def test_pieces_already_on_a_held_load_are_counted_out() -> None:
    # Two binders are on x, which is too heavy to go; a and b need 8 of the 9, and 7 are left.
    one = two_loads()
    x = Load(id="x", priority=9)
    on = tuple(
        FixedPiece(load="x", article="X", position=position, gear="B38")
        for position in ("front left", "front right")
    )
    one = replace(
        with_more(one, "B38", 3),
        loads=(*one.loads, x),
        articles=(*one.articles, machine("X", "x", 200_000)),
        fixed=on,
    )
    assert held(one, "b").why == (
        "Its gear is out elsewhere. Loads a and b between 06:00 and 12:00 need 10 pieces of B38 "
        "(lever binder for 3/8 in chain); 9 are usable, 2 of them already on load x."
    )


def test_a_number_of_pieces_that_is_not_proved_is_not_told(monkeypatch: pytest.MonkeyPatch) -> None:
    right = Servable.extra

    def hasty(
        self: Servable, loads: Collection[str], free: Collection[str], counted: Collection[str]
    ) -> Answer:
        """What the solver has by the time limit may be any number."""
        if not free and len(counted) == len(self.kinds):
            return Answer(True, dict.fromkeys(counted, 999))
        return right(self, loads, free, counted)

    monkeypatch.setattr(Servable, "extra", hasty)
    plan = plan_day(two_loads())
    assert [(one.load, one.pieces) for one in plan.shortages] == [("b", 2)]
    assert "B38" in plan.shortages[0].short_of


def test_no_time_says_that_nothing_was_proved() -> None:
    plan = explain(plan_day(two_loads(), explained=False), 0)
    (one,) = plan.explained
    assert one.why == (
        "The time came before its reason was found. Plan again with a longer time limit."
    )
    assert one.ways == ()
    assert one.remarks == (
        "Not every question about it was settled in the time; a way out may be missing.",
    )
