"""The notes: readings in force, gear never planned, cautions, warnings."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.results.cautions import CAUTIONS
from loadplan.results.house_words import house_lines
from loadplan.results.workbook import results_bytes
from loadplan.workbook.lines import HOUSE_LINES
from tests.results.build import DAY, plan_of
from tests.results.dump import opened


def _texts(plan):
    sheet = opened(results_bytes(plan))["Notes"]
    return [[cell.value for cell in row] for row in sheet.iter_rows()]


def test_every_house_rule_is_shown_with_its_value():
    lines = house_lines(DAY)
    assert [line[0] for line in lines] == [line.name for line in HOUSE_LINES]
    values = {line[0]: line[1:3] for line in lines}
    assert values["Heavy from"] == ("0 lb", "default")
    assert values["Least WLL each"] == ("none", "default")
    assert values["Aggregate share"] == ("1/2", "default")
    assert values["Estimated weight margin"] == ("0.1", "default")
    assert values["Unrated points"] == ("warn", "default")
    assert values["Straps on machines"] == ("yes", "default")


def test_chosen_values_are_told_from_defaults():
    house = HouseRules(
        least_wll_each=Fraction(5000),
        aggregate_share=Fraction("0.6"),
        unrated_points=UnratedPoints.HOLD,
        stated={"Least WLL each": None, "Aggregate share": None, "Unrated points": None},
    )
    values = {line[0]: line[1:3] for line in house_lines(replace(DAY, house=house))}
    assert values["Least WLL each"] == ("5,000 lb", "chosen")
    assert values["Aggregate share"] == ("0.6", "chosen")
    assert values["Unrated points"] == ("hold", "chosen")
    assert values["Most per position"] == ("2", "default")


def test_notes_hold_cautions_gear_and_warnings():
    rows = _texts(plan_of())
    first = [row[0] for row in rows]
    assert all(caution in first for caution in CAUTIONS)
    assert DAY.warnings[0] in first
    assert ["B-OLD", "lever binder", 1, "its condition is scrap"] in rows


def test_a_day_without_warnings_says_none():
    rows = _texts(plan_of(replace(DAY, warnings=())))
    assert rows[-1][0] == "None."
