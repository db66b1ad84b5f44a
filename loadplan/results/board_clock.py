"""Strips over the clock on the board: which trailer is out when, how much gear is out when."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.judge.pool import GearUse, pieces_out
from loadplan.outcome.day_plan import DayPlan
from loadplan.results import board_layout as at
from loadplan.results.board_tables import heading
from loadplan.results.flow import Flow
from loadplan.results.measure import fitted
from loadplan.results.slots import Slots

_ROW = 14.5
_GEAR_HEAD = ("Gear", "Kind", "Owned", "Usable", "Most out", "When", "Out then with loads")


def trailers(flow: Flow, plan: DayPlan, slots: Slots) -> None:
    """A strip for each trailer that has a load, and for each load without trailer."""
    heading(flow, "Trailers over the clock: dark from departure to return, with the load's id")
    _times(flow, plan.day, slots, ("Trailer", "Loads"))
    ready = set(plan.ready)
    for name, trips in _by_trailer(plan.day).items():
        row = _new_row(flow)
        flow.sheet.text(row, 0, fitted(name, at.TABLE_WIDTHS[0] - 20, 9), "cell bold")
        words = "; ".join(_trip(plan.day, load, load.id in ready) for load in trips)
        flow.sheet.text(row, 1, fitted(words, flow.width(1, at.LAST), 9), "text")
        _strip(flow, row, slots, [load for load in trips if load.id in ready])


def _trip(day: Day, load: Load, ready: bool) -> str:
    """``1 to Quarry 06:00-11:00``."""
    where = f" to {load.destination}" if load.destination else ""
    held = "" if ready else " HELD, does not go"
    return f"{load.id}{where} {day.clock(load.out)}-{day.clock(load.back)}{held}"


def _by_trailer(day: Day) -> dict[str, list[Load]]:
    found: dict[str, list[Load]] = {}
    for load in day.loads:
        found.setdefault(load.trailer or f"no trailer ({load.id})", []).append(load)
    return {name: sorted(trips, key=lambda load: load.out) for name, trips in found.items()}


def _strip(flow: Flow, row: int, slots: Slots, trips: Sequence[Load]) -> None:
    """Dark slots from departure to return; the id stands in the first of each trip."""
    wide = at.slot_width(slots.count)
    words = [""] * slots.count
    out = [False] * slots.count
    for load in trips:
        touched = slots.touched(load.out, load.back)
        for slot in touched:
            out[slot] = True
        if touched:
            shown = fitted(load.id, wide * len(touched), 8)
            words[touched[0]] = f"{words[touched[0]]} {shown}".strip()
    for slot in range(slots.count):
        style = "slot free"
        if out[slot]:
            style = "slot start" if words[slot] else "slot out"
        flow.sheet.text(row, at.FIRST_SLOT + slot, words[slot], style)


def _times(flow: Flow, day: Day, slots: Slots, names: Sequence[str]) -> None:
    """The heading row of a strip: column headings, then the time at every few slots."""
    row = flow.next(_ROW)
    for column, name in enumerate(names):
        if name:
            flow.sheet.text(row, column, name, "head")
    flow.sheet.blank(row, range(len(names), at.FIRST_SLOT), "head open")
    every = at.label_every(slots.count)
    for slot in range(slots.count):
        shown = slot % every == 0 and slot + every <= slots.count
        words = day.clock(slots.begins(slot)) if shown else ""
        style = "slot head" if words else "small"
        flow.sheet.text(row, at.FIRST_SLOT + slot, words, style)


@dataclass(frozen=True, slots=True, kw_only=True)
class GearRow:
    """One kind of gear on the board: its row, and its use."""

    row: int
    use: GearUse


def gear(
    flow: Flow, plan: DayPlan, slots: Slots, uses: Mapping[str, GearUse]
) -> tuple[int, list[GearRow]]:
    """A row for each kind of gear that is out at some time: pieces out in each slot.

    Answers with the heading row, whose slots hold the times for the charts, and the rows. To the
    right of the strip, outside the printed area, stand the figures that the charts need besides.
    """
    heading(flow, "Gear over the clock: most pieces out in each slot; white on dark: none left")
    top = flow.row
    _times(flow, plan.day, slots, _GEAR_HEAD)
    beside = at.FIRST_SLOT + slots.count
    for slot in range(slots.count):
        flow.sheet.text(top, beside + slot, plan.day.clock(slots.begins(slot)), "small")
    taken = pieces_out(plan.day, plan.tie_downs, plan.ready)
    rows = [
        _gear_row(flow, plan.day, slots, use, taken[use.gear]) for use in uses.values() if use.most
    ]
    idle = [use.gear for use in uses.values() if not use.most]
    if idle:
        flow.paragraph(f"Never out: {', '.join(idle)}.", "small wrap", size=8)
    return top, rows


def _gear_row(
    flow: Flow, day: Day, slots: Slots, use: GearUse, taken: Mapping[str, int]
) -> GearRow:
    row, kind = _new_row(flow), day.gear_by_id[use.gear]
    sheet = flow.sheet
    sheet.text(row, 0, use.gear, "cell bold")
    sheet.text(row, 1, kind.kind.value, "cell")
    sheet.number(row, 2, kind.quantity, "cell number")
    sheet.number(row, 3, use.usable, "cell number")
    sheet.number(row, 4, use.most, "cell number bold")
    sheet.text(row, 5, "" if use.when is None else day.clock(use.when), "cell mid")
    words = ", ".join(_with_loads(day, use, taken))
    sheet.text(row, 6, fitted(words, flow.width(6, at.LAST), 9), "text")
    for slot, out in enumerate(slots.highest(use.timeline)):
        style = "slot all out" if out >= use.usable and out else "slot count"
        sheet.number(row, at.FIRST_SLOT + slot, out, style)
        sheet.number(row, at.FIRST_SLOT + slots.count + slot, use.usable, "small")
    return GearRow(row=row, use=use)


def _new_row(flow: Flow) -> int:
    """A row at which a page may begin."""
    flow.may_break()
    return flow.next(_ROW)


def _with_loads(day: Day, use: GearUse, taken: Mapping[str, int]) -> list[str]:
    """``4 on 1``, ``2 on 5``: the loads that have the gear when most of it is out."""
    moment, kind = use.when or 0, day.gear_by_id[use.gear]
    found = []
    for load in day.loads:
        away = load.out <= moment < day.free_again(load, kind)
        if away and taken.get(load.id):
            found.append(f"{taken[load.id]} on {load.id}")
    return found
