"""Settings on Day and lines on House rules."""

from fractions import Fraction

import pytest

from loadplan.day.house import HeavyEnds
from loadplan.workbook.columns import DAY, HOUSE_RULES
from tests.workbook.build import SMALLEST, cargo_with, read, rejected

SETTINGS = ", ".join(line.name for line in DAY.lines)
RULES = ", ".join(line.name for line in HOUSE_RULES.lines)


def day_with(*rows):
    return {"Day": [("Setting", "Value"), *rows], **SMALLEST}


def house_with(*rows, metric=False):
    day = {"Day": [("Setting", "Value"), ("Units", "metric")]} if metric else {}
    return {**day, **SMALLEST, "House rules": [("Rule", "Value"), *rows]}


@pytest.mark.parametrize(
    ("typed", "value", "seconds"),
    [
        ("Turnaround [min]", 20, 1200),
        ("turnaround [h]", 0.5, 1800),
        ("Turnaround", "45 min", 2700),
        ("Turnaround [min]", "1 h 30 min", 5400),
        # The careful side: a third of a minute more than 20 s is 21 s.
        ("Turnaround [min]", 0.34, 21),
        ("Turnaround [min]", None, 0),
    ],
)
def test_turnaround(tmp_path, typed, value, seconds):
    assert read(tmp_path, day_with((typed, value))).turnaround == seconds


def test_a_share_as_number_or_percentage(tmp_path):
    day = read(tmp_path, house_with(("Aggregate share", "55 %"), ("Estimated weight margin", 0)))
    assert (day.house.aggregate_share, day.house.estimate_margin) == (Fraction(11, 20), 0)


@pytest.mark.parametrize(
    ("row", "line"),
    [
        (
            ("Units", "metrik"),
            "'Day'!B2  V07  Units is \"metrik\". Did you mean metric? It must be one of: US, "
            "metric.",
        ),
        (
            ("Turnaround", 20),
            "'Day'!B2  V06  Turnaround is 20, without a unit. Write its unit (s, min or h) in "
            "the cell or, in square brackets, in the heading.",
        ),
        (
            ("Turnaround [lb]", 20),
            "'Day'!A2  S05  Turnaround has the unit \"lb\". Use s, min or h.",
        ),
        (
            ("Turnaround [min]", -1),
            "'Day'!B2  V01  Turnaround is -1. It must be 0 or more.",
        ),
        (
            ("Time limit [s]", 0),
            "'Day'!B2  V01  Time limit is 0. It must be more than 0.",
        ),
        (
            ("Turnround [min]", 20),
            "'Day'!A2  H01  Setting \"Turnround\" is not known. Did you mean Turnaround? "
            f"The names are: {SETTINGS}.",
        ),
        ((None, 20), "'Day'!A2  V02  Setting is blank. Every value needs one."),
        (
            ("Time limit [s]", "=60"),
            "'Day'!B2  V08  Time limit is a formula without a stored value. Open the workbook in "
            "a spreadsheet program, let it calculate and save it, or type the value itself.",
        ),
    ],
)
def test_a_setting_that_cannot_be_used(tmp_path, row, line):
    assert rejected(tmp_path, day_with(row)) == [line]


def test_a_setting_given_twice(tmp_path):
    assert rejected(tmp_path, day_with(("Yard", "x"), ("yard", "y"))) == [
        "'Day'!A3  H02  Yard stands in A2 already. Keep one of the two rows."
    ]


def test_a_setting_like_no_other_is_a_warning(tmp_path):
    assert read(tmp_path, day_with(("Weather", "fine"))).warnings == (
        "'Day'!A2  The setting \"Weather\" is not known and was left out.",
    )


@pytest.mark.parametrize(
    ("row", "line"),
    [
        (
            ("Straps on machine", "no"),
            "'House rules'!A2  H01  Rule \"Straps on machine\" is not known. "
            f"Did you mean Straps on machines? The names are: {RULES}.",
        ),
        (
            ("No hurry", "yes"),
            f"'House rules'!A2  H01  Rule \"No hurry\" is not known. The names are: {RULES}.",
        ),
        (
            ("Aggregate share", 0.4999),
            "'House rules'!B2  H03  Aggregate share is 0.4999, below the half that 49 CFR "
            "393.106(d) asks for. It must be 0.5 or more.",
        ),
        (
            ("Aggregate share", 50),
            "'House rules'!B2  V01  Aggregate share is 50. It must be 10 or less.",
        ),
        (
            ("Heavy from [lb]", 10001),
            "'House rules'!B2  H03  Heavy from is 10,001 lb, and beyond 10,000 lb 49 CFR "
            "393.130(a) holds in any case. It must be 10,000 lb or less.",
        ),
        (
            ("Least WLL each [lb]", 0),
            "'House rules'!B2  V01  Least WLL each is 0. It must be more than 0.",
        ),
        (
            ("Most per position", 0),
            "'House rules'!B2  V01  Most per position is 0. It must be a whole number from 1 to "
            "100.",
        ),
        (
            ("Most per position", 1.5),
            "'House rules'!B2  V01  Most per position is 1.5. It must be a whole number from 1 "
            "to 100.",
        ),
        (
            ("Unrated points", "ignore"),
            "'House rules'!B2  V07  Unrated points is \"ignore\". It must be one of: warn, hold.",
        ),
    ],
)
def test_a_house_rule_that_cannot_be_used(tmp_path, row, line):
    assert rejected(tmp_path, house_with(row)) == [line]


@pytest.mark.parametrize(
    ("rule", "typed", "field", "value"),
    [
        ("Direct credit", "1/2", "direct_credit", Fraction(1, 2)),
        ("direct credit", 0.5, "direct_credit", Fraction(1, 2)),
        ("Same side credit", 1, "same_side_credit", 1),
        ("Floor on heavy machines", True, "heavy_floor", True),
        ("Floor on heavy machines", "No", "heavy_floor", False),
        ("Light vehicle tie-downs", "4", "light_vehicle_tie_downs", 4),
        ("Ends of heavy machines", "Two front and two  rear", "heavy_ends", HeavyEnds.TWO_AND_TWO),
    ],
)
def test_readings_of_disputed_points(tmp_path, rule, typed, field, value):
    assert getattr(read(tmp_path, house_with((rule, typed))).house, field) == value


@pytest.mark.parametrize(
    ("row", "line"),
    [
        (("Direct credit", "3/4"), 'Direct credit is "3/4". It must be one of: 1/2, 1.'),
        (("Direct credit", 0.75), "Direct credit is 0.75. It must be one of: 1/2, 1."),
        (("Floor on logs", "maybe"), 'Floor on logs is "maybe". Write yes or no.'),
    ],
)
def test_a_reading_that_there_is_not(tmp_path, row, line):
    assert rejected(tmp_path, house_with(row)) == [f"'House rules'!B2  V07  {line}"]


def test_the_limit_of_heavy_from_is_the_printed_one_in_a_metric_day(tmp_path):
    assert read(tmp_path, house_with(("Heavy from [kg]", 4536), metric=True)).house.heavy_from
    assert rejected(tmp_path, house_with(("Heavy from [lb]", 10001), metric=True)) == [
        "'House rules'!B2  H03  Heavy from is 4,536.38 kg, and beyond 4,536 kg 49 CFR "
        "393.130(a) holds in any case. It must be 4,536 kg or less."
    ]


def test_a_rule_given_twice(tmp_path):
    rows = (("Most per position", 2), ("most  per position", 3))
    assert rejected(tmp_path, house_with(*rows)) == [
        "'House rules'!A3  H02  Most per position stands in A2 already. Keep one of the two rows."
    ]


def test_a_blank_value_leaves_the_default_and_counts_as_stated(tmp_path):
    house = read(tmp_path, house_with(("Most per position", None))).house
    assert house.most_per_position == 2
    assert "Most per position" in house.stated


def test_missing_headings_of_a_sheet_of_settings(tmp_path):
    assert rejected(tmp_path, {**SMALLEST, "House rules": [("Rule", "Worth"), ("x", 1)]}) == [
        "'House rules'!A1  S02  The sheet House rules has no column Value. "
        "Write Value in its heading row."
    ]


def test_units_hold_for_every_sheet_whatever_the_order(tmp_path):
    sheets = {
        **cargo_with("Weight [lb]", "1 t"),
        "Day": [("Setting", "Value"), ("units", "METRIC")],
    }
    assert read(tmp_path, sheets).articles[0].weight == 1000
