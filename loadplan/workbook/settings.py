"""Sheets of settings: a name and a value in each row."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from loadplan.day.row import Row
from loadplan.day.units import Units
from loadplan.problems import Code, Problem
from loadplan.units import Misread
from loadplan.workbook.column import Column, Sheet
from loadplan.workbook.columns import HOUSE_RULES
from loadplan.workbook.grid import Grid
from loadplan.workbook.headings import read_headings, split_unit, unit_of
from loadplan.workbook.names import did_you_mean, fold_words, shown, suggest
from loadplan.workbook.table import row_problem
from loadplan.workbook.values import BLANK, LOST, reader


@dataclass(slots=True, kw_only=True)
class Settings:
    """What a sheet of settings says: values by field, and the row of each line by its name."""

    values: dict[str, Any] = field(default_factory=dict)
    stated: dict[str, Row] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """One row: the name as typed without its unit, that unit, and the value's cell."""

    row: Row
    name: str
    unit: str | None
    value: Any


def read_units(sheet: Sheet, grid: Grid | None) -> Units:
    """The unit system of the day; US where the setting is absent or cannot be read."""
    column = next(column for column in sheet.lines if column.field == "units")
    for line in _lines(sheet, grid, Settings()):
        if fold_words(line.name) == fold_words(column.name):
            try:
                value = reader(column, None, Units.US)(line.value)
            except Misread:
                return Units.US
            return Units.US if value is BLANK else Units(value)
    return Units.US


def read_settings(sheet: Sheet, grid: Grid | None, units: Units) -> Settings:
    """The settings in ``grid``, described by ``sheet.lines``, in a day of ``units``."""
    settings = Settings()
    known = {fold_words(column.name): column for column in sheet.lines}
    for line in _lines(sheet, grid, settings):
        column = known.get(fold_words(line.name))
        if column is None:
            _unknown(settings, sheet, line)
        elif column.name in settings.stated:
            settings.problems.append(_twice(sheet, line, column, settings.stated[column.name]))
        else:
            settings.stated[column.name] = line.row
            _read_value(settings, sheet, line, column, units)
    return settings


def _lines(sheet: Sheet, grid: Grid | None, settings: Settings) -> Iterator[_Line]:
    if grid is None or not grid.rows:
        return
    heading_row, cells = grid.rows[0]
    headings = read_headings(sheet, grid.name, heading_row, cells)
    settings.problems += headings.problems
    settings.warnings += headings.warnings
    at = {found.column.field: found.index for found in headings.found}
    if not headings.usable or len(at) < 2:
        return
    for number, values in grid.rows[1:]:
        name = _at(values, at["name"])
        value = LOST if (number, at["value"] + 1) in grid.lost else _at(values, at["value"])
        row = Row(sheet=grid.name, number=number, letters=headings.letters)
        if name is not None and str(name).strip():
            text, unit = split_unit(str(name))
            yield _Line(row=row, name=text, unit=unit, value=value)
        elif value is not None and str(value).strip():
            label = sheet.columns[0].name
            settings.problems.append(
                row_problem(
                    row, Code.MISSING_VALUE, label, f"{label} is blank.", "Every value needs one."
                )
            )


def _at(values: tuple[Any, ...], index: int) -> Any:
    return values[index] if index < len(values) else None


def _read_value(
    settings: Settings, sheet: Sheet, line: _Line, column: Column, units: Units
) -> None:
    unit, remedy = unit_of(column, line.unit)
    if remedy is not None:
        found = f"{column.name} has the unit {shown(line.unit)}."
        label = sheet.columns[0].name
        settings.problems.append(row_problem(line.row, Code.HEADING_UNIT, label, found, remedy))
        return
    if line.value is None:
        return
    try:
        value = reader(column, unit, units)(line.value)
    except Misread as misread:
        what = "" if line.value is LOST else f" {shown(line.value)}"
        found = f"{column.name} is{what}{misread.why}."
        settings.problems.append(
            row_problem(line.row, misread.code, "Value", found, misread.remedy)
        )
        return
    if value is not BLANK:
        settings.values[column.field] = value


def _unknown(settings: Settings, sheet: Sheet, line: _Line) -> None:
    """A house rule that is not known, or a setting that looks like a known one, is a problem.

    To leave it out could send a load out short.
    """
    names = [column.name for column in sheet.lines]
    label = sheet.columns[0].name
    if sheet is HOUSE_RULES or suggest(line.name, names):
        found = f"{label} {shown(line.name)} is not known."
        remedy = did_you_mean(line.name, names) + f"The names are: {', '.join(names)}."
        settings.problems.append(row_problem(line.row, Code.SETTING, label, found, remedy))
        return
    settings.warnings.append(
        f"'{line.row.sheet}'!{line.row.cell(label)}  The setting {shown(line.name)} is not known "
        "and was left out."
    )


def _twice(sheet: Sheet, line: _Line, column: Column, first: Row) -> Problem:
    label = sheet.columns[0].name
    return row_problem(
        line.row,
        Code.SETTING_TWICE,
        label,
        f"{column.name} stands in {first.cell(label)} already.",
        "Keep one of the two rows.",
    )
