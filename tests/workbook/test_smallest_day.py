"""Cargo and Gear are enough for a day."""

from fractions import Fraction

from loadplan.day.article import CargoClass, WeightFrom
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules
from loadplan.day.load import DAY_END
from loadplan.day.size import Size
from loadplan.day.units import Units
from tests.workbook.build import CARGO, GEAR, SMALLEST, read


def test_the_smallest_day(tmp_path):
    day = read(tmp_path, SMALLEST)
    (load,) = day.loads
    assert (load.id, load.trailer, load.out, load.back, load.priority) == (
        "L-1",
        None,
        0,
        DAY_END,
        1,
    )
    (article,) = day.articles
    assert (article.id, article.load) == ("EX-1", "L-1")
    assert article.cargo_class is CargoClass.TRACKED_MACHINE
    assert (article.weight, article.length) == (Fraction(36000), Fraction(24))
    assert article.weight_from is WeightFrom.ESTIMATE
    chain, binder = day.gear
    assert (chain.id, chain.kind, chain.grade, chain.quantity) == ("CH-1", Kind.CHAIN, "70", 8)
    assert (chain.size, chain.size_text) == (Size(Fraction(3, 8)), "3/8")
    assert binder.fits == (Size(Fraction(5, 16)), Size(Fraction(3, 8)))
    assert (day.units, day.house, day.turnaround) == (Units.US, HouseRules(), 0)
    assert day.time_limit == 60
    assert (day.trailers, day.fixed, day.prices, day.warnings) == ((), (), (), ())
    assert day.name == "day"


def test_records_keep_their_place(tmp_path):
    day = read(tmp_path, SMALLEST)
    assert day.articles[0].row.cell("Weight") == "D2"
    assert day.gear[1].row.cell("Quantity") == "H3"
    assert day.gear[1].row.sheet == "Gear"


def test_headings_stand_in_the_first_row_that_is_not_empty_and_blank_rows_are_skipped(tmp_path):
    blank = (None, " ", None)
    cargo = (blank, blank, CARGO[0], blank, CARGO[1], blank)
    day = read(tmp_path, {"Cargo": cargo, "Gear": GEAR})
    assert [article.id for article in day.articles] == ["EX-1"]
    assert day.articles[0].row.number == 5


def test_sheets_and_headings_without_regard_to_case_and_spaces(tmp_path):
    headings = ("ARTICLE", " load", "class ", "weight  [LB]", "LENGTH[ft]")
    day = read(tmp_path, {" cargo": (headings, CARGO[1]), "GEAR": GEAR})
    assert (day.articles[0].weight, day.articles[0].length) == (36000, 24)
    assert day.articles[0].row.sheet == " cargo"


def test_an_empty_sheet_counts_as_absent(tmp_path):
    sheets = {**SMALLEST, "Loads": [("Load", "Trailer")], "Trailers": [("Trailer",)], "Fixed": []}
    day = read(tmp_path, sheets)
    assert [load.id for load in day.loads] == ["L-1"]
    assert day.warnings == ()
