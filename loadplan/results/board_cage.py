"""What the cage hands out, by departure, ready to be ticked off."""

from __future__ import annotations

from collections import Counter
from itertools import groupby

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.results.board_tables import heading
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines, pixels
from loadplan.tables.table import Table
from loadplan.text import count

_HEAD = ("Out", "Load", "Trailer", "Pieces", "Hand out")
_HAND_OUT = 4
_INDENT = 12


def cage(flow: Flow, plan: DayPlan, picks: Table) -> None:
    """One row for each ready load that takes gear, with a total for each departure and the day."""
    heading(flow, "At the cage, by departure: tick off what is handed out")
    sheet, row = flow.sheet, flow.next(14.5)
    last = len(flow.widths) - 1
    for column, name in enumerate(_HEAD[:_HAND_OUT]):
        sheet.text(row, column, name, "head")
    sheet.text(row, _HAND_OUT, _HEAD[_HAND_OUT], "head")
    sheet.blank(row, range(_HAND_OUT + 1, last + 1), "head open")
    whole: Counter[str] = Counter()
    for out, same in groupby(picks.rows, key=lambda row: str(row[4])):
        together: Counter[str] = Counter()
        loads = 0
        for load, rows in groupby(same, key=lambda row: str(row[0])):
            taken = {str(row[1]): _pieces(row[2]) for row in rows}
            together.update(taken)
            loads += 1
            _load(flow, plan.day, out, load, taken)
        whole.update(together)
        if loads > 1:
            _total(flow, plan.day, f"{out} together", together)
    _total(flow, plan.day, "Whole day", whole)


def _pieces(cell: object) -> int:
    return cell if isinstance(cell, int) else 0


def _load(flow: Flow, day: Day, out: str, load: str, taken: dict[str, int]) -> None:
    parts = []
    for gear, pieces in taken.items():
        kind = day.gear_by_id[gear]
        kit = f" (kit of {kind.kept_on})" if kind.kept_on else ""
        parts.append(f"□ {pieces} x {gear} {kind.kind.value}{kit}")
    last = len(flow.widths) - 1
    first, *more = _packed(parts, flow.width(_HAND_OUT, last) - _INDENT)
    trailer = day.load_by_id[load].trailer or ""
    most = max(
        lines(load, flow.width(1, 1) - _INDENT, 9, True),
        lines(trailer, flow.width(2, 2) - _INDENT, 9),
    )
    flow.may_break()
    row = flow.next(max(14.5, height(most, 9)))
    sheet = flow.sheet
    sheet.text(row, 0, out, "cell bold")
    sheet.text(row, 1, load, "cell bold wrap")
    sheet.text(row, 2, trailer, "cell wrap")
    sheet.number(row, 3, sum(taken.values()), "cell number")
    sheet.text(row, _HAND_OUT, first, "label mid")
    for line in more:
        sheet.text(flow.next(12.5), _HAND_OUT, line, "label mid")


def _packed(parts: list[str], width: float) -> list[str]:
    """``parts`` in as few lines of ``width`` pixels as their order allows."""
    found: list[str] = []
    for part in parts:
        longer = f"{found[-1]}    {part}" if found else part
        if found and pixels(longer, 9) <= width:
            found[-1] = longer
        else:
            found.append(part)
    return found or [""]


def _total(flow: Flow, day: Day, name: str, taken: Counter[str]) -> None:
    """Pieces by kind."""
    kinds: Counter[str] = Counter()
    for gear, pieces in taken.items():
        kinds[day.gear_by_id[gear].kind.value] += pieces
    words = ", ".join(count(pieces, kind) for kind, pieces in kinds.items())
    row, last = flow.next(14.5), len(flow.widths) - 1
    flow.sheet.blank(row, range(last + 1), "band")
    flow.sheet.text(row, 0, name, "band")
    flow.sheet.number(row, 3, sum(taken.values()), "band number")
    flow.sheet.text(row, _HAND_OUT, words, "band")
