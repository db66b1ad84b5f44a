"""The rating of one piece: marked, table, one third, unknown, in that order."""

from fractions import Fraction

import pytest

from loadplan.day.gear import Gear, Kind
from loadplan.day.size import read_size
from loadplan.day.units import Units
from loadplan.wll.piece import Origin, chain_grade, rate, rope_material
from loadplan.wll.tables import Material


def gear(kind, size="", grade="", *, wll=None, breaking=None):
    return Gear(
        id="G-1",
        kind=kind,
        size=read_size(size),
        size_text=size,
        grade=grade,
        wll=None if wll is None else Fraction(wll),
        breaking_strength=None if breaking is None else Fraction(breaking),
    )


def rated(*args, units=Units.US, **known):
    rating = rate(gear(*args, **known), units)
    return rating.wll, rating.origin, rating.reason


TABLE = [
    (Kind.CHAIN, "3/8", "70", 6600, 2990, "chain marked grade 70, 3/8 in"),
    (Kind.CHAIN, "3/8", "G43", 5400, 2450, "chain marked grade 43, 3/8 in"),
    (Kind.CHAIN, "3/8", "", 2650, 1200, "unmarked chain taken as grade 30, 3/8 in"),
    (Kind.CHAIN, "3/8", " ", 2650, 1200, "unmarked chain taken as grade 30, 3/8 in"),
    (Kind.WINCH_STRAP, "4", "", 4000, 1810, "unmarked webbing by its width, 4 in"),
    (Kind.RATCHET_STRAP, "2", "", 2000, 910, "unmarked webbing by its width, 2 in"),
    (Kind.RETRACTABLE_STRAP, "1-3/4", "", 1750, 790, "unmarked webbing by its width, 1-3/4 in"),
    (Kind.WIRE_ROPE, "1/2", "", 5300, 2400, "unmarked wire rope by its diameter, 1/2 in"),
    (Kind.ROPE, "1/2", "manila", 315, 150, "unmarked manila rope, 1/2 in"),
    (Kind.ROPE, "1/2", "Polyester", 960, 440, "unmarked polyester rope, 1/2 in"),
    (Kind.ROPE, "1/2", "nylon", 525, 240, "unmarked nylon rope, 1/2 in"),
    (
        Kind.ROPE,
        "1/2",
        "Double braided  Nylon",
        655,
        300,
        "unmarked double-braided nylon rope, 1/2 in",
    ),
    (Kind.ROPE, "1/2", "polypropylene", 625, 280, "unmarked polypropylene rope, 1/2 in"),
    (
        Kind.ROPE,
        "1/2",
        "hemp",
        625,
        280,
        "rope of unidentified material taken as polypropylene, 1/2 in",
    ),
    (
        Kind.ROPE,
        "1/2",
        "",
        625,
        280,
        "rope of unidentified material taken as polypropylene, 1/2 in",
    ),
    (
        Kind.STEEL_STRAPPING,
        "2 x 0.044",
        "",
        2650,
        1200,
        "unmarked steel strapping by its size, 2 x 0.044 in",
    ),
]


@pytest.mark.parametrize(("kind", "size", "grade", "pounds", "kilograms", "reason"), TABLE)
def test_unmarked_gear_takes_the_table_column_of_the_day(
    kind, size, grade, pounds, kilograms, reason
):
    assert rated(kind, size, grade) == (pounds, Origin.TABLE, reason)
    assert rated(kind, size, grade, units=Units.METRIC) == (kilograms, Origin.TABLE, reason)


@pytest.mark.parametrize(("kind", "size", "grade", "pounds", "kilograms", "reason"), TABLE)
@pytest.mark.parametrize("wll", [1, 100_000])
def test_a_marking_wins_in_either_direction(kind, size, grade, pounds, kilograms, reason, wll):
    assert rated(kind, size, grade, wll=wll, breaking=99) == (
        wll,
        Origin.MARKED,
        "as marked by the maker",
    )


@pytest.mark.parametrize(
    ("breaking", "wll"),
    [(5000, 1667), (10000, 3333), (6000, 2000), ("10001.5", 3334), ("4.5", 1), (2, 1)],
)
def test_one_third_of_the_breaking_strength_to_the_nearest_unit(breaking, wll):
    """5,000 / 3 = 1,666.7; 10,000 / 3 = 3,333.3; 10,001.5 / 3 = 3,333.8; 4.5 / 3 = 1.5 (down)."""
    rating = rate(gear(Kind.RATCHET_BINDER, breaking=breaking), Units.US)
    assert (rating.wll, rating.origin) == (wll, Origin.ONE_THIRD)
    assert rating.source.cite() == (
        "WLL is one third of breaking strength (common practice, no source)"
    )


def test_one_third_says_of_what():
    assert rated(Kind.SHACKLE, breaking=Fraction(5000)) == (
        1667,
        Origin.ONE_THIRD,
        "one third of the stated breaking strength of 5,000 lb",
    )
    assert rated(Kind.CHAIN, "3/8", "120", breaking=30000, units=Units.METRIC) == (
        10000,
        Origin.ONE_THIRD,
        "one third of the stated breaking strength of 30,000 kg",
    )


@pytest.mark.parametrize(
    ("kind", "size", "share"),
    [
        (Kind.WIRE_ROPE, "1-1/4", "393.108(e)(1) takes one quarter of it"),
        (
            Kind.STEEL_STRAPPING,
            "3/4 x 0.029",
            "a footnote of 393.104(e), from memory, takes one quarter of it",
        ),
    ],
)
def test_another_share_in_the_regulation_is_said(kind, size, share):
    rating = rate(gear(kind, size, breaking=9000), Units.US)
    assert rating.wll == 3000
    assert rating.reason == f"one third of the stated breaking strength of 9,000 lb; {share}"
    assert "one quarter" in rating.source.says


def test_the_table_comes_before_one_third():
    assert rated(Kind.CHAIN, "3/8", "70", breaking=26400)[0] == 6600


NOTHING = ", and no WLL or breaking strength is given"


@pytest.mark.parametrize(
    ("kind", "size", "grade", "breaking", "reason"),
    [
        (Kind.CHAIN, "3/8", "120", None, "chain with the mark 120, which is no grade of the table"),
        (Kind.CHAIN, "3/8", "40", None, "chain with the mark 40, which is no grade of the table"),
        (Kind.CHAIN, "3/8", "HT", None, "chain with the mark HT, which is no grade of the table"),
        (
            Kind.CHAIN,
            "7/16",
            "80",
            None,
            "chain marked grade 80, but the table has no 7/16 in",
        ),
        (Kind.CHAIN, "", "70", None, "chain marked grade 70, but no size is given"),
        (
            Kind.WINCH_STRAP,
            "wide",
            "",
            None,
            "unmarked webbing by its width, but its size wide cannot be read",
        ),
        (Kind.LEVER_BINDER, "", "", None, "no table covers a lever binder"),
        (Kind.TURNBUCKLE, "1/2", "", None, "no table covers a turnbuckle"),
        (Kind.SHACKLE, "1/2", "70", None, "no table covers a shackle"),
        (Kind.RATCHET_BINDER, "", "", 1, "no table covers a ratchet binder"),
    ],
)
def test_what_is_left_is_unknown_and_says_why(kind, size, grade, breaking, reason):
    """A breaking strength of 1 lb would give 0 lb: no strength to plan with."""
    rating = rate(gear(kind, size, grade, breaking=breaking), Units.US)
    assert (rating.wll, rating.origin, rating.reason) == (None, Origin.UNKNOWN, reason + NOTHING)
    assert not rating.usable


def test_an_edge_protector_needs_no_rating():
    rating = rate(gear(Kind.EDGE_PROTECTOR), Units.US)
    assert (rating.wll, rating.origin) == (None, Origin.NONE_NEEDED)
    assert rating.reason == "an edge protector bears no load"
    assert rating.usable


@pytest.mark.parametrize(
    ("mark", "grade"),
    [
        *((mark, 30) for mark in ("", "3", "30", "300", "G30", "grade 30")),
        *((mark, 43) for mark in ("4", "43", "430", "Gr. 43", "G-4")),
        *((mark, 70) for mark in ("7", "70", "700", "g70", "GRADE 70", " 70 ")),
        *((mark, 80) for mark in ("8", "80", "800", "Grade80")),
        *((mark, 100) for mark in ("10", "100", "1000", "G10")),
        *((mark, None) for mark in ("40", "400", "120", "12", "T", "70x", "7.0", "G")),
    ],
)
def test_chain_marks(mark, grade):
    assert chain_grade(mark) == grade


@pytest.mark.parametrize(
    ("name", "material"),
    [
        ("Manila", Material.MANILA),
        ("double-braided nylon", Material.DOUBLE_BRAIDED_NYLON),
        ("DOUBLE  BRAIDED-NYLON", Material.DOUBLE_BRAIDED_NYLON),
        ("webbing", None),
        ("", None),
    ],
)
def test_rope_materials(name, material):
    assert rope_material(name) is material
