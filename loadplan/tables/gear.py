"""``Pick list`` and ``Gear use``: which pieces leave with which load, and how many are out."""

from __future__ import annotations

from collections import Counter

from loadplan.judge.pool import GearUse, most_out
from loadplan.outcome.day_plan import DayPlan
from loadplan.tables.table import Cell, Table


def pick_list(plan: DayPlan) -> Table:
    """One row for each load and gear of the ready loads, by departure."""
    day = plan.day
    taken: dict[str, Counter[str]] = {load: Counter() for load in plan.ready}
    for tie_down in plan.tie_downs:
        taken[tie_down.load].update(tie_down.pieces())
    order = {gear.id: place for place, gear in enumerate(day.gear)}
    rows: list[tuple[Cell, ...]] = []
    for load in sorted((day.load_by_id[one] for one in plan.ready), key=lambda load: load.out):
        for gear in sorted(taken[load.id], key=order.__getitem__):
            source = "cage" if day.gear_by_id[gear].kept_on is None else "kit"
            out, back = day.clock(load.out), day.clock(load.back)
            rows.append((load.id, gear, taken[load.id][gear], source, out, back))
    return Table(headings=("Load", "Gear", "Pieces", "From", "Out", "Back"), rows=tuple(rows))


def uses(plan: DayPlan) -> dict[str, GearUse]:
    """How each kind of gear is used over the day, by id, in workbook order."""
    return most_out(plan.day, plan.tie_downs, plan.ready)


def gear_use(plan: DayPlan) -> Table:
    """One row for each kind of gear: owned, usable, most out at once and when."""
    day = plan.day
    rows: list[tuple[Cell, ...]] = []
    for gear, use in zip(day.gear, uses(plan).values(), strict=True):
        when = "" if use.when is None else day.clock(use.when)
        rows.append((gear.id, gear.kind.value, gear.quantity, use.usable, use.most, when, use.left))
    return Table(
        headings=("Gear", "Kind", "Owned", "Usable", "Most out at once", "When", "Left then"),
        rows=tuple(rows),
    )
