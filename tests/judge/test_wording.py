"""How the judgement words numbers and workings."""

from fractions import Fraction

import pytest

from loadplan.judge.wording import need_and_have, sentences, working
from loadplan.rules.requirement import CountRequirement, Step
from loadplan.rules.sources import CARGO


@pytest.mark.parametrize(
    ("need", "have", "places", "printed"),
    [
        # need up, have down
        ("7083.3", "7084.9", 0, ("7,084", "7,084")),
        ("100", "200", 0, ("100", "200")),
        # not met stays not met
        ("100.9", "100.1", 0, ("101", "100")),
        # met by less than the rounding: as many decimals as it takes
        ("100.2", "100.7", 0, ("100.2", "100.7")),
        ("100.21", "100.22", 0, ("100.21", "100.22")),
        ("1/3", "1/3", 0, ("0.333333", "0.333333")),
        ("1/3", "1/2", 2, ("0.34", "0.5")),
        ("-2.5", "-1.5", 0, ("-2", "-2")),
    ],
)
def test_need_and_have(need, have, places, printed):
    assert need_and_have(Fraction(need), Fraction(have), places) == printed


def step(numbers, result):
    """One step of working."""
    return Step(words="In words", numbers=numbers, result=result, source=CARGO)


def test_working():
    asked = CountRequirement(
        name="count",
        source=CARGO,
        steps=(
            step("4", "4 tie-downs"),
            step("1/2 x 100", "50 lb"),
            step("front left", "1 tie-down"),
        ),
        at_least=1,
    )
    assert working(asked, "Planned: 2", "") == (
        "In words: 4 tie-downs. In words: 1/2 x 100 = 50 lb. In words: front left; 1 tie-down. "
        "Planned: 2."
    )


def test_sentences():
    assert sentences(["One", "", "Two."]) == "One. Two."
    assert sentences([]) == ""
