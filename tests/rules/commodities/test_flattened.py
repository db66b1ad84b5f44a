"""Flattened vehicles by the number of walls."""

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.gear import WEBBING, Kind
from loadplan.day.units import Units
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths


def cars(details, **known):
    return article(
        CargoClass.FLATTENED_VEHICLES, details=details, **{"weight": 24000, "length": None, **known}
    )


@pytest.mark.parametrize(("walls", "number"), [(3, 2), (2, 3), (0, 4)])
def test_how_many_go_over_each_stack(walls, number):
    found = asked(cars(f"walls {walls}"))
    assert sets(found) == [("over 1", 20, "over", 1, "")]
    assert needs(found) == [("tie-downs over the stack", number, "over 1")]
    assert strengths(found) == [(12000, {Routing.OVER: 1})]


def test_each_stack_has_its_own():
    found = asked(cars("no walls; 2 stacks"))
    assert sets(found) == [
        ("stack 1 over 1", 10, "over", 1, ""),
        ("stack 2 over 1", 10, "over", 1, ""),
    ]
    assert needs(found) == [
        ("tie-downs over stack 1", 4, "stack 1 over 1"),
        ("tie-downs over stack 2", 4, "stack 2 over 1"),
    ]


@pytest.mark.parametrize(("units", "least"), [(Units.US, 5000), (Units.METRIC, 2268)])
def test_each_bears_5000_lb_and_is_no_webbing(units, least):
    floor, material = asked(cars("walls 2"), units=units).properties
    assert (floor.name, floor.at_least) == ("least WLL on flattened vehicles", least)
    assert not WEBBING & material.kinds
    assert {Kind.CHAIN, Kind.WIRE_ROPE, Kind.STEEL_STRAPPING} <= material.kinds


def test_four_walls_need_no_tie_down():
    found = asked(cars("walls 4"))
    assert (found.positions, found.counts, found.strengths, found.properties) == ((), (), (), ())
    assert look_names(found) == ["walls", "loose parts"]
    assert found.looks[0].source.cite() == "49 CFR 393.132 (memory)"


def test_what_to_look_at():
    assert look_names(asked(cars("walls 3")))[:3] == ["walls", "loose parts", "webbing"]
    assert look_names(asked(cars("walls 0")))[:2] == ["loose parts", "webbing"]


HANDBOOK = "(from the official handbook, not the regulation text read)"


def test_what_a_row_lacks_or_contradicts():
    assert problems(cars("")) == [
        (
            "Details",
            f"Details lacks the number of walls, needed by 49 CFR 393.132 {HANDBOOK}. "
            "Write walls 0, walls 2, walls 3 or walls 4.",
        )
    ]
    assert problems(cars("walls 1")) == [
        ("Details", "Details says walls 1. It must be 0, 2, 3 or 4.")
    ]
    assert problems(cars("walls 3; stacks 7")) == [
        ("Details", "Details says stacks 7. It must be a whole number from 1 to 6.")
    ]
