"""A flat sheet: one heading row, one row per item, nothing else; a real table with a filter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from loadplan.day.units import Units
from loadplan.results.measure import height, lines, pixels
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.tables.table import Cell, Table

_WIDEST, _NARROWEST, _LEAST, _PADDING = 430.0, 110.0, 44, 14
# Pixels across a page on its side at which the type still prints at some 6.5 points.
_READABLE = 1350.0
# Pixels that an upright page takes as they are.
_UPRIGHT = 700
_FILTER_BUTTON = 18
_HEADING_HIGH = 26
_STATES = {
    "ready": "state ready",
    "held": "state held",
    "met": "state met",
    "not met": "state held",
    "advice": "state advice",
}
_STATED = frozenset({"Status", "Verdict"})
_PERCENT = frozenset({"Margin"})
_FRACTION = frozenset({"Credit"})


@dataclass(frozen=True)
class FlatSheet:
    """Writes one table; ``links`` are sheets by the text of the cells under ``Sheet``.

    ``grouped_by`` names a column at whose changes a line is drawn.
    """

    sheet: Sheet
    table: Table
    links: Mapping[str, str] = field(default_factory=dict)
    grouped_by: str = ""

    def write(self, units: Units, footer: str) -> None:
        """The whole sheet with its print set-up."""
        page, last = self.sheet.page, len(self.table.headings) - 1
        self._headings()
        page.set_row(0, _HEADING_HIGH)
        widths = self._widths()
        group: Cell = None
        for number, row in enumerate(self.table.rows, start=1):
            line = bool(self.grouped_by) and row[self._group] != group and number > 1
            group = row[self._group] if self.grouped_by else None
            self._row(number, row, widths, line=line)
        for column, width in enumerate(widths):
            page.set_column_pixels(column, column, int(width) + _PADDING)
        page.freeze_panes(1, 0)
        together = sum(int(width) + _PADDING for width in widths)
        set_page(page, units, landscape=together > _UPRIGHT)
        set_footer(page, footer, self.sheet.name)
        page.repeat_rows(0)
        page.print_area(0, 0, len(self.table.rows), last)
        page.fit_to_pages(1, 0)

    @property
    def _group(self) -> int:
        return self.table.headings.index(self.grouped_by)

    def _headings(self) -> None:
        page, last = self.sheet.page, len(self.table.headings) - 1
        head = self.sheet.styles["head"]
        if not self.table.rows:
            for column, heading in enumerate(self.table.headings):
                self.sheet.text(0, column, heading, "head")
            page.autofilter(0, 0, 0, last)
            return
        columns = [{"header": one, "header_format": head} for one in self.table.headings]
        options = {
            "columns": columns,
            "style": "Table Style Light 1",
            "name": f"Table_{self.sheet.name.replace(' ', '_').replace('-', '_')}",
        }
        page.add_table(0, 0, len(self.table.rows), last, options)

    def _widths(self) -> list[float]:
        """What each column needs, the widest of them narrowed until the page can be read on paper.

        A column is never narrower than its heading, nor than its longest word.
        """
        least = [max(_heading_width(heading), _LEAST) for heading in self.table.headings]
        needed = list(least)
        for row in self.table.rows:
            for column, cell in enumerate(row):
                if isinstance(cell, str):
                    needed[column] = max(needed[column], pixels(cell, 9, self._is_state(column)))
                    whole = self.table.headings[column] == "Sheet"
                    parts = [cell] if whole else cell.split(" ")
                    words = max(pixels(word, 9) for word in parts)
                    least[column] = max(least[column], words + _PADDING)
                elif cell is not None:
                    least[column] = max(least[column], 7.0 * len(_shown(cell)))
        needed = [max(pair) for pair in zip(needed, least, strict=True)]
        widest = _WIDEST
        while widest > _NARROWEST and _sum(needed, least, widest) > _READABLE:
            widest -= 10
        return [max(low, min(want, widest)) for want, low in zip(needed, least, strict=True)]

    def _is_state(self, column: int) -> bool:
        return self.table.headings[column] in _STATED

    def _row(self, number: int, row: Sequence[Cell], widths: list[float], *, line: bool) -> None:
        group = " group" if line else ""
        most = 1
        for column, (heading, cell) in enumerate(zip(self.table.headings, row, strict=True)):
            if isinstance(cell, str):
                wrapped = pixels(cell, 9) > widths[column]
                self._text(number, column, heading, cell, wrapped=wrapped, group=group)
                if wrapped:
                    most = max(most, lines(cell, widths[column], 9))
            elif cell is not None:
                self.sheet.number(number, column, cell, _number_style(heading) + group)
            elif group:
                self.sheet.blank(number, [column], f"text{group}")
        if most > 1:
            self.sheet.page.set_row(number, height(most, 9))

    def _text(
        self, row: int, column: int, heading: str, text: str, *, wrapped: bool, group: str
    ) -> None:
        if heading == "Sheet" and text in self.links:
            self.sheet.link(row, column, self.links[text], text)
        elif heading in _STATED and text in _STATES:
            self.sheet.text(row, column, text, _STATES[text] + group)
        elif text or group:
            style = "wrap" if wrapped else "text"
            self.sheet.text(row, column, text, style + group)


def _sum(needed: Sequence[float], least: Sequence[float], widest: float) -> float:
    """Pixels of all columns where none is wider than ``widest`` unless it has to be."""
    both = zip(needed, least, strict=True)
    return sum(max(low, min(want, widest)) + _PADDING for want, low in both)


def _heading_width(heading: str) -> float:
    """Pixels for a heading in two lines beside its filter button."""
    words = heading.split(" ")
    halves = (" ".join(words[:cut]) + "\n" + " ".join(words[cut:]) for cut in range(len(words)))
    widest = (max(pixels(line, 9, True) for line in half.split("\n")) for half in halves)
    return min(widest) + _FILTER_BUTTON


def _number_style(heading: str) -> str:
    if heading in _PERCENT:
        return "percent"
    return "half" if heading in _FRACTION else "number"


def _shown(cell: int | Fraction) -> str:
    """About as many characters as the number takes."""
    return f"{float(cell):,.1f}" if isinstance(cell, Fraction) else f"{cell:,}"
