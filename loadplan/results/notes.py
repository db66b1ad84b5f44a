"""``Notes``: what was checked and what not, readings taken, warnings, cautions."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from loadplan.results.cautions import CAUTIONS, CHECKED, NOT_CHECKED
from loadplan.results.flow import Flow
from loadplan.results.gear_words import never_planned
from loadplan.results.house_words import (
    always_read,
    house_figures,
    other_counts,
    reading_lines,
)
from loadplan.results.measure import height, lines
from loadplan.results.outcome_words import headline, proof, rules_read
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.tables.facts import DayFacts
from loadplan.tables.table import Cell

_WIDTHS = (190, 130, 90, 560)
_LAST = len(_WIDTHS) - 1


@dataclass(frozen=True)
class Notes:
    """Writes the notes of one plan."""

    facts: DayFacts
    sheet: Sheet

    def write(self) -> None:
        """Every section, headings first."""
        plan = self.facts.plan
        flow = Flow(self.sheet, _WIDTHS)
        row = flow.next(26)
        self.sheet.text(row, 0, "Notes", "title")
        self._lines(flow, "Outcome", [headline(plan), *proof(plan)])
        self._lines(flow, "What was checked", CHECKED)
        self._lines(flow, "What was not checked", NOT_CHECKED)
        self._lines(flow, "Cautions", [rules_read(plan.day), *CAUTIONS])
        heads = ("House rule", "Value", "Chosen", "What it means")
        self._table(flow, "House rules in force", heads, house_figures(plan.day))
        heads = (
            "Disputed point",
            "Reading taken",
            "Chosen",
            "What it rests on, what else there is",
        )
        self._table(
            flow, "Readings taken where the text leaves room", heads, reading_lines(plan.day)
        )
        self._lines(flow, "Always read like this", always_read(plan.day))
        heads = ("Disputed point", "Reading taken", "Other", "What the other would ask for")
        changes = other_counts(self.facts.effects)
        if changes:
            self._table(flow, "Where another reading changes a count", heads, changes)
        gear = never_planned(self.facts)
        if gear:
            heads = ("Gear", "Kind", "Pieces", "Why it is never planned")
            self._table(flow, "Gear never planned", heads, gear)
        self._lines(flow, "Warnings of the day workbook", plan.day.warnings or ["None."])
        self._set_up(flow)

    def _lines(self, flow: Flow, words: str, texts: Iterable[str]) -> None:
        self._heading(flow, words)
        for text in texts:
            flow.paragraph(text, "wrap")

    def _heading(self, flow: Flow, words: str) -> None:
        flow.next(8)
        row = flow.next(17)
        flow.sheet.blank(row, range(1, _LAST + 1), "heading")
        flow.sheet.text(row, 0, words, "heading")

    def _table(
        self, flow: Flow, words: str, heads: Sequence[str], rows: Iterable[Sequence[Cell]]
    ) -> None:
        self._heading(flow, words)
        row = flow.next(15)
        for column, head in enumerate(heads):
            flow.sheet.text(row, column, head, "head")
        for cells in rows:
            counts = [
                lines(str(cell), width - 10, 9) for cell, width in zip(cells, _WIDTHS, strict=True)
            ]
            row = flow.next(height(max(counts), 9))
            for column, cell in enumerate(cells):
                if isinstance(cell, int):
                    flow.sheet.number(row, column, cell, "cell number")
                else:
                    flow.sheet.text(row, column, str(cell), "cell wrap")

    def _set_up(self, flow: Flow) -> None:
        day, page = self.facts.plan.day, self.sheet.page
        set_page(page, day.units, landscape=False)
        set_footer(page, "Notes", day.yard)
        page.hide_gridlines(2)
        page.print_area(0, 0, flow.row - 1, _LAST)
        page.fit_to_pages(1, 0)
