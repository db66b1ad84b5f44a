"""Headings: which column of a sheet holds what, in which unit."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from loadplan.problems import Code, Place, Problem
from loadplan.units import find_unit, is_ton, units_of
from loadplan.workbook.column import DIMENSIONS, Column, Sheet, Value
from loadplan.workbook.names import did_you_mean, fold_words, shown, suggest
from loadplan.workbook.stored import column_letter

_WITH_UNIT = re.compile(r"\s*(.*?)\s*\[([^\[\]]*)\]\s*", re.DOTALL)
_CURRENCY = re.compile(r"[$€£¥]|[A-Za-z]{3}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A known column: where it stands and the unit its heading gives."""

    column: Column
    index: int
    unit: str | None


@dataclass(slots=True, kw_only=True)
class Headings:
    """The headings of one sheet, and what is wrong or unknown among them.

    ``letters`` are the columns' letters by name. ``usable`` is false where no row below can be
    sound: a required heading is missing, or one is wrong.
    """

    found: list[Found] = field(default_factory=list)
    letters: dict[str, str] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    usable: bool = True


def split_unit(text: str) -> tuple[str, str | None]:
    """``Weight [lb]`` as ``Weight`` and ``lb``; None where no unit is given."""
    match = _WITH_UNIT.fullmatch(text)
    return (match[1], match[2].strip()) if match else (text.strip(), None)


def read_headings(sheet: Sheet, name: str, row: int, cells: Sequence[Any]) -> Headings:
    """The headings in ``cells``, row ``row`` of the sheet typed as ``name``."""
    headings = Headings()
    columns = {fold_words(column.name): column for column in sheet.columns}
    unknown: list[tuple[Place, str]] = []
    for index, cell in enumerate(cells):
        if cell is None or not str(cell).strip():
            continue
        place = Place(sheet=name, row=row, column=column_letter(index + 1))
        text, unit = split_unit(str(cell))
        column = columns.get(fold_words(text))
        if column is None:
            unknown.append((place, text))
        elif column.name in headings.letters:
            headings.problems.append(_twice(place, column, headings.letters[column.name], row))
        else:
            headings.letters[column.name] = place.column
            _add(headings, place, column, index, unit)
    free = [column for column in sheet.columns if column.name not in headings.letters]
    headings.problems += _missing(sheet, Place(sheet=name, row=row), free, unknown)
    names = [column.name for column in free]
    headings.warnings += [_unknown_warning(place, text, names) for place, text in unknown]
    headings.usable = not headings.problems
    return headings


def unit_of(column: Column, text: str | None) -> tuple[str | None, str | None]:
    """The unit symbol ``text`` names for ``column``, and a remedy where it does not suit."""
    if text is None or not text:
        return None, None
    dimension = DIMENSIONS.get(column.value)
    if dimension is None:
        if column.value is Value.MONEY and _CURRENCY.fullmatch(text):
            return text.upper(), None
        return None, f"{column.name} takes no unit; leave out the square brackets."
    unit = find_unit(text)
    if unit is not None and unit.dimension is dimension:
        return unit.symbol, None
    if is_ton(text):
        return None, "A ton can be 2,000 lb, 2,240 lb or 1,000 kg; write lb, kg or t."
    return None, f"Use {units_of(dimension)}."


def _add(headings: Headings, place: Place, column: Column, index: int, text: str | None) -> None:
    """Note where ``column`` stands; one with a wrong unit is a problem and is not read."""
    unit, remedy = unit_of(column, text)
    if remedy is None:
        headings.found.append(Found(column=column, index=index, unit=unit))
    else:
        headings.problems.append(
            Problem(
                code=Code.HEADING_UNIT,
                place=place,
                found=f"The heading {column.name} has the unit {shown(text)}.",
                remedy=remedy,
            )
        )


def _twice(place: Place, column: Column, first: str, row: int) -> Problem:
    return Problem(
        code=Code.DUPLICATE_HEADING,
        place=place,
        found=f"The heading {column.name} stands in {first}{row} already.",
        remedy="Keep one of the two columns.",
    )


def _missing(
    sheet: Sheet, place: Place, free: list[Column], unknown: list[tuple[Place, str]]
) -> Iterator[Problem]:
    for column in free:
        if not column.required:
            continue
        near = suggest(column.name, [text for _, text in unknown])
        where = next((f"{at.column}{at.row}" for at, text in unknown if text == near), "")
        hint = f"Is it meant by {shown(near)} in {where}? " if near else ""
        yield Problem(
            code=Code.MISSING_HEADING,
            place=place,
            found=f"The sheet {sheet.name} has no column {column.name}.",
            remedy=f"{hint}Write {column.name} in its heading row.",
        )


def _unknown_warning(place: Place, text: str, names: list[str]) -> str:
    hint = did_you_mean(text, names).strip()
    sentence = f"{place}  The column {shown(text)} is not known and was left out."
    return f"{sentence} {hint}".strip()
