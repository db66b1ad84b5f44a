"""Makers of requirements whose working is one step."""

from __future__ import annotations

from fractions import Fraction

from loadplan.day.article import Routing
from loadplan.day.gear import Kind
from loadplan.day.size import Size
from loadplan.day.units import Units
from loadplan.rules.requirement import (
    CountRequirement,
    EachWLLRequirement,
    Look,
    MemberRequirement,
    PositionSet,
    Step,
)
from loadplan.source import Source
from loadplan.text import count, mass_up, names

MOST_OVER = 20


def at_least(
    name: str,
    number: int,
    source: Source,
    *,
    words: str,
    numbers: str = "",
    positions: tuple[str, ...] | None = None,
) -> CountRequirement:
    """At least ``number`` tie-downs at ``positions``; ``numbers`` shows how the number came."""
    result = count(number, "tie-down")
    step = Step(words=words, numbers=numbers or f"{number}", result=result, source=source)
    return CountRequirement(
        name=name, source=source, steps=(step,), at_least=number, positions=positions
    )


def at_least_one(name: str, positions: tuple[str, ...], source: Source) -> CountRequirement:
    """At least one tie-down at one of ``positions``."""
    return at_least(
        name,
        1,
        source,
        words="At least one at",
        numbers=names(positions, "or"),
        positions=positions,
    )


def each_bears(
    name: str,
    least: Fraction,
    source: Source,
    units: Units,
    *,
    words: str,
    numbers: str = "",
    positions: tuple[str, ...] | None = None,
    share: Fraction | None = None,
) -> EachWLLRequirement:
    """Each tie-down at ``positions`` has a WLL of ``least`` or more, ``share`` of the weight."""
    text = mass_up(least, units)
    step = Step(words=words, numbers=numbers or text, result=text, source=source)
    return EachWLLRequirement(
        name=name,
        source=source,
        steps=(step,),
        at_least=least,
        positions=positions,
        share=share,
    )


def made_of(
    name: str,
    kinds: frozenset[Kind],
    source: Source,
    *,
    words: str,
    result: str,
    positions: tuple[str, ...] | None = None,
    least_size: Size | None = None,
) -> MemberRequirement:
    """The tension member of each tie-down at ``positions`` is of one of ``kinds``."""
    numbers = names(sorted(kind.value for kind in kinds), "or")
    step = Step(words=words, numbers=numbers, result=result, source=source)
    return MemberRequirement(
        name=name,
        source=source,
        steps=(step,),
        kinds=kinds,
        positions=positions,
        least_size=least_size,
    )


def over(prefix: str = "", *, most: int = MOST_OVER, serves: str = "") -> PositionSet:
    """Positions ``over 1`` and on, one tie-down each, behind ``prefix`` where there is one."""
    start = f"{prefix} over" if prefix else "over"
    return PositionSet(
        positions=tuple(f"{start} {number}" for number in range(1, most + 1)),
        routing=Routing.OVER,
        serves=serves,
    )


def place(name: str, routing: Routing, most: int, *, serves: str = "") -> PositionSet:
    """One named position that takes up to ``most`` tie-downs."""
    return PositionSet(positions=(name,), routing=routing, most_at_each=most, serves=serves)


def look(name: str, source: Source, text: str) -> Look:
    """A matter of looking."""
    return Look(name=name, source=source, text=text)
