"""The conflicts that hold a load: irreducible sets of loads and kinds of gear."""

from __future__ import annotations

from collections.abc import Sequence

from loadplan.day.day import Day
from loadplan.outcome.held import Conflict
from loadplan.shortfall.irreducible import irreducible
from loadplan.shortfall.servable import Servable

_MOST = 4


def conflicts_of(
    day: Day, ask: Servable, ready: Sequence[str], held: str
) -> tuple[list[Conflict], bool | None]:
    """The conflicts between ``held`` and ``ready``, and whether all can go once these are solved.

    Each is found with the kinds of those before it in plenty. The second value is None where that
    was not settled, or there may be more conflicts.
    """
    found: list[Conflict] = []
    free: set[str] = set()
    while len(found) < _MOST:
        # What cannot go alone cannot go beside others, and is soon told.
        alone = ask.can([held], free)
        answer = alone if alone is False else ask.can([*ready, held], free)
        if answer is not False:
            return found, answer
        others = [] if alone is False else _order(day, ready, held)
        one = _conflict(day, ask, others, held, free)
        if one is None:
            return found, None
        found.append(one)
        free.update(one.gear)
    return found, None


def _order(day: Day, ready: Sequence[str], held: str) -> list[str]:
    """Loads out at the same time first, then the least important first."""
    mine, end = day.load_by_id[held], day.turnaround

    def rank(load: str) -> tuple[bool, int, str, str]:
        one = day.load_by_id[load]
        apart = one.back + end <= mine.out or mine.back + end <= one.out
        return apart, -one.priority, load.casefold(), load

    return sorted(ready, key=rank)


def _conflict(
    day: Day, ask: Servable, others: Sequence[str], held: str, free: set[str]
) -> Conflict | None:
    def loads_fail(kept: Sequence[str]) -> bool | None:
        return _not(ask.can([*kept, held], free))

    loads, sure = irreducible(others, loads_fail)
    # By id, so that the rows of the workbook may stand in any order.
    loads = sorted([*loads, held], key=lambda load: (load.casefold(), load))

    def kinds_fail(kept: Sequence[str]) -> bool | None:
        return _not(ask.can(loads, [kind for kind in ask.kinds if kind not in kept]))

    limited = [kind for kind in ask.kinds if kind not in free]
    if kinds_fail(limited) is not True:
        return None
    gear, settled = irreducible(limited, kinds_fail)
    rest = [kind for kind in ask.kinds if kind not in gear]
    answer = ask.extra(loads, rest, gear)
    if not answer.can:
        return None
    usable = sum(day.gear_by_id[kind].usable for kind in gear)
    return Conflict(
        loads=tuple(loads),
        gear=tuple(kind for kind in ask.kinds if kind in gear),
        first=min(day.load_by_id[load].out for load in loads),
        last=max(day.load_by_id[load].back for load in loads),
        need=usable + sum(answer.extra.values()),
        usable=usable,
        irreducible=sure and settled,
        least=answer.least,
    )


def _not(answer: bool | None) -> bool | None:
    return None if answer is None else not answer
