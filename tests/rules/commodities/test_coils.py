"""Metal coils: eye vertical, crosswise and lengthwise, alone and in rows."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing, Stands
from loadplan.day.day import RuleSet
from loadplan.day.units import Units
from loadplan.rules.demand import demand_of
from tests.rules.build import article, asked, day, look_names, needs, problems, sets, strengths

OVER, SAME_SIDE = Routing.OVER, Routing.SAME_SIDE
HANDBOOK = "(from the official handbook, not the regulation text read)"
LEFT, RIGHT = "diagonal left to right", "diagonal right to left"


def coil(details, **known):
    return article(
        CargoClass.METAL_COIL, details=details, **{"weight": 6350, "length": None, **known}
    )


def test_eye_vertical():
    """6,350 / 2 = 3,175."""
    found = asked(coil("eye vertical"))
    assert sets(found) == [
        (LEFT, 1, "over", 2, ""),
        (RIGHT, 1, "over", 2, ""),
        ("over 1", 20, "over", 1, ""),
    ]
    assert needs(found) == [
        (LEFT, 1, LEFT),
        (RIGHT, 1, RIGHT),
        ("straight over the eye", 1, "over 1"),
    ]
    assert strengths(found) == [(3175, {OVER: 1})]
    assert look_names(found)[0] == "forward and rearward"


def test_eye_crosswise():
    found = asked(coil("eye crosswise"))
    assert sets(found) == [("eye forward", 1, "over", 2, ""), ("eye rearward", 1, "over", 2, "")]
    assert needs(found) == [
        ("tie-down through the eye forward", 1, "eye forward"),
        ("tie-down through the eye rearward", 1, "eye rearward"),
    ]
    assert look_names(found)[:4] == [
        "coil bunks",
        "nailed blocking",
        "no crossing",
        "angle of the tie-downs",
    ]


def test_eye_lengthwise_by_option():
    one, two, three = (asked(coil(f"eye lengthwise; option {n}")) for n in (1, 2, 3))
    assert needs(one) == [
        (LEFT, 1, LEFT),
        (RIGHT, 1, RIGHT),
        ("tie-down over the top", 1, "over 1"),
    ]
    assert needs(two) == [
        ("tie-down through the eye, left", 1, "eye left"),
        ("tie-down through the eye, right", 1, "eye right"),
        ("tie-down over the top", 1, "over 1"),
    ]
    assert needs(three) == [("tie-downs over the top", 2, None)]
    assert needs(asked(coil("eye lengthwise"))) == needs(three)


@pytest.mark.parametrize(
    ("rules", "same_side"), [(RuleSet.US, Fraction(1, 2)), (RuleSet.CANADA, Fraction(1))]
)
def test_straight_through_the_eye_comes_back_to_the_same_side(rules, same_side):
    found = asked(coil("eye lengthwise; option 2"), rules=rules)
    assert sets(found)[0] == ("eye left", 1, "same side", 2, "")
    assert strengths(found) == [(3175, {SAME_SIDE: same_side, OVER: 1})]


def row(details, *, stands=Stands.IN_LINE, rules=RuleSet.US):
    """Three coils of 6,000, 7,000 and 8,001 lb as one group R."""
    coils = [
        coil(details, id=f"C-{n}", weight=weight, group="R", stands=stands)
        for n, weight in enumerate((6000, 7000, 8001), start=1)
    ]
    return demand_of(day(*coils, rules=rules), "R")


def test_a_row_of_coils_eye_vertical():
    """(6,000 + 7,000 + 8,001) / 2 = 10,500.5."""
    found = row("eye vertical")
    assert sets(found) == [
        ("C-1 over 1", 20, "over", 1, "C-1"),
        ("C-2 over 1", 20, "over", 1, "C-2"),
        ("C-3 over 1", 20, "over", 1, "C-3"),
        ("row front", 1, "over", 2, ""),
        ("row rear", 1, "over", 2, ""),
    ]
    assert needs(found) == [
        ("tie-downs over C-1", 1, "C-1 over 1"),
        ("tie-downs over C-2", 1, "C-2 over 1"),
        ("tie-downs over C-3", 1, "C-3 over 1"),
        ("tie-down against the front of the row", 1, "row front"),
        ("tie-down against the rear of the row", 1, "row rear"),
    ]
    assert strengths(found) == [(Fraction("10500.5"), {OVER: 1})]


def test_a_row_of_coils_eye_lengthwise_has_two_over_each():
    assert needs(row("eye lengthwise")) == [
        (f"tie-downs over C-{n}", 2, f"C-{n} over 1") for n in (1, 2, 3)
    ]


def test_coils_side_by_side_are_one_transverse_row():
    assert needs(row("eye lengthwise", stands=Stands.SIDE_BY_SIDE)) == [
        ("tie-downs over the row", 2, "over 1")
    ]
    assert needs(row("eye vertical", stands=Stands.SIDE_BY_SIDE))[0] == (
        "tie-downs over the row",
        1,
        "over 1",
    )


def test_canada_names_its_transverse_rows():
    assert "transverse rows" in look_names(row("eye vertical", rules=RuleSet.CANADA))
    assert "transverse rows" not in look_names(row("eye vertical"))


EYE = (
    "Details lacks the way the coil's eye points, needed by 49 CFR 393.120 "
    f"{HANDBOOK}. Write eye vertical, eye crosswise or eye lengthwise."
)
OPTION = (
    "Details gives an option, and only a single coil with its eye lengthwise has one, by 49 CFR "
    f"393.120 {HANDBOOK}. Leave the option out."
)


@pytest.mark.parametrize(
    ("details", "known", "found"),
    [
        ("", {}, ("Details", EYE)),
        ("eye vertical; option 1", {}, ("Details", OPTION)),
        ("eye lengthwise; option 1", {"group": "R"}, ("Details", OPTION)),
        (
            "eye crosswise",
            {"group": "R"},
            (
                "Group",
                "Coils with their eyes crosswise have no rule for rows in the text read, by 49 CFR "
                f"393.120 {HANDBOOK}. Leave Group blank and secure each alone.",
            ),
        ),
        (
            "eye vertical",
            {"group": "R", "stands": Stands.STACKED},
            (
                "Group stands",
                f"Coils are secured in rows, not stacked, by 49 CFR 393.120 {HANDBOOK}. "
                "Write in line or side by side.",
            ),
        ),
    ],
)
def test_what_a_row_lacks_or_contradicts(details, known, found):
    assert problems(coil(details, **known)) == [found]


def test_in_canada_the_citation_is_canadian():
    ((_, text),) = problems(coil(""), units=Units.METRIC, rules=RuleSet.CANADA)
    assert text.startswith(
        "Details lacks the way the coil's eye points, needed by NSC Standard 10 Part 2, metal coils"
    )
