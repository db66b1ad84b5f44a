"""The least delay of one departure that frees the gear."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from loadplan.day.day import Day
from loadplan.day.load import DAY_END, Load
from loadplan.shortfall.near import near
from loadplan.shortfall.planned import Planner

MINUTE = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Delay:
    """A trip moved as a whole by ``minutes``; ``least``: proved that no smaller one does."""

    load: str
    minutes: int
    least: bool


def least_delay(
    day: Day, wanted: Sequence[str], conflict: Sequence[str], movable: Sequence[str], plan: Planner
) -> Delay | None:
    """The least delay of one of ``movable`` with which all of ``wanted`` go; None where none does.

    ``conflict`` are some of ``wanted`` that cannot all go as the day stands.

    Out and Back move together, so the gear is out as long as before. Going later helps only once
    a load is back that was out at the same time, so the moments at which gear comes back are the
    ones to try, in order. Trips stay on their days and before the next trip of trailer and driver.
    """
    # Gear that is on a load by Fixed is out with it, whether the load goes or not.
    takers = {*conflict, *(piece.load for piece in day.fixed)}
    steps = sorted(
        (minutes, at, load)
        for at, load in enumerate(movable)
        for minutes in _steps(day, day.load_by_id[load])
    )
    least = True
    for minutes, _, load in steps:
        later = moved(day, load, minutes)
        meets = near(later, wanted, load)
        if set(near(day, takers, load)) <= set(near(later, takers, load)):
            # All that were out together still are.
            continue
        goes = plan.goes(later, wanted, {*conflict, *meets})
        if goes:
            return Delay(load=load, minutes=minutes, least=least)
        least = least and goes is False
    return None


def moved(day: Day, load: str, minutes: int) -> Day:
    """``day`` with Out and Back of ``load`` later by ``minutes``."""
    later = minutes * MINUTE
    loads = tuple(
        replace(one, out=one.out + later, back=one.back + later) if one.id == load else one
        for one in day.loads
    )
    return replace(day, loads=loads)


def _steps(day: Day, load: Load) -> Iterator[int]:
    """Minutes by which ``load`` would leave when some other's gear is free again."""
    found = {
        -(-(other.back + day.turnaround - load.out) // MINUTE)
        for other in day.loads
        if other.id != load.id and other.back + day.turnaround > load.out
    }
    for minutes in sorted(found):
        if _fits(day, load, minutes * MINUTE):
            yield minutes


def _fits(day: Day, load: Load, later: int) -> bool:
    """Whether the moved trip stays on its days and before trailer's and driver's next trips."""
    out, back = load.out + later, load.back + later
    if out // DAY_END != load.out // DAY_END:
        return False
    if -(-back // DAY_END) != -(-load.back // DAY_END):
        return False
    return all(
        other.out < load.back or back <= other.out
        for other in day.loads
        if other.id != load.id and _together(load, other)
    )


def _together(load: Load, other: Load) -> bool:
    same_trailer = load.trailer is not None and load.trailer == other.trailer
    return same_trailer or (bool(load.driver) and load.driver.casefold() == other.driver.casefold())
