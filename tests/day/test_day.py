"""The day as a whole: what refers to what, and its clock."""

import datetime
from fractions import Fraction

import pytest

from loadplan.day.article import AddedWeight, Article, CargoClass
from loadplan.day.day import Day
from loadplan.day.gear import Condition, Gear, Kind
from loadplan.day.load import Load
from loadplan.day.row import Row
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units


def article(name, load, **more):
    return Article(id=name, load=load, cargo_class=CargoClass.GENERAL, weight=Fraction(100), **more)


DAY = Day(
    loads=(Load(id="L-1", trailer="T", out=21600, back=36000), Load(id="L-2")),
    articles=(article("B", "L-1"), article("A", "L-1")),
    gear=(
        Gear(id="C", kind=Kind.CHAIN),
        Gear(id="K", kind=Kind.CHAIN, kept_on="T"),
        Gear(id="H", kind=Kind.CHAIN, quantity=3, condition=Condition.HOLD),
    ),
    trailers=(Trailer(id="T"),),
    turnaround=600,
    date=datetime.date(2026, 7, 14),
)


def test_who_is_where():
    assert [one.id for one in DAY.articles_by_load["L-1"]] == ["B", "A"]
    assert DAY.articles_by_load["L-2"] == ()
    assert DAY.trailer_of(DAY.load_by_id["L-1"]) == DAY.trailer_by_id["T"]
    assert DAY.trailer_of(DAY.load_by_id["L-2"]) is None
    assert DAY.article_by_id["A"].load == "L-1"


def test_cage_gear_needs_the_turnaround_and_a_kit_does_not():
    load = DAY.load_by_id["L-1"]
    assert DAY.free_again(load, DAY.gear_by_id["C"]) == 36600
    assert DAY.free_again(load, DAY.gear_by_id["K"]) == 36000


def test_only_good_gear_is_usable():
    assert [gear.usable for gear in DAY.gear] == [1, 1, 0]


@pytest.mark.parametrize(
    ("moment", "text"),
    [
        (0, "00:00"),
        (23400, "06:30"),
        (23415, "06:30:15"),
        (86400, "24:00"),
        (86460, "2026-07-15 00:01"),
        (-3600, "2026-07-13 23:00"),
    ],
)
def test_the_clock(moment, text):
    assert DAY.clock(moment) == text


def test_the_clock_of_a_day_without_a_date():
    assert Day(loads=(), articles=(), gear=()).clock(90000) == "01:00 (+1 d)"


def test_everything_on_an_article_counts():
    added = (
        AddedWeight(what="bucket", weight=Fraction(1, 3)),
        AddedWeight(what="fuel", weight=Fraction(2, 3)),
    )
    assert article("A", "L", added=added).carried_weight == 101
    assert article("A", "L").carried_weight == 100


def test_classes():
    assert [kind.value for kind in CargoClass if kind.is_machine] == [
        "tracked machine",
        "wheeled machine",
        "articulated machine",
    ]


def test_a_row_knows_its_cells():
    row = Row(sheet="Gear", number=9, letters={"Gear": "B", "Quantity": "D"})
    assert row.cell("Quantity") == "D9"
    assert row.cell("WLL") == "B9"
    assert Row(sheet="Gear", number=9, letters={}).cell("WLL") == "A9"


def test_units():
    assert [(one.mass, one.length) for one in Units] == [("lb", "ft"), ("kg", "m")]
