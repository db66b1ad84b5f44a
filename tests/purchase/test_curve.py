"""The curve of cost against loads ready, against every purchase there is."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.day.load import Load
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.purchase.curve import curve_of, point_at
from loadplan.purchase.owned import with_purchase
from loadplan.purchase.point import Curve
from loadplan.purchase.program import purchase_program
from loadplan.purchase.search import Search
from tests.oracle.purchases import curve
from tests.plan.build import binder, chain, day, machine
from tests.purchase.days import priced


def search(one: Day, seconds: float = 60) -> Search:
    loads = [load.id for load in one.loads]
    return Search(purchase_program(one, loads, one.prices), Clock(seconds))


def told(found: Curve) -> list[tuple[Fraction, int, tuple[int, ...]]]:
    assert found.proved
    return [(one.purchase.cost, one.purchase.pieces, one.ready) for one in found.points]


def three_machines() -> Day:
    """Machines of 4, 5 and 6 tie-downs out at once, 4 binders, the last the most urgent."""
    one = day(
        [Load(id="1", priority=2), Load(id="2", priority=2), Load(id="3")],
        [machine("M1", "1", 20_000), machine("M2", "2", 26_000), machine("M3", "3", 31_000)],
        [chain("C", 6600, 15), binder("B", 5400, 4)],
    )
    price = Price(specification=one.gear[1], price=Fraction(25))
    return Day(loads=one.loads, articles=one.articles, gear=one.gear, prices=(price,))


def test_the_most_urgent_load_comes_first_though_it_costs_more() -> None:
    # 4 binders: load 1 goes. 6 (2 more): load 3, which is priority 1, goes instead.
    # 10 (6 more): 3 and 1. 15 (11 more): all.
    assert told(curve_of(search(three_machines()))) == [
        (0, 0, (0, 1)),
        (50, 2, (1, 0)),
        (150, 6, (1, 1)),
        (275, 11, (1, 2)),
    ]


def test_the_last_point_within_a_budget() -> None:
    found = curve_of(search(three_machines()))
    assert found.within(Fraction(274)).purchase.cost == 150
    assert found.within(Fraction(275)).loads == 3
    assert found.within(Fraction(1)).loads == 1


def test_without_a_budget_the_best_loads_at_the_least_cost() -> None:
    one = three_machines()
    most = Price(specification=one.gear[1], price=Fraction(25), most=9)
    one = Day(loads=one.loads, articles=one.articles, gear=one.gear, prices=(most,))
    point = point_at(search(one), None)
    assert (point.ready, point.purchase.cost, point.proved) == ((1, 1), 150, True)


def test_no_time_at_all() -> None:
    try:
        found = curve_of(search(three_machines(), seconds=0))
    except OutOfTimeError:
        return
    assert [one.ready for one in found.points] == [(0, 1), (1, 0), (1, 1), (1, 2)][
        : len(found.points)
    ]


# Days whose curve has more than one point, and one whose curve has not.
CURVES = [0, 17, 77, 103, 146, 2]


@pytest.mark.parametrize("seed", CURVES)
def test_every_point_is_the_cheapest_for_its_loads(seed: int, tmp_path: Path) -> None:
    one, seen, offers = priced(seed, tmp_path)
    found = curve_of(search(one))
    assert told(found) == [
        (every.cost, sum(every.pieces), every.ready) for every in curve(seen, offers)
    ]
    for point in found.points:
        assert len(plan_day(with_purchase(one, point.purchase)).ready) == point.loads
