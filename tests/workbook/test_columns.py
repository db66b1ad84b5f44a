"""The table of sheets and columns against the nouns it fills."""

import dataclasses
from enum import StrEnum

import pytest

from loadplan.day.article import AddedWeight, Article
from loadplan.day.day import Day
from loadplan.day.gear import FixedPiece, Gear, Price
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.workbook.column import Value
from loadplan.workbook.columns import SHEETS

NOUNS = {
    "Day": (Day,),
    "Loads": (Load,),
    "Cargo": (Article,),
    "Added weight": (AddedWeight,),
    "Trailers": (Trailer,),
    "Gear": (Gear,),
    "Prices": (Gear, Price),
    "House rules": (HouseRules,),
    "Fixed": (FixedPiece,),
}
# The one reference that a noun does not hold: what rides on an article is held by the article.
HELD_ELSEWHERE = {("Added weight", "article")}
CONTRACT = {
    "Day": "Yard, Date, Units, Rules, Turnaround, Time limit",
    "Loads": "Load, Trailer, Out, Back, Priority, Driver, Destination, Notes",
    "Cargo": "Article, Load, Class, Description, Weight, Weight from, Length, Width, Height, "
    "Secured under, Blocked forward, Routing, Tie point WLL, Accessories, Reach, Shackles, "
    "Sharp edges, Chain only, Details",
    "Added weight": "Article, What, Weight",
    "Trailers": "Trailer, Deck length, Deck width, Deck height, Payload, Anchors, Anchor WLL, "
    "Winches, Front structure",
    "Gear": "Gear, Kind, Size, Grade, Length, WLL, Breaking strength, Fits, Quantity, Condition, "
    "Kept on, Mass",
    "Prices": "Kind, Size, Grade, Length, WLL, Breaking strength, Fits, Price, Most",
    "House rules": "Heavy from, Least WLL each, Aggregate share, Estimated weight margin, "
    "Accessory counts in aggregate, Unrated points, Most per position, "
    "Length count on machines, Straps on machines",
    "Fixed": "Load, Article, Position, No, Gear",
}
ALL = [(sheet, column) for sheet in SHEETS for column in (sheet.lines or sheet.columns)]
NAMES = [f"{sheet.name}-{column.name}" for sheet, column in ALL]


def noun_field(sheet, column):
    for noun in NOUNS[sheet.name]:
        for one in dataclasses.fields(noun):
            if one.name == column.field:
                return one
    return None


@pytest.mark.parametrize("name", CONTRACT)
def test_every_sheet_and_column_that_is_relied_on(name):
    sheet = next(sheet for sheet in SHEETS if sheet.name == name)
    have = [column.name for column in (sheet.lines or sheet.columns)]
    assert set(CONTRACT[name].split(", ")) <= set(have)
    assert len(have) == len(set(have))


def test_the_order_of_sheets():
    assert [sheet.name for sheet in SHEETS] == list(CONTRACT)
    assert [sheet.name for sheet in SHEETS if sheet.required] == ["Cargo", "Gear"]


@pytest.mark.parametrize(("sheet", "column"), ALL, ids=NAMES)
def test_every_column_fills_a_field_of_its_noun(sheet, column):
    assert noun_field(sheet, column) or (sheet.name, column.field) in HELD_ELSEWHERE


@pytest.mark.parametrize(("sheet", "column"), ALL, ids=NAMES)
def test_a_word_or_count_that_may_be_blank_states_the_default_of_its_noun(sheet, column):
    one = noun_field(sheet, column)
    if column.required or one is None or one.default is dataclasses.MISSING:
        return
    if one.default is None or one.default in ("", ()):
        return
    if isinstance(one.default, StrEnum):
        assert column.default == one.default.value
    elif column.value is Value.YES_NO:
        assert column.default == ("yes" if one.default else "no")
    elif column.value in (Value.WHOLE, Value.SHARE, Value.MASS) and one.default is not None:
        assert float(column.default) == float(one.default)


@pytest.mark.parametrize(("sheet", "column"), ALL, ids=NAMES)
def test_every_column_is_explained_in_a_sentence(sheet, column):
    assert column.help.endswith((".", "?"))
