"""A need that the strongest sum just misses: held, judged so, and no quarrel about it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.api import plan_day
from loadplan.day.article import Article, CargoClass, Routing
from loadplan.day.load import Load
from loadplan.plan.reach import common_unit, reach_of
from tests.plan.build import binder, chain, day, machine


def crate(weight: Fraction, routing: Routing) -> Article:
    """General cargo of ten feet, which takes two tie-downs."""
    plain = replace(machine("A", "1", 1), weight=weight, cargo_class=CargoClass.GENERAL)
    return replace(plain, routing=routing)


@pytest.mark.parametrize("more", [Fraction(1, 10**n) for n in range(1, 13)])
@pytest.mark.parametrize("routing", [Routing.DIRECT, Routing.OVER])
def test_short_by_next_to_nothing_is_short(more: Fraction, routing: Routing) -> None:
    credit = 1 if routing is Routing.OVER else Fraction(1, 2)
    gear = [chain("c", 3300, 2), binder("b", 3300, 2)]
    at, beyond = [
        plan_day(day([Load(id="1")], [crate(4 * 3300 * credit + extra, routing)], gear))
        for extra in (Fraction(0), more)
    ]
    assert at.ready == ("1",)
    assert beyond.ready == ()
    assert at.proved
    assert beyond.proved


def test_a_need_is_rounded_up_to_what_sums_can_be() -> None:
    """Sums of 1,650 and 3,300 are multiples of 1,650: 3,300.0005 asks for 4,950, three of them."""
    found = reach_of([Fraction(1650), Fraction(3300)], Fraction("3300.0005"), 1)
    assert (found.need, found.values, found.alone) == (3, (1, 2), (3, 2))


@pytest.mark.parametrize(
    ("values", "unit"),
    [
        ([Fraction(6), Fraction(4)], 2),
        ([Fraction(1, 2), Fraction(1, 3)], Fraction(1, 6)),
        ([Fraction(0), Fraction(5, 7)], Fraction(5, 7)),
        ([Fraction(0)], 1),
    ],
)
def test_the_greatest_unit_of_all(values: list[Fraction], unit: Fraction) -> None:
    assert common_unit(values) == unit
