"""Paper rolls: tie-downs by the general rules, the rest by looking."""

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.units import Units
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths


def rolls(details="", **known):
    return article(
        CargoClass.PAPER_ROLLS, details=details, **{"weight": 40000, "length": 40, **known}
    )


def test_the_general_rules():
    found = asked(rolls("on end"))
    assert sets(found) == [("over 1", 20, "over", 1, "")]
    assert needs(found) == [("tie-downs by length", 5, None)]
    assert strengths(found) == [(20000, {Routing.OVER: 1})]
    assert found.section.section == "393.122"


@pytest.mark.parametrize(
    ("details", "lines"),
    [
        ("on end", ["forward roll", "wide rolls"]),
        ("on side", ["rolling"]),
        ("", ["forward roll", "wide rolls", "rolling"]),
        ("on side; 2 layers", ["rolling", "upper layer"]),
    ],
)
def test_what_to_look_at(details, lines):
    always = ["contact", "void behind", *lines, "mats under rolls"]
    assert look_names(asked(rolls(details))) == [*always, "edge protection", "side by side"]


@pytest.mark.parametrize(
    ("height", "units", "details", "text"),
    [
        # 7 ft = 84 in; 84 / 40 = 2.1
        (
            7,
            Units.US,
            "on end; diameter 40 in",
            "The roll is 2.1 times as wide as its diameter: band, brace or tie it unless it is "
            "supported.",
        ),
        (
            "6.5",
            Units.US,
            "on end; diameter 39 in",
            "The roll is 2 times as wide as its diameter, no more than twice.",
        ),
        # 1.5 m / 1.2 m = 1.25
        (
            "1.5",
            Units.METRIC,
            "on end; diameter 1.2 m",
            "The roll is 1.25 times as wide as its diameter, no more than twice.",
        ),
        (
            7,
            Units.US,
            "on end; diameter 40 in; layers 2",
            "A roll on end wider than twice its diameter and not supported is banded, braced or "
            "tied against tipping.",
        ),
    ],
)
def test_how_wide_a_roll_is_for_its_diameter(height, units, details, text):
    found = asked(rolls(details, height=height), units=units)
    (line,) = [one for one in found.looks if one.name == "wide rolls"]
    assert line.text == text


def test_the_length_is_needed():
    assert [column for column, _ in problems(rolls(length=None))] == ["Length"]
    assert problems(rolls()) == []
