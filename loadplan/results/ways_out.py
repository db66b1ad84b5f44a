"""``Ways out``: for each held load why it stays, what stands against it, and what would send it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.held import Conflict, Held
from loadplan.results.fit import fit_wide
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.text import count, names

_WIDTHS = (110, 330, 170, 340)
_LAST = len(_WIDTHS) - 1
_WAYS = ("Way out", "What to do", "Price", "What it changes elsewhere")
_CONFLICTS = ("Out between", "Loads that cannot all go", "Pieces", "Gear")
ORDER = (
    "Ways out are looked for in this order, up to three for a load: repair, delay, purchase, house "
    "rule, swap. Each was planned and judged. Each is for one load alone, with every ready load "
    "kept; two of them together were not planned: change the day workbook and plan again."
)


@dataclass(frozen=True)
class WaysOut:
    """Writes the page; ``sheets`` are the load sheets' names by load id."""

    plan: DayPlan
    sheets: Mapping[str, str]
    sheet: Sheet

    def write(self) -> None:
        """Every held load in workbook order."""
        day = self.plan.day
        flow = Flow(self.sheet, _WIDTHS)
        flow.may_break()
        date = "" if day.date is None else day.date.isoformat()
        title = " - ".join(word for word in ("Ways out", day.yard, date) if word)
        self.sheet.text(flow.next(26), 0, title, "title")
        flow.paragraph(ORDER, "wrap")
        for one in self.plan.explained:
            flow.may_break()
            flow.next(8)
            row = flow.next(18)
            self.sheet.blank(row, range(1, _LAST + 1), "heading")
            self.sheet.link(row, 0, self.sheets[one.load], f"Load {one.load}", "heading")
            held_part(flow, day, one, columns=None)
        set_page(self.sheet.page, day.units, landscape=True)
        set_footer(self.sheet.page, "Ways out", day.yard)
        self.sheet.page.hide_gridlines(2)
        fit_wide(flow, day.units)


Columns = Sequence[tuple[int, int]]


def held_part(flow: Flow, day: Day, one: Held, columns: Columns | None) -> None:
    """The reason, the conflicts and the ways out of one load, over four spans of ``columns``."""
    spans = columns or [(at, at) for at in range(_LAST + 1)]
    flow.paragraph(one.why, "bold wrap")
    if one.conflicts:
        _table(flow, spans, _CONFLICTS, [_conflict(day, each) for each in one.conflicts])
    if one.ways:
        rows = [(each.way.value, each.text, each.price, each.elsewhere) for each in one.ways]
        _table(flow, spans, _WAYS, rows)
    for remark in one.remarks:
        flow.paragraph(remark, "wrap")


def _conflict(day: Day, one: Conflict) -> tuple[str, str, str, str]:
    need = f"{one.need:,} needed" if one.least else f"more than {one.usable:,} needed"
    drop = "without any one of them the rest can go" if len(one.loads) > 1 else "on its own"
    sure = f" ({drop})" if one.irreducible else ""
    return (
        f"{day.clock(one.first)} - {day.clock(one.last)}",
        f"{names(one.loads)}{sure}",
        f"{need}, {one.usable:,} usable",
        f"{names(one.gear)} ({count(len(one.gear), 'kind')})",
    )


def _table(
    flow: Flow, spans: Columns, heads: Sequence[str], rows: Sequence[tuple[str, ...]]
) -> None:
    row = flow.next(15)
    for head, span in zip(heads, spans, strict=True):
        flow.sheet.across(row, *span, head, "head")
    for texts in rows:
        counts = [
            lines(text, flow.width(*span) - 10, 9) for text, span in zip(texts, spans, strict=True)
        ]
        row = flow.next(height(max(counts), 9))
        for text, span in zip(texts, spans, strict=True):
            flow.sheet.across(row, *span, text, "cell wrap")
