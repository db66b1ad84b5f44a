"""One article on a load sheet: its tie-downs, its weight line by line, and its sums, all live."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.units import Units
from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.results.load_layout import cell
from loadplan.results.measure import fitted, height, lines, pixels
from loadplan.results.sheet import Sheet
from loadplan.results.words import (
    credited_sum,
    hook_up,
    marked_cite,
    needed_sum,
    place_of,
)
from loadplan.tables.facts import ArticleFacts, DayFacts, RatedTieDown
from loadplan.text import length, mass, names
from loadplan.wll.tie_down import Part

_ROW = 12.5
# Bold is some 7 % wider than what is measured.
_BAND_SIZE = 9.7
_INDENT = 9
_PARTS = (at.MEMBER, at.TENSIONER, at.CONNECTOR, at.ANCHOR, at.TIE_POINT)


@dataclass(frozen=True)
class ArticleRows:
    """Writes one article; ``verdicts`` are the addresses of its live verdict cells."""

    flow: Flow
    day: DayFacts
    facts: ArticleFacts

    @property
    def sheet(self) -> Sheet:
        """The sheet written on."""
        return self.flow.sheet

    @property
    def units(self) -> Units:
        """The day's units."""
        return self.day.plan.day.units

    def band(self) -> None:
        """The article's own line, or lines: what it is, how it is secured, how big it is."""
        article, demand = self.facts.article, self.facts.demand
        runs = dict.fromkeys(one.routing.value for one in demand.position_sets if one.positions)
        under = "" if demand.section is None else f", secured under {marked_cite(demand.section)}"
        words = [
            f"{article.id}   {article.description}".rstrip(),
            f"{article.cargo_class.value}{under}",
            f"tie-downs {names(list(runs))}",
            *_sizes(article, self.units),
        ]
        width = self.flow.width(0, at.LAST)
        for line in _packed(words, width):
            row = self.flow.next(14)
            self.sheet.blank(row, range(at.LAST + 1), "band")
            self.sheet.text(row, at.TICK, fitted(line, width, _BAND_SIZE), "band")

    def tie_downs(self, credits: Mapping[str, int]) -> tuple[int, int]:
        """One row for each tie-down; ``credits`` are the rows of the credits by their key.

        Answers with the first and the last row.
        """
        first = self.flow.row
        for one in self.facts.tie_downs:
            self._tie_down(one, credits)
        return first, self.flow.row - 1

    def _tie_down(self, one: RatedTieDown, credits: Mapping[str, int]) -> None:
        words, place, sheet = hook_up(one, self._serves(one)), place_of(one.tie_down), self.sheet
        count = max(
            lines(words, at.WIDTHS[at.HOOK] - _INDENT, 9),
            lines(place, at.WIDTHS[at.PLACE] - _INDENT, 9, True),
        )
        row = self.flow.next(max(_ROW, height(count, 9)))
        sheet.text(row, at.TICK, "□", "cell mid")
        sheet.number(row, at.NUMBER, one.number, "cell mid bold")
        sheet.text(row, at.PLACE, place, "cell bold wrap")
        sheet.text(row, at.HOOK, words, "cell wrap")
        self._parts(row, one)
        values = f"{cell(row, at.MEMBER)}:{cell(row, at.TIE_POINT)}"
        lowest = cell(row, at.WLL)
        sheet.formula(row, at.WLL, f"=MIN({values})", one.rating.wll, "cell number bold")
        sheet.formula(row, at.WEAKEST, _weakest(row), one.rating.weakest.value, "cell")
        key = credit_key(one)
        if key in credits:
            credit = cell(credits[key], at.WLL)
            sheet.formula(row, at.CREDIT, f"={credit}", one.credit, "cell half")
        else:
            sheet.number(row, at.CREDIT, one.credit, "cell half")
        credited = f"={lowest}*{cell(row, at.CREDIT)}"
        sheet.formula(row, at.CREDITED, credited, one.credited, "cell number")

    def _serves(self, one: RatedTieDown) -> list[str]:
        """The members of a group that a tie-down holds; nothing where the article is alone."""
        demand = self.facts.demand
        if not demand.members:
            return []
        return [article.id for article in demand.served_at(one.tie_down.position)]

    def _parts(self, row: int, one: RatedTieDown) -> None:
        """The WLL of each part: a number, ``unrated``, or what stands in its place."""
        rating = one.rating
        connectors = "none" if rating.connector is None else ""
        tie_point = "unrated" if one.tie_point_in_play else "none"
        values: tuple[tuple[int, Fraction | None, str], ...] = (
            (at.MEMBER, rating.member, ""),
            (at.TENSIONER, rating.tensioner, _own(one)),
            (at.CONNECTOR, rating.connector, connectors),
            (at.ANCHOR, rating.anchor, "unrated" if one.anchor_in_play else "none"),
            (at.TIE_POINT, rating.tie_point, tie_point),
        )
        for column, value, words in values:
            if value is None:
                self.sheet.text(row, column, words, "cell mid")
            else:
                self.sheet.number(row, column, value, "input number")

    def weights(self, first: int) -> int:
        """The weight line by line from row ``first``; answers with the row of the sum."""
        article, sheet = self.facts.article, self.sheet
        parts = weight_lines(self.facts)
        for place, (words, weight) in enumerate(parts):
            sheet.text(first + place, at.PLACE, words, "text")
            sheet.number(first + place, at.MEMBER, weight, "input number")
        total = first + len(parts)
        words = f"weight with everything on it [{self.units.mass}]"
        sheet.text(total, at.PLACE, words, "bold")
        values = f"{cell(first, at.MEMBER)}:{cell(total - 1, at.MEMBER)}"
        sheet.formula(
            total, at.MEMBER, f"=SUM({values})", article.carried_weight, "cell number bold"
        )
        return total

    def in_the_head(self) -> None:
        """The sums as they are done in the head, as planned."""
        asked = self.facts.aggregate
        if asked is None:
            return
        words = needed_sum(asked, self.facts.article.carried_weight, self.units)
        if self.facts.tie_downs:
            words += f";  {credited_sum(self.facts, self.units)}"
        self.flow.paragraph(f"As planned:  {words}", "bold wrap", first=at.PLACE)


def _packed(words: Sequence[str], width: float) -> list[str]:
    """``words`` in as few lines of ``width`` pixels as their order allows."""
    found = [words[0]]
    for word in words[1:]:
        longer = f"{found[-1]}  |  {word}"
        if pixels(longer, _BAND_SIZE) > width:
            found.append(word)
        else:
            found[-1] = longer
    return found


def credit_key(one: RatedTieDown) -> str:
    """What decides a tie-down's credit: how it runs, or that it is an accessory's."""
    return "accessory" if one.tie_down.accessory else one.tie_down.routing.value


def weight_lines(facts: ArticleFacts) -> list[tuple[str, Fraction]]:
    """What the weight is made of: each article's own and what rides on it."""
    found = []
    for article in facts.served:
        whose = f"{article.id}: " if facts.demand.members else ""
        found.append((f"{whose}weight, {article.weight_from.value}", article.weight))
        found += [
            (f"+ {whose}{added.what or 'added weight'}", added.weight) for added in article.added
        ]
    return found


def _sizes(article: Article, units: Units) -> list[str]:
    sizes = (("long", article.length), ("wide", article.width), ("high", article.height))
    words = [f"{length(size, units)} {name}" for name, size in sizes if size is not None]
    weight = mass(article.carried_weight, units)
    return [weight, ", ".join(words)] if words else [weight]


def _own(one: RatedTieDown) -> str:
    return {"trailer winch": "winch"}.get(one.tensioner_text, one.tensioner_text or "none")


def _weakest(row: int) -> str:
    """The first part, in the order of :class:`Part`, whose WLL is the tie-down's."""
    lowest, parts = cell(row, at.WLL), list(Part)
    formula = f'"{parts[-1].value}"'
    for part, column in reversed(list(zip(parts, _PARTS, strict=True))[:-1]):
        formula = f'IF({cell(row, column)}={lowest},"{part.value}",{formula})'
    return f"={formula}"
