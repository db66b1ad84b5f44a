"""The outcome of a day in words; "least" is said only of what is proved."""

from __future__ import annotations

from fractions import Fraction

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.stage import Stage
from loadplan.results.words import short_of
from loadplan.rules.profile import EDITIONS
from loadplan.text import count, names, plain

ALL_PROVED = (
    "Proved, stage by stage: with this gear no plan sends more loads, taken priority by priority; "
    "and of the plans that send as many, none has fewer tie-downs, then fewer mixed sets, then "
    "less rated strength issued. This is the least."
)


def headline(plan: DayPlan) -> str:
    """``13 of 14 loads ready, 1 held; every stage is proved``."""
    total, held = len(plan.day.loads), len(plan.held)
    text = f"{len(plan.ready)} of {count(total, 'load')} ready"
    if held:
        text += f", {held} held"
    proved = "every stage is proved" if plan.proved else "not every stage is proved"
    return f"{text}; {proved}"


def banner_style(plan: DayPlan) -> str:
    """The style of the headline: loads held, something unproved, or neither."""
    if plan.held:
        return "held banner"
    return "ready banner" if plan.proved else "care banner"


def rules_read(day: Day) -> str:
    """The rule set the day is planned under, the edition read, and to check the current text."""
    edition = EDITIONS[day.rules]
    return f"Rules: {edition.document}. Read: {edition.read}. {edition.note}"


def proof(plan: DayPlan) -> list[str]:
    """What is proved and what is not, and the remarks of the solve."""
    if plan.proved:
        return [ALL_PROVED, *plan.remarks]
    done = [stage.name for stage in plan.stages if stage.proved]
    open_ = [stage_words(stage) for stage in plan.stages if not stage.proved]
    lines = [f"Proved: {names(done)}."] if done else []
    return [*lines, f"Not proved: {'; '.join(open_)}.", *plan.remarks]


def stage_words(stage: Stage) -> str:
    """``mixed sets: 2 planned, and a plan with 1 is not ruled out``."""
    unit = f" {stage.unit}" if stage.unit and stage.unit not in stage.name else ""
    if stage.gap == 0:
        same = "which no plan with the same figures before can better"
        return f"{stage.name}: {plain(stage.value)}{unit} planned, {same}"
    return (
        f"{stage.name}: {plain(stage.value)}{unit} planned, "
        f"and {plain(stage.bound)}{unit} is not ruled out"
    )


def held_lines(plan: DayPlan) -> list[tuple[str, str]]:
    """(load, what it is short of in words) for each held load."""
    return [
        (load, short_of(short for short in plan.shortages if short.load == load))
        for load in plan.held
    ]


def cell_number(value: Fraction) -> Fraction:
    """A stage's figure to three decimals: a bound may be any fraction."""
    return Fraction(round(value * 1000), 1000)
