"""The load sheet: the page a driver carries."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass

from loadplan.outcome.check import Check
from loadplan.outcome.held import Held
from loadplan.outcome.shortage import Shortage
from loadplan.results import load_layout as at
from loadplan.results.article_rows import ArticleRows
from loadplan.results.cautions import CHANGES, SHEET
from loadplan.results.check_rows import check_rows
from loadplan.results.deck.inks import DPI
from loadplan.results.deck.picture import HEIGHT, WIDTH, deck_picture
from loadplan.results.fit import fit
from loadplan.results.flow import Flow
from loadplan.results.held_rows import fixed_rows, shortage_rows
from loadplan.results.house_words import other_readings
from loadplan.results.load_head import banner, head
from loadplan.results.look_rows import look_rows, road_rows
from loadplan.results.page import set_footer, set_page
from loadplan.results.sheet import Sheet
from loadplan.results.sum_rows import LiveVerdict, Sums
from loadplan.results.ways_out import held_part
from loadplan.results.words import short_of
from loadplan.tables.clean import clean
from loadplan.tables.facts import DayFacts, LoadFacts
from loadplan.text import mass

_LONGEST_ALT, _LONGEST_ID = 1000, 30
_PICTURE_SCALE = (sum(at.WIDTHS) - 8) / (WIDTH / DPI * 96)
_PICTURE_POINTS = HEIGHT / DPI * 72 * _PICTURE_SCALE + 4
_WAYS = ((0, 2), (3, 5), (6, 8), (9, 12))
_SIGN = (("Loaded by", 0, 2, 3), ("Driver", 4, 5, 8), ("Date, time", 9, 10, 12))


@dataclass(frozen=True)
class LoadSheet:
    """Writes the sheet of one load; ``links`` says whether Board and Summary are there."""

    day: DayFacts
    load: LoadFacts
    sheet: Sheet
    checks: Sequence[Check] = ()
    shortages: Sequence[Shortage] = ()
    explained: Held | None = None
    links: bool = True
    pictures: bool = True

    def write(self) -> None:
        """The whole page with its print set-up."""
        flow = Flow(self.sheet, at.WIDTHS)
        held = "" if self.load.ready else short_of(self.shortages)
        top = banner(flow, held)
        head_ends = head(flow, self.day.plan.day, self.load.load, links=self.links)
        if held:
            shortage_rows(flow, self.shortages, why=self.explained is None)
            if self.explained is not None:
                held_part(flow, self.day.plan.day, self.explained, _WAYS)
        if self.pictures:
            self._picture(flow)
        verdicts = self._articles(flow)
        flow.may_break()
        if held:
            fixed_rows(flow, self.day.plan.day, self.load.load.id)
        else:
            top.live(verdicts)
        check_rows(flow, self.load, self.checks, self.day.plan.day.rules)
        if not held:
            flow.may_break()
            look_rows(flow, self.load)
            road_rows(flow, self.load)
            self._signatures(flow)
        flow.paragraph(SHEET, "muted small", size=7.5)
        self._set_up(flow, head_ends)

    def _picture(self, flow: Flow) -> None:
        picture = deck_picture(self.day.plan.day, self.load)
        options = {
            "image_data": io.BytesIO(picture.png),
            "description": clean(picture.words)[:_LONGEST_ALT],
            "x_scale": _PICTURE_SCALE,
            "y_scale": _PICTURE_SCALE,
            "x_offset": 4,
            "y_offset": 2,
            "object_position": 1,
        }
        self.sheet.page.insert_image(flow.next(_PICTURE_POINTS), 0, "deck.png", options)

    def _articles(self, flow: Flow) -> list[LiveVerdict]:
        """Every article; answers with the live verdicts."""
        units = self.day.plan.day.units
        if self.load.tie_downs:
            row = flow.next(24)
            for column, words in enumerate(at.headings(units)):
                self.sheet.text(row, column, words, "head small")
        verdicts: list[LiveVerdict] = []
        for facts in self.load.articles:
            flow.may_break()
            verdicts += Sums(ArticleRows(flow, self.day, facts)).write()
            otherwise = other_readings(self.day.effects_by_article.get(facts.article.id, ()))
            if otherwise:
                flow.paragraph(otherwise, "small wrap", size=8, first=at.PLACE)
        notes = [CHANGES] if self.load.tie_downs else []
        if not self.load.articles:
            notes.append("No cargo on this load.")
        if len(self.load.articles) > 1:
            notes.append(f"All articles together: {mass(self.load.weight, units)}.")
        flow.paragraph(" ".join(notes), "small wrap", size=8)
        return verdicts

    def _signatures(self, flow: Flow) -> None:
        row = flow.next(24)
        for words, first, line, last in _SIGN:
            self.sheet.text(row, first, words, "bold low")
            self.sheet.blank(row, range(line, last + 1), "rule")

    def _set_up(self, flow: Flow, head_ends: tuple[int, float]) -> None:
        day, page = self.day.plan.day, self.sheet.page
        date = "" if day.date is None else f", {day.date.isoformat()}"
        set_page(page, day.units, landscape=False)
        set_footer(page, f"Load {self.load.load.id[:_LONGEST_ID]}{date}", day.yard)
        page.hide_gridlines(2)
        fit(flow, day.units, head_ends)
