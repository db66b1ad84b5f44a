"""The number grammar: what is read, what is refused, and that nothing is guessed."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadplan.problems import Code
from loadplan.units import (
    UNITS,
    Dimension,
    Misread,
    factor,
    find_unit,
    is_ton,
    read_number,
    read_quantity,
    read_share,
)

LB_IN_KG = Fraction(45359237, 100_000_000)


def mass(text, into="lb", default="lb"):
    return read_quantity(text, Dimension.MASS, into, default)


def length(text, into="ft", default="ft"):
    return read_quantity(text, Dimension.LENGTH, into, default)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("36000", 36000),
        ("36,000", 36000),
        ("1,234,567.5", Fraction(2469135, 2)),
        (" 12 lb ", 12),
        ("12lbs", 12),
        ("12 LB.", 12),
        ("+12 pounds", 12),
        ("-12 lb", -12),
        ("−12 lb", -12),
        (".5 lb", Fraction(1, 2)),
        ("5. lb", 5),
        ("12 1/2 lb", Fraction(25, 2)),
        ("12½ lb", Fraction(25, 2)),
        ("3/4 lb", Fraction(3, 4)),
        ("2,130 kg", 2130 / LB_IN_KG),
        ("3.2 t", 3200 / LB_IN_KG),
        ("3.2 tonnes", 3200 / LB_IN_KG),
        ("500 g", Fraction(1, 2) / LB_IN_KG),
        ("2130\u00a0kg", 2130 / LB_IN_KG),
    ],
)
def test_weights(text, value):
    assert mass(text) == value


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12' 6\"", Fraction(25, 2)),
        ("12'6\"", Fraction(25, 2)),
        ("12'-6\"", Fraction(25, 2)),
        ("12 ft 6 in", Fraction(25, 2)),
        ("12 ft - 6 in.", Fraction(25, 2)),
        ("12’ 6½″", Fraction(301, 24)),
        ("12' 6 1/2''", Fraction(301, 24)),
        ("6-1/2 in", Fraction(13, 24)),
        ("8'", 8),
        ("96 inches", 8),
        ("-12' 6\"", Fraction(-25, 2)),
        # 1 in = 25.4 mm exactly, so 304.8 mm is a foot
        ("304.8 mm", 1),
        ("30.48 cm", 1),
        ("3.048 metres", 10),
    ],
)
def test_lengths(text, value):
    assert length(text) == value


def test_times():
    assert read_quantity("1 h 30 min", Dimension.TIME, "min", "min") == 90
    assert read_quantity("90 s", Dimension.TIME, "min", None) == Fraction(3, 2)
    assert read_quantity("2 hours", Dimension.TIME, "s", None) == 7200


@pytest.mark.parametrize(
    ("text", "code", "why"),
    [
        ("5,4 t", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("5,40", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("5,4000", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("0,400 kg", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("1,23,456 kg", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("1.234,5 kg", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("1234,567 kg", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("5,400,12 kg", Code.TWO_WAYS, ": its comma can be read in two ways"),
        ("3 ton", Code.TWO_WAYS, ": a ton can be 2,000 lb, 2,240 lb or 1,000 kg"),
        ("3 Tons", Code.TWO_WAYS, ": a ton can be 2,000 lb, 2,240 lb or 1,000 kg"),
        ("NaN", Code.NOT_A_NUMBER, ", which is no number"),
        ("Infinity", Code.NOT_A_NUMBER, ", which is no number"),
        ("", Code.NOT_A_NUMBER, ""),
        ("lb", Code.NOT_A_NUMBER, ""),
        ("1 234 kg", Code.NOT_A_NUMBER, ""),
        ("1/0 kg", Code.NOT_A_NUMBER, ""),
        ("1.2.3", Code.NOT_A_NUMBER, ""),
        ("--5", Code.NOT_A_NUMBER, ""),
        ("٣٤", Code.NOT_A_NUMBER, ""),
        ("9" * 40, Code.NOT_A_NUMBER, ""),
        ("12 kN", Code.WRONG_UNIT, ": kN is not a unit of weight"),
        ("12 lbf", Code.WRONG_UNIT, ": lbf is not a unit of weight"),
        ("12 ft", Code.WRONG_UNIT, ": ft is not a unit of weight"),
        ("1e5", Code.WRONG_UNIT, ": e is not a unit of weight"),
        ("3 lb 4 kg", Code.NOT_A_NUMBER, ""),
    ],
)
def test_weights_that_are_refused(text, code, why):
    with pytest.raises(Misread) as caught:
        mass(text)
    assert (caught.value.code, caught.value.why) == (code, why)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("12' 14\"", Code.TWO_WAYS),
        ("12.5' 6\"", Code.TWO_WAYS),
        ("6\" 12'", Code.NOT_A_NUMBER),
        ("12' 6", Code.NOT_A_NUMBER),
        ("1 m 20 cm", Code.NOT_A_NUMBER),
        ("12 ft 6 kg", Code.WRONG_UNIT),
        ("12 ft 6 -- in", Code.NOT_A_NUMBER),
    ],
)
def test_lengths_that_are_refused(text, code):
    with pytest.raises(Misread) as caught:
        length(text)
    assert caught.value.code is code


def test_a_number_without_any_unit():
    with pytest.raises(Misread) as caught:
        mass("12", default=None)
    assert caught.value.code is Code.NO_UNIT
    assert caught.value.remedy == (
        "Write its unit (lb, kg or t) in the cell or, in square brackets, in the heading."
    )


def test_shares():
    assert read_share("10 %") == read_share("0.1") == Fraction(1, 10)
    with pytest.raises(Misread):
        read_share("10 % %")


def test_units_are_found_in_any_case_and_a_ton_is_none():
    assert find_unit(" Lbs ") == ("lb", Dimension.MASS)
    assert find_unit("ton") is None
    assert is_ton("Tons")
    assert not is_ton("t")


@pytest.mark.parametrize("symbol", sorted({symbol for symbol, _ in UNITS.values()}))
def test_factors_agree_with_the_unit_registry_exactly(symbol):
    registry = pint.UnitRegistry(non_int_type=Fraction)
    names = {"t": "metric_ton", "in": "inch", "h": "hour", "min": "minute", "ft": "foot"}
    dimension = next(one for unit, one in UNITS.values() if unit == symbol)
    for other in sorted({unit for unit, one in UNITS.values() if one is dimension}):
        quantity = registry.Quantity(Fraction(1), names.get(symbol, symbol))
        assert factor(symbol, other) == quantity.to(names.get(other, other)).magnitude


def test_the_legal_definitions():
    # One pound is 0.45359237 kg, one foot 0.3048 m, exactly.
    assert factor("lb", "kg") == LB_IN_KG
    assert factor("ft", "m") == Fraction(381, 1250)
    assert factor("t", "kg") == 1000


@given(st.integers(0, 10**15), st.integers(0, 4))
def test_grouped_and_plain_digits_are_the_same_number(whole, places):
    value = Fraction(whole, 10**places)
    text = f"{whole // 10**places:,}"
    if places:
        text += f".{whole % 10**places:0{places}d}"
    assert mass(text) == mass(text.replace(",", "")) == value
    assert read_number(f"-{text}") == -value


@given(st.integers(1, 10**9), st.sampled_from(["lb", "kg", "t", "g"]))
def test_there_and_back_again_is_exact(number, unit):
    there = mass(f"{number} {unit}", into="kg")
    assert there * factor("kg", unit) == number


@given(st.integers(0, 10**6), st.integers(0, 11))
def test_feet_and_inches(feet, inches):
    expected = feet + Fraction(inches, 12)
    assert length(f"{feet}' {inches}\"") == expected
    assert length(f"{feet} ft {inches} in") == expected


@given(st.integers(0, 999), st.text("0123456789", min_size=1, max_size=6))
def test_a_single_comma_is_a_thousands_comma_or_refused(left, right):
    text = f"{left},{right}"
    if len(right) == 3 and left > 0:
        assert mass(text) == left * 1000 + int(right)
    else:
        with pytest.raises(Misread) as caught:
            mass(text)
        assert caught.value.code is Code.TWO_WAYS


@given(st.text(max_size=30))
def test_any_text_is_a_number_or_refused(text):
    for read in (mass, length, read_number, read_share):
        try:
            value = read(text)
        except Misread:
            continue
        assert isinstance(value, Fraction)


@given(st.floats(allow_nan=False, allow_infinity=False, min_value=1e-4, max_value=1e15))
def test_a_float_as_a_cell_shows_it_is_the_decimal_it_shows(value):
    text = repr(value)
    if "e" not in text:
        assert read_number(text) == Fraction(text)
