"""Ratings under other rule sets and readings: Canada, unmarked hardware, prints that differ."""

from fractions import Fraction

import pytest

from loadplan.day.day import Day, RuleSet
from loadplan.day.gear import Gear, Kind
from loadplan.day.house import HouseRules, TableFigures, UnmarkedHardware, WireRopeFigure
from loadplan.day.load import Load
from loadplan.day.size import read_size
from loadplan.day.units import Units
from loadplan.wll.piece import Origin, rate, rate_in
from loadplan.wll.readings import US_READINGS, readings_of
from loadplan.wll.tables import other_figures


def gear(kind, size="", grade="", *, wll=None, breaking=None, fits=()):
    return Gear(
        id="G-1",
        kind=kind,
        size=read_size(size),
        size_text=size,
        grade=grade,
        wll=None if wll is None else Fraction(wll),
        breaking_strength=None if breaking is None else Fraction(breaking),
        fits=tuple(read_size(text) for text in fits),
    )


def rated(piece, *, rules=RuleSet.US, units=Units.US, **house):
    day = Day(
        loads=(Load(id="L-1"),),
        articles=(),
        gear=(piece,),
        rules=rules,
        units=units,
        house=HouseRules(**house),
    )
    return rate_in(day, piece)


def figures(rating):
    return rating.wll, rating.origin, rating.source.cite()


ZERO = "not marked with a WLL by its maker, and in Canada such gear counts for nothing"


@pytest.mark.parametrize(
    "piece",
    [
        gear(Kind.CHAIN, "3/8"),
        gear(Kind.WINCH_STRAP, "4"),
        gear(Kind.RATCHET_STRAP, "2", breaking=10000),
        gear(Kind.WIRE_ROPE, "1/2"),
        gear(Kind.ROPE, "1/2", "manila"),
        gear(Kind.LEVER_BINDER, fits=["3/8"]),
        gear(Kind.SHACKLE, "1/2", breaking=30000),
        gear(Kind.STEEL_STRAPPING, "2 x 0.044"),
    ],
    ids=lambda piece: piece.kind.value,
)
def test_unmarked_gear_is_zero_in_canada(piece):
    rating = rated(piece, rules=RuleSet.CANADA)
    assert figures(rating) == (None, Origin.UNKNOWN, "NSC Standard 10 s. 11(4)")
    assert (rating.reason, rating.usable) == (ZERO, False)


@pytest.mark.parametrize(("units", "wll"), [(Units.US, 6600), (Units.METRIC, 2990)])
def test_chain_marked_by_grade_takes_the_table_in_canada(units, wll):
    rating = rated(gear(Kind.CHAIN, "3/8", "G70"), rules=RuleSet.CANADA, units=units)
    assert figures(rating) == (wll, Origin.TABLE, "NSC Standard 10 s. 11(3)")
    assert rating.reason == "chain marked grade 70, 3/8 in"


@pytest.mark.parametrize(
    ("piece", "reason"),
    [
        (
            gear(Kind.CHAIN, "3/8", "120", breaking=40000),
            "chain with the mark 120, which is no grade of the table, and no WLL is marked",
        ),
        (
            gear(Kind.CHAIN, "7/16", "80", breaking=40000),
            "chain marked grade 80, but the table has no 7/16 in, and no WLL is marked",
        ),
    ],
)
def test_a_grade_mark_that_the_table_lacks_is_no_mark_in_canada(piece, reason):
    rating = rated(piece, rules=RuleSet.CANADA)
    assert figures(rating) == (None, Origin.UNKNOWN, "NSC Standard 10 s. 11(4)")
    assert rating.reason == reason


def test_a_marked_wll_counts_in_canada():
    rating = rated(gear(Kind.WINCH_STRAP, "4", wll=5400), rules=RuleSet.CANADA)
    assert figures(rating) == (5400, Origin.MARKED, "NSC Standard 10 s. 11(1)")


def test_an_edge_protector_needs_no_mark_anywhere():
    assert rated(gear(Kind.EDGE_PROTECTOR), rules=RuleSet.CANADA).usable


@pytest.mark.parametrize(
    ("piece", "wll"),
    [
        # grade 30: 1/4 1,300; 5/16 1,900; 3/8 2,650; 1/2 4,500
        (gear(Kind.LEVER_BINDER, fits=["3/8", "5/16"]), 1900),
        (gear(Kind.RATCHET_BINDER, fits=["5/16", "3/8"]), 1900),
        (gear(Kind.RATCHET_BINDER, "3/8", fits=["5/16", "3/8"]), 2650),
        (gear(Kind.SHACKLE, "1/2"), 4500),
        (gear(Kind.SHACKLE, "1/4"), 1300),
    ],
)
@pytest.mark.parametrize("rules", RuleSet)
def test_unmarked_hardware_as_the_lowest_grade_of_its_size(rules, piece, wll):
    rating = rated(piece, rules=rules, unmarked_hardware=UnmarkedHardware.LOWEST_GRADE)
    assert figures(rating) == (
        wll,
        Origin.TABLE,
        "British Columbia commercial licence manual binders and hooks",
    )
    assert rating.reason.startswith("not marked, taken as the lowest grade of its size, ")


@pytest.mark.parametrize(
    "piece",
    [
        gear(Kind.LEVER_BINDER),
        gear(Kind.LEVER_BINDER, fits=["3/8", "3"]),
        gear(Kind.SHACKLE, "3/4"),
        gear(Kind.SHACKLE),
        gear(Kind.TURNBUCKLE, "1/2"),
    ],
)
def test_hardware_of_no_chain_size_stays_unknown(piece):
    rating = rated(piece, unmarked_hardware=UnmarkedHardware.LOWEST_GRADE)
    assert rating.origin is Origin.UNKNOWN


def test_hardware_is_unknown_unless_the_house_says_so():
    assert rated(gear(Kind.SHACKLE, "1/2")).origin is Origin.UNKNOWN


PRINTS = [
    # piece, reading, US figure, metric figure
    (gear(Kind.WINCH_STRAP, "2"), {"table_figures": TableFigures.STATE_MANUAL}, 2100, 950),
    (gear(Kind.CHAIN, "3/8", "100"), {"table_figures": TableFigures.STATE_MANUAL}, 8600, 4000),
    (gear(Kind.WINCH_STRAP, "4"), {"table_figures": TableFigures.STATE_MANUAL}, 4000, 1810),
    (gear(Kind.WIRE_ROPE, "3/4"), {"wire_rope_figure": WireRopeFigure.QUARTER}, 11900, 4940),
    (gear(Kind.WIRE_ROPE, "5/8"), {"wire_rope_figure": WireRopeFigure.QUARTER}, 8300, 3770),
    (
        gear(Kind.WIRE_ROPE, "3/4"),
        {
            "table_figures": TableFigures.STATE_MANUAL,
            "wire_rope_figure": WireRopeFigure.QUARTER,
        },
        11900,
        4940,
    ),
]


@pytest.mark.parametrize(("piece", "house", "pounds", "kilograms"), PRINTS)
def test_another_print_where_it_has_a_figure(piece, house, pounds, kilograms):
    assert rated(piece, **house).wll == pounds
    assert rated(piece, units=Units.METRIC, **house).wll == kilograms


def test_another_print_is_cited():
    rating = rated(gear(Kind.WINCH_STRAP, "2"), table_figures=TableFigures.STATE_MANUAL)
    assert rating.source.cite() == "state commercial licence manual WLL table, webbing"
    quarter = rated(gear(Kind.WIRE_ROPE, "3/4"), wire_rope_figure=WireRopeFigure.QUARTER)
    assert quarter.source.cite() == "49 CFR 393.108(e)(1)"


def test_each_other_figure_differs_from_the_federal_one_where_it_was_read():
    found = other_figures()
    assert len(found) == 3
    for one in found:
        assert one.in_units
        assert all(one.row.wll(units) != one.federal.wll(units) for units in one.in_units)


def test_the_plain_us_reading_is_what_rate_takes_by_default():
    assert readings_of(RuleSet.US, HouseRules()) == US_READINGS
    piece = gear(Kind.CHAIN, "3/8")
    assert rate(piece, Units.US) == rated(piece)
