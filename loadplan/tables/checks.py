"""``Checks``: every demand and piece of advice, judged."""

from __future__ import annotations

import re
from fractions import Fraction

from loadplan.outcome.day_plan import DayPlan
from loadplan.tables.table import Cell, Table

_NUMBER = re.compile(r"-?\d{1,3}(?:,\d{3})*(?:\.\d+)?")


def checks(plan: DayPlan) -> Table:
    """The judgement's checks as they stand; needs are rounded up and strengths down."""
    return Table(
        headings=(
            "Load",
            "Article",
            "Check",
            "Need",
            "Have",
            "Unit",
            "Verdict",
            "Working",
            "Source",
        ),
        rows=tuple(
            (
                check.load,
                check.article,
                check.name,
                _figure(check.need),
                _figure(check.have),
                check.unit,
                check.verdict.value,
                check.working,
                check.source,
            )
            for check in plan.judgement.checks
        ),
    )


def _figure(text: str) -> Cell:
    """A printed number as a number, anything else as the words it is."""
    if not _NUMBER.fullmatch(text):
        return text
    value = Fraction(text.replace(",", ""))
    return value.numerator if value.denominator == 1 else value
