"""The reading of every disputed point that one day takes, with what it rests on."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.rules.switch import Switch
from loadplan.rules.switches import SWITCHES
from loadplan.text import mass

_OWN_FIGURE = "the yard's own figure"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRow:
    """One disputed point on one day.

    ``taken`` is the word of the reading, or the yard's own figure; ``chosen`` whether the
    workbook chose it (``chosen``) or nobody did (``default``); ``others`` are the other words.
    """

    rule: str
    asks: str
    taken: str
    chosen: str
    rests_on: str
    certainty: str
    others: tuple[str, ...]


def reading_rows(day: Day) -> tuple[ReadingRow, ...]:
    """Every disputed point as ``day`` reads it, in the order of the switches."""
    stated = {name.casefold() for name in day.house.stated}
    return tuple(_row(day, switch, switch.name.casefold() in stated) for switch in SWITCHES)


def taken_word(day: Day, switch: Switch) -> str:
    """The word of the reading ``day`` takes, or the yard's own figure where it is none of them."""
    taken = switch.taken(day.house, day.rules)
    if taken is not None:
        return taken.word
    figure = getattr(day.house, switch.field)
    return mass(figure, day.units) if isinstance(figure, Fraction) else str(figure)


def _row(day: Day, switch: Switch, stated: bool) -> ReadingRow:
    taken = switch.taken(day.house, day.rules)
    return ReadingRow(
        rule=switch.name,
        asks=switch.asks,
        taken=taken_word(day, switch),
        chosen="chosen" if stated else "default",
        rests_on=_OWN_FIGURE if taken is None else taken.rests_on,
        certainty="" if taken is None else taken.certainty,
        others=tuple(one.word for one in switch.others(day.house, day.rules)),
    )
