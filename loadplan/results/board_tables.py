"""The stage table and the table of loads on the board."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from loadplan.outcome.day_plan import DayPlan
from loadplan.results import board_layout as at
from loadplan.results.flow import Flow
from loadplan.results.measure import fitted, height, lines
from loadplan.results.outcome_words import cell_number
from loadplan.tables.facts import LoadFacts

_ROW = 14.5
_STAGES = ("Stage", "", "", "Value", "Bound", "Gap", "Proved", "Unit", "Seconds", "")
_BAR = {
    "type": "data_bar",
    "data_bar_2010": True,
    "bar_solid": True,
    "bar_color": "#9DC3E6",
    "bar_negative_color": "#F4B6B6",
    "min_type": "num",
    "min_value": 0,
    "max_type": "num",
    "max_value": 1,
}


def heading(flow: Flow, words: str, last: int | None = None) -> None:
    """A section's heading over the whole width or up to the column ``last``.

    A page may begin with it.
    """
    flow.may_break(section=True)
    flow.next(7)
    row = flow.next(17)
    end = len(flow.widths) if last is None else last + 1
    flow.sheet.blank(row, range(1, end), "heading")
    flow.sheet.text(row, 0, words, "heading")
    flow.keep_next()


def stages(flow: Flow, plan: DayPlan) -> None:
    """Each stage of the objective: value, bound, gap, proved or not, seconds."""
    # Beside these two tables stands a chart.
    heading(flow, "How good the plan is, stage by stage", at.LAST)
    sheet, row = flow.sheet, flow.next(_ROW)
    names = ("Stage", "Value", "Bound", "Gap", "Proved", "Unit", "Seconds")
    columns = (0, 2, 3, 4, 5, 6, 7)
    for column, name in zip(columns, names, strict=True):
        sheet.text(row, column, name, "head")
    sheet.text(row, 1, "Better is", "head")
    for stage in plan.stages:
        row = flow.next(_ROW)
        sheet.text(row, 0, stage.name, "cell")
        sheet.text(row, 1, "more" if stage.greatest else "less", "cell")
        sheet.number(row, 2, cell_number(stage.value), "cell number")
        sheet.number(row, 3, cell_number(stage.bound), "cell number")
        sheet.number(row, 4, cell_number(stage.gap), "cell number")
        words, style = ("yes", "cell ready") if stage.proved else ("NO", "cell advice")
        sheet.text(row, 5, words, style)
        sheet.text(row, 6, "; ".join(filter(None, (stage.unit, stage.remark))), "cell")
        sheet.number(row, 7, round(stage.seconds, 2), "cell decimal")


def loads(
    flow: Flow, plan: DayPlan, all_loads: Sequence[LoadFacts], sheets: Mapping[str, str]
) -> None:
    """One row for each load, linked to its sheet, with its margin as a bar."""
    heading(flow, "Loads", at.LAST)
    sheet, unit, top = flow.sheet, plan.day.units.mass, flow.next(26)
    names = (
        *("Load", "Trailer", "Out", "Back", "Priority", "Status", "Articles"),
        *(f"Weight [{unit}]", "Tie-downs", "Margin (100% = full bar)"),
    )
    for column, name in enumerate(names):
        sheet.text(top, column, name, "head")
    for one in all_loads:
        flow.may_break()
        _load(flow, plan, one, sheets[one.load.id])
    if all_loads:
        sheet.page.conditional_format(top + 1, at.LAST, flow.row - 1, at.LAST, _BAR)


def _load(flow: Flow, plan: DayPlan, one: LoadFacts, target: str) -> None:
    sheet, load = flow.sheet, one.load
    cargo = ", ".join(article.id for article in one.cargo)
    trailer = load.trailer or ""
    counts = (
        lines(text, at.TABLE_WIDTHS[column] - 12, 9) for text, column in ((trailer, 1), (cargo, 6))
    )
    row = flow.next(max(_ROW, height(max(counts), 9)))
    sheet.link(row, 0, target, fitted(load.id, at.TABLE_WIDTHS[0], 9), "cell link")
    sheet.text(row, 1, trailer, "cell wrap")
    sheet.text(row, 2, plan.day.clock(load.out), "cell mid")
    sheet.text(row, 3, plan.day.clock(load.back), "cell mid")
    sheet.number(row, 4, load.priority, "cell mid")
    words, style = ("ready", "cell ready") if one.ready else ("HELD", "cell held")
    sheet.text(row, 5, words, style)
    sheet.text(row, 6, cargo, "cell wrap")
    sheet.number(row, 7, one.weight, "cell number")
    sheet.number(row, 8, len(one.tie_downs), "cell mid")
    if one.margin is None:
        sheet.text(row, at.LAST, "", "cell")
    else:
        sheet.number(row, at.LAST, one.margin, "cell percent")
