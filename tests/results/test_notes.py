"""The notes: readings in force, gear never planned, cautions, warnings."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.results.cautions import CAUTIONS
from loadplan.results.house_words import (
    always_read,
    house_lines,
    other_counts,
    other_readings,
    reading_lines,
)
from loadplan.results.workbook import results_bytes
from loadplan.rules.effects import effects
from loadplan.rules.switches import SWITCHES
from loadplan.tables.facts import DayFacts
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


def test_where_no_reading_is_chosen_it_is_that_of_the_rule_set():
    us = {line[0]: line[1] for line in house_lines(DAY)}
    canada = {line[0]: line[1] for line in house_lines(replace(DAY, rules=RuleSet.CANADA))}
    assert (us["Floor on heavy machines"], canada["Floor on heavy machines"]) == ("no", "yes")
    assert (us["Same side credit"], canada["Same side credit"]) == ("1/2", "1")


def test_every_disputed_point_is_told_with_what_it_rests_on():
    rows = {line[0]: line[1:] for line in reading_lines(DAY)}
    assert list(rows) == [switch.name for switch in SWITCHES]
    assert rows["Floor on logs"] == (
        "yes",
        "default",
        "Must each tie-down on logs bear 4,000 lb (1,800 kg)? Rests on: the handbook says so "
        "(from the official handbook). Otherwise: no.",
    )


def test_a_chosen_reading_and_a_figure_of_the_yard():
    house = HouseRules(
        heavy_from=Fraction(8000),
        accessory_tie_downs=2,
        stated={"Heavy from": None, "Accessory tie-downs": None},
    )
    rows = {line[0]: line[1:] for line in reading_lines(replace(DAY, house=house))}
    assert rows["Accessory tie-downs"][:2] == ("2", "chosen")
    assert rows["Accessory tie-downs"][2].endswith(
        "Rests on: a stricter house (common practice, no source). Otherwise: 1."
    )
    assert rows["Heavy from"][:2] == ("8,000 lb", "chosen")
    assert "Rests on: the yard's own figure. Otherwise: 0, 10,000 lb" in rows["Heavy from"][2]


def test_other_readings_are_told_where_they_change_a_count():
    """The excavator is 24 ft long and not blocked: 2 + (24 - 10) / 10 rounded up = 4 by length,
    as many as its corners. Its boom would take one more under two tie-downs each. The lumber,
    16 ft, takes 3; blocked forward it would take 2, the excavator still 4."""
    rows = other_counts(effects(DAY))
    assert ("Accessory tie-downs", "1", "2", "1 more tie-down: EX-1") in rows
    assert all(row[0] != "Length count on machines" for row in rows)


def test_each_load_sheet_says_what_other_readings_ask_of_its_articles():
    """One more for the boom. Were the one it has counted among the four, the four corners would
    still ask for theirs."""
    sheet = opened(results_bytes(plan_of()))["Load 1"]
    (line,) = [
        str(cell.value)
        for row in sheet.iter_rows()
        for cell in row
        if str(cell.value).startswith("Read another way")
    ]
    assert line == (
        "Read another way, by a line of House rules, it would take: "
        '"Accessory tie-downs" = 2: 1 more tie-down.'
    )


def test_an_article_that_no_other_reading_changes_has_no_such_line():
    by_article = DayFacts(plan_of()).effects_by_article
    assert other_readings(()) == ""
    assert other_readings(by_article["EX-1"])
    assert set(by_article) == {one.article for one in effects(DAY)}


def test_notes_name_the_rule_set_and_its_readings():
    rows = _texts(plan_of(replace(DAY, rules=RuleSet.CANADA), ready=(), tie_downs=()))
    first = [str(row[0]) for row in rows]
    (rules,) = [text for text in first if text.startswith("Rules: ")]
    assert rules.startswith("Rules: NSC Standard 10. Read: edition of June 2013; ")
    assert "adoption differs by province" in rules
    assert "Check the current text" in rules
    assert always_read(replace(DAY, rules=RuleSet.CANADA))[-1] in first
    floor = next(row for row in rows if row[0] == "Floor on heavy machines")
    assert floor[1:3] == ["yes", "default"]


def test_notes_hold_cautions_gear_and_warnings():
    rows = _texts(plan_of())
    first = [row[0] for row in rows]
    assert all(caution in first for caution in CAUTIONS)
    assert DAY.warnings[0] in first
    assert ["B-OLD", "lever binder", 1, "its condition is scrap"] in rows


def test_a_day_without_warnings_says_none():
    rows = _texts(plan_of(replace(DAY, warnings=())))
    assert rows[-1][0] == "None."
