"""Dressed lumber: the general rules, and over a belly tier or every tier."""

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths

HANDBOOK = "(from the official handbook, not the regulation text read)"


def lumber(details="", **known):
    return article(
        CargoClass.DRESSED_LUMBER, details=details, **{"weight": 40000, "length": 40, **known}
    )


@pytest.mark.parametrize(
    "details", ["", "tiers 1", "tiers 3; stakes", "tiers 2; friction", "tiers 4; sided"]
)
def test_one_tier_or_tiers_held_otherwise_follow_the_general_rules(details):
    """40 ft: 2 + (40 - 10) / 10 = 5; 40,000 / 2 = 20,000."""
    found = asked(lumber(details))
    assert sets(found) == [("over 1", 20, "over", 1, "")]
    assert needs(found) == [("tie-downs by length", 5, None)]
    assert strengths(found) == [(20000, {Routing.OVER: 1})]
    assert found.section.section == "393.118"


def test_a_belly_tier_takes_as_many_again():
    found = asked(lumber("tiers 3; belly"))
    assert sets(found) == [("over 1", 20, "over", 1, ""), ("belly over 1", 20, "over", 1, "")]
    assert needs(found) == [
        ("tie-downs by length", 5, "over 1"),
        ("tie-downs on top bundle", 2, "over 1"),
        ("tie-downs over the belly tier", 5, "belly over 1"),
    ]
    assert strengths(found) == [(20000, {Routing.OVER: 1})]


def test_two_tiers_have_no_belly():
    assert needs(asked(lumber("tiers 2; belly"))) == [
        ("tie-downs by length", 5, "over 1"),
        ("tie-downs on top bundle", 2, "over 1"),
    ]


def test_every_tier():
    found = asked(lumber("tiers 3; every tier", length=20))
    assert needs(found) == [
        ("tie-downs by length", 3, "over 1"),
        ("tie-downs on top bundle", 2, "over 1"),
        ("tie-downs over tier 1", 3, "tier 1 over 1"),
        ("tie-downs over tier 2", 3, "tier 2 over 1"),
    ]


def test_two_on_each_top_bundle_one_behind_the_other():
    """12 ft: 2 + 2 / 10 rounded up = 3 over all; but two bundles take two each."""
    found = asked(lumber("tiers 2; belly; top bundles 2", length=12))
    assert sets(found) == [
        ("bundle 1 over 1", 10, "over", 1, ""),
        ("bundle 2 over 1", 10, "over", 1, ""),
    ]
    assert needs(found) == [
        ("tie-downs by length", 3, "bundle 1 over 1"),
        ("tie-downs on top bundle 1", 2, "bundle 1 over 1"),
        ("tie-downs on top bundle 2", 2, "bundle 2 over 1"),
    ]
    assert len(found.counts[0].positions) == 20


@pytest.mark.parametrize(
    ("units", "length", "asked_for"),
    [
        (Units.US, 5, False),
        (Units.US, "5.01", True),
        (Units.METRIC, "1.52", False),
        (Units.METRIC, "1.53", True),
    ],
)
def test_short_top_bundles_need_no_two(units, length, asked_for):
    found = asked(lumber("tiers 2; belly", length=length), units=units)
    assert (("tie-downs on top bundle", 2, "over 1") in needs(found)) is asked_for


@pytest.mark.parametrize(
    ("height", "belly_asked", "belly"),
    [("5.9", False, False), (6, False, True), (None, False, True), ("5.9", True, True)],
)
def test_a_low_stack_goes_without_where_the_house_reads_it_so(height, belly_asked, belly):
    house = HouseRules(low_lumber_belly=belly_asked)
    found = asked(lumber("tiers 3; belly", height=height), house=house)
    assert ("tie-downs over the belly tier" in [name for name, _, _ in needs(found)]) is belly
    assert ("no belly tie-down under 6 ft" in look_names(found)) is not belly


@pytest.mark.parametrize(
    ("details", "line"),
    [
        ("tiers 3; stakes", "stakes"),
        ("tiers 3; friction", "between the tiers"),
        ("tiers 3; belly", "belly tier"),
        ("tiers 3; every tier", "every tier"),
        ("tiers 3; sided", "sides"),
        ("tiers 1", "bundles side by side"),
    ],
)
def test_what_to_look_at(details, line):
    assert line in look_names(asked(lumber(details)))


def test_the_belly_line_is_from_memory():
    (line,) = [one for one in asked(lumber("tiers 3; belly")).looks if one.name == "belly tier"]
    assert line.source.cite() == "49 CFR 393.118 (memory)"
    (line,) = [
        one
        for one in asked(lumber("tiers 3; belly"), rules=RuleSet.CANADA).looks
        if one.name == "belly tier"
    ]
    assert line.source.cite() == "NSC Standard 10 Part 2, dressed lumber (memory)"


def test_what_a_row_lacks():
    assert problems(lumber("tiers 2")) == [
        (
            "Details",
            "Details lacks how the tiers are secured, needed by 49 CFR 393.118. "
            "Write stakes, friction, belly, every tier or sided.",
        )
    ]
    assert problems(lumber(length=None)) == [
        (
            "Length",
            "Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). "
            "Write the length.",
        )
    ]
    assert problems(lumber("tiers 3; belly", group="G")) == [
        (
            "Group",
            "Tiers tied over a belly tier or over every tier are one stack, by 49 CFR 393.118 "
            f"{HANDBOOK}. Write the stack as one row and leave Group blank.",
        )
    ]
