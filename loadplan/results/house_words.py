"""The house rules in words: each with the value in force and whether the yard chose it."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.day.units import Units
from loadplan.results.words import share
from loadplan.text import length, mass, plain
from loadplan.workbook.column import Column, Value
from loadplan.workbook.lines import HOUSE_LINES

READINGS = (
    "A direct or same-side tie-down counts with half its WLL, one over the article with all of it "
    "(49 CFR 393.106(d)).",
    "An unpinned accessory takes one tie-down of its own of any WLL, not counted among the others "
    "(49 CFR 393.130(b)(1) names no number; common practice, no source).",
    "Weights are with everything on the article: buckets, fuel, ballast, tools.",
    "A machine counts as not blocked forward unless its row says so; a direct tie-down does not "
    "block it.",
    "A light vehicle takes two tie-downs in all, one at each end; the official handbook can be "
    "read as two at each end.",
    "A marked WLL goes before any table; unmarked chain is taken as grade 30, unidentified rope as "
    "polypropylene (49 CFR 393.108).",
    "House rules may change these readings: the table above shows what is in force.",
)


def house_lines(day: Day) -> list[tuple[str, str, str, str]]:
    """(rule, value, chosen or default, what it means) for every line of ``House rules``."""
    stated = {name.casefold() for name in day.house.stated}
    return [
        (
            line.name,
            _value(getattr(day.house, line.field), line, day.units),
            "chosen" if line.name.casefold() in stated else "default",
            line.help,
        )
        for line in HOUSE_LINES
    ]


def _value(value: object, line: Column, units: Units) -> str:
    """The value as people write it; None is what the line says its default is."""
    if value is None:
        return line.default
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, StrEnum):
        return value.value
    if not isinstance(value, Fraction | int):
        return str(value)
    if line.value is Value.MASS:
        return mass(value, units)
    if line.value is Value.LENGTH:
        return length(value, units)
    return share(Fraction(value)) if line.value is Value.SHARE else plain(value)
