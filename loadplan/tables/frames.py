"""The flat tables as DataFrames."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loadplan.outcome.day_plan import DayPlan
from loadplan.tables.flat import flat_tables
from loadplan.tables.table import Table, number

if TYPE_CHECKING:
    import pandas


def frames(plan: DayPlan) -> dict[str, pandas.DataFrame]:
    """Each flat sheet of ``plan`` by name; ids stay text, numbers are whole or floats."""
    return {name: _frame(table) for name, table in flat_tables(plan).items()}


def _frame(table: Table) -> pandas.DataFrame:
    import pandas

    return pandas.DataFrame(
        {
            heading: pandas.Series([number(cell) for cell in table.column(heading)])
            for heading in table.headings
        },
        columns=list(table.headings),
    )
