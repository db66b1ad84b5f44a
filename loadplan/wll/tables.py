"""The published default tables of 49 CFR 393.108, one CSV per material.

They serve only gear without a maker's rating: a marking wins in either direction. Each row keeps
both printed columns (kg and lb; they are not conversions of each other), the section, the edition
and how sure we are of it.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import cache
from importlib import resources

from loadplan.day.size import Size, read_size
from loadplan.day.units import Units
from loadplan.source import Certainty, Source

DOCUMENT = "49 CFR"


class Material(StrEnum):
    """What a table is for."""

    CHAIN = "chain"
    WEBBING = "webbing"
    WIRE_ROPE = "wire rope"
    MANILA = "manila"
    POLYPROPYLENE = "polypropylene"
    POLYESTER = "polyester"
    NYLON = "nylon"
    DOUBLE_BRAIDED_NYLON = "double-braided nylon"
    STEEL_STRAPPING = "steel strapping"


class OtherPrint(StrEnum):
    """A print of a default figure that differs from the federal table."""

    STATE_MANUAL = "state manual"
    QUARTER_OF_STRENGTH = "quarter of strength"


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One printed row: a nominal size (and chain grade) with its WLL in both columns.

    ``sizes`` are the inch and the millimetre form. ``wll_kg`` and ``wll_lb`` are as printed.
    """

    material: Material
    sizes: tuple[Size, ...]
    grade: int | None
    wll_kg: int
    wll_lb: int
    source: Source
    note: str = ""

    def wll(self, units: Units) -> Fraction:
        """The printed figure in the column of ``units`` (lb or kg)."""
        return Fraction(self.wll_lb if units is Units.US else self.wll_kg)


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherFigure:
    """A figure of another print, beside the row of the federal table that it differs from.

    ``in_units`` are the columns in which that print was read.
    """

    chosen: OtherPrint
    federal: TableRow
    row: TableRow
    in_units: frozenset[Units]


@cache
def table(material: Material) -> tuple[TableRow, ...]:
    """Every row of one table, in the printed order."""
    stem = material.value.replace(" ", "_").replace("-", "_")
    path = resources.files("loadplan.wll") / "data" / f"{stem}.csv"
    with path.open(encoding="utf-8") as file:
        return tuple(_row(material, line) for line in csv.DictReader(file))


def rows() -> Iterator[TableRow]:
    """Every row of every table."""
    for material in Material:
        yield from table(material)


def find(material: Material, size: Size | None, grade: int | None = None) -> TableRow | None:
    """The row for a nominal size (and, for chain, a grade), or None if the table has none.

    Nothing is read between rows: a size the table does not print has no row.
    """
    return None if size is None else _index(material).get((size, grade))


def other_print(row: TableRow, chosen: OtherPrint, units: Units) -> TableRow | None:
    """``row`` with the figure of another print; None where that has none in ``units``."""
    for one in other_figures():
        if one.chosen is chosen and one.federal == row and units in one.in_units:
            return one.row
    return None


@cache
def other_figures() -> tuple[OtherFigure, ...]:
    """Every figure of another print."""
    path = resources.files("loadplan.wll") / "data" / "other_prints.csv"
    with path.open(encoding="utf-8") as file:
        return tuple(_other_figure(line) for line in csv.DictReader(file))


def _other_figure(line: Mapping[str, str]) -> OtherFigure:
    grade = int(line["grade"]) if line["grade"] else None
    federal = find(Material(line["material"]), read_size(f"{line['size_in']} in"), grade)
    if federal is None:
        raise ValueError(f"no federal figure beside {line}")
    source = Source(
        document=line["document"],
        section=line["section"],
        edition=line["edition"],
        certainty=Certainty(line["certainty"]),
        says=line["note"],
    )
    kg, lb = line["wll_kg"], line["wll_lb"]
    return OtherFigure(
        chosen=OtherPrint(line["print"]),
        federal=federal,
        row=replace(
            federal,
            wll_kg=int(kg) if kg else federal.wll_kg,
            wll_lb=int(lb) if lb else federal.wll_lb,
            source=source,
        ),
        in_units=frozenset(units for units, text in ((Units.METRIC, kg), (Units.US, lb)) if text),
    )


@cache
def _index(material: Material) -> Mapping[tuple[Size, int | None], TableRow]:
    return {(size, row.grade): row for row in table(material) for size in row.sizes}


def _row(material: Material, line: Mapping[str, str]) -> TableRow:
    sizes = (read_size(f"{line['size_in']} in"), read_size(f"{line['size_mm']} mm"))
    source = Source(
        document=DOCUMENT,
        section=f"{line['section']} table, {material.value}",
        edition=line["edition"],
        certainty=Certainty(line["certainty"]),
        says=line["note"],
    )
    return TableRow(
        material=material,
        sizes=tuple(dict.fromkeys(size for size in sizes if size is not None)),
        grade=int(line["grade"]) if line["grade"] else None,
        wll_kg=int(line["wll_kg"]),
        wll_lb=int(line["wll_lb"]),
        source=source,
        note=line["note"],
    )
