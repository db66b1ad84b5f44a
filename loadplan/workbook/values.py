"""Cells: from what a spreadsheet stores to what a column holds, or a problem."""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from loadplan.day.units import Units
from loadplan.problems import Code
from loadplan.units import (
    Dimension,
    Misread,
    read_number,
    read_quantity,
    read_share,
    with_unit,
)
from loadplan.workbook.column import DIMENSIONS, Column, Value
from loadplan.workbook.limits import MOST_TEXT
from loadplan.workbook.lists import read_accessories, read_money
from loadplan.workbook.moments import read_date, read_moment
from loadplan.workbook.texts import (
    TIMES,
    as_text,
    read_id,
    read_note,
    read_reading,
    read_word,
    read_yes_no,
    size_and_text,
    sizes_it_fits,
    text_for_size,
)

Reader = Callable[[Any], Any]
BLANK = object()
# Stands for a formula without a stored value, which by its value alone would look blank.
LOST = object()
_DIGITS = 15
_ERRORS = frozenset(
    {"#REF!", "#VALUE!", "#NAME?", "#DIV/0!", "#N/A", "#NUM!", "#NULL!", "#SPILL!", "#CALC!"}
    | {"#GETTING_DATA", "#FIELD!", "#BLOCKED!", "#CONNECT!", "#UNKNOWN!"}
)


def reader(column: Column, unit: str | None, units: Units) -> Reader:
    """A function from a cell's value to what ``column`` holds.

    ``unit`` is the heading's; ``units`` the day's. The function answers :data:`BLANK` for a blank
    cell, raises :class:`~loadplan.units.Misread` for one that cannot be read, and remembers what
    it has seen: the same few words and figures fill most of a workbook.
    """
    read = _read_by(column, unit, units)
    seen: dict[tuple[type, Any], Any] = {}

    def remembered(value: Any) -> Any:
        key = (value.__class__, value)
        try:
            return seen[key]
        except KeyError:
            found = seen[key] = _checked(value, column, read)
            return found

    return remembered


def _checked(value: Any, column: Column, read: Reader) -> Any:
    if value is LOST:
        raise Misread(
            Code.NO_STORED_VALUE,
            "Open the workbook in a spreadsheet program, let it calculate and save it, or type "
            "the value itself.",
            " a formula without a stored value",
        )
    if isinstance(value, str):
        if not value.strip():
            return BLANK
        if value.strip().upper() in _ERRORS:
            raise Misread(
                Code.ERROR_CELL,
                "Correct its formula, or type the value itself.",
                ", a spreadsheet error",
            )
        if len(value) > MOST_TEXT:
            raise Misread(Code.TOO_LONG, f"Keep it within {MOST_TEXT:,} characters.")
    return read(value)


def _read_by(column: Column, unit: str | None, units: Units) -> Reader:
    value = column.value
    if value in DIMENSIONS:
        dimension, into = DIMENSIONS[value], column.unit_in(units)
        return lambda cell: _in_range(_quantity(cell, dimension, into, unit), column, into)
    if value is Value.WHOLE:
        return lambda cell: _whole(cell, column)
    if value is Value.SHARE:
        return lambda cell: _in_range(_number(cell, read_share), column, "")
    if value is Value.MONEY:
        return lambda cell: _money(cell, column, unit)
    if value is Value.WORD:
        return lambda cell: read_word(cell, column)
    if value is Value.READING:
        return lambda cell: read_reading(cell, column)
    if value is Value.ACCESSORIES:
        return lambda cell: read_accessories(as_text(cell), units.mass)
    return _SIMPLE[value]


def _number(cell: Any, read: Callable[[str], Fraction] = read_number) -> Fraction:
    if isinstance(cell, bool):
        raise Misread(Code.WRONG_TYPE, "Write a number.")
    if isinstance(cell, int):
        return Fraction(cell)
    if isinstance(cell, float):
        if not math.isfinite(cell):
            raise Misread(Code.NOT_A_NUMBER, "Write a finite number.", ", which is no number")
        # Spreadsheets show and keep so many digits: 0.1 is one tenth, and what a formula leaves
        # beyond them, as in 6600.000000000001 for 3000 times 2.2, nobody has weighed.
        return Fraction(f"{cell:.{_DIGITS}g}")
    if isinstance(cell, TIMES):
        raise Misread(
            Code.WRONG_TYPE, "Format the cell as a number and type it again.", ", a date or time"
        )
    return read(cell)


def _quantity(cell: Any, dimension: Dimension, into: str, unit: str | None) -> Fraction:
    if isinstance(cell, str):
        return read_quantity(cell, dimension, into, unit)
    return with_unit(_number(cell), unit, dimension, into)


def _in_range(number: Fraction, column: Column, unit: str) -> Fraction:
    least, most = column.least, column.most
    behind = f" {unit}" if unit else ""
    if least is not None and (number < least or (column.above and number == least)):
        bound = f"more than {least}" if column.above else f"{least} or more"
        raise Misread(Code.OUT_OF_RANGE, f"It must be {bound}.")
    if most is not None and number > most:
        raise Misread(Code.OUT_OF_RANGE, f"It must be {most:,}{behind} or less.")
    return number


def _whole(cell: Any, column: Column) -> int:
    number = _number(cell)
    least, most = column.least or 0, column.most
    if number.denominator != 1 or number < least or (most is not None and number > most):
        small = most is not None and most <= 100
        bound = f"from {least} to {most}" if small else f"{least} or more"
        if most is not None and number > most and not small:
            bound = f"{most:,} or less"
        comma = "" if small else ","
        raise Misread(Code.OUT_OF_RANGE, f"It must be a whole number{comma} {bound}.")
    return int(number)


def _money(cell: Any, column: Column, currency: str | None) -> tuple[Fraction, str]:
    if isinstance(cell, str):
        price, own = read_money(cell)
        return _in_range(price, column, ""), own or currency or ""
    return _in_range(_number(cell), column, ""), currency or ""


_SIMPLE: dict[Value, Reader] = {
    Value.ID: read_id,
    Value.TEXT: read_note,
    Value.YES_NO: read_yes_no,
    Value.MOMENT: read_moment,
    Value.DATE: read_date,
    Value.SIZE: size_and_text,
    Value.FITS: sizes_it_fits,
    Value.GRADE: text_for_size,
}
