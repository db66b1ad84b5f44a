"""The results workbook put together: board, flat sheets, notes, and a sheet for each load."""

from __future__ import annotations

import io
from collections import defaultdict
from dataclasses import dataclass
from functools import cached_property

from loadplan.outcome.check import Check
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.shortage import Shortage
from loadplan.purchase.bought import Bought
from loadplan.results import buying
from loadplan.results.board import Board
from loadplan.results.book import new_book
from loadplan.results.flat_sheet import FlatSheet
from loadplan.results.load_sheet import LoadSheet
from loadplan.results.notes import Notes
from loadplan.results.outcome_words import headline
from loadplan.results.sheet import Sheet
from loadplan.results.styles import Styles
from loadplan.results.ways_out import WaysOut
from loadplan.tables.facts import DayFacts
from loadplan.tables.flat import tables_of
from loadplan.tables.purchase import purchase_tables
from loadplan.tables.sheet_names import load_sheet_names
from loadplan.tables.table import Table

_GROUPED_BY = {"Pick list": "Load", "Tie-downs": "Article", "Checks": "Load"}
_TAB_READY, _TAB_HELD, _TAB_PLAIN = "#2F8F4E", "#8E1B1B", "#132238"


def results_bytes(plan: DayPlan, *, pictures: bool = True, bought: Bought | None = None) -> bytes:
    """The whole results workbook of ``plan`` as a file's bytes.

    ``bought``: the purchase that the plan is made with, told on sheets of its own in front.
    """
    return _Results(plan, bought).whole(pictures=pictures)


def load_sheets_bytes(plan: DayPlan) -> bytes:
    """A workbook of the load sheets alone, for printing."""
    return _Results(plan).load_sheets()


@dataclass(frozen=True)
class _Results:
    plan: DayPlan
    bought: Bought | None = None

    @cached_property
    def facts(self) -> DayFacts:
        return DayFacts(self.plan)

    @cached_property
    def names(self) -> dict[str, str]:
        return load_sheet_names([load.id for load in self.plan.day.loads])

    def whole(self, *, pictures: bool) -> bytes:
        out = io.BytesIO()
        day = self.plan.day
        date = "" if day.date is None else f" {day.date.isoformat()}"
        title = f"Results of {day.yard or day.name}{date}"
        book = new_book(out, title, headline(self.plan))
        styles = Styles(book)
        tables = tables_of(self.facts)
        front = self._bought(styles)
        board = self._sheet(styles, "Board")
        flat: dict[str, Sheet] = {}
        for name in tables:
            flat[name] = self._sheet(styles, name)
            if name == "Shortfall" and self.plan.explained:
                ways_out = self._sheet(styles, "Ways out")
                WaysOut(self.plan, self.names, ways_out).write()
                ways_out.page.set_tab_color(_TAB_HELD)
        notes = self._sheet(styles, "Notes")
        loads = {load: self._sheet(styles, name) for load, name in self.names.items()}
        Board(self.facts, tables["Pick list"], self.names, board).write()
        for name, table in tables.items():
            self._flat(flat[name], table)
        Notes(self.facts, notes).write()
        self._loads(loads, links=True, pictures=pictures)
        (front or board).page.activate()
        book.close()
        return out.getvalue()

    def _bought(self, styles: Styles) -> Sheet | None:
        """The sheets of the purchase, written; the first of them."""
        if self.bought is None:
            return None
        page = self._sheet(styles, buying.NAME)
        for name, table in purchase_tables(self.bought).items():
            self._flat(self._sheet(styles, name), table)
        buying.Buying(self.bought, page).write()
        return page

    def load_sheets(self) -> bytes:
        out = io.BytesIO()
        book = new_book(out, f"Load sheets of {self.plan.day.yard or self.plan.day.name}", "")
        styles = Styles(book)
        loads = {load: self._sheet(styles, name) for load, name in self.names.items()}
        self._loads(loads, links=False, pictures=True)
        book.close()
        return out.getvalue()

    def _sheet(self, styles: Styles, name: str) -> Sheet:
        return Sheet(name, styles.book.add_worksheet(name), styles)

    def _flat(self, sheet: Sheet, table: Table) -> None:
        day = self.plan.day
        date = "" if day.date is None else f" {day.date.isoformat()}"
        links = {name: name for name in self.names.values()}
        grouped = _GROUPED_BY.get(sheet.name, "")
        FlatSheet(sheet, table, links, grouped).write(day.units, f"{day.yard}{date}")
        sheet.page.set_tab_color(_TAB_PLAIN)

    def _loads(self, sheets: dict[str, Sheet], *, links: bool, pictures: bool) -> None:
        checks: dict[str, list[Check]] = defaultdict(list)
        for check in self.plan.judgement.checks:
            checks[check.load].append(check)
        shortages: dict[str, list[Shortage]] = defaultdict(list)
        for shortage in self.plan.shortages:
            shortages[shortage.load].append(shortage)
        explained = {one.load: one for one in self.plan.explained}
        for facts in self.facts.loads:
            load = facts.load.id
            LoadSheet(
                self.facts,
                facts,
                sheets[load],
                checks=checks[load],
                shortages=shortages[load],
                explained=explained.get(load),
                links=links,
                pictures=pictures,
            ).write()
            sheets[load].page.set_tab_color(_TAB_READY if facts.ready else _TAB_HELD)
