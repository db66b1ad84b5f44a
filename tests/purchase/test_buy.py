"""Buying: the purchase planned anew, equal purchases compared, and loads that stay."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.buy import NO_TIME, NOT_COMPARED, NOT_SEEN, buy
from loadplan.day.day import Day
from loadplan.day.gear import Gear, Kind, Price
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SolverFailed, WorkbookRejected
from loadplan.purchase.bought import Bought
from tests.plan.build import binder, chain, day, machine


def price(gear: Gear, amount: int | str, most: int | None = None, currency: str = "") -> Price:
    return Price(specification=gear, price=Fraction(amount), most=most, currency=currency)


def two_machines(*prices: Price, chains: int = 8, binders: int = 6, **more: object) -> Day:
    """Two machines of four tie-downs each, out together; two binders are lacking."""
    one = day(
        [Load(id="1"), Load(id="2", priority=2)],
        [machine("M1", "1", 12_000), machine("M2", "2", 12_000)],
        [chain("C", 6600, chains), binder("B", 5400, binders)],
    )
    return replace(one, prices=prices, **more)


BINDER = binder("B", 5400, 1)


def told(found: Bought) -> dict[str, int]:
    return {offer.specification.id: pieces for offer, pieces in found.purchase.lines}


def why(found: Bought) -> dict[str, str]:
    return {stay.load: stay.why for stay in found.stays}


def test_the_day_is_planned_with_what_is_bought() -> None:
    found = buy(two_machines(price(BINDER, 25)))
    assert told(found) == {"B": 2}
    assert found.proved
    assert found.plan.held == ()
    assert found.plan.day.gear_by_id["B"].quantity == 8
    assert found.plan.judgement.checks
    assert found.before is not None
    assert found.before.ready == (1, 0)
    assert (found.stays, found.remarks, found.curve) == ((), (), None)


def test_of_equal_purchases_the_one_with_the_better_plan() -> None:
    # Two binders of either kind cost the same. With B2 the second machine would have a mixed set
    # or more strength issued: 2 x 13,000 lb instead of 2 x 5,400 lb.
    strong = binder("B2", 13_000, 1)
    for prices in ([price(BINDER, 25), price(strong, 25)], [price(strong, 25), price(BINDER, 25)]):
        found = buy(two_machines(*prices))
        assert told(found) == {"B": 2}
        assert found.proved
        assert found.remarks == ()


def test_too_many_equal_purchases_are_said_not_to_be_compared() -> None:
    # Nine kinds at one price: 9 x 10 / 2 = 45 ways to buy two binders.
    kinds = [price(binder(f"B{number}", 5400 + number, 1), 25) for number in range(9)]
    found = buy(two_machines(*kinds))
    assert found.purchase.pieces == 2
    assert found.remarks == (NOT_COMPARED,)
    assert found.point.proved
    assert not found.proved


def test_a_load_that_nothing_on_offer_helps() -> None:
    one = two_machines(price(BINDER, 25, most=1))
    found = buy(one)
    assert (told(found), found.plan.held) == ({}, ("2",))
    assert found.proved
    assert why(found) == {
        "2": "Together with the loads that go it lacks 1 x B, even with everything on Prices "
        "bought."
    }


def test_a_load_that_lacks_what_no_price_is_for() -> None:
    one = two_machines(price(BINDER, 25), chains=3)
    assert why(buy(one)) == {
        "1": "On its own it lacks 1 x C, even with everything on Prices bought.",
        "2": "On its own it lacks 1 x C, even with everything on Prices bought.",
    }


def test_a_load_that_no_gear_could_make_ready() -> None:
    heavy = machine("M2", "2", 200_000)
    one = two_machines(price(BINDER, 25))
    found = buy(replace(one, articles=(one.articles[0], heavy)))
    assert why(found) == {
        "2": "M2: aggregate WLL: 100,000 is needed; with the strongest gear that suits it at every "
        "place it would reach 32,400. That is with everything on Prices in the cage."
    }


def test_a_trailer_with_too_few_anchor_points() -> None:
    one = two_machines(price(BINDER, 25), binders=8, trailers=(Trailer(id="T", anchors=3),))
    one = replace(one, loads=(one.loads[0], replace(one.loads[1], trailer="T")))
    assert why(buy(one)) == {
        "2": "No set of tie-downs fits its trailer (3 anchor points), whatever is bought."
    }


def test_a_budget_and_what_the_held_load_would_take() -> None:
    one = two_machines(price(BINDER, "25.50", currency="USD"), binders=3)
    found = buy(one, budget=Fraction(100))
    assert told(found) == {"B": 1}
    assert found.currency == "USD"
    assert why(found) == {
        "2": "With the loads that go it takes a purchase of 127.50 USD; the budget is 100 USD."
    }
    assert found.curve is not None
    points = [(point.purchase.cost, point.held) for point in found.curve.points]
    assert points == [(0, ("1", "2")), (Fraction(51, 2), ("2",)), (Fraction(255, 2), ())]
    assert found.proved


def test_without_prices_nothing_is_planned() -> None:
    with pytest.raises(WorkbookRejected) as caught:
        buy(two_machines())
    assert [str(problem) for problem in caught.value.problems] == [
        "'Prices'  S06  There are no prices, so nothing can be bought. "
        "Write on the sheet Prices what can be had, one row for each kind of piece."
    ]


def test_the_time_limit_before_any_purchase(monkeypatch: pytest.MonkeyPatch) -> None:
    from loadplan.plan.clock import OutOfTimeError

    def out_of_time(*_: object) -> None:
        raise OutOfTimeError

    monkeypatch.setattr("loadplan.buy.settle", out_of_time)
    found = buy(two_machines(price(BINDER, 25)))
    assert (told(found), found.plan.ready) == ({}, ("1",))
    assert not found.proved
    assert found.remarks == (NO_TIME,)


def planned_as(monkeypatch: pytest.MonkeyPatch, ready: tuple[str, ...], proved: bool) -> None:
    """Let every plan have just these loads ready, proved or not."""
    from loadplan.api import plan_day

    def plan(one: Day, **options: object) -> DayPlan:
        found = plan_day(one)
        stages = tuple(replace(stage, proved=proved) for stage in found.stages)
        return replace(found, ready=ready, stages=stages)

    monkeypatch.setattr("loadplan.buy.plan_day", plan)


def test_a_plan_that_the_time_limit_cut_short_proves_nothing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    planned_as(monkeypatch, ("1",), proved=False)
    found = buy(two_machines(price(BINDER, 25)))
    assert not found.proved
    assert not found.point.proved
    assert found.remarks == (NOT_SEEN,)


def test_a_plan_that_contradicts_the_purchase_is_an_error(monkeypatch: pytest.MonkeyPatch) -> None:
    planned_as(monkeypatch, ("1",), proved=True)
    with pytest.raises(SolverFailed) as caught:
        buy(two_machines(price(BINDER, 25)))
    assert str(caught.value) == (
        "The plan with the purchase has (1, 0) loads ready by priority, and the purchase is for "
        "(1, 1). Nothing was written. Send the day workbook to whoever keeps this program for you."
    )


def test_a_plan_better_than_the_curve_is_an_error(monkeypatch: pytest.MonkeyPatch) -> None:
    planned_as(monkeypatch, ("1", "2"), proved=False)
    with pytest.raises(SolverFailed, match="loads ready by priority"):
        buy(two_machines(price(BINDER, 25, most=1)))


def test_a_strap_of_a_new_kind_for_an_accessory() -> None:
    from loadplan.day.article import Accessory

    one = two_machines(binders=8, chains=8)
    boom = replace(one.articles[0], accessories=(Accessory(name="boom"),), chain_only=True)
    strap = Gear(id="", kind=Kind.RATCHET_STRAP, wll=Fraction(2000))
    found = buy(replace(one, articles=(boom, one.articles[1]), prices=(price(strap, 20),)))
    (line,) = found.purchase.lines
    assert line == (price(strap, 20), 1)
    assert found.plan.day.gear[-1].id == "new ratchet strap"
    (on,) = [tie for tie in found.plan.tie_downs if tie.accessory]
    assert on.member == "new ratchet strap"
