"""NSC Standard 10: metric limits, credit by end sections, the floor, its own citations."""

from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.rules.requirement import EachWLLRequirement
from tests.rules.build import (
    article,
    asked,
    asked_of_load,
    look_names,
    needs,
    problems,
    strengths,
    working,
)

CANADA = {"rules": RuleSet.CANADA}
METRIC = {"rules": RuleSet.CANADA, "units": Units.METRIC}


def test_a_day_in_feet_is_held_to_the_metric_limits():
    """20 ft = 6.096 m: 2 + (6.096 - 3.04) / 3.04 rounded up = 4, one more than the US rule."""
    crate = article(CargoClass.GENERAL, length=20, weight=4600)
    assert [number for _, number, _ in needs(asked(crate))] == [3]
    found = asked(crate, **CANADA)
    assert needs(found) == [("tie-downs by length", 4, None)]
    assert working(found.counts[0]) == [
        (
            "Length and weight in the units of the rule",
            "20 ft, 4,600 lb",
            "6.096 m, 2,086.52 kg",
            "NSC Standard 10 s. 22",
        ),
        (
            "Not blocked forward, over 3.04 m: two, and one for each further 3.04 m or part of it",
            "2 + (6.096 - 3.04) / 3.04, rounded up",
            "4 tie-downs",
            "NSC Standard 10 s. 22",
        ),
    ]


@pytest.mark.parametrize(
    ("length", "weight", "number"),
    [
        # 5 ft = 1.524 m > 1.52 m; 4.98 ft = 1.5179 m
        (5, 1000, 2),
        ("4.98", 1100, 1),
        # 1,100 lb = 498.95 kg, 1,102 lb = 499.86 kg, 1,103 lb = 500.31 kg
        ("4.98", 1102, 1),
        ("4.98", 1103, 2),
        # 10 ft = 3.048 m
        (10, 1000, 3),
        ("9.97", 1000, 2),
    ],
)
def test_edges_of_a_day_in_feet(length, weight, number):
    crate = article(CargoClass.GENERAL, length=length, weight=weight)
    assert needs(asked(crate, **CANADA)) == [("tie-downs by length", number, None)]


@pytest.mark.parametrize(
    ("run", "credit"), [(Routing.DIRECT, Fraction(1, 2)), (Routing.SAME_SIDE, 1), (Routing.OVER, 1)]
)
def test_credit_for_each_end_on_an_anchor_point(run, credit):
    found = asked(article(CargoClass.GENERAL, routing=run), **METRIC)
    assert strengths(found) == [(10000, {run: credit})]
    assert found.strengths[0].source.cite() == "NSC Standard 10 s. 10"
    assert {step.source.cite() for step in found.strengths[0].steps} == {"NSC Standard 10 s. 10"}


def test_the_house_may_read_credits_otherwise():
    house = HouseRules(direct_credit=Fraction(1), same_side_credit=Fraction(1, 2))
    direct = asked(article(CargoClass.GENERAL, routing=Routing.DIRECT), house=house, **METRIC)
    loop = asked(article(CargoClass.GENERAL, routing=Routing.SAME_SIDE), house=house, **METRIC)
    assert direct.strengths[0].credit == 1
    assert working(direct.strengths[0])[-1][1:] == (
        "the whole of its WLL",
        "1 x WLL",
        "house rule Direct credit",
    )
    assert loop.strengths[0].credit == Fraction(1, 2)
    assert working(loop.strengths[0])[-1][3] == "house rule Same side credit"


def floors(found):
    return [
        (one.name, one.at_least, one.source.cite())
        for one in found.properties
        if isinstance(one, EachWLLRequirement)
    ]


HANDBOOK = "(from the official handbook, not the regulation text read)"


@pytest.mark.parametrize(("units", "least"), [(Units.METRIC, 2268), (Units.US, 5000)])
def test_each_tie_down_on_heavy_machinery_bears_the_floor(units, least):
    found = asked(article(weight=9950), units=units, **CANADA)
    assert floors(found) == [
        ("least WLL on heavy machines", least, f"NSC Standard 10 s. 89 {HANDBOOK}")
    ]
    off = HouseRules(heavy_floor=False)
    assert floors(asked(article(weight=9950), house=off, units=units, **CANADA)) == []


def test_in_the_us_the_floor_is_the_houses():
    on = HouseRules(heavy_floor=True)
    assert floors(asked(article())) == []
    assert floors(asked(article(), house=on)) == [
        ("least WLL on heavy machines", 5000, "house rule Floor on heavy machines")
    ]
    light = article(weight=4000, secured_under=SecuredUnder.LIGHT_VEHICLE)
    assert floors(asked(light, house=on)) == []


def test_a_light_vehicle_is_not_counted_by_length():
    car = article(CargoClass.LIGHT_VEHICLE, weight=2000, length=5)
    assert needs(asked(car, **METRIC)) == [
        ("two tie-downs", 2, None),
        ("tie-down at the front", 1, "front left"),
        ("tie-down at the rear", 1, "rear left"),
    ]
    assert problems(article(CargoClass.LIGHT_VEHICLE, weight=2000, length=None), **METRIC) == []


def test_a_machine_of_9950_lb_is_heavy_in_canada_only():
    """9,950 lb = 4,513.2 kg, above 4,500 kg."""
    light = article(weight=9950, secured_under=SecuredUnder.LIGHT_VEHICLE)
    general = article(weight=9950, secured_under=SecuredUnder.GENERAL)
    assert problems(light) == problems(general) == []
    assert problems(light, **CANADA) == [
        (
            "Secured under",
            "The article weighs 9,950 lb with everything on it, and light vehicle (NSC Standard 10 "
            "s. 88) goes up to 4,500 kg. Write heavy in Secured under, or correct the weight.",
        )
    ]
    assert problems(general, **CANADA) == [
        (
            "Secured under",
            "The machine weighs 9,950 lb with everything on it, and above 4,500 kg a machine is "
            "secured under heavy (NSC Standard 10 s. 89(1)). Write heavy in Secured under, or "
            "correct the weight.",
        )
    ]


def test_exactly_4500_kg_is_light():
    light = article(weight=4500, secured_under=SecuredUnder.LIGHT_VEHICLE)
    general = article(weight=4500, secured_under=SecuredUnder.GENERAL)
    assert problems(light, **METRIC) == problems(general, **METRIC) == []


def test_what_is_looked_at_in_canada():
    crate = article(CargoClass.GENERAL, weight=1001, blocked_forward=True)
    found = asked(crate, **METRIC)
    assert look_names(found) == [
        "chocks",
        "blocked forward",
        "blocking strength",
        "edge protection",
        "side by side",
    ]
    assert found.looks[2].text == (
        "What blocks it forward has working load limits of 501 kg or more in all."
    )
    assert "blocking strength" not in look_names(asked(crate))


def test_on_the_road_in_canada():
    found = asked_of_load(article(), trailer=Trailer(id="T-1", anchor_wll=Fraction(3000)), **METRIC)
    texts = [look.text for look in found.looks]
    assert "Tie-downs run inboard of the rub rails where practicable." in texts
    assert texts[-2:] == [
        "Within the first 80 km: check again; tighten or add tie-downs as needed.",
        "Then at a change of duty status, after 3 hours or after 240 km, whichever comes first.",
    ]
    assert found.looks[-1].source.cite() == "NSC Standard 10 Part 1, inspection (memory)"


def test_nothing_asked_in_canada_cites_the_us_rule():
    cargo = [
        article(accessories=(Accessory(name="boom"),), sharp_edges=True, weight=9000),
        article(CargoClass.METAL_COIL, details="eye crosswise"),
        article(CargoClass.CONCRETE_PIPE, details="diameter 36 in"),
        article(CargoClass.BOULDER, details="unstable"),
        article(CargoClass.LOGS, details="lengthwise; longwood; large logs on top"),
    ]
    for one in cargo:
        found = asked(one, **METRIC)
        everything = (
            *found.counts,
            *found.strengths,
            *found.properties,
            *found.accessories,
            *found.looks,
        )
        cites = {step.source.cite() for asked_for in everything for step in asked_for.steps}
        cites |= {asked_for.source.cite() for asked_for in everything}
        assert found.section.document == "NSC Standard 10"
        assert not [cite for cite in cites if cite.startswith("49 CFR")]
