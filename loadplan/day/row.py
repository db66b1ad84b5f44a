"""The place a record came from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of a sheet: its number and, shared by the whole sheet, each column's letter."""

    sheet: str
    number: int
    letters: Mapping[str, str]

    def cell(self, column: str) -> str:
        """Address such as ``D9`` of the cell under the heading ``column`` (without its unit).

        A column the sheet does not have answers with the first column's cell of the row.
        """
        letter = self.letters.get(column) or next(iter(self.letters.values()), "A")
        return f"{letter}{self.number}"
