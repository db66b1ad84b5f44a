"""Facts of an article that contradict its section, with the full text people read."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing, SecuredUnder
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.facts import contradictions
from tests.rules.build import article, asked

HEAVY, LIGHT, GENERAL = SecuredUnder.HEAVY, SecuredUnder.LIGHT_VEHICLE, SecuredUnder.GENERAL
NO_SWITCH = HouseRules(length_count_on_machines=False)


def found(cargo, house=None, units=Units.US):
    return [(one.column, one.text) for one in contradictions(cargo, house or HouseRules(), units)]


def test_sound_articles_have_none():
    for kind in CargoClass:
        if not kind.is_commodity:
            assert found(article(kind, weight=10000)) == []
    assert found(article(length=None), NO_SWITCH) == []
    assert found(article(weight=9999, secured_under=GENERAL, routing=Routing.OVER)) == []


@pytest.mark.parametrize(
    ("section", "cite"), [(HEAVY, "49 CFR 393.130(c)(1)"), (LIGHT, "49 CFR 393.128")]
)
def test_over_where_corners_are_asked(section, cite):
    stated = article(weight=4000, secured_under=section, routing=Routing.OVER)
    blank = article(CargoClass.GENERAL, weight=4000, secured_under=section)
    end = (
        f"but the article is secured under {section.value} ({cite}), which needs tie-downs at its "
        "front and rear. Write direct or same side in Routing."
    )
    assert found(stated) == [("Routing", f"Routing is over {end}")]
    assert found(blank) == [
        ("Routing", f"Routing is blank, which means over for class general, {end}")
    ]


def test_too_heavy_for_a_light_vehicle():
    text = (
        "The article weighs 10,000.5 lb with everything on it, and light vehicle "
        "(49 CFR 393.128) goes up to 10,000 lb. Write heavy in Secured under, or correct the "
        "weight."
    )
    car = article(CargoClass.LIGHT_VEHICLE, weight=9000, added=[("tools", "1000.5")])
    machine = article(weight="10000.5", secured_under=LIGHT)
    assert found(car) == [("Class", text)]
    assert found(machine) == [("Secured under", text)]
    assert found(article(weight=10000, secured_under=LIGHT)) == []


@pytest.mark.parametrize(("weight", "problems"), [(4536, 0), (4537, 1)])
def test_the_metric_limit_of_a_light_vehicle_is_its_own(weight, problems):
    """4,536 kg is 10,000.17 lb: over the other limit, and yet within this one."""
    car = article(CargoClass.LIGHT_VEHICLE, weight=weight, length=4)
    assert len(found(car, units=Units.METRIC)) == problems


def test_a_heavy_machine_under_the_general_rules():
    machine = article(weight=10000, secured_under=GENERAL)
    assert found(machine) == [
        (
            "Secured under",
            "The machine weighs 10,000 lb with everything on it, and from 10,000 lb up a machine "
            "is secured under heavy (49 CFR 393.130(a)). Write heavy in Secured under, or correct "
            "the weight.",
        )
    ]
    assert found(article(weight=4536, secured_under=GENERAL), units=Units.METRIC)[0][1].startswith(
        "The machine weighs 4,536 kg with everything on it, and from 4,536 kg up"
    )
    assert found(article(CargoClass.GENERAL, weight=90000)) == []
    assert found(article(weight=Fraction("9999.9"), secured_under=GENERAL)) == []


def test_a_light_vehicle_that_is_none_under_the_general_rules():
    """What 393.128 no longer reaches is heavy, whatever its row calls it."""
    truck = article(CargoClass.LIGHT_VEHICLE, weight=10001, secured_under=GENERAL)
    assert found(truck) == [
        (
            "Secured under",
            "The vehicle weighs 10,001 lb with everything on it, and above 10,000 lb a vehicle is "
            "secured under heavy (49 CFR 393.130(a)). Write heavy in Secured under, or correct "
            "the weight.",
        )
    ]
    assert found(article(CargoClass.LIGHT_VEHICLE, weight=10000, secured_under=GENERAL)) == []


BLANK = "Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). Write the length"


@pytest.mark.parametrize(
    ("kind", "section", "text"),
    [
        (CargoClass.GENERAL, None, f"{BLANK}."),
        (CargoClass.TRACKED_MACHINE, GENERAL, f"{BLANK}."),
        (
            CargoClass.TRACKED_MACHINE,
            None,
            f"{BLANK}, or set the house rule Length count on machines to no.",
        ),
        (
            CargoClass.LIGHT_VEHICLE,
            None,
            f"{BLANK}, or set the house rule Length count on machines to no.",
        ),
    ],
)
def test_a_blank_length_where_it_counts(kind, section, text):
    cargo = article(kind, weight=4000, length=None, secured_under=section)
    assert found(cargo) == [("Length", text)]
    assert found(cargo, NO_SWITCH) == ([] if "house rule" in text else [("Length", text)])


def test_several_at_once():
    cargo = article(
        CargoClass.GENERAL, weight=12000, length=None, secured_under=LIGHT, routing=Routing.OVER
    )
    assert [column for column, _ in found(cargo)] == ["Routing", "Secured under", "Length"]


def test_round_is_for_the_rules_alone():
    assert found(article(CargoClass.GENERAL, routing=Routing.ROUND)) == [
        (
            "Routing",
            "Routing is round, which only the rules ask for (a ring or wrapper). "
            "Write direct, same side or over.",
        )
    ]


@pytest.mark.parametrize("kind", [kind for kind in CargoClass if not kind.is_commodity])
def test_own_section_is_for_commodities_alone(kind):
    cargo = article(kind, secured_under=SecuredUnder.OWN_SECTION, weight=4000)
    assert found(cargo) == [
        (
            "Secured under",
            f"Secured under is own section, and class {kind.value} has none. "
            "Write heavy, light vehicle or general.",
        )
    ]


@pytest.mark.parametrize(
    ("kind", "section", "text"),
    [
        (
            CargoClass.METAL_COIL,
            HEAVY,
            "Secured under is heavy, and metal coils have their own section, by 49 CFR 393.120 "
            "(from the official handbook, not the regulation text read). "
            "Write own section or general.",
        ),
        (
            CargoClass.FLATTENED_VEHICLES,
            GENERAL,
            "Secured under is general, and flattened or crushed vehicles have their own section, "
            "by 49 CFR 393.132 (from the official handbook, not the regulation text read). "
            "Write own section.",
        ),
        (
            CargoClass.INTERMODAL_CONTAINER,
            LIGHT,
            "Secured under is light vehicle, and intermodal containers have their own section, by "
            "49 CFR 393.126. Write own section.",
        ),
    ],
)
def test_commodities_under_a_section_that_is_not_theirs(kind, section, text):
    assert found(article(kind, secured_under=section, weight=4000)) == [("Secured under", text)]


@pytest.mark.parametrize(
    ("kind", "may"),
    [
        (CargoClass.LOGS, True),
        (CargoClass.DRESSED_LUMBER, True),
        (CargoClass.METAL_COIL, True),
        (CargoClass.PAPER_ROLLS, True),
        (CargoClass.CONCRETE_PIPE, True),
        (CargoClass.BOULDER, True),
        (CargoClass.INTERMODAL_CONTAINER, False),
        (CargoClass.FLATTENED_VEHICLES, False),
        (CargoClass.ROLL_OFF_CONTAINER, False),
    ],
)
def test_which_commodities_may_follow_the_general_rules(kind, may):
    """Their details are not asked for then, and the check list says when they may."""
    cargo = article(kind, secured_under=GENERAL, weight=4000)
    assert (found(cargo) == []) is may
    if may:
        asked_for = asked(cargo)
        assert [one.name for one in asked_for.counts] == ["tie-downs by length"]
        assert [one.name for one in asked_for.looks[:2]] == ["general rules", "chocks"]
        assert " by the general rules: " in asked_for.looks[0].text
