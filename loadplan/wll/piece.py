"""The WLL of one piece: marking, else published table, else one third of its breaking strength."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import ceil

from loadplan.day.day import Day
from loadplan.day.gear import WEBBING, Gear, Kind
from loadplan.day.units import Units
from loadplan.source import Source
from loadplan.text import mass
from loadplan.wll.hardware import lowest_grade_row
from loadplan.wll.rating_sources import (
    GRADE_MARKED,
    LOWEST_GRADE,
    MARKED,
    MARKED_IN_CANADA,
    NO_LOAD,
    NO_RATING,
    ONE_THIRD,
    STRAPPING_THIRD,
    UNMARKED_IS_ZERO,
    WIRE_ROPE_THIRD,
)
from loadplan.wll.readings import US_READINGS, Readings, readings_of
from loadplan.wll.tables import Material, TableRow, find

_MARKS = {
    30: ("3", "30", "300"),
    43: ("4", "43", "430"),
    70: ("7", "70", "700"),
    80: ("8", "80", "800"),
    100: ("10", "100", "1000"),
}
_GRADES = {mark: grade for grade, marks in _MARKS.items() for mark in marks}
_GRADE = re.compile(r"(?:g|gr|grade)?[\s.-]*(\d+)", re.IGNORECASE)
_UNMARKED_GRADE = 30
_ROPES = {
    material.value.replace("-", " "): material
    for material in (
        Material.MANILA,
        Material.POLYPROPYLENE,
        Material.POLYESTER,
        Material.NYLON,
        Material.DOUBLE_BRAIDED_NYLON,
    )
}


class Origin(StrEnum):
    """Where a piece's WLL comes from."""

    MARKED = "marked"
    TABLE = "table"
    ONE_THIRD = "one third"
    UNKNOWN = "unknown"
    NONE_NEEDED = "none needed"


# Where the regulation has another share for what it calls unmarked, that is said.
_THIRDS = {
    Kind.WIRE_ROPE: (WIRE_ROPE_THIRD, "; 393.108(e)(1) takes one quarter of it"),
    Kind.STEEL_STRAPPING: (
        STRAPPING_THIRD,
        "; a footnote of 393.104(e), from memory, takes one quarter of it",
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Rating:
    """The WLL of one piece in the day's mass unit, and how it was come by.

    ``wll`` is None where it is unknown (the piece must not bear load) or none is needed.
    ``reason`` is a phrase for people without a full stop.
    """

    wll: Fraction | None
    origin: Origin
    source: Source
    reason: str

    @property
    def usable(self) -> bool:
        """Whether a piece so rated may go into a tie-down."""
        return self.origin is not Origin.UNKNOWN


def rate_in(day: Day, gear: Gear) -> Rating:
    """The rating of one piece of ``gear`` under the rule set and readings of ``day``."""
    return rate(gear, day.units, readings_of(day.rules, day.house))


def rate(gear: Gear, units: Units, readings: Readings = US_READINGS) -> Rating:
    """The rating of one piece of ``gear`` (49 CFR 393.108; NSC Standard 10 s. 11 in Canada).

    The marking wins; then the published table in the column of ``units``; then one third of the
    stated breaking strength to the nearest whole unit (common practice, no source); else unknown.
    Where unmarked gear is zero, only a maker's WLL and a chain's grade mark count.
    """
    if gear.kind is Kind.EDGE_PROTECTOR:
        return Rating(
            wll=None,
            origin=Origin.NONE_NEEDED,
            source=NO_LOAD,
            reason="an edge protector bears no load",
        )
    if gear.wll is not None:
        source = MARKED_IN_CANADA if readings.unmarked_is_zero else MARKED
        return Rating(
            wll=gear.wll, origin=Origin.MARKED, source=source, reason="as marked by the maker"
        )
    return _unmarked(gear, units, readings)


def _unmarked(gear: Gear, units: Units, readings: Readings) -> Rating:
    if readings.lowest_grade_hardware:
        row = lowest_grade_row(gear)
        if row is not None:
            reason = f"not marked, taken as the lowest grade of its size, {row.sizes[0]}"
            return Rating(
                wll=row.wll(units), origin=Origin.TABLE, source=LOWEST_GRADE, reason=reason
            )
    graded = gear.kind is Kind.CHAIN and bool(gear.grade.strip())
    if readings.unmarked_is_zero and not graded:
        return Rating(
            wll=None,
            origin=Origin.UNKNOWN,
            source=UNMARKED_IS_ZERO,
            reason="not marked with a WLL by its maker, and in Canada such gear counts for nothing",
        )
    row, taken_as = _table_row(gear)
    if row is not None:
        row = readings.print_of(row, units)
        return Rating(
            wll=row.wll(units),
            origin=Origin.TABLE,
            source=GRADE_MARKED if readings.unmarked_is_zero else row.source,
            reason=f"{taken_as}, {gear.size}",
        )
    if readings.unmarked_is_zero:
        return Rating(
            wll=None,
            origin=Origin.UNKNOWN,
            source=UNMARKED_IS_ZERO,
            reason=f"{_no_table(gear, taken_as)}, and no WLL is marked",
        )
    return _without_table(gear, taken_as, units)


def chain_grade(mark: str) -> int | None:
    """The grade a chain mark stands for, or None if the table has no such grade.

    ``7``, ``70``, ``700``, ``G70`` and ``Grade 70`` are grade 70. A blank mark is unmarked chain,
    which is taken as grade 30 (49 CFR 393.108(d)).
    """
    if not mark.strip():
        return _UNMARKED_GRADE
    match = _GRADE.fullmatch(mark.strip())
    return _GRADES.get(match[1]) if match else None


def rope_material(name: str) -> Material | None:
    """The material a rope's ``Grade`` names, or None for unidentified cordage."""
    return _ROPES.get(" ".join(name.casefold().replace("-", " ").split()))


def _table_row(gear: Gear) -> tuple[TableRow | None, str]:
    """The table row for what is known of ``gear``, and what it is taken as, in words."""
    if gear.kind is Kind.CHAIN:
        return _chain_row(gear)
    if gear.kind is Kind.ROPE:
        material = rope_material(gear.grade)
        if material is None:
            what = "rope of unidentified material taken as polypropylene"
            return find(Material.POLYPROPYLENE, gear.size), what
        return find(material, gear.size), f"unmarked {material.value} rope"
    if gear.kind in WEBBING:
        return find(Material.WEBBING, gear.size), "unmarked webbing by its width"
    if gear.kind is Kind.WIRE_ROPE:
        return find(Material.WIRE_ROPE, gear.size), "unmarked wire rope by its diameter"
    if gear.kind is Kind.STEEL_STRAPPING:
        return find(Material.STEEL_STRAPPING, gear.size), "unmarked steel strapping by its size"
    return None, gear.kind.value


def _chain_row(gear: Gear) -> tuple[TableRow | None, str]:
    grade = chain_grade(gear.grade)
    if grade is None:
        return None, f"chain with the mark {gear.grade}, which is no grade of the table"
    row = find(Material.CHAIN, gear.size, grade)
    if not gear.grade.strip():
        return row, "unmarked chain taken as grade 30"
    return row, f"chain marked grade {grade}"


def _without_table(gear: Gear, taken_as: str, units: Units) -> Rating:
    if gear.breaking_strength is not None:
        third = Fraction(ceil(gear.breaking_strength / 3 - Fraction(1, 2)))
        if third > 0:
            strength = mass(gear.breaking_strength, units)
            source, other = _THIRDS.get(gear.kind, (ONE_THIRD, ""))
            return Rating(
                wll=third,
                origin=Origin.ONE_THIRD,
                source=source,
                reason=f"one third of the stated breaking strength of {strength}{other}",
            )
    return Rating(
        wll=None,
        origin=Origin.UNKNOWN,
        source=NO_RATING,
        reason=f"{_no_table(gear, taken_as)}, and no WLL or breaking strength is given",
    )


def _no_table(gear: Gear, taken_as: str) -> str:
    if taken_as == gear.kind.value:
        return f"no table covers a {gear.kind.value}"
    if gear.kind is Kind.CHAIN and chain_grade(gear.grade) is None:
        return taken_as
    if gear.size is not None:
        return f"{taken_as}, but the table has no {gear.size}"
    if gear.size_text:
        return f"{taken_as}, but its size {gear.size_text} cannot be read"
    return f"{taken_as}, but no size is given"
