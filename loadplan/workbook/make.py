"""Short ways to describe a column, used by the table of sheets and columns."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from enum import StrEnum

from loadplan.workbook.column import Column, Value

# Larger figures are slips of the keyboard, and would only blur the arithmetic.
MOST_WEIGHT = 10_000_000
MOST_LENGTH = 10_000
MOST_COUNT = 1_000_000


def column(name: str, field: str, value: Value, help: str, default: str = "") -> Column:
    """Any column that may be blank."""
    return Column(name=name, field=field, value=value, help=help, default=default)


def ident(name: str, field: str, help: str) -> Column:
    """An id that every row needs."""
    return Column(name=name, field=field, value=Value.ID, help=help, required=True)


def reference(name: str, field: str, help: str, default: str) -> Column:
    """An id that may stay blank."""
    return column(name, field, Value.ID, help, default)


def text(name: str, field: str, help: str, *, required: bool = False) -> Column:
    """A note or name that is no id."""
    made = column(name, field, Value.TEXT, help, "none")
    return replace(made, required=required)


def yes_no(name: str, field: str, help: str) -> Column:
    """Yes or no, no by default."""
    return column(name, field, Value.YES_NO, help, "no")


def word(
    name: str,
    field: str,
    words: Iterable[StrEnum],
    help: str,
    *,
    default: str = "",
    required: bool = False,
    named: Callable[[str], StrEnum | None] | None = None,
) -> Column:
    """One of the words of an enumeration; ``named`` knows their other names."""
    made = column(name, field, Value.WORD, help, default)
    return replace(made, words=tuple(words), required=required, named=named)


def above_zero(made: Column, most: int, *, required: bool = False) -> Column:
    """``made`` with numbers above 0 and up to ``most``."""
    return replace(made, least=0, above=True, most=most, required=required)


def or_zero(made: Column) -> Column:
    """``made`` with 0 let through: a figure that may be nothing."""
    return replace(made, above=False)


def mass(
    name: str, field: str, help: str, *, default: str = "not known", required: bool = False
) -> Column:
    """A weight or strength above 0, in the day's unit."""
    made = column(name, field, Value.MASS, help, default)
    return above_zero(made, MOST_WEIGHT, required=required)


def length(name: str, field: str, help: str, *, default: str = "not known") -> Column:
    """A length above 0, in the day's unit."""
    return above_zero(column(name, field, Value.LENGTH, help, default), MOST_LENGTH)


def whole(
    name: str, field: str, help: str, *, least: int = 0, most: int = MOST_COUNT, default: str = ""
) -> Column:
    """A whole number from ``least`` to ``most``."""
    made = column(name, field, Value.WHOLE, help, default)
    return replace(made, least=least, most=most)
