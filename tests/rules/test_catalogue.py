"""Rule sets, sections, switches and sources as rows."""

from loadplan.day.article import CargoClass
from loadplan.day.day import RuleSet
from loadplan.rules.catalogue import (
    rule_set_rows,
    section_rows,
    source_rows,
    sources_of,
    switch_rows,
)
from loadplan.rules.switches import SWITCHES


def test_rule_sets_carry_their_edition_and_say_to_check_the_current_text():
    us, canada = rule_set_rows()
    assert (us.rules, canada.rules) == ("US", "Canada")
    assert us.document == "49 CFR 392.9 and 393.100 to 393.136"
    assert canada.document == "NSC Standard 10"
    for row in (us, canada):
        assert "November 2026" in row.read
        assert "Check the current text" in row.note
    assert "adoption differs by province" in canada.note


def test_sections_in_the_order_of_the_rule():
    assert [(row.section, row.title, row.certainty) for row in section_rows()] == [
        ("49 CFR 393.106(d)", "aggregate working load limit", "read"),
        ("49 CFR 393.108(a)", "working load limit of one tie-down", "read"),
        ("49 CFR 393.110(b)", "number of tie-downs", "read"),
        ("49 CFR 393.128", "automobiles, light trucks and vans", "read"),
        ("49 CFR 393.130(c)(1)", "heavy vehicles, equipment and machinery", "read"),
        ("49 CFR 393.130(b)(1)", "accessory equipment", "read"),
        ("49 CFR 393.116", "logs", HANDBOOK),
        ("49 CFR 393.118", "dressed lumber and building products", "read"),
        ("49 CFR 393.120", "metal coils", HANDBOOK),
        ("49 CFR 393.122", "paper rolls", HANDBOOK),
        ("49 CFR 393.124", "concrete pipe", "read"),
        ("49 CFR 393.126", "intermodal containers", "read"),
        ("49 CFR 393.132", "flattened or crushed vehicles", HANDBOOK),
        ("49 CFR 393.134", "roll-on/roll-off and hook-lift containers", "read"),
        ("49 CFR 393.136", "large boulders", "read"),
    ]


HANDBOOK = "from the official handbook, not the regulation text read"


def test_every_class_has_a_section_and_every_section_says_what_it_asks():
    rows = section_rows()
    named = ", ".join(row.classes for row in rows)
    assert all(kind.value in named for kind in CargoClass)
    assert all(row.asks for row in rows)
    (coil,) = [row for row in rows if row.title == "metal coils"]
    assert coil.details == (
        "eye vertical, eye crosswise or eye lengthwise; option 1, option 2 or option 3"
    )


def test_sections_of_canada():
    rows = section_rows(RuleSet.CANADA)
    assert {row.rules for row in rows} == {"Canada"}
    assert rows[0].section == "NSC Standard 10 s. 10"
    assert rows[-1].section == "NSC Standard 10 Part 2, boulders"


def test_each_reading_has_a_row_with_the_default_named():
    rows = switch_rows()
    assert len(rows) == sum(len(switch.readings) for switch in SWITCHES)
    floor = [
        (row.reading, row.default, row.rests_on, row.certainty)
        for row in rows
        if row.rule == "Floor on heavy machines"
    ]
    assert floor == [
        ("no", "US", "the text of 393.130 that was read has no such line", "read"),
        (
            "yes",
            "Canada",
            "the handbook and the model regulation (NSC Standard 10 s. 89)",
            "from the official handbook",
        ),
    ]
    straps = [row.default for row in rows if row.rule == "Straps on machines"]
    assert straps == ["US, Canada", ""]


def test_sources_as_rows():
    for rules in RuleSet:
        rows = source_rows(rules)
        assert [row.says for row in rows] == [one.says for one in sources_of(rules)]
        assert {row.rules for row in rows} == {rules.value}
    certain = {row.certainty for row in source_rows()}
    assert certain == {"read", HANDBOOK, "memory", "common practice, no source"}
