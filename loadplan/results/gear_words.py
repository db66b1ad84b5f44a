"""Gear that is never planned, each with the reason."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.gear import BINDERS, Condition, Gear, Kind
from loadplan.tables.facts import DayFacts


def never_planned(facts: DayFacts) -> list[tuple[str, str, int, str]]:
    """(gear, kind, pieces, why) for every kind of gear that no tie-down may use."""
    found = []
    for gear in facts.plan.day.gear:
        why = "; ".join(_reasons(facts, gear))
        if why:
            found.append((gear.id, gear.kind.value, gear.quantity, why))
    return found


def _reasons(facts: DayFacts, gear: Gear) -> Iterator[str]:
    rating = facts.ratings[gear.id]
    if gear.condition is not Condition.GOOD:
        yield f"its condition is {gear.condition.value}"
    if not rating.usable:
        yield f"its WLL is not known: {rating.reason}"
    if gear.kind in BINDERS and not gear.fits:
        yield "the chain sizes it takes are not given (Fits is blank)"
    if gear.kind is Kind.CHAIN and gear.size is None:
        yield "its size is not known, so no binder fits"
    if gear.quantity == 0:
        yield "there are none"
