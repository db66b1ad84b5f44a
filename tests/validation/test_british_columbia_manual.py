"""British Columbia commercial licence manual, p. 110: 3.65 m, 600 kg, not blocked.

Tie-downs over the cargo: the whole WLL counts, so 600 / 2 = 300 kg is needed.
"""

from fractions import Fraction

import pytest

from loadplan.day.day import RuleSet
from loadplan.day.units import Units
from tests.validation.days import cargo, counted, fewest, need
from tests.validation.published import Published

CARGO = cargo(600, "3.65")


def row(what, printed, unit):
    return Published(
        document="British Columbia commercial licence manual",
        section="p. 110",
        tier="A",
        what=what,
        printed=printed,
        unrounded=printed,
        unit=unit,
    )


@pytest.mark.parametrize("rules", RuleSet)
def test_what_is_needed(rules):
    needed, number = need(CARGO, Units.METRIC, rules), counted(CARGO, Units.METRIC, rules)
    row("aggregate WLL", 300, "kg").check(needed)
    row("tie-downs by length", 3, "tie-downs").check(number)
    row("each, of three", 100, "kg").check(needed / number)


@pytest.mark.parametrize(
    ("published", "gear"),
    [
        (row("gear of 100 kg", 3, "tie-downs"), 100),
        (row("gear of 50 kg: strength governs", 6, "tie-downs"), 50),
        (row("gear of 200 kg: count governs", 3, "tie-downs"), 200),
    ],
    ids=str,
)
@pytest.mark.parametrize("rules", RuleSet)
def test_how_many_are_used(rules, published, gear):
    published.check(fewest(CARGO, Fraction(gear), Units.METRIC, rules))
