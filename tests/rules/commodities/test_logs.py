"""Logs: one sixth of the weight lengthwise, tie-downs by stack, wood and bunks."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths, working

OVER, ROUND = Routing.OVER, Routing.ROUND
HANDBOOK = "(from the official handbook, not the regulation text read)"


def logs(details, **known):
    return article(CargoClass.LOGS, details=details, **{"weight": 42500, "length": None, **known})


@pytest.mark.parametrize(
    ("details", "number"),
    [
        ("lengthwise; shortwood", 2),
        ("lengthwise; shortwood; blocked both ends", 2),
        ("lengthwise; shortwood; under 10 ft", 2),
        ("lengthwise; shortwood; under 10 ft; blocked both ends", 1),
        ("lengthwise; longwood", 2),
        ("lengthwise; longwood; bunks 4", 4),
        ("lengthwise; longwood; bunks 2", 2),
    ],
)
def test_how_many_go_over_a_stack_lengthwise(details, number):
    assert needs(asked(logs(details))) == [("tie-downs over the stack", number, "over 1")]
    assert sets(asked(logs(details))) == [("over 1", 20, "over", 1, "")]


def test_one_sixth_of_the_weight_lengthwise():
    """42,500 / 6 = 7,083.33, printed rounded up, and the whole of each WLL counts."""
    found = asked(logs("lengthwise; longwood"))
    assert strengths(found) == [(Fraction(42500, 6), {OVER: 1})]
    assert working(found.strengths[0])[0] == (
        "One sixth of the weight",
        "1/6 x 42,500 lb",
        "7,084 lb",
        f"49 CFR 393.116 {HANDBOOK}",
    )


def test_a_house_that_asks_more_than_half_asks_more_than_a_sixth_in_proportion():
    """0.6 / 0.5 x 42,500 / 6 = 8,500."""
    found = asked(logs("lengthwise; longwood"), house=HouseRules(aggregate_share=Fraction("0.6")))
    assert strengths(found)[0][0] == 8500
    assert working(found.strengths[0])[0][:3] == (
        "0.2 of the weight",
        "0.2 x 42,500 lb",
        "8,500 lb",
    )


def test_large_logs_on_top_take_two_wrappers_that_hold_to_the_load_only():
    found = asked(logs("lengthwise; longwood; large logs on top"))
    assert sets(found) == [("over 1", 20, "over", 1, ""), ("wrapper 1", 2, "round", 1, "")]
    assert needs(found) == [
        ("tie-downs over the stack", 2, "over 1"),
        ("wrappers", 2, "wrapper 1"),
    ]
    assert strengths(found) == [(Fraction(42500, 6), {OVER: 1, ROUND: 0})]
    assert working(found.strengths[0])[-1][:3] == (
        "A tie-down round the article only counts with",
        "nothing",
        "0",
    )
    assert "large logs on top" in look_names(found)


def test_one_stack_crosswise_is_tied_lengthwise_with_half_its_weight():
    """42,500 / 2 = 21,250."""
    found = asked(logs("crosswise"))
    assert sets(found) == [("lengthwise 1", 20, "over", 1, "")]
    assert needs(found) == [("tie-downs lengthwise", 2, None)]
    assert strengths(found) == [(21250, {OVER: 1})]
    assert "thirds" in look_names(found)


def test_two_stacks_crosswise_have_one_across_each():
    found = asked(logs("crosswise; stacks 2"))
    assert sets(found) == [
        ("left stack over 1", 20, "over", 1, ""),
        ("right stack over 1", 20, "over", 1, ""),
    ]
    assert needs(found) == [
        ("tie-down over the left stack", 1, "left stack over 1"),
        ("tie-down over the right stack", 1, "right stack over 1"),
    ]
    assert "two stacks" in look_names(found)


@pytest.mark.parametrize(("units", "least"), [(Units.US, 4000), (Units.METRIC, 1800)])
def test_each_bears_the_floor_unless_the_house_lets_it_go(units, least):
    found = asked(logs("lengthwise; shortwood"), units=units)
    (floor,) = found.properties
    assert (floor.name, floor.at_least, floor.positions) == ("least WLL on logs", least, None)
    assert floor.source.cite() == f"49 CFR 393.116 {HANDBOOK}"
    without = asked(logs("lengthwise; shortwood"), house=HouseRules(log_floor=False))
    assert without.properties == ()


def test_what_to_look_at():
    assert look_names(asked(logs("lengthwise; longwood"))) == [
        "bunks and stakes",
        "crown",
        "retighten",
        "10 ft apart",
        "edge protection",
        "side by side",
    ]
    midway = asked(logs("lengthwise; shortwood; under 10 ft; blocked both ends"))
    assert "midway" in look_names(midway)
    assert "10 ft apart" not in look_names(asked(logs("lengthwise; longwood; bunks 3")))


def test_automatic_tensioning_is_canadian():
    canada = asked(logs("crosswise"), rules=RuleSet.CANADA, units=Units.METRIC)
    assert "automatic tensioning" in look_names(canada)
    assert "automatic tensioning" not in look_names(asked(logs("crosswise")))


WOOD = (
    "Details lacks whether they are shortwood (16 ft or 4.9 m, or any such log in the stack), "
    f"needed by 49 CFR 393.116 {HANDBOOK}. Write shortwood or longwood."
)


@pytest.mark.parametrize(
    ("details", "known", "text"),
    [
        (
            "",
            {},
            f"Details lacks how the logs lie, needed by 49 CFR 393.116 {HANDBOOK}. "
            "Write lengthwise or crosswise.",
        ),
        ("lengthwise", {}, WOOD),
        (
            "crosswise; longwood",
            {},
            "Details says longwood crosswise, and only shortwood is loaded so, by 49 CFR 393.116 "
            f"{HANDBOOK}. Write lengthwise, or shortwood.",
        ),
        (
            "lengthwise; shortwood; stacks 2",
            {},
            "Details says more than one stack lengthwise, and each has its own tie-downs and "
            f"strength, by 49 CFR 393.116 {HANDBOOK}. Write one row for each stack.",
        ),
        (
            "lengthwise; longwood",
            {"length": 16},
            "Details says longwood and Length is no more than 16 ft, which is shortwood, by "
            f"49 CFR 393.116 {HANDBOOK}. Write shortwood, or correct the length.",
        ),
    ],
)
def test_what_a_row_lacks_or_contradicts(details, known, text):
    assert problems(logs(details, **known)) == [("Details", text)]


def test_sound_rows():
    assert problems(logs("lengthwise; longwood", length="16.01")) == []
    assert problems(logs("lengthwise; shortwood", length=40)) == []
    assert problems(logs("crosswise; shortwood; stacks 2")) == []
