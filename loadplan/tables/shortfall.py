"""``Shortfall``: what the held loads are short of."""

from __future__ import annotations

from loadplan.outcome.day_plan import DayPlan
from loadplan.tables.table import Table


def shortfall(plan: DayPlan) -> Table:
    """One row for each missing kind of piece or unmet demand of a held load."""
    return Table(
        headings=("Load", "Article", "Short of", "Pieces", "Why", "Cheapest way out"),
        rows=tuple(
            (one.load, one.article or "", one.short_of, one.pieces, one.why, one.way_out)
            for one in plan.shortages
        ),
    )
