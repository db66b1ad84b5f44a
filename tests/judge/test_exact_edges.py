"""Verdicts are exact: no figure is so close to its limit that it tips over.

The figures are the worst there are for binary fractions: thirds, tenths, numbers beyond what a
float holds exactly, and differences smaller than any float step.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from loadplan.day.article import SecuredUnder
from loadplan.day.load import Load
from loadplan.day.units import Units
from loadplan.judge.judge import judge
from loadplan.rules.facts import contradictions
from loadplan.workbook.read import read_day
from tests.fuzz.small_book import packed, parts_of
from tests.judge.build import CORNERS, day, machine, tied
from tests.judge.build import gear as piece
from tests.workbook.build import GEAR

ANY = settings(max_examples=120, deadline=None, derandomize=True)
STRENGTHS = st.one_of(
    st.fractions(min_value=1, max_value=10**5, max_denominator=10**6),
    st.sampled_from([Fraction(10, 3), Fraction(1, 10) + 5000, Fraction(2**53 + 1, 2**40)]),
    st.floats(min_value=1, max_value=1e5).map(Fraction),
)
STEPS = st.sampled_from([Fraction(1, 10**30), Fraction(1, 2**60), Fraction(1, 3), Fraction(1)])


def of_strengths(strengths, weight):
    """A machine of ``weight`` with a chain of its own strength at each corner."""
    cage = [piece("RB", "ratchet binder", fits="3/8", wll=10**6)]
    cage += [
        piece(f"C-{n}", "chain", size="3/8", wll=one, length=20) for n, one in enumerate(strengths)
    ]
    planned = [
        replace(tied(corner), member=f"C-{number}", tensioner="RB")
        for number, corner in enumerate(CORNERS)
    ]
    return day(machine(weight=weight), cage=cage), planned


@given(strengths=st.lists(STRENGTHS, min_size=4, max_size=4), step=STEPS)
@ANY
def test_strength_exactly_enough_is_met_and_the_least_bit_less_is_not(strengths, step):
    # Direct tie-downs count half, and half the weight is needed: the weight may be their sum.
    weight = sum(strengths, Fraction(0))
    enough, planned = of_strengths(strengths, weight)
    assert judge(enough, ("L-1",), planned).disagreements == ()
    heavier, planned = of_strengths(strengths, weight + step)
    (disagreement,) = judge(heavier, ("L-1",), planned).disagreements
    assert "aggregate WLL needs" in disagreement


@given(
    out=st.integers(0, 80_000),
    trip=st.integers(1, 3000),
    turnaround=st.sampled_from([0, 1, 599, 600]),
    late=st.sampled_from([-1, 0, 1]),
)
@ANY
def test_gear_is_free_at_the_very_second_it_is_back(out, trip, turnaround, late):
    back = out + trip
    loads = (
        Load(id="L-1", out=out, back=back),
        Load(id="L-2", out=back + turnaround + late, back=back + turnaround + 5000),
    )
    second = machine(id="M-2", load="L-2")
    cage = [
        piece("C-38", "chain", size="3/8", grade="70", length=20, quantity=4),
        piece("B-38", "lever binder", fits="3/8", wll=5400, quantity=4),
    ]
    two = day(machine(), second, cage=cage, loads=loads, turnaround=turnaround)
    planned = [tied(corner) for corner in CORNERS]
    planned += [replace(one, load="L-2", article="M-2") for one in planned]
    broken = judge(two, ("L-1", "L-2"), planned).disagreements
    assert bool(broken) == (late < 0)
    assert all("can be used." in one for one in broken)


@given(
    step=st.sampled_from([Fraction(-1), Fraction(-1, 10**30), Fraction(0), Fraction(1, 10**30)]),
    metric=st.booleans(),
)
@ANY
def test_ten_thousand_pounds_is_a_line_without_width(step, metric):
    limit = Fraction(4536 if metric else 10_000)
    article = machine(weight=limit + step, secured_under=None)
    units = Units.METRIC if metric else Units.US
    known = replace(day(article), units=units)
    light = replace(article, secured_under=SecuredUnder.LIGHT_VEHICLE)
    general = replace(article, secured_under=SecuredUnder.GENERAL)
    found = [
        bool(list(contradictions(one, known.house, units, known.rules))) for one in (light, general)
    ]
    assert found == [step > 0, step >= 0]


WEIGHTS = (0.1, 0.3, 1e-7, 12345.678, 9007199.254740993, 0.30000000000000004, 9999.999999999998)


@given(weight=st.sampled_from(WEIGHTS) | st.floats(min_value=1e-6, max_value=1e7, exclude_max=True))
@settings(max_examples=25, deadline=None, derandomize=True)
def test_a_number_in_a_cell_is_the_number_that_is_shown(tmp_path_factory, weight):
    path = tmp_path_factory.mktemp("exact") / "day.xlsx"
    rows = [
        ("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Secured under"),
        ("A", "L", "tracked machine", weight, 20, "heavy"),
    ]
    path.write_bytes(packed(parts_of({"Cargo": rows, "Gear": GEAR})))
    (article,) = read_day(path).articles
    # Fifteen digits, as spreadsheets show and keep them.
    assert article.weight == Fraction(f"{weight:.15g}")


def test_what_a_formula_leaves_beyond_fifteen_digits_is_no_weight(tmp_path):
    """A spreadsheet keeps 3000 times 2.2 as 6600.000000000001 and shows 6600."""
    path = tmp_path / "day.xlsx"
    head = ("Article", "Load", "Class", "Weight [lb]", "Length [ft]")
    rows = [head, ("A", "L", "tracked machine", 3000 * 2.2, 20)]
    assert 3000 * 2.2 != 6600
    path.write_bytes(packed(parts_of({"Cargo": rows, "Gear": GEAR})))
    (article,) = read_day(path).articles
    assert article.weight == 6600
