"""The words of the pages: what to hook up, sums as done in the head, sections in short."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from loadplan.day.units import Units
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.requirement import Look, StrengthRequirement
from loadplan.source import Certainty, Source
from loadplan.tables.facts import ArticleFacts, RatedTieDown
from loadplan.text import count, mass, mass_down, mass_up, names, plain

_MARKS = {
    Certainty.READ: "",
    Certainty.HANDBOOK: "handbook",
    Certainty.MEMORY: "from memory",
    Certainty.PRACTICE: "common practice, no source",
    Certainty.INPUT: "day workbook",
}
# The page says once which documents these are.
_SHORT_NAMES = {"49 CFR": "", "NSC Standard 10": "NSC 10"}
READY = "READY - every rule checked below is met"
CHANGED = "CHECK AGAIN - figures on this page were changed and a rule below is not met"


def hook_up(one: RatedTieDown, serves: Iterable[str] = ()) -> str:
    """The pieces of a tie-down in words: ``chain C38 + lever binder B38 + 1 shackle SH1``.

    ``serves`` are the articles of a group that it holds.
    """
    tie_down = one.tie_down
    parts = [f"{one.member.kind.value} {one.member.id}"]
    if one.tensioner is not None:
        parts.append(f"{one.tensioner.kind.value} {one.tensioner.id}")
    elif one.tensioner_text == "trailer winch":
        parts.append("trailer winch")
    if tie_down.shackle is not None and tie_down.shackles:
        parts.append(f"{count(tie_down.shackles, 'shackle')} {tie_down.shackle}")
    parts += [f"{count(pieces, 'edge protector')} {gear}" for gear, pieces in tie_down.protectors]
    held = names(list(serves))
    return " + ".join(parts) + (f"; holds {held}" if held else "")


def place_of(tie_down: TieDown) -> str:
    """The position, with its number there where that is not 1: ``front left (2)``."""
    if tie_down.number == 1:
        return tie_down.position
    return f"{tie_down.position} ({tie_down.number})"


def share(value: Fraction) -> str:
    """A share as people say it: ``1/2``, ``1``, ``0.6``."""
    return str(value) if value.denominator in (1, 2, 3, 4, 6) else plain(value, 4)


def needed_sum(asked: StrengthRequirement, weight: Fraction, units: Units) -> str:
    """``1/2 x 23,400 lb = 11,700 lb needed``."""
    part = asked.need / weight if weight else Fraction(0)
    return f"{share(part)} x {mass(weight, units)} = {mass_up(asked.need, units)} needed"


def credited_sum(facts: ArticleFacts, units: Units) -> str:
    """``4 x 1/2 x 5,400 + 2 x 1/2 x 6,600 = 17,400 lb credited``."""
    groups: dict[tuple[Fraction, Fraction], int] = {}
    for one in facts.tie_downs:
        if one.credit:
            key = (one.credit, one.rating.wll)
            groups[key] = groups.get(key, 0) + 1
    terms = [
        f"{number} x {plain(wll)}" if credit == 1 else f"{number} x {share(credit)} x {plain(wll)}"
        for (credit, wll), number in groups.items()
    ]
    return f"{' + '.join(terms) or '0'} = {mass_down(facts.planned, units)} credited"


def short_of(shortages: Iterable[Shortage]) -> str:
    """What a load is short of, in one sentence."""
    parts = [
        one.short_of if one.pieces is None else f"{one.pieces} x {one.short_of}"
        for one in shortages
    ]
    return "; ".join(dict.fromkeys(parts)) or "gear"


def short_cite(source: Source) -> str:
    """A citation as short as it can be: the section, and how sure it is where it was not read."""
    mark = _MARKS[source.certainty]
    if source.certainty in (Certainty.PRACTICE, Certainty.INPUT):
        return mark
    document = _SHORT_NAMES.get(source.document, source.document)
    name = f"{document} {source.section}".strip()
    return f"{name}, {mark}" if mark else name


def shortened(cite: str) -> str:
    """A printed citation made short in the same way: ``393.124, handbook``."""
    if Certainty.PRACTICE.value in cite:
        return Certainty.PRACTICE.value
    for certainty in (Certainty.HANDBOOK, Certainty.MEMORY):
        cite = cite.replace(f" ({certainty.value})", f", {_MARKS[certainty]}")
    for name, short in _SHORT_NAMES.items():
        cite = cite.removeprefix(name) if not short else cite.replace(name, short)
    return cite.strip()


def marked_cite(source: Source) -> str:
    """A citation in full, with a short mark where it was not read."""
    mark = _MARKS[source.certainty]
    name = f"{source.document} {source.section}".strip()
    return f"{name} ({mark})" if mark else name


def look_line(articles: Iterable[str], look: Look) -> str:
    """One line to tick off."""
    whose = ", ".join(articles)
    text = f"{whose}: {look.text}" if whose else look.text
    return f"□ {text} ({short_cite(look.source)})"
