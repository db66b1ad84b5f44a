"""``Summary``: one row for each load."""

from __future__ import annotations

from collections.abc import Mapping

from loadplan.outcome.check import Verdict
from loadplan.tables.facts import DayFacts, LoadFacts
from loadplan.tables.table import Cell, Table
from loadplan.text import count, names


def summary(facts: DayFacts, sheets: Mapping[str, str]) -> Table:
    """Every load in workbook order; ``sheets`` are the names of the load sheets by load id."""
    unit = facts.plan.day.units.mass
    advice = _advice(facts)
    return Table(
        headings=(
            "Load",
            "Trailer",
            "Out",
            "Back",
            "Priority",
            "Status",
            "Articles",
            f"Weight [{unit}]",
            "Tie-downs",
            f"AWLL needed [{unit}]",
            f"AWLL planned [{unit}]",
            "Margin",
            "Sheet",
            "Notes",
        ),
        rows=tuple(
            _row(facts, load, sheets[load.load.id], advice.get(load.load.id, 0))
            for load in facts.loads
        ),
    )


def _row(facts: DayFacts, one: LoadFacts, sheet: str, advice: int) -> tuple[Cell, ...]:
    day, load = facts.plan.day, one.load
    return (
        load.id,
        load.trailer or "",
        day.clock(load.out),
        day.clock(load.back),
        load.priority,
        "ready" if one.ready else "held",
        len(one.cargo),
        one.weight,
        len(one.tie_downs),
        one.needed,
        one.planned,
        one.margin,
        sheet,
        _notes(facts, one, advice),
    )


def _advice(facts: DayFacts) -> dict[str, int]:
    """How many advice lines each load has."""
    found: dict[str, int] = {}
    for check in facts.plan.judgement.checks:
        if check.verdict is Verdict.ADVICE:
            found[check.load] = found.get(check.load, 0) + 1
    return found


def _notes(facts: DayFacts, one: LoadFacts, advice: int) -> str:
    """What a held load is short of, missing cargo, advice lines, and the load's own notes."""
    notes = []
    if not one.ready:
        short = [short.short_of for short in facts.plan.shortages if short.load == one.load.id]
        notes.append(f"short of {names(list(dict.fromkeys(short))) or 'gear'}")
    elif not one.articles:
        notes.append("no cargo")
    if advice:
        notes.append(count(advice, "advice line"))
    return "; ".join([*notes, *([one.load.notes] if one.load.notes else [])])
