"""The rules as tables: all there are, and what they are and change on one day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction

from loadplan.day.day import Day, RuleSet
from loadplan.rules.catalogue import (
    rule_set_rows,
    section_rows,
    source_rows,
    switch_rows,
)
from loadplan.rules.demand import load_demand
from loadplan.rules.effects import Effect, effects
from loadplan.rules.readings import reading_rows
from loadplan.source import Source
from loadplan.tables.table import Cell, Table

_RULE_SET = ("Rules", "Document", "Edition", "Says")


def catalogue_tables() -> dict[str, Table]:
    """Rule sets, sections, readings of the disputed points, and sources, by name."""
    return {
        "Rule sets": Table(
            headings=_RULE_SET,
            rows=tuple((one.rules, one.document, one.read, one.note) for one in rule_set_rows()),
        ),
        "Sections": Table(
            headings=("Rules", "Section", "Title", "Classes", "Details", "Says", "Certainty"),
            rows=tuple(
                (
                    one.rules,
                    one.section,
                    one.title,
                    one.classes,
                    one.details,
                    one.asks,
                    one.certainty,
                )
                for rules in RuleSet
                for one in section_rows(rules)
            ),
        ),
        "Disputed points": Table(
            headings=("House rule", "Asks", "Reading", "Default", "Rests on", "Certainty"),
            rows=tuple(
                (one.rule, one.asks, one.reading, one.default, one.rests_on, one.certainty)
                for one in switch_rows()
            ),
        ),
        "Sources": Table(
            headings=("Rules", "Document", "Section", "Edition", "Certainty", "Says"),
            rows=tuple(
                (one.rules, one.document, one.section, one.edition, one.certainty, one.says)
                for rules in RuleSet
                for one in source_rows(rules)
            ),
        ),
    }


def day_tables(day: Day) -> dict[str, Table]:
    """What applies to ``day`` and what every other reading would change, by name.

    Nothing is planned for it: what is asked of the articles is compared, and what gear bears.
    """
    found = effects(day)
    return {
        "Rule set": Table(
            headings=_RULE_SET,
            rows=tuple(
                (one.rules, one.document, one.read, one.note)
                for one in rule_set_rows()
                if one.rules == day.rules.value
            ),
        ),
        "Sections of this day": _sections(day),
        "Readings taken": _readings(day, found),
        "What each other reading costs": _in_sum(day, found),
        "What it changes, one by one": _one_by_one(day, found),
    }


def _sections(day: Day) -> Table:
    """Each section that governs something, with the articles and groups it governs."""
    governed: dict[Source, list[str]] = defaultdict(list)
    for load in day.loads:
        for asked in load_demand(day, load).articles:
            if asked.section is not None:
                governed[asked.section].append(asked.article.id)
    return Table(
        headings=("Section", "Articles", "Says", "Certainty"),
        rows=tuple(
            (f"{one.document} {one.section}", ", ".join(ids), one.says, one.certainty.value)
            for one, ids in governed.items()
        ),
    )


def _readings(day: Day, found: Iterable[Effect]) -> Table:
    """Every disputed point as this day takes it, and whether another reading would matter."""
    biting = {one.switch for one in found}
    return Table(
        headings=("House rule", "Reading", "Chosen", "Matters", "Rests on", "Certainty"),
        rows=tuple(
            (
                one.rule,
                one.taken,
                one.chosen,
                "yes" if one.rule in biting else "no",
                one.rests_on,
                one.certainty,
            )
            for one in reading_rows(day)
        ),
    )


def _in_sum(day: Day, found: Iterable[Effect]) -> Table:
    """The effects of each other reading added up over the day."""
    sums: dict[tuple[str, str, str], list[Effect]] = defaultdict(list)
    for one in found:
        sums[one.switch, one.taken, one.other].append(one)
    return Table(
        headings=(
            *("House rule", "Reading", "Other reading", "Articles", "Kinds of gear"),
            *_more(day),
        ),
        rows=tuple((*key, *_sum(several)) for key, several in sums.items()),
    )


def _more(day: Day) -> tuple[str, ...]:
    return "More tie-downs", f"More WLL [{day.units.mass}]", "More held"


def _sum(several: list[Effect]) -> tuple[Cell, ...]:
    """How many articles and kinds of gear it touches, and what it asks for in all."""
    articles = sum(1 for one in several if one.article)
    return (
        articles,
        len(several) - articles,
        sum(one.tie_downs for one in several),
        sum((one.wll for one in several), Fraction(0)),
        sum(one.held for one in several),
    )


def _one_by_one(day: Day, found: Iterable[Effect]) -> Table:
    return Table(
        headings=(
            *("Load", "Article", "Gear", "House rule", "Reading", "Other reading"),
            *_more(day),
            "Change",
        ),
        rows=tuple(
            (
                *(one.load, one.article, one.gear, one.switch, one.taken, one.other),
                *(one.tie_downs, one.wll, one.held, one.text),
            )
            for one in found
        ),
    )
