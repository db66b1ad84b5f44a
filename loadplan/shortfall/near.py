"""Which loads are out at the same time."""

from __future__ import annotations

from collections.abc import Collection

from loadplan.day.day import Day


def apart(day: Day, load: str, other: str) -> bool:
    """Whether the gear of one of two loads is free again before the other leaves."""
    one, two = day.load_by_id[load], day.load_by_id[other]
    return one.back + day.turnaround <= two.out or two.back + day.turnaround <= one.out


def near(day: Day, loads: Collection[str], load: str) -> list[str]:
    """Those of ``loads`` that are out at the same time as ``load``, itself among them."""
    return [other for other in loads if not apart(day, other, load)]
