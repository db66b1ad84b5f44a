"""Printed numbers: needs up, strengths down, thousands commas."""

from fractions import Fraction

import pytest

from loadplan import text
from loadplan.day.units import Units


@pytest.mark.parametrize(
    ("value", "up", "down"),
    [
        (Fraction(42500, 6), "7,084", "7,083"),
        (Fraction(5000, 3), "1,667", "1,666"),
        (Fraction(16000), "16,000", "16,000"),
        (7, "7", "7"),
        (Fraction(1, 2), "1", "0"),
        (Fraction(-1, 2), "0", "-1"),
        (Fraction(1234567), "1,234,567", "1,234,567"),
    ],
)
def test_needs_round_up_and_strengths_down(value, up, down):
    assert (text.up(value), text.down(value)) == (up, down)
    assert text.mass_up(value, Units.US) == f"{up} lb"
    assert text.mass_down(value, Units.METRIC) == f"{down} kg"


@pytest.mark.parametrize(
    ("value", "places", "printed"),
    [
        (Fraction(25, 2), 2, "12.5"),
        (Fraction(1200), 2, "1,200"),
        (1200, 2, "1,200"),
        (Fraction(1, 3), 2, "0.33"),
        (Fraction(1, 3), 4, "0.3333"),
        (Fraction(1, 3), 0, "0"),
        (Fraction(1999, 1000), 2, "2"),
        (Fraction(-5, 2), 1, "-2.5"),
        (Fraction(-1, 1000), 2, "0"),
        (Fraction("10000.05"), 2, "10,000.05"),
        (Fraction("0.005"), 2, "0"),
        (Fraction("0.015"), 2, "0.02"),
    ],
)
def test_plain_numbers_to_the_nearest_place(value, places, printed):
    assert text.plain(value, places) == printed


def test_quantities_carry_their_unit():
    assert text.mass(Fraction("2130.25"), Units.US) == "2,130.25 lb"
    assert text.length(Fraction("6.096"), Units.METRIC) == "6.096 m"


def test_counts_and_lists_in_words():
    assert text.count(1, "tie-down") == "1 tie-down"
    assert text.count(1200, "tie-down") == "1,200 tie-downs"
    assert text.count(2, "winch", "winches") == "2 winches"
    assert text.names([]) == ""
    assert text.names(("a",)) == "a"
    assert text.names(["a", "b"]) == "a and b"
    assert text.names(["a", "b", "c"], last="or") == "a, b or c"
