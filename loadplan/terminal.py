"""Text for the terminal: the summary of a plan, the moving line, and nothing that can do harm."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.progress import Progress
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.stage import Stage
from loadplan.text import count, plain

_KEPT = "\n"
_LOOKED_ON = (
    "the time came before every way out was looked into: plan again with a longer time limit"
)
# Format characters turn text around or hide it; the joiners inside emoji do neither.
_HARMLESS = "\u200c\u200d"


def visible(text: str) -> str:
    """``text`` with control and direction characters, line ends apart, shown as escapes."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_escaped(character) for character in text)


def _escaped(character: str) -> str:
    harmful = unicodedata.category(character) in ("Cc", "Cf", "Cs", "Zl", "Zp")
    if not harmful or character in _KEPT + _HARMLESS:
        return character
    return character.encode("unicode_escape", "surrogatepass").decode("ascii")


def summary(plan: DayPlan) -> Iterator[str]:
    """What came out, line by line: loads, held loads with their shortage, and how far proved."""
    loads = count(len(plan.day.loads), "load")
    yield f"{loads}: {len(plan.ready):,} ready, {len(plan.held):,} held."
    for load in plan.held:
        yield f"  held: {load} {_held(plan, load)}"
    yield from stages(plan)


def stages(plan: DayPlan) -> Iterator[str]:
    """The stages' values and how far they are proved, and the remarks of the solve."""
    for stage in plan.stages:
        if not stage.greatest:
            yield f"{stage.name.capitalize()}: {stage_value(stage)}"
    for stage in plan.stages:
        if stage.greatest and not stage.proved:
            yield f"{stage.name.capitalize()}: {stage_value(stage)}"
    if plan.proved:
        yield "Every stage is proved: no plan for this day is better in this order."
    else:
        yield "Not everything is proved; see the lines above and the sheet Board."
    yield from plan.remarks


def _held(plan: DayPlan, load: str) -> str:
    """What a held load is short of and the cheapest way out, in one sentence."""
    text = f"is short of {_short_of(plan, load)}"
    one = next((one for one in plan.explained if one.load == load), None)
    if one is None:
        return text
    if not one.ways:
        return f"{text}; {_LOOKED_ON if one.open else 'no way out was found'}"
    best = one.ways[0]
    return f"{text}; cheapest way out, {best.way.value}: {best.text.rstrip('.')} ({best.price})"


def _short_of(plan: DayPlan, load: str) -> str:
    found = [_words(shortage) for shortage in plan.shortages if shortage.load == load]
    return "; ".join(dict.fromkeys(found)) or "gear"


def _words(shortage: Shortage) -> str:
    pieces = "" if shortage.pieces is None else f"{shortage.pieces} x "
    article = f" ({shortage.article})" if shortage.article else ""
    return f"{pieces}{shortage.short_of}{article}"


def stage_value(stage: Stage) -> str:
    """The value of one stage and what is proved of it."""
    unit = f" {stage.unit}" if stage.unit else ""
    value = f"{plain(stage.value)}{unit}"
    if stage.proved:
        return f"{value}, proved {'most' if stage.greatest else 'least'}"
    if stage.gap == 0:
        most = "most" if stage.greatest else "least"
        return f"{value}, the {most} there can be with what comes before, which is not proved"
    side = "more than" if stage.greatest else "less than"
    return f"{value}, not proved; it cannot be {side} {plain(stage.bound)}{unit}"


def stage_line(stage: Stage) -> str:
    """One stage with its value, bound, gap and time."""
    unit = f" {stage.unit}" if stage.unit else ""
    proof = "proved" if stage.proved else "not proved"
    remark = f" ({stage.remark})" if stage.remark else ""
    return (
        f"  {stage.name}: value {plain(stage.value)}{unit}, bound {plain(stage.bound)}{unit}, "
        f"gap {plain(stage.gap)}{unit}, {proof}, {stage.seconds:.2f} s{remark}"
    )


def progress_line(progress: Progress) -> str:
    """The moving line during a long stage."""
    best = "none yet" if progress.best is None else f"{progress.best:,.0f}"
    bound = "none yet" if progress.bound is None else f"{progress.bound:,.0f}"
    return f"{progress.stage}: best {best}, bound {bound}, {progress.seconds:.0f} s"
