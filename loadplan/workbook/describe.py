"""A column in words: what it holds and what a blank means."""

from __future__ import annotations

from collections.abc import Sequence

from loadplan.day.units import Units
from loadplan.workbook.column import Column, Sheet, Value

_PLAIN = {
    Value.ID: "id (any text)",
    Value.TEXT: "text",
    Value.YES_NO: "yes or no",
    Value.SHARE: "number or percentage",
    Value.MOMENT: "time (06:30, 6:30 PM) or date and time (2026-07-14 06:30)",
    Value.DATE: "date",
    Value.SIZE: "size",
    Value.FITS: "sizes",
    Value.GRADE: "text",
    Value.ACCESSORIES: "names with ; between them, (pinned) behind those that are",
    Value.MONEY: "price",
}
_QUANTITIES = {Value.MASS: "weight", Value.LENGTH: "length", Value.TIME: "time"}
# A most beyond this only stops slips of the keyboard and is not worth telling.
_TOLD = 1_000


def holds(column: Column) -> str:
    """What a cell of ``column`` holds."""
    if column.choices and column.value is not Value.YES_NO:
        return ", ".join(column.choices)
    if column.value is Value.WHOLE:
        if column.most is not None and column.most <= _TOLD:
            return f"whole number, {column.least or 0} to {column.most}"
        return f"whole number, {column.least or 0} or more"
    if column.value in _QUANTITIES:
        return f"{_QUANTITIES[column.value]}, {_bounds(column)}"
    if column.value is Value.MONEY:
        return f"{_PLAIN[column.value]}, {_bounds(column)}"
    return _PLAIN[column.value]


def _bounds(column: Column) -> str:
    if column.above:
        return f"more than {column.least}"
    return f"{column.least or 0} or more"


def blank_means(column: Column) -> str:
    """What a blank cell of ``column`` means."""
    if column.required:
        return "must be filled"
    return column.default or "not stated"


def units_of_heading(column: Column) -> str:
    """The heading in both unit systems: ``Weight [lb] or [kg]``."""
    us, metric = column.unit_in(Units.US), column.unit_in(Units.METRIC)
    if us == metric:
        return column.heading(Units.US)
    return f"{column.name} [{us}] or [{metric}]"


def lines_or_columns(sheet: Sheet) -> Sequence[Column]:
    """What there is to describe of a sheet: its settings, or its columns."""
    return sheet.lines or sheet.columns
