"""Quantities as people type them: our own strict grammar in front of one unit registry.

The grammar refuses to guess. A comma is a thousands comma in groups of three or nothing; a bare
``ton`` is refused; feet and inches go together as ``12' 6"`` or ``12 ft 6 in``. Every number is an
exact :class:`~fractions.Fraction`. Factors between units come from pint, which is imported at the
first conversion.
"""

from __future__ import annotations

import re
from enum import StrEnum
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from loadplan.numerals import (
    NUMBER,
    ZERO_GROUP,
    Misread,
    not_a_number,
    plain,
    read_number,
    read_share,
    value_of,
)
from loadplan.problems import Code

if TYPE_CHECKING:
    import pint

__all__ = [
    "UNITS",
    "Dimension",
    "Misread",
    "Unit",
    "factor",
    "find_unit",
    "is_ton",
    "read_number",
    "read_quantity",
    "read_share",
    "units_of",
    "with_unit",
]


class Dimension(StrEnum):
    """What a quantity measures."""

    MASS = "weight"
    LENGTH = "length"
    TIME = "time"


_SPELLINGS = {
    Dimension.MASS: {
        "lb": "lb lbs lb. lbs. pound pounds",
        "kg": "kg kgs kilogram kilograms",
        "t": "t tonne tonnes",
        "g": "g gram grams",
    },
    Dimension.LENGTH: {
        "ft": "ft ft. foot feet '",
        "in": 'in in. inch inches "',
        "m": "m metre metres meter meters",
        "cm": "cm centimetre centimetres centimeter centimeters",
        "mm": "mm millimetre millimetres millimeter millimeters",
    },
    Dimension.TIME: {
        "s": "s sec sec. secs second seconds",
        "min": "min min. mins minute minutes",
        "h": "h hr hr. hrs hour hours",
    },
}
_PINT_NAMES = {
    "lb": "pound",
    "kg": "kilogram",
    "t": "metric_ton",
    "g": "gram",
    "ft": "foot",
    "in": "inch",
    "m": "meter",
    "cm": "centimeter",
    "mm": "millimeter",
    "s": "second",
    "min": "minute",
    "h": "hour",
}
UNITS: dict[str, tuple[str, Dimension]] = {
    spelling: (symbol, dimension)
    for dimension, symbols in _SPELLINGS.items()
    for symbol, spellings in symbols.items()
    for spelling in spellings.split()
}
_TONS = frozenset({"ton", "tons", "ton.", "tons."})
_INTO = {("ft", "in"): 12, ("h", "min"): 60, ("min", "s"): 60}
_EXAMPLES = {
    Dimension.MASS: "lb, kg or t",
    Dimension.LENGTH: "ft, in, m, cm or mm",
    Dimension.TIME: "s, min or h",
}

_PART = re.compile(rf" *-? *({NUMBER}) *([^\W\d_]+\.?(?: +[^\W\d_]+)*|'|\")")
_ONE = re.compile(rf"([+-]?) *({NUMBER}) *([^0-9 ].*)?")


class Unit(NamedTuple):
    """A unit by its symbol, and what it measures."""

    symbol: str
    dimension: Dimension


def find_unit(text: str) -> Unit | None:
    """The unit spelled ``text`` (any case), or None."""
    found = UNITS.get(plain(text).lower())
    return None if found is None else Unit(*found)


def is_ton(text: str) -> bool:
    """Whether ``text`` is a bare ton, which is three different weights."""
    return plain(text).lower() in _TONS


def units_of(dimension: Dimension) -> str:
    """The units a quantity may be typed in, as words for a message."""
    return _EXAMPLES[dimension]


@cache
def factor(unit: str, into: str) -> Fraction:
    """How many ``into`` one ``unit`` is, exactly (1 lb = 45359237/100000000 kg).

    Both are symbols of one dimension.
    """
    if unit == into:
        return Fraction(1)
    if (unit, into) in _INTO:
        return Fraction(_INTO[unit, into])
    registry = _registry()
    converted = registry.Quantity(Fraction(1), _PINT_NAMES[unit]).to(_PINT_NAMES[into])
    return Fraction(converted.magnitude)


@cache
def _registry() -> pint.UnitRegistry[Fraction]:
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


def read_quantity(text: str, dimension: Dimension, into: str, default: str | None) -> Fraction:
    """The quantity in ``text``, converted exactly to the unit ``into``.

    ``default`` is the unit of a bare number; None where there is none. Raises :class:`Misread`.
    """
    text = plain(text)
    if ZERO_GROUP.match(text):
        raise not_a_number(text)
    match = _ONE.fullmatch(text)
    if match is None:
        raise not_a_number(text)
    sign, number, rest = match[1], match[2], match[3]
    if rest is None:
        return with_unit(value_of(sign, number), default, dimension, into)
    if find_unit(rest) or is_ton(rest) or not re.search("[0-9]", rest):
        unit = _unit(rest, dimension)
        return value_of(sign, number) * factor(unit, into)
    return _compound(sign, text.removeprefix(sign), dimension, into)


def with_unit(number: Fraction, unit: str | None, dimension: Dimension, into: str) -> Fraction:
    """A bare ``number`` of ``unit``, converted exactly; :class:`Misread` where unit is None."""
    if unit is None:
        remedy = (
            f"Write its unit ({units_of(dimension)}) in the cell or, in square brackets, "
            "in the heading."
        )
        raise Misread(Code.NO_UNIT, remedy, ", without a unit")
    return number * factor(unit, into)


def _compound(sign: str, text: str, dimension: Dimension, into: str) -> Fraction:
    """Parts such as ``12 ft 6 in``: each of the next smaller unit, all but the last whole."""
    parts: list[tuple[Fraction, str]] = []
    at = 0
    while at < len(text):
        match = _PART.match(text, at)
        if match is None:
            raise not_a_number(text)
        parts.append((value_of("", match[1]), _unit(match[2], dimension)))
        at = match.end()
    for (value, unit), (smaller, next_unit) in pairwise(parts):
        size = _INTO.get((unit, next_unit))
        if size is None:
            raise not_a_number(text)
        if value.denominator != 1 or smaller >= size:
            raise Misread(
                Code.TWO_WAYS,
                f"Write whole {unit} and less than {size} {next_unit}, or one unit only.",
            )
    total = sum((value * factor(unit, into) for value, unit in parts), Fraction(0))
    return -total if sign == "-" else total


def _unit(text: str, dimension: Dimension) -> str:
    found = find_unit(text)
    if found is not None and found.dimension is dimension:
        return found.symbol
    if dimension is Dimension.MASS and is_ton(text):
        raise Misread(
            Code.TWO_WAYS,
            "Write lb, kg or t (1,000 kg).",
            ": a ton can be 2,000 lb, 2,240 lb or 1,000 kg",
        )
    why = f": {text.strip()} is not a unit of {dimension.value}"
    raise Misread(Code.WRONG_UNIT, f"Use {units_of(dimension)}.", why)
