"""The house rules in words: each with the value in force and whether the yard chose it."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable
from enum import StrEnum
from fractions import Fraction

from loadplan.day.day import Day, RuleSet
from loadplan.day.units import Units
from loadplan.results.words import share
from loadplan.rules.effects import Effect
from loadplan.rules.readings import ReadingRow, reading_rows, taken_word
from loadplan.rules.switches import switch_named
from loadplan.text import count, length, mass, plain
from loadplan.workbook.column import Column, Value
from loadplan.workbook.lines import HOUSE_LINES

_ALWAYS = (
    "Weights are with everything on the article: buckets, fuel, ballast, tools.",
    "A machine counts as not blocked forward unless its row says so.",
)
_MARKED = {
    RuleSet.US: "A marked WLL goes before any table; unmarked chain is taken as grade 30, "
    "unidentified rope as polypropylene (49 CFR 393.108).",
    RuleSet.CANADA: "A marked WLL goes before any table; gear without any mark bears nothing and "
    "is not planned.",
}
_ARGUED = {
    RuleSet.US: (),
    RuleSet.CANADA: (
        "Disputed points are argued by sections of 49 CFR where these were read; NSC Standard 10 "
        "is drawn from the same model, and its own words may differ.",
    ),
}
_IN_BRACKETS = re.compile(r" \(.*\)$")
_MOST_NAMED = 12
_FIGURES = frozenset({Value.MASS, Value.LENGTH, Value.SHARE, Value.WHOLE})


def always_read(day: Day) -> tuple[str, ...]:
    """What is read in one way only, as no line of ``House rules`` can change it."""
    return (*_ALWAYS, _MARKED[day.rules], *_ARGUED[day.rules])


def reading_lines(day: Day) -> list[tuple[str, str, str, str]]:
    """(disputed point, reading taken, chosen or default, what it rests on and what else there is).

    The certainty stands beside whatever was not read in the text itself.
    """
    return [
        (
            row.rule,
            row.taken,
            row.chosen,
            f"{row.asks} {_ground(row)}. Otherwise: {', '.join(row.others)}.",
        )
        for row in reading_rows(day)
    ]


def _ground(row: ReadingRow) -> str:
    sure = f" ({row.certainty})" if row.certainty not in ("", "read") else ""
    return f"Rests on: {row.rests_on}{sure}"


def other_counts(found: Iterable[Effect]) -> list[tuple[str, str, str, str]]:
    """(disputed point, reading taken, other reading, what that changes in numbers of tie-downs).

    Only what would ask for more or fewer tie-downs.
    """
    alike: dict[tuple[str, str, str, str], list[str]] = defaultdict(list)
    for one in found:
        if one.tie_downs:
            alike[one.switch, one.taken, one.other, more_or_fewer(one)].append(one.article)
    return [
        (switch, taken, other, f"{change}{' each' if len(ids) > 1 else ''}: {_some(ids)}")
        for (switch, taken, other, change), ids in alike.items()
    ]


def other_readings(found: Iterable[Effect]) -> str:
    """The same of the effects on one article: ``"Accessory tie-downs" = 2: 1 more tie-down``."""
    words = [
        f'"{one.switch}" = {_IN_BRACKETS.sub("", one.other)}: {more_or_fewer(one)}'
        for one in found
        if one.tie_downs
    ]
    if not words:
        return ""
    return f"Read another way, by a line of House rules, it would take: {'; '.join(words)}."


def more_or_fewer(one: Effect) -> str:
    """``2 fewer tie-downs``."""
    words = "more tie-down" if one.tie_downs > 0 else "fewer tie-down"
    return count(abs(one.tie_downs), words)


def _some(ids: list[str]) -> str:
    more = len(ids) - _MOST_NAMED
    return ", ".join(ids[:_MOST_NAMED]) + (f" and {more:,} more" if more > 0 else "")


def house_lines(day: Day) -> list[tuple[str, str, str, str]]:
    """(rule, value, chosen or default, what it means) for every line of ``House rules``."""
    stated = {name.casefold() for name in day.house.stated}
    return [
        (
            line.name,
            _in_force(day, line),
            "chosen" if line.name.casefold() in stated else "default",
            line.help,
        )
        for line in HOUSE_LINES
    ]


def house_figures(day: Day) -> list[tuple[str, str, str, str]]:
    """The house rules that are figures; the others are told among the disputed points."""
    figures = {line.name for line in HOUSE_LINES if line.value in _FIGURES}
    return [line for line in house_lines(day) if line[0] in figures]


def _in_force(day: Day, line: Column) -> str:
    """The value in words; where none is chosen, the rule set's own reading."""
    value, switch = getattr(day.house, line.field), switch_named(line.name)
    if value is None and switch is not None:
        return taken_word(day, switch)
    return _value(value, line, day.units)


def _value(value: object, line: Column, units: Units) -> str:
    """The value as people write it; None is what the line says its default is."""
    if value is None:
        return line.default
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, StrEnum):
        return value.value
    if not isinstance(value, Fraction | int):
        return str(value)
    if line.value is Value.MASS:
        return mass(value, units)
    if line.value is Value.LENGTH:
        return length(value, units)
    return share(Fraction(value)) if line.value is Value.SHARE else plain(value)
