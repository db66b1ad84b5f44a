"""``What to buy``: the purchase, what it costs and gets ready, and the curve; for people."""

from __future__ import annotations

from dataclasses import dataclass

from loadplan.purchase.bought import Bought
from loadplan.purchase.money import money
from loadplan.purchase.point import Point
from loadplan.purchase.words import headline, proved_words
from loadplan.results.board_tables import heading
from loadplan.results.buying_chart import curve_chart
from loadplan.results.fit import fit
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.tables.purchase import named_lines, shopping_words, specification_words

NAME = "What to buy"
_WIDTHS = (96, 60, 60, 90, 180, 76, 110, 164)
_LAST = len(_WIDTHS) - 1
_ROW = 15
CAUTION = (
    "Prices and what can be had are as the day workbook says. This is arithmetic for one day: "
    "other days, delivery and wear are not in it."
)


@dataclass(frozen=True)
class Buying:
    """Writes the page of one purchase."""

    bought: Bought
    sheet: Sheet

    def write(self) -> None:
        """Outcome, held loads, what is proved, the list, the curve."""
        day = self.bought.day
        date = "" if day.date is None else day.date.isoformat()
        flow = Flow(self.sheet, _WIDTHS)
        flow.may_break()
        row = flow.next(26)
        title = " - ".join(word for word in (NAME, day.yard, date) if word)
        self.sheet.text(row, 0, title, "title")
        head = row, flow.points
        flow.next(4)
        row = flow.next(28)
        self.sheet.across(row, 0, _LAST, headline(self.bought), self._banner())
        for stay in self.bought.stays:
            flow.paragraph(f"HELD: load {stay.load}. {stay.why}", "not met line")
        for line in (*proved_words(self.bought), *self.bought.remarks, CAUTION):
            flow.paragraph(line, "wrap")
        self._list(flow)
        if self.bought.curve is not None:
            self._curve(flow)
        self._set_up(flow, head)

    def _banner(self) -> str:
        if self.bought.plan.held:
            return "held banner long"
        return "ready banner" if self.bought.proved else "care banner"

    def _list(self, flow: Flow) -> None:
        heading(flow, "The list")
        bought, sheet = self.bought, self.sheet
        if not bought.purchase.pieces:
            flow.paragraph("Nothing.", "wrap")
            return
        self._heads(flow, (0, 1, "Gear"), (2, 4, "What it is"), (5, 5, "Pieces"))
        sheet.text(flow.row - 1, 6, "Price", "head")
        sheet.text(flow.row - 1, 7, "Cost", "head")
        for name, offer, pieces in named_lines(bought, bought.purchase):
            words = specification_words(offer.specification, bought.day.units)
            if name not in bought.day.gear_by_id:
                words += " (new in the cage)"
            most = max(
                lines(words, flow.width(2, 4) - 12, 9), lines(name, flow.width(0, 1) - 12, 9)
            )
            row = flow.next(height(most, 9))
            sheet.across(row, 0, 1, name, "cell wrap")
            sheet.across(row, 2, 4, words, "cell wrap")
            sheet.number(row, 5, pieces, "cell number")
            sheet.text(row, 6, money(offer.price, bought.currency), "cell")
            sheet.text(row, 7, money(offer.price * pieces, bought.currency), "cell")
        row = flow.next(_ROW)
        sheet.text(row, 0, "In all", "band")
        sheet.blank(row, (1, 2, 3, 4, 6), "band")
        sheet.number(row, 5, bought.purchase.pieces, "band number")
        sheet.text(row, 7, money(bought.purchase.cost, bought.currency), "band")

    def _curve(self, flow: Flow) -> None:
        bought = self.bought
        assert bought.curve is not None
        heading(flow, "Cost against loads ready")
        flow.paragraph(
            "Each row is the least money for more loads ready, priority 1 first; nothing between "
            "two rows gets more.",
            "wrap",
        )
        self._heads(
            flow,
            *((0, 0, "Cost"), (1, 1, "Ready"), (2, 2, "Proved")),
            *((3, 4, "Held"), (5, _LAST, "Buy")),
        )
        for point in bought.curve.points:
            self._point(flow, point)
        curve_chart(flow, bought)

    def _point(self, flow: Flow, point: Point) -> None:
        bought, sheet = self.bought, self.sheet
        chosen = point.purchase.cost == bought.purchase.cost
        held = ", ".join(point.held) or "none"
        words = shopping_words(bought, point.purchase) + (" - CHOSEN" if chosen else "")
        most = max(
            lines(held, flow.width(3, 4) - 12, 9, chosen),
            lines(words, flow.width(5, _LAST) - 12, 9, chosen),
        )
        row = flow.next(height(most, 9))
        bold = " bold" if chosen else ""
        sheet.text(row, 0, money(point.purchase.cost, bought.currency), f"cell{bold}")
        sheet.number(row, 1, point.loads, f"cell number{bold}")
        sheet.text(row, 2, *(("yes", "cell met") if point.proved else ("NO", "cell advice")))
        sheet.across(row, 3, 4, held, f"cell{bold} wrap")
        sheet.across(row, 5, _LAST, words, f"cell{bold} wrap")

    def _heads(self, flow: Flow, *heads: tuple[int, int, str]) -> None:
        row = flow.next(_ROW)
        for first, last, head in heads:
            self.sheet.across(row, first, last, head, "head")

    def _set_up(self, flow: Flow, head: tuple[int, float]) -> None:
        day, page = self.bought.day, self.sheet.page
        date = "" if day.date is None else f" {day.date.isoformat()}"
        set_page(page, day.units, landscape=False)
        set_footer(page, f"{NAME}{date}", day.yard)
        page.hide_gridlines(2)
        fit(flow, day.units, head)
