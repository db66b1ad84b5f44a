"""Counts of each section, with positions, sources and working."""

import pytest

from loadplan.day.article import CargoClass, Routing, SecuredUnder
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.general import length_count
from loadplan.rules.profile import Profile
from tests.rules.build import article, asked, counts, working

FRONT, REAR = ("front left", "front right"), ("rear left", "rear right")
HEAVY = [
    ("four tie-downs", 4, None, "393.130(c)(1)"),
    ("tie-down at front left", 1, ("front left",), "393.130(c)(2)"),
    ("tie-down at front right", 1, ("front right",), "393.130(c)(2)"),
    ("tie-down at rear left", 1, ("rear left",), "393.130(c)(2)"),
    ("tie-down at rear right", 1, ("rear right",), "393.130(c)(2)"),
]
LIGHT = [
    ("two tie-downs", 2, None, "393.128"),
    ("tie-down at the front", 1, FRONT, "393.128"),
    ("tie-down at the rear", 1, REAR, "393.128"),
]
ENDS = [
    (
        "tie-down at the front",
        1,
        FRONT,
        "one tie-down at the front and one at the rear",
    ),
    ("tie-down at the rear", 1, REAR, "one tie-down at the front and one at the rear"),
]
US, METRIC = (Profile(units=units, house=HouseRules()) for units in Units)
NO_SWITCH = HouseRules(length_count_on_machines=False)


def by_length(number, section="393.110(b)"):
    return ("tie-downs by length", number, None, section)


@pytest.mark.parametrize("machine", [kind for kind in CargoClass if kind.is_machine])
def test_a_heavy_machine_has_a_tie_down_at_each_corner_and_its_length_count(machine):
    assert counts(asked(article(machine, length=31))) == [*HEAVY, by_length(5)]
    assert counts(asked(article(machine, length=31), house=NO_SWITCH)) == HEAVY
    assert counts(asked(article(machine, length=None), house=NO_SWITCH)) == HEAVY


def test_a_light_vehicle_is_held_at_front_and_rear():
    car = article(CargoClass.LIGHT_VEHICLE, weight=4000, length=15)
    assert counts(asked(car)) == [*LIGHT, by_length(3)]
    assert counts(asked(car, house=NO_SWITCH)) == LIGHT


def test_a_light_vehicle_under_the_general_rules_keeps_its_two():
    direct = article(
        CargoClass.LIGHT_VEHICLE, weight=4000, length=15, secured_under=SecuredUnder.GENERAL
    )
    over = article(
        CargoClass.LIGHT_VEHICLE,
        weight=900,
        length=5,
        secured_under=SecuredUnder.GENERAL,
        routing=Routing.OVER,
    )
    assert counts(asked(direct, house=NO_SWITCH)) == [*LIGHT, by_length(3)]
    assert counts(asked(over)) == [LIGHT[0], by_length(1)]


@pytest.mark.parametrize("run", [Routing.DIRECT, Routing.SAME_SIDE])
def test_general_cargo_of_two_or_more_is_held_at_both_ends_unless_over(run):
    long = article(CargoClass.GENERAL, length=8, routing=run)
    short = article(CargoClass.GENERAL, length=5, weight=1100, routing=run)
    assert counts(asked(long)) == [by_length(2), *ENDS]
    assert counts(asked(short)) == [by_length(1)]
    assert counts(asked(article(CargoClass.GENERAL, length=8))) == [by_length(2)]


def test_general_cargo_under_heavy_keeps_its_length_count_whatever_the_switch():
    cargo = article(
        CargoClass.GENERAL, secured_under=SecuredUnder.HEAVY, routing=Routing.DIRECT, length=45
    )
    assert counts(asked(cargo, house=NO_SWITCH)) == [*HEAVY, by_length(6)]


def test_a_machine_under_the_general_rules_keeps_its_length_count_whatever_the_switch():
    cargo = article(weight=5000, length=12, secured_under=SecuredUnder.GENERAL)
    assert counts(asked(cargo, house=NO_SWITCH)) == [by_length(3), *ENDS]


def test_blocked_forward_counts_one_less_of_long_cargo_and_names_its_paragraph():
    cargo = article(CargoClass.GENERAL, length=31, blocked_forward=True)
    assert counts(asked(cargo)) == [by_length(4, "393.110(c)")]


WORKING = [
    (
        {"length": 5, "weight": 1100},
        (
            "Not blocked forward, up to 5 ft and up to 1,100 lb: one",
            "5 ft, 1,100 lb",
            "1 tie-down",
            "49 CFR 393.110(b)",
        ),
    ),
    (
        {"length": "4.5", "weight": 1101},
        (
            "Not blocked forward, up to 5 ft but over 1,100 lb: two",
            "4.5 ft, 1,101 lb",
            "2 tie-downs",
            "49 CFR 393.110(b)",
        ),
    ),
    (
        {"length": 10, "weight": 100},
        (
            "Not blocked forward, over 5 ft and up to 10 ft: two",
            "10 ft",
            "2 tie-downs",
            "49 CFR 393.110(b)",
        ),
    ),
    (
        {"length": "24.5", "weight": 100},
        (
            "Not blocked forward, over 10 ft: two, and one for each further 10 ft or part of it",
            "2 + (24.5 - 10) / 10, rounded up",
            "4 tie-downs",
            "49 CFR 393.110(b)",
        ),
    ),
    (
        {"length": "24.5", "weight": 100, "blocked_forward": True},
        (
            "Blocked forward: one for each 10 ft or part of it",
            "24.5 ft / 10 ft, rounded up",
            "3 tie-downs",
            "49 CFR 393.110(c)",
        ),
    ),
]


@pytest.mark.parametrize(("known", "step"), WORKING)
def test_the_working_says_which_line_of_the_rule_was_used(known, step):
    assert working(length_count(article(CargoClass.GENERAL, **known), US)) == [step]


def test_the_working_of_a_metric_day_is_in_metric_limits():
    cargo = article(CargoClass.GENERAL, length="6.096", weight=600)
    assert working(length_count(cargo, METRIC)) == [
        (
            "Not blocked forward, over 3.04 m: two, and one for each further 3.04 m or part of it",
            "2 + (6.096 - 3.04) / 3.04, rounded up",
            "4 tie-downs",
            "49 CFR 393.110(b)",
        )
    ]


def test_working_of_the_fixed_counts():
    heavy, light = asked(article()), asked(article(CargoClass.LIGHT_VEHICLE, weight=4000))
    assert working(heavy.counts[0]) == [
        ("On tracks or wheels: at least four", "4", "4 tie-downs", "49 CFR 393.130(c)(1)")
    ]
    assert working(heavy.counts[1]) == [
        ("At least one at", "front left", "1 tie-down", "49 CFR 393.130(c)(2)")
    ]
    assert working(light.counts[0]) == [
        (
            "Held at the front and at the rear: at least two",
            "2",
            "2 tie-downs",
            "49 CFR 393.128",
        )
    ]
    assert working(light.counts[1]) == [
        ("At least one at", "front left or front right", "1 tie-down", "49 CFR 393.128")
    ]


def test_an_article_without_length_is_refused_where_it_counts():
    with pytest.raises(ValueError, match=r"^article M-1 is counted by length but has none$"):
        asked(article(length=None))
