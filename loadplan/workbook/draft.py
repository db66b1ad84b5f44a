"""A day in the making: the tables of its sheets and the nouns built from their sound rows."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from loadplan.day.article import Article
from loadplan.day.gear import Gear, Price
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.problems import Code
from loadplan.workbook.columns import SHEETS
from loadplan.workbook.names import did_you_mean, fold
from loadplan.workbook.table import Record, Table


@dataclass(slots=True, kw_only=True)
class Draft:
    """Tables by sheet name, settings, and what is built so far.

    ``in_error`` are ids of articles that are read but contradict themselves or each other.
    """

    units: Units
    settings: dict[str, Any]
    house: HouseRules
    tables: dict[str, Table] = field(default_factory=dict)
    loads: list[Load] = field(default_factory=list)
    trailers: list[Trailer] = field(default_factory=list)
    articles: list[Article] = field(default_factory=list)
    gear: list[Gear] = field(default_factory=list)
    prices: list[Price] = field(default_factory=list)
    in_error: set[str] = field(default_factory=set)

    def table(self, name: str) -> Table:
        """The table of the sheet ``name``; an empty one where the workbook has none."""
        if name not in self.tables:
            sheet = next(sheet for sheet in SHEETS if sheet.name == name)
            self.tables[name] = Table(sheet=sheet, name=name)
        return self.tables[name]

    def has(self, name: str) -> bool:
        """Whether the sheet ``name`` is there and holds a row."""
        return bool(self.table(name).records)


def refer(
    table: Table, record: Record, field_name: str, column: str, known: dict[str, str], where: str
) -> bool:
    """Replace the id in a field of ``record`` by the id as typed where it is defined.

    A problem, and False, where ``known`` (ids by their folded form) lacks it; ``where`` is the
    sheet that defines such ids.
    """
    typed = record.fields[field_name]
    found = known.get(fold(typed))
    if found is None:
        table.reject(
            record,
            Code.UNKNOWN_ID,
            column,
            f"{column} {typed} is not on {where}.",
            f"{did_you_mean(typed, known.values())}Correct it here, or add it there.",
        )
        return False
    record.fields[field_name] = found
    return True
