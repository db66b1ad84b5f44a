"""A column and a sheet of the day workbook, as data."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum, StrEnum
from typing import Any

from loadplan.day.units import Units
from loadplan.units import Dimension


class Value(Enum):
    """What the cells of a column hold, as words for the column reference."""

    ID = "id (text)"
    TEXT = "text"
    WORD = "one of the words"
    READING = "one of the readings"
    YES_NO = "yes or no"
    MASS = "weight"
    LENGTH = "length"
    TIME = "duration"
    WHOLE = "whole number"
    SHARE = "number or percentage"
    MOMENT = "time of day or date and time"
    DATE = "date"
    SIZE = "size"
    FITS = "sizes"
    GRADE = "mark (text)"
    ACCESSORIES = "list"
    MONEY = "price"


DIMENSIONS = {
    Value.MASS: Dimension.MASS,
    Value.LENGTH: Dimension.LENGTH,
    Value.TIME: Dimension.TIME,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One heading, or one line of a sheet of settings.

    ``field`` is the field of the noun the value goes to; a blank cell leaves the noun's own
    default, which ``default`` states for people. ``unit`` is the unit of a duration; weights and
    lengths are in the day's units. ``words`` are what a cell may hold where these are words of an
    enumeration, and ``named`` finds one of them by another name people use; ``readings`` where
    each word stands for a value of its own. Numbers must be ``least`` or more (``above``: more
    than it) and ``most`` or less.
    """

    name: str
    field: str
    value: Value
    help: str
    required: bool = False
    words: tuple[StrEnum, ...] = ()
    named: Callable[[str], StrEnum | None] | None = None
    readings: Mapping[str, Any] = dataclasses.field(default_factory=dict)
    default: str = ""
    unit: str = ""
    least: int | None = None
    above: bool = False
    most: int | None = None

    @property
    def choices(self) -> tuple[str, ...]:
        """The words of its drop-down; () where it has none."""
        if self.value is Value.YES_NO:
            return ("yes", "no")
        return self.words or tuple(self.readings)

    def unit_in(self, units: Units) -> str:
        """The unit its numbers are held in; "" where it has none."""
        if self.value is Value.MASS:
            return units.mass
        return units.length if self.value is Value.LENGTH else self.unit

    def heading(self, units: Units) -> str:
        """The heading with its unit in square brackets, as in ``Weight [lb]``."""
        unit = self.unit_in(units)
        return f"{self.name} [{unit}]" if unit else self.name


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet: a table with a heading per column.

    Where ``lines`` is not empty the sheet is a list of settings instead: its two columns hold a
    name and a value, and each line of it is described like a column.
    """

    name: str
    help: str
    columns: tuple[Column, ...]
    required: bool = False
    lines: tuple[Column, ...] = ()
