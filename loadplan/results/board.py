"""The board: the day at a glance, the first sheet of the results."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loadplan.results import board_layout as at
from loadplan.results.board_cage import cage
from loadplan.results.board_charts import most_out_chart, over_time
from loadplan.results.board_clock import gear, trailers
from loadplan.results.board_tables import loads, stages
from loadplan.results.fit import fit_wide
from loadplan.results.flow import Flow
from loadplan.results.outcome_words import (
    banner_style,
    headline,
    held_lines,
    proof,
    rules_read,
)
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.results.slots import slots_of
from loadplan.tables.facts import DayFacts
from loadplan.tables.gear import uses
from loadplan.tables.table import Table

_CHART_LEAST = 250
_POINTS = 0.75


@dataclass(frozen=True)
class Board:
    """Writes the board; ``sheets`` are the load sheets' names by load id."""

    facts: DayFacts
    picks: Table
    sheets: Mapping[str, str]
    sheet: Sheet

    def write(self) -> None:
        """Outcome and proof, stages, loads, strips, charts, and the cage's list."""
        plan = self.facts.plan
        found = uses(plan)
        ends = [use.timeline[-1][0] for use in found.values() if use.timeline]
        slots = slots_of(plan.day, ends)
        flow = Flow(self.sheet, at.widths(slots.count))
        flow.may_break()
        self._top(flow)
        beside, before = flow.row, flow.points
        stages(flow, plan)
        loads(flow, plan, self.facts.loads, self.sheets)
        pixels = max(_CHART_LEAST, int((flow.points - before) / _POINTS) - 12)
        flow.may_break()
        while (flow.points - before) / _POINTS < _CHART_LEAST + 8:
            flow.next(15)
        trailers(flow, plan, slots)
        top, rows = gear(flow, plan, slots, found)
        if rows:
            most_out_chart(flow, beside + 1, min(pixels, 420), rows)
        over_time(flow, slots, top, rows)
        if self.picks.rows:
            cage(flow, plan, self.picks)
        self._set_up(flow)

    def _top(self, flow: Flow) -> None:
        plan = self.facts.plan
        day = plan.day
        date = "" if day.date is None else day.date.isoformat()
        title = " - ".join(word for word in ("Board of the day", day.yard, date) if word)
        row = flow.next(26)
        self.sheet.text(row, 0, title, "title")
        flow.next(4)
        last = len(flow.widths) - 1
        row = flow.next(28)
        self.sheet.across(row, 0, last, headline(plan), banner_style(plan))
        for load, words in held_lines(plan):
            # No link, as the table below has one: some programs do not wrap the text of a link.
            flow.paragraph(f"HELD: load {load} does not go, short of {words}", "not met line")
        for line in (*proof(plan), rules_read(day)):
            flow.paragraph(line, "wrap")

    def _set_up(self, flow: Flow) -> None:
        day, page = self.facts.plan.day, self.sheet.page
        date = "" if day.date is None else f" {day.date.isoformat()}"
        set_page(page, day.units, landscape=True)
        set_footer(page, f"Board{date}", day.yard)
        page.hide_gridlines(2)
        fit_wide(flow, day.units)
