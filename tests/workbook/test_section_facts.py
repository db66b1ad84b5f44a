"""Facts of an article that its section does not allow, or cannot do without."""

import pytest

from loadplan.day.article import CargoClass
from tests.workbook.build import GEAR, read, rejected

HEADINGS = ("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Secured under", "Routing")
HOUSE = [("Rule", "Value"), ("Length count on machines", "no")]


def article(kind, weight, length=None, under=None, routing=None, **changes):
    return {
        "Cargo": [HEADINGS, ("X", "L", kind, weight, length, under, routing)],
        "Gear": GEAR,
        **changes,
    }


@pytest.mark.parametrize(
    ("kind", "weight", "length", "under", "routing", "line"),
    [
        (
            *("general", 900, None, None, None),
            "E2  K01  Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). "
            "Write the length.",
        ),
        (
            *("wheeled machine", 9000, None, None, None),
            "E2  K01  Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). "
            "Write the length, or set the house rule Length count on machines to no.",
        ),
        (
            *("general", 900, 4, "light vehicle", None),
            "G2  K02  Routing is blank, which means over for class general, but the article is "
            "secured under light vehicle (49 CFR 393.128), which needs tie-downs at its front "
            "and rear. Write direct or same side in Routing.",
        ),
        (
            *("tracked machine", 36000, 24, None, "over"),
            "G2  K02  Routing is over but the article is secured under heavy "
            "(49 CFR 393.130(c)(1)), which needs tie-downs at its front and rear. "
            "Write direct or same side in Routing.",
        ),
        (
            *("light vehicle", 10001, 16, None, None),
            "C2  K03  The article weighs 10,001 lb with everything on it, and light vehicle "
            "(49 CFR 393.128) goes up to 10,000 lb. "
            "Write heavy in Secured under, or correct the weight.",
        ),
        (
            *("wheeled machine", 10000, 16, "general", None),
            "F2  K03  The machine weighs 10,000 lb with everything on it, and from 10,000 lb up "
            "a machine is secured under heavy (49 CFR 393.130(a)). "
            "Write heavy in Secured under, or correct the weight.",
        ),
        (
            *("light vehicle", 10001, 16, "general", None),
            "F2  K03  The vehicle weighs 10,001 lb with everything on it, and above 10,000 lb a "
            "vehicle is secured under heavy (49 CFR 393.130(a)). "
            "Write heavy in Secured under, or correct the weight.",
        ),
    ],
)
def test_contradictions(tmp_path, kind, weight, length, under, routing, line):
    assert rejected(tmp_path, article(kind, weight, length, under, routing)) == [f"'Cargo'!{line}"]


@pytest.mark.parametrize(
    ("kind", "weight", "length", "under", "changes"),
    [
        ("light vehicle", 10000, 16, None, {}),
        ("wheeled machine", 9999, 16, "general", {}),
        ("tracked machine", 36000, None, None, {"House rules": HOUSE}),
    ],
)
def test_exactly_at_the_limit_and_what_the_house_rule_frees(
    tmp_path, kind, weight, length, under, changes
):
    assert read(tmp_path, article(kind, weight, length, under, **changes)).articles


def test_what_rides_on_it_counts(tmp_path):
    added = [("Article", "Weight [lb]"), ("X", 1)]
    sheets = article("light vehicle", 10000, 16, **{"Added weight": added})
    (line,) = rejected(tmp_path, sheets)
    assert line.startswith("'Cargo'!C2  K03  The article weighs 10,001 lb with everything on it")


@pytest.mark.parametrize(
    ("typed", "kind", "length"),
    [
        ("Steel  coil", CargoClass.METAL_COIL, None),
        ("crushed cars", CargoClass.FLATTENED_VEHICLES, None),
        ("Hook-lift container", CargoClass.ROLL_OFF_CONTAINER, None),
        ("Metal-coil", CargoClass.METAL_COIL, None),
        ("general cargo", CargoClass.GENERAL, 4),
    ],
)
def test_a_class_by_another_name(tmp_path, typed, kind, length):
    lines = {
        CargoClass.METAL_COIL: "eye vertical",
        CargoClass.FLATTENED_VEHICLES: "walls 3",
        CargoClass.ROLL_OFF_CONTAINER: "integral",
    }
    cargo = [
        ("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Details"),
        ("X", "L", typed, 9000, length, lines.get(kind)),
    ]
    day = read(tmp_path, {"Cargo": cargo, "Gear": GEAR})
    assert [article.cargo_class for article in day.articles] == [kind]


def test_a_class_by_no_name(tmp_path):
    (line,) = rejected(tmp_path, article("coils of steal", 900, 4))
    assert line.startswith("'Cargo'!C2  V07  Class is \"coils of steal\". ")
    assert "It must be one of: tracked machine, " in line


def test_facts_of_a_group_and_of_details(tmp_path):
    headings = ("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Details", "Group")
    cargo = [
        headings,
        ("X", "L", "general", 500, 4, None, "G"),
        ("Y", "L", "general", 500, 4, None, "g"),
        ("Z", "L", "metal coil", 9000, 4, None, None),
    ]
    lines = rejected(tmp_path, {"Cargo": cargo, "Gear": GEAR})
    assert [line.split("  ")[:2] for line in lines] == [
        ["'Cargo'!A2", "K05"],
        ["'Cargo'!F4", "K04"],
    ]
    assert lines[0].endswith(
        "No row says how the articles of the group G stand to each other. "
        "Write side by side, stacked or in line."
    )
