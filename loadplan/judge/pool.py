"""How many pieces of each kind of gear are out at every moment of the day.

A piece is out from the moment its load is out until it is free again: back plus turnaround for
the cage, back for a trailer's kit. It is free exactly then, so gear that comes back at a moment
can leave at that moment.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.outcome.tie_down import TieDown
from loadplan.text import count, names


@dataclass(frozen=True, slots=True, kw_only=True)
class GearUse:
    """How one kind of gear is used over the day.

    ``most`` pieces are out at once, first at the moment ``when`` (seconds from the day's
    midnight; None where none is ever out), and ``left`` of the ``usable`` ones then stay.
    ``timeline`` holds (moment, pieces out from then on), in time order, one entry per change.
    """

    gear: str
    usable: int
    most: int
    when: int | None
    left: int
    timeline: tuple[tuple[int, int], ...]


def most_out(day: Day, tie_downs: Iterable[TieDown], ready: Iterable[str]) -> dict[str, GearUse]:
    """The use of every kind of gear of ``day``, by id, in workbook order.

    Counted are the tie-downs of ready loads and, for held loads, the gear already on them.
    Pieces the day does not have are left out; they are a disagreement of their own.
    """
    taken = pieces_out(day, tie_downs, ready)
    return {gear: _use(day, gear, taken.get(gear, {})) for gear in day.gear_by_id}


def pieces_out(
    day: Day, tie_downs: Iterable[TieDown], ready: Iterable[str]
) -> dict[str, Counter[str]]:
    """How many pieces of each kind of gear (by id) each load takes (by load id).

    A negative number of pieces frees none.
    """
    going = set(ready)
    found: dict[str, Counter[str]] = {}
    for tie_down in tie_downs:
        if tie_down.load in going and tie_down.load in day.load_by_id:
            for gear, pieces in tie_down.pieces().items():
                found.setdefault(gear, Counter())[tie_down.load] += max(0, pieces)
    for piece in day.fixed:
        if piece.load not in going:
            found.setdefault(piece.gear, Counter())[piece.load] += 1
    return found


def overdrawn(day: Day, tie_downs: Iterable[TieDown], ready: Iterable[str]) -> Iterator[str]:
    """A sentence for each kind of gear of which more is out at a departure than can be used.

    The first such departure is named and, where more are out later, the worst one too.
    """
    taken = pieces_out(day, tie_downs, ready)
    for gear, by_load in taken.items():
        if gear not in day.gear_by_id:
            continue
        use = _use(day, gear, by_load)
        if use.most <= use.usable:
            continue
        first = next((moment, out) for moment, out in use.timeline if out > use.usable)
        worst = next((moment, out) for moment, out in use.timeline if out == use.most)
        for moment, out in dict.fromkeys([first, worst]):
            yield _sentence(day, use, by_load, moment, out)


def _use(day: Day, gear: str, by_load: Mapping[str, int]) -> GearUse:
    kind = day.gear_by_id[gear]
    changes: Counter[int] = Counter()
    for load_id, pieces in by_load.items():
        load = day.load_by_id[load_id]
        changes[load.out] += pieces
        changes[day.free_again(load, kind)] -= pieces
    out = most = 0
    when: int | None = None
    timeline: list[tuple[int, int]] = []
    for moment in sorted(changes):
        if not changes[moment]:
            continue
        out += changes[moment]
        timeline.append((moment, out))
        if out > most:
            most, when = out, moment
    return GearUse(
        gear=gear,
        usable=kind.usable,
        most=most,
        when=when,
        left=kind.usable - most,
        timeline=tuple(timeline),
    )


def _sentence(day: Day, use: GearUse, by_load: Mapping[str, int], moment: int, out: int) -> str:
    kind = day.gear_by_id[use.gear]
    away = [
        load.id
        for load in day.loads
        if by_load.get(load.id) and load.out <= moment < day.free_again(load, kind)
    ]
    return (
        f"Gear {use.gear}: {count(out, 'piece')} out at {day.clock(moment)} "
        f"({'load' if len(away) == 1 else 'loads'} {names(away)}), "
        f"and {use.usable:,} can be used."
    )
