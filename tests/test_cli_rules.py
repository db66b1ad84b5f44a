"""``loadplan rules``: the catalogue, and what applies to one day and what it costs."""

import csv
import json

import pytest

from loadplan.day.day import RuleSet
from loadplan.rules.catalogue import source_rows
from loadplan.rules.switches import SWITCHES
from tests.cli_runs import Command
from tests.workbook.build import GEAR, gear_with, save

# The excavator: 24 ft, not blocked, so 2 + 14 / 10 rounded up = 4 by length and 4 at its corners,
# and one for its boom. The car: 16 ft, so 2 + 6 / 10 rounded up = 3 by length, 2 by its section.
DAY = {
    "House rules": [("Rule", "Value"), ("Straps on machines", "no")],
    "Cargo": [
        ("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Accessories"),
        ("EX-1", "L-1", "tracked machine", 36000, 24, "boom"),
        ("CA-1", "L-2", "light vehicle", 4000, 16, None),
        ("CA-2", "L-2", "light vehicle", 4000, 16, None),
    ],
    "Gear": GEAR,
}


@pytest.fixture
def loadplan(capsys):
    return Command(capsys)


def listed(ran):
    assert (ran.code, ran.err) == (0, [])
    return json.loads("\n".join(ran.out))


def test_the_catalogue_as_a_table(loadplan, monkeypatch):
    monkeypatch.setenv("COLUMNS", "110")
    ran = loadplan("rules")
    assert (ran.code, ran.err) == (0, [])
    for name in ("Rule sets", "Sections", "Disputed points", "Sources"):
        assert ran.out[ran.out.index(name) + 1] == "-" * len(name)
    text = " ".join(" ".join(ran.out).split())
    assert "393.100 to 393.136" in text
    assert "NSC Standard 10" in text
    for switch in SWITCHES:
        assert switch.name.split()[0] in text


def test_the_catalogue_as_json(loadplan):
    found = listed(loadplan("rules", "--format", "json"))
    assert list(found) == ["Rule sets", "Sections", "Disputed points", "Sources"]
    assert [row["Rules"] for row in found["Rule sets"]] == ["US", "Canada"]
    assert all("Check the current text" in row["Says"] for row in found["Rule sets"])
    floor = [row for row in found["Disputed points"] if row["House rule"] == "Same side credit"]
    assert [(row["Reading"], row["Default"], row["Rests on"]) for row in floor] == [
        ("1/2", "US", "393.106(d)(2)"),
        ("1", "Canada", "NSC Standard 10 s. 10: half for each end on an anchor point, and it has "
         "two"),
    ]  # fmt: skip
    assert len(found["Sources"]) == sum(len(source_rows(rules)) for rules in RuleSet)
    assert {row["Rules"] for row in found["Sections"]} == {"US", "Canada"}


def test_the_catalogue_as_csv(loadplan):
    ran = loadplan("rules", "--format", "csv")
    rows = list(csv.DictReader(ran.out))
    found = listed(loadplan("rules", "--format", "json"))
    assert len(rows) == sum(map(len, found.values()))
    (coil,) = [row for row in rows if row["Title"] == "metal coils" and row["Rules"] == "US"]
    assert coil["Table"] == "Sections"
    assert coil["Section"] == "49 CFR 393.120"
    assert coil["Certainty"] == "from the official handbook, not the regulation text read"


def test_what_applies_to_a_day(tmp_path, loadplan):
    found = listed(loadplan("rules", "--day", save(tmp_path / "d.xlsx", DAY), "--format", "json"))
    assert [row["Rules"] for row in found["Rule set"]] == ["US"]
    assert [(row["Section"], row["Articles"]) for row in found["Sections of this day"]] == [
        ("49 CFR 393.130(c)(1)", "EX-1"),
        ("49 CFR 393.128", "CA-1, CA-2"),
    ]
    taken = {row["House rule"]: row for row in found["Readings taken"]}
    assert list(taken) == [switch.name for switch in SWITCHES]
    straps = taken["Straps on machines"]
    assert (straps["Reading"], straps["Chosen"], straps["Matters"]) == ("no", "chosen", "yes")
    logs = taken["Floor on logs"]
    assert (logs["Reading"], logs["Chosen"], logs["Matters"]) == ("yes", "default", "no")


def test_what_the_other_readings_cost(tmp_path, loadplan):
    found = listed(loadplan("rules", "--day", save(tmp_path / "d.xlsx", DAY), "--format", "json"))
    sums = {
        (row["House rule"], row["Other reading"]): row
        for row in found["What each other reading costs"]
    }
    # Four in place of three on each car, by the stricter reading; two in place of three without
    # the count by length, which leaves the excavator at its four corners.
    assert sums["Light vehicle tie-downs", "4"]["More tie-downs"] == 2
    assert sums["Length count on machines", "no"]["More tie-downs"] == -2
    assert sums["Accessory tie-downs", "2"]["More tie-downs"] == 1
    assert sums["Accessory tie-downs", "2"]["Articles"] == 1
    # A credit of 1 in place of 1/2: 36,000 + 2 x 4,000 = 44,000 lb of WLLs become 22,000 lb.
    assert sums["Direct credit", "1"]["More WLL [lb]"] == -22000
    # Neither anchor points nor tie points are rated, so every article would be held.
    assert sums["Unrated points", "hold"]["More held"] == 3
    one_by_one = [
        (row["Load"], row["Article"], row["More tie-downs"], row["Change"])
        for row in found["What it changes, one by one"]
        if row["House rule"] == "Light vehicle tie-downs"
    ]
    assert one_by_one == [
        ("L-2", "CA-1", 1, "1 more tie-down"),
        ("L-2", "CA-2", 1, "1 more tie-down"),
    ]


def test_gear_whose_rating_would_change(tmp_path, loadplan):
    rope = ("WR-1", "wire rope", "3/4", None, 30, None, None, 2)
    day = {**DAY, "Gear": [*GEAR, rope]}
    found = listed(loadplan("rules", "--day", save(tmp_path / "d.xlsx", day), "--format", "json"))
    (row,) = [row for row in found["What it changes, one by one"] if row["Gear"] == "WR-1"]
    assert (row["Load"], row["Article"]) == ("", "")
    assert row["Change"] == "11,900 lb in place of 10,900 lb"
    (total,) = [
        row
        for row in found["What each other reading costs"]
        if row["House rule"] == "Wire rope of 3/4 in"
    ]
    assert (total["Articles"], total["Kinds of gear"]) == (0, 1)


def test_a_day_as_a_table_writes_nothing(tmp_path, loadplan):
    ran = loadplan("rules", "--day", save(tmp_path / "d.xlsx", DAY))
    assert ran.code == 0
    assert "What each other reading costs" in ran.out
    assert [path.name for path in tmp_path.iterdir()] == ["d.xlsx"]


def test_a_canadian_day(tmp_path, loadplan):
    day = {"Day": [("Setting", "Value"), ("Rules", "Canada")], **DAY}
    found = listed(loadplan("rules", "--day", save(tmp_path / "d.xlsx", day), "--format", "json"))
    (row,) = found["Rule set"]
    assert row["Document"] == "NSC Standard 10"
    assert "adoption differs by province" in row["Says"]
    taken = {row["House rule"]: row["Reading"] for row in found["Readings taken"]}
    assert taken["Floor on heavy machines"] == "yes"


def test_a_rejected_day(tmp_path, loadplan):
    ran = loadplan("rules", "--day", save(tmp_path / "d.xlsx", gear_with("Quantity", -2)))
    assert (ran.code, ran.out) == (3, [])
    assert ran.err[0].startswith("'Gear'!H2  V01  Quantity is -2.")


def test_no_such_day_and_no_such_format(tmp_path, loadplan):
    assert loadplan("rules", "--day", tmp_path / "nope.xlsx").code == 2
    assert loadplan("rules", "--format", "xml").code == 2
