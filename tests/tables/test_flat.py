"""The flat tables: their headings, and rows worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.catalogue import sources_of
from loadplan.tables.flat import flat_tables
from tests.results.build import CAGE, DAY, EXCAVATOR, TIE_DOWNS, plan_of


@pytest.fixture(scope="module")
def tables():
    return flat_tables(plan_of())


def test_the_tables_stand_in_the_order_of_the_sheets(tables):
    assert list(tables) == [
        *("Summary", "Shortfall", "Pick list", "Tie-downs", "Checks", "Gear use", "Sources")
    ]


def test_shortfall_is_left_out_where_nothing_is_short():
    assert "Shortfall" not in flat_tables(plan_of(shortages=()))


def test_the_headings_are_those_agreed(tables):
    assert tables["Summary"].headings == (
        *("Load", "Trailer", "Out", "Back", "Priority", "Status", "Articles", "Weight [lb]"),
        *("Tie-downs", "AWLL needed [lb]", "AWLL planned [lb]", "Margin", "Sheet", "Notes"),
    )
    assert tables["Shortfall"].headings == (
        *("Load", "Article", "Short of", "Pieces", "Why", "Cheapest way out"),
    )
    assert tables["Pick list"].headings == ("Load", "Gear", "Pieces", "From", "Out", "Back")
    assert tables["Tie-downs"].headings == (
        *("Load", "Article", "Position", "No", "Routing", "Tension member", "Tensioner"),
        *("Connectors", "Member WLL [lb]", "Tensioner WLL [lb]", "Connector WLL [lb]"),
        *("Anchor WLL [lb]", "Tie point WLL [lb]", "Tie-down WLL [lb]", "Weakest part"),
        *("Credit", "Credited WLL [lb]", "Counts in aggregate"),
    )
    assert tables["Checks"].headings == (
        *("Load", "Article", "Check", "Need", "Have", "Unit", "Verdict", "Working", "Source"),
    )
    assert tables["Gear use"].headings == (
        *("Gear", "Kind", "Owned", "Usable", "Most out at once", "When", "Left then"),
    )


def test_a_metric_day_has_kg_in_its_headings():
    plan = plan_of(replace(DAY, units=Units.METRIC), tie_downs=(), ready=())
    assert "Weight [kg]" in flat_tables(plan)["Summary"].headings
    assert "Anchor WLL [kg]" in flat_tables(plan)["Tie-downs"].headings


def test_summary(tables):
    # Needed: (21,000 + 900) / 2 = 10,950. Planned: 5 x 1/2 x 5,400 = 13,500; the boom does not
    # count. Margin: 13,500 / 10,950 - 1. Straps: 3 x 5,400 = 16,200 against 8,000 / 2.
    rows = [row[:-1] for row in tables["Summary"].rows]
    assert rows == [
        ("1", "T-1", "06:00", "10:00", 1, "ready", 1, 21900, 6, 10950, 13500,
         Fraction(13500, 10950) - 1, "Load 1"),
        ("2", "T-2", "07:00", "12:00", 2, "ready", 1, 8000, 3, 4000, 16200,
         Fraction(16200, 4000) - 1, "Load 2"),
        ("3", "", "08:00", "11:00", 3, "held", 1, 12000, 0, 6000, 0, None, "Load 3"),
    ]  # fmt: skip


def test_summary_notes_say_what_a_held_load_is_short_of(tables):
    note = tables["Summary"].column("Notes")[2]
    assert str(note).startswith("short of binder for 3/8 in chain, 3,000 lb or more; ")
    assert str(note).endswith(" advice lines; Call ahead")


def test_tie_downs(tables):
    rows = tables["Tie-downs"].rows
    half, whole = Fraction(1, 2), Fraction(1)
    chain = ("direct", "CH-1", "B-1", "", 6600, 5400, None, 6000, 12000, 5400, "tensioner")
    assert rows[0] == ("1", "EX-1", "front left", 1, *chain, half, 2700, "yes")
    assert rows[4] == ("1", "EX-1", "front left", 2, *chain, half, 2700, "yes")
    # Unmarked 3/8 in chain is grade 30, 2,650 lb; an accessory has no tie point and no credit.
    assert rows[5] == (
        *("1", "EX-1", "boom", 1, "direct", "CH-2", "B-1", "", 2650, 5400, None, 6000, None),
        *(2650, "tension member", 0, 0, "no"),
    )
    assert rows[6] == (
        *("2", "LU-2", "over 1", 1, "over", "WS-1", "trailer winch", "2 x EP-1", 5400, None, None),
        *("unrated", None, 5400, "tension member", whole, 5400, "yes"),
    )


def test_an_unrated_tie_point_is_said():
    day = replace(DAY, articles=(replace(EXCAVATOR, tie_point_wll=None), *DAY.articles[1:]))
    table = flat_tables(plan_of(day))["Tie-downs"]
    assert table.column("Tie point WLL [lb]")[:6] == (*["unrated"] * 5, None)


def test_an_accessory_counts_where_the_house_says_so():
    day = replace(DAY, house=HouseRules(accessory_counts=True))
    table = flat_tables(plan_of(day))["Tie-downs"]
    boom = table.rows[5]
    assert boom[-3:] == (Fraction(1, 2), 1325, "yes")


def test_pick_list_is_by_departure_and_in_the_order_of_the_cage(tables):
    assert tables["Pick list"].rows == (
        ("1", "CH-1", 5, "cage", "06:00", "10:00"),
        ("1", "CH-2", 1, "cage", "06:00", "10:00"),
        ("1", "B-1", 6, "cage", "06:00", "10:00"),
        ("2", "WS-1", 3, "cage", "07:00", "12:00"),
        ("2", "EP-1", 6, "cage", "07:00", "12:00"),
    )


def test_a_kit_is_told_from_the_cage():
    kit = (replace(CAGE[0], kept_on="T-1"), *CAGE[1:])
    table = flat_tables(plan_of(replace(DAY, gear=kit)))["Pick list"]
    assert table.column("From") == ("kit", "cage", "cage", "cage", "cage")


def test_gear_use_counts_fixed_gear_of_held_loads(tables):
    # CH-2: one on the boom of load 1 from 06:00 to 11:00, one fixed on load 3 from 08:00 on.
    assert tables["Gear use"].rows == (
        ("CH-1", "chain", 10, 10, 5, "06:00", 5),
        ("CH-2", "chain", 3, 3, 2, "08:00", 1),
        ("B-1", "ratchet binder", 8, 8, 6, "06:00", 2),
        ("WS-1", "winch strap", 6, 6, 3, "07:00", 3),
        ("EP-1", "edge protector", 8, 8, 6, "07:00", 2),
        ("B-OLD", "lever binder", 1, 0, 0, "", 0),
        ("CH-?", "chain", 2, 2, 0, "", 2),
    )


def test_shortfall(tables):
    assert tables["Shortfall"].rows == (
        (
            *("3", "RL-3", "binder for 3/8 in chain, 3,000 lb or more", 2),
            *("All 8 are out on load 1 at 08:00.", "Send load 3 after 11:00."),
        ),
    )


def test_printed_numbers_of_checks_are_numbers_again(tables):
    table = tables["Checks"]
    by_check = {row[1:3]: row[3:5] for row in table.rows}
    assert by_check["EX-1", "aggregate WLL"] == (10950, 13500)
    assert by_check["RL-3", "aggregate WLL"] == (6000, "-")


def test_sources_are_all_different_and_tell_how_sure_they_are(tables):
    rows = tables["Sources"].rows
    assert len(set(rows)) == len(rows)
    by_section = {row[1]: row for row in rows}
    assert by_section["393.106(d)"][0] == "49 CFR"
    assert by_section["393.106(d)"][3] == "read"
    assert by_section["anchor points used"][3] == "common practice, no source"
    assert any("393.108" in str(row[1]) and "chain" in str(row[1]) for row in rows)


def test_sources_begin_with_the_rule_set_and_its_edition(tables):
    assert tables["Sources"].rows[0] == (
        "49 CFR 392.9 and 393.100 to 393.136",
        "rule set",
        "stored copies read in November 2026; 393.130 in the CFR of 2003; the live text was not "
        "opened",
        "read",
        "Binds interstate carriers; states and permits may ask more. Check the current text.",
    )


def test_sources_of_a_canadian_day_are_in_the_order_of_its_catalogue():
    day = replace(DAY, rules=RuleSet.CANADA)
    rows = flat_tables(plan_of(day, ready=(), tie_downs=()))["Sources"].rows
    assert rows[0][:2] == ("NSC Standard 10", "rule set")
    assert "adoption differs by province" in rows[0][4]
    assert "Check the current text" in rows[0][4]
    order = [(one.document, one.section, one.says) for one in sources_of(RuleSet.CANADA)]
    places = [order.index(key) for row in rows[1:] if (key := (row[0], row[1], row[4])) in order]
    assert len(places) > 20
    assert places == sorted(places)
    assert not any(row[0] == "49 CFR" for row in rows)


def test_a_load_without_cargo_says_so():
    empty = replace(DAY, articles=DAY.articles[1:])
    plan = plan_of(empty, tie_downs=TIE_DOWNS[6:])
    row = flat_tables(plan)["Summary"].rows[0]
    assert row[5:12] == ("ready", 0, 0, 0, 0, 0, None)
    assert row[-1] == "no cargo"
