"""A day with more pieces than it has: what an offer adds to the gear."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loadplan.day.day import Day
from loadplan.day.gear import Condition, Gear, Price
from loadplan.purchase.purchase import Purchase


def with_purchase(day: Day, purchase: Purchase) -> Day:
    """``day`` with the pieces of ``purchase`` owned, to be planned and judged like any other.

    More of a kind that is owned and good adds to its quantity, in the cage or in the kit it
    belongs to. Every other kind is a new row of gear, good, named as :func:`gear_ids` says.
    """
    return with_pieces(day, purchase.lines)


def with_pieces(day: Day, lines: Sequence[tuple[Price, int]]) -> Day:
    """``day`` with so many pieces of each offer owned; see :func:`with_purchase`."""
    ids = gear_ids(day, [offer for offer, _ in lines])
    more: dict[str, int] = {}
    new: dict[str, Gear] = {}
    for name, (offer, pieces) in zip(ids, lines, strict=True):
        more[name] = more.get(name, 0) + pieces
        if name not in day.gear_by_id:
            new[name] = replace(offer.specification, id=name, condition=Condition.GOOD)
    gear = [
        replace(one, quantity=one.quantity + more[one.id]) if one.id in more else one
        for one in day.gear
    ]
    gear += [replace(one, quantity=more[name]) for name, one in new.items() if more[name]]
    return replace(day, gear=tuple(gear))


def gear_ids(day: Day, offers: Sequence[Price]) -> list[str]:
    """The id that the pieces of each offer have once they are owned.

    The owned kind's own where the offer names one that is good; ``CH-9 (good)`` where it names one
    on hold or scrapped, since its good pieces are told apart; else the id of the specification, or
    ``new`` and its kind where it has none. Offers of the same specification share one id; ids that
    would be alike without regard to case get a number at the end.
    """
    taken = {gear.id.casefold() for gear in day.gear}
    known: dict[Gear, str] = {}
    found: list[str] = []
    for offer in offers:
        one = replace(offer.specification, quantity=1)
        owned = day.gear_by_id.get(one.id)
        if owned is not None and owned.condition is Condition.GOOD:
            found.append(owned.id)
            continue
        if one not in known:
            known[one] = _free(_wanted(one, owned), taken)
            taken.add(known[one].casefold())
        found.append(known[one])
    return found


def _wanted(one: Gear, owned: Gear | None) -> str:
    if owned is not None:
        return f"{owned.id} (good)"
    return one.id or f"new {one.kind.value}"


def _free(wanted: str, taken: set[str]) -> str:
    name, number = wanted, 1
    while name.casefold() in taken:
        number += 1
        name = f"{wanted} {number}"
    return name
