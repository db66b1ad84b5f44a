"""The clock of the day cut into equal slots, for strips and charts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.day.load import DAY_END

_MOST = 28
_HOUR = 3600
_STEPS = (1800, _HOUR, 2 * _HOUR, 3 * _HOUR, 6 * _HOUR, 12 * _HOUR, DAY_END)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slots:
    """``count`` slots of ``step`` seconds from ``start`` (seconds from the day's midnight)."""

    start: int
    step: int
    count: int

    def begins(self, slot: int) -> int:
        """The moment at which ``slot`` begins."""
        return self.start + slot * self.step

    def touched(self, begin: int, end: int) -> range:
        """The slots that [``begin``, ``end``) has a part in."""
        first = max(0, (begin - self.start) // self.step)
        last = min(self.count, -((self.start - end) // self.step))
        return range(first, last)

    def highest(self, timeline: Sequence[tuple[int, int]]) -> list[int]:
        """The highest value within each slot of a step curve of (moment, value from then on)."""
        found = [0] * self.count
        ends = [moment for moment, _ in timeline[1:]] + [self.begins(self.count)]
        for (moment, value), end in zip(timeline, ends, strict=True):
            for slot in self.touched(moment, end):
                found[slot] = max(found[slot], value)
        return found


def slots_of(day: Day, ends: Iterable[int] = ()) -> Slots:
    """Slots from the first departure to the last return of the day, or to the last of ``ends``.

    Half hours where they are few enough, else longer ones.
    """
    first = min((load.out for load in day.loads), default=0)
    last = max([*(load.back for load in day.loads), *ends], default=DAY_END)
    for step in _STEPS:
        start = first // step * step
        count = max(1, -((start - last) // step))
        if count <= _MOST:
            return Slots(start=start, step=step, count=count)
    step = DAY_END * -((first - last) // (DAY_END * (_MOST - 1)))
    start = first // step * step
    return Slots(start=start, step=step, count=max(1, -((start - last) // step)))
