"""House rules of the day that cost gear: each left out, or read otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from loadplan.day.day import Day
from loadplan.day.house import HouseRules
from loadplan.rules.readings import taken_word
from loadplan.rules.switch import Switch
from loadplan.rules.switches import switch_named
from loadplan.workbook.lines import HOUSE_LINES


@dataclass(frozen=True, slots=True, kw_only=True)
class Otherwise:
    """The day with one line of ``House rules`` changed, and the change in words."""

    rule: str
    text: str
    day: Day


def otherwise(day: Day) -> Iterator[Otherwise]:
    """``day`` without each line of its house rules, then with the other readings of each."""
    for line in HOUSE_LINES:
        name = _stated(day, line.name)
        if name is None:
            continue
        default = getattr(HouseRules(), line.field)
        if default != getattr(day.house, line.field):
            text = f"without the house rule {line.name} (then: {line.default})"
            yield Otherwise(rule=line.name, text=text, day=_with(day, line.field, default, name))
        switch = switch_named(line.name)
        if switch is not None:
            yield from _read_otherwise(day, switch, default)


def _read_otherwise(day: Day, switch: Switch, default: Any) -> Iterator[Otherwise]:
    """``day`` with the point read in each way that is neither taken nor the default."""
    was = taken_word(day, switch)
    for reading in switch.others(day.house, day.rules):
        if reading.value != default and reading is not switch.default(day.rules):
            text = f"with the house rule {switch.name} read as {reading.word} instead of {was}"
            changed = _with(day, switch.field, reading.value, None)
            yield Otherwise(rule=switch.name, text=text, day=changed)


def _stated(day: Day, name: str) -> str | None:
    return next((one for one in day.house.stated if one.casefold() == name.casefold()), None)


def _with(day: Day, field: str, value: Any, dropped: str | None) -> Day:
    stated = {name: row for name, row in day.house.stated.items() if name != dropped}
    changes: dict[str, Any] = {field: value, "stated": stated}
    return replace(day, house=replace(day.house, **changes))
