"""A flat table: headings and rows of plain values, nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

Cell: TypeAlias = str | int | Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One flat sheet: unique ``headings``, and ``rows`` with one cell under each of them.

    Cells are text, exact numbers, or None for an empty cell.
    """

    headings: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def column(self, heading: str) -> tuple[Cell, ...]:
        """Every cell under ``heading``, from the top."""
        place = self.headings.index(heading)
        return tuple(row[place] for row in self.rows)


def number(value: Cell) -> int | float | str | None:
    """``value`` as spreadsheets and DataFrames hold it: whole, or the nearest float."""
    if isinstance(value, Fraction):
        return value.numerator if value.denominator == 1 else value.numerator / value.denominator
    return value
