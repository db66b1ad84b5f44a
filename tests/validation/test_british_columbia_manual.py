"""British Columbia commercial licence manual, p. 110: 3.65 m, 600 kg, not blocked.

Tie-downs over the cargo: the whole WLL counts, so 600 / 2 = 300 kg is needed.
"""

from fractions import Fraction

import pytest

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


def test_what_is_needed():
    row("aggregate WLL", 300, "kg").check(need(CARGO, Units.METRIC))
    row("tie-downs by length", 3, "tie-downs").check(counted(CARGO, Units.METRIC))
    row("each, of three", 100, "kg").check(need(CARGO, Units.METRIC) / counted(CARGO, Units.METRIC))


@pytest.mark.parametrize(
    ("published", "gear"),
    [
        (row("gear of 100 kg", 3, "tie-downs"), 100),
        (row("gear of 50 kg: strength governs", 6, "tie-downs"), 50),
        (row("gear of 200 kg: count governs", 3, "tie-downs"), 200),
    ],
    ids=str,
)
def test_how_many_are_used(published, gear):
    published.check(fewest(CARGO, Fraction(gear), Units.METRIC))
