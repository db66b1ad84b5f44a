"""The sums of one article, live: needed, credited together, margin, verdict."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from loadplan.results import load_layout as at
from loadplan.results.article_rows import ArticleRows, credit_key, weight_lines
from loadplan.results.load_layout import cell
from loadplan.results.measure import fitted, pixels
from loadplan.results.words import short_cite
from loadplan.rules.requirement import EachWLLRequirement, StrengthRequirement
from loadplan.source import Source
from loadplan.tables.facts import ArticleFacts, RatedTieDown, credit_in

MET, NOT_MET = "met", "not met"
LiveVerdict: TypeAlias = tuple[str, bool]
_ROW = 12.0
_INDENT = 9


@dataclass(frozen=True)
class Sums:
    """Writes an article whole; ``write`` answers with its live verdicts: cell, and met or not."""

    rows: ArticleRows

    @property
    def facts(self) -> ArticleFacts:
        """The article's facts."""
        return self.rows.facts

    def write(self) -> list[LiveVerdict]:
        """Band, tie-downs, weight beside the sums, and the sums in words."""
        self.rows.band()
        top = self.rows.flow.row + len(self.facts.tie_downs)
        keys = self._credit_keys
        first, last = self.rows.tie_downs({key: top + 1 + place for place, key in enumerate(keys)})
        self.rows.flow.several(max(self._sum_count, len(weight_lines(self.facts)) + 1), _ROW)
        total = self.rows.weights(top)
        verdicts = list(self._sums(top, total, (first, last)))
        self.rows.in_the_head()
        return verdicts

    @property
    def _credit_keys(self) -> list[str]:
        """The kinds of credit among the tie-downs, the main ones first."""
        if self.facts.aggregate is None:
            return []
        return list(dict.fromkeys(credit_key(one) for one in self.facts.tie_downs))

    @property
    def _others(self) -> list[StrengthRequirement]:
        strengths = self.facts.demand.strengths
        return [one for one in strengths if one is not self.facts.aggregate]

    @property
    def _each(self) -> list[EachWLLRequirement]:
        return [one for one in self.facts.demand.properties if isinstance(one, EachWLLRequirement)]

    @property
    def _sum_count(self) -> int:
        """How many rows the sums take."""
        if not self.facts.tie_downs:
            return len(self.facts.demand.strengths)
        aggregate = 0 if self.facts.aggregate is None else 3 + len(self._credit_keys)
        return aggregate + 3 * len(self._others) + len(self._each)

    def _sums(self, row: int, total: int, span: tuple[int, int]) -> Iterator[LiveVerdict]:
        asked = self.facts.aggregate
        if not self.facts.tie_downs:
            for place, one in enumerate(self.facts.demand.strengths):
                self._needed(row + place, total, one)
            return
        if asked is not None:
            self._needed(row, total, asked)
            self._credits(row + 1, asked)
            together = f"=SUM({cell(span[0], at.CREDITED)}:{cell(span[1], at.CREDITED)})"
            self._together(row + 1, together, self.facts.planned)
            yield self._verdict(row + 1 + len(self._credit_keys), row, row + 1)
            row += 3 + len(self._credit_keys)
        for other in self._others:
            yield self._other(row, total, span[0], other)
            row += 3
        for each in self._each:
            yield self._least(row, total, span[0], each)
            row += 1

    def _label(self, row: int, words: str, source: Source | None = None) -> None:
        """What a row is, and the section it rests on beside its figure."""
        flow, sheet = self.rows.flow, self.rows.sheet
        wide = flow.width(at.TENSIONER, at.TIE_POINT) - _INDENT
        style, size = ("label", 9.0) if pixels(words, 9) <= wide else ("label small", 7.5)
        sheet.text(row, at.TENSIONER, fitted(words, wide, size), style)
        if source is not None:
            wide = flow.width(at.WEAKEST, at.CREDIT) - _INDENT
            sheet.text(row, at.WEAKEST, fitted(short_cite(source), wide, 7.5), "cite")

    def _together(self, row: int, formula: str, value: Fraction) -> None:
        self.rows.sheet.formula(row, at.CREDITED, formula, value, "cell number bold")

    def _needed(self, row: int, total: int, asked: StrengthRequirement) -> None:
        """Share of the weight, live, and what it makes."""
        cells, weight = self._weighed(total, asked)
        part = asked.need / weight if weight else Fraction(0)
        name = "needed" if asked is self.facts.aggregate else f"{asked.name}: needed"
        self._label(row, f"{name}, share x weight", asked.source)
        self.rows.sheet.number(row, at.WLL, part, "input half")
        self._together(row, f"={cell(row, at.WLL)}*{cells}", asked.need)

    def _weighed(self, total: int, asked: StrengthRequirement) -> tuple[str, Fraction]:
        """The weight that a strength goes by: of all, or of the one member that it holds alone."""
        demand = self.facts.demand
        held = demand.served_at(asked.positions[0]) if asked.positions else self.facts.served
        if not demand.members or len(held) != 1:
            return cell(total, at.MEMBER), self.facts.article.carried_weight
        first = total - len(weight_lines(self.facts))
        for one in self.facts.served:
            last = first + len(one.added)
            if one is held[0]:
                break
            first = last + 1
        return f"SUM({cell(first, at.MEMBER)}:{cell(last, at.MEMBER)})", held[0].carried_weight

    def _credits(self, row: int, asked: StrengthRequirement) -> None:
        """The credit of each kind of tie-down, each in its own row."""
        first = {credit_key(one): one for one in reversed(self.facts.tie_downs)}
        for place, key in enumerate(self._credit_keys):
            credit = credit_in(asked, first[key].tie_down)
            words = f"credit, {key}" if place else f"credit, {key}; together"
            self._label(row + place, words, _source_of(asked, f"{credit} x WLL"))
            self.rows.sheet.number(row + place, at.WLL, credit, "input half")

    def _verdict(self, row: int, need: int, have: int) -> LiveVerdict:
        """Margin in ``row``, verdict below."""
        sheet, needed, together = self.rows.sheet, cell(need, at.CREDITED), cell(have, at.CREDITED)
        self._label(row, "margin: together / needed - 1")
        margin = self.facts.margin or Fraction(0)
        formula = f"=IF({needed}>0,{together}/{needed}-1,0)"
        sheet.formula(row, at.CREDITED, formula, margin, "cell percent")
        self._label(row + 1, "aggregate WLL")
        met = self.facts.planned >= self.facts.needed
        return self._met(row + 1, f"{together}-{needed}", met)

    def _met(self, row: int, difference: str, met: bool) -> LiveVerdict:
        """A verdict in words that turns red where it turns."""
        sheet, words = self.rows.sheet, MET if met else NOT_MET
        formula = f'=IF(ROUND({difference},6)>=0,"{MET}","{NOT_MET}")'
        sheet.formula(row, at.CREDITED, formula, words, "cell met")
        red = {
            "type": "cell",
            "criteria": "==",
            "value": f'"{NOT_MET}"',
            "format": sheet.styles["cell held"],
        }
        sheet.page.conditional_format(row, at.CREDITED, row, at.CREDITED, red)
        return cell(row, at.CREDITED), met

    def _other(self, row: int, total: int, first: int, asked: StrengthRequirement) -> LiveVerdict:
        """A further strength, over some positions: needed, together, verdict."""
        self._needed(row, total, asked)
        terms, have = [], Fraction(0)
        for place, one in enumerate(self.facts.tie_downs):
            credit = credit_in(asked, one.tie_down)
            if credit:
                terms.append(_term(first + place, one, credit))
                have += credit * one.rating.wll
        self._label(row + 1, f"{asked.name}: together")
        self._together(row + 1, f"={'+'.join(terms) or '0'}", have)
        self._label(row + 2, asked.name)
        difference = f"{cell(row + 1, at.CREDITED)}-{cell(row, at.CREDITED)}"
        return self._met(row + 2, difference, have >= asked.need)

    def _least(self, row: int, total: int, first: int, asked: EachWLLRequirement) -> LiveVerdict:
        """The lowest WLL of the main tie-downs against what each must have.

        What goes by the weight follows it.
        """
        main = [
            (first + place, one.rating.wll)
            for place, one in enumerate(self.facts.tie_downs)
            if not one.tie_down.accessory
            and (asked.positions is None or one.tie_down.position in asked.positions)
        ]
        self._label(row, f"{asked.name}: each at least", asked.source)
        if asked.share is None:
            self.rows.sheet.number(row, at.WLL, asked.at_least, "input number")
        else:
            formula = f"={asked.share}*{cell(total, at.MEMBER)}"
            self.rows.sheet.formula(row, at.WLL, formula, asked.at_least, "cell number")
        least = cell(row, at.WLL)
        lowest = f"MIN({','.join(cell(line, at.WLL) for line, _ in main)})" if main else least
        return self._met(row, f"{lowest}-{least}", all(wll >= asked.at_least for _, wll in main))


def _term(row: int, one: RatedTieDown, credit: Fraction) -> str:
    """What one tie-down adds, from the cells of its row."""
    if credit == one.credit:
        return cell(row, at.CREDITED)
    return f"{cell(row, at.WLL)}*{credit}"


def _source_of(asked: StrengthRequirement, result: str) -> Source | None:
    """The source of the step with this result, where there is one."""
    return next((step.source for step in asked.steps if step.result == result), None)
