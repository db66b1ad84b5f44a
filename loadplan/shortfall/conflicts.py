"""The conflicts that hold a load: irreducible sets of loads and kinds of gear."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.outcome.held import Conflict
from loadplan.shortfall.irreducible import Fails, confirmed, irreducible, narrowed
from loadplan.shortfall.near import apart, near
from loadplan.shortfall.relaxed import Denial, Relaxed
from loadplan.shortfall.servable import Servable

_MOST = 4
_SHARE = 0.2  # of the time left, for proving that no load, or no kind, can be left out


def conflicts_of(
    day: Day, ask: Servable, ready: Sequence[str], held: str
) -> tuple[list[Conflict], bool | None]:
    """The conflicts between ``held`` and ``ready``, and whether all can go once these are solved.

    Each is found with the kinds of those before it in plenty. The second value is None where that
    was not settled, or there may be more conflicts.
    """
    found: list[Conflict] = []
    free: set[str] = set()
    order = _order(day, ready, held)
    meets = near(day, order, held)
    while len(found) < _MOST:
        others, answer = _in_the_way(ask, meets, order, held, free)
        if answer is not False:
            return found, answer
        one = _Search(day, ask, held, frozenset(free)).conflict(others)
        if one is None:
            return found, None
        found.append(one)
        free.update(one.gear)
    return found, None


def _in_the_way(
    ask: Servable, meets: Sequence[str], order: Sequence[str], held: str, free: set[str]
) -> tuple[list[str], bool | None]:
    """Loads beside which ``held`` cannot go, and whether it can go beside all of ``order``."""
    if ask.clock.over():
        return [], None
    # What cannot go alone cannot go beside others, and is soon told. Mostly it is the loads out at
    # the same time that stand in the way, and mostly fractions tell.
    if ask.can([held], free) is False:
        return [], False
    for others in (meets, order) if len(meets) < len(order) else (order,):
        denial = ask.denial([*others, held], free)
        if denial is not None and held in denial.loads:
            return [load for load in others if load in denial.loads], False
    return list(order), ask.can([*order, held], free)


def _order(day: Day, ready: Sequence[str], held: str) -> list[str]:
    """Loads out at the same time first, then the least important first."""

    def rank(load: str) -> tuple[bool, int, str, str]:
        priority = day.load_by_id[load].priority
        return apart(day, load, held), -priority, load.casefold(), load

    return sorted(ready, key=rank)


@dataclass(frozen=True, slots=True)
class _Search:
    """The search for one conflict of ``held``, with the kinds ``free`` in plenty.

    Fractions narrow it down: they are asked in a fraction of the time. Whole numbers have the last
    word on whether a load or a kind could be left out.
    """

    day: Day
    ask: Servable
    held: str
    free: frozenset[str]

    def conflict(self, others: Sequence[str]) -> Conflict | None:
        """A conflict of ``held`` with some of ``others``, beside all of which it cannot go."""
        relaxed = self.ask.relaxed([*others, self.held])
        loads, sure = self._loads(relaxed, others)
        # By id, so that the rows of the workbook may stand in any order.
        loads = sorted([*loads, self.held], key=lambda load: (load.casefold(), load))
        kinds = self._kinds(relaxed, loads)
        if kinds is None:
            return None
        gear, settled = kinds
        rest = [kind for kind in self.ask.kinds if kind not in gear]
        answer = self.ask.extra(loads, rest, gear)
        if not answer.can:
            return None
        by_id = self.day.load_by_id
        return Conflict(
            loads=tuple(loads),
            gear=tuple(kind for kind in self.ask.kinds if kind in gear),
            first=min(by_id[load].out for load in loads),
            last=max(by_id[load].back for load in loads),
            usable=sum(self.day.gear_by_id[kind].usable for kind in gear),
            lacking=tuple(answer.extra.items()),
            irreducible=sure and settled,
            least=answer.least,
        )

    def _loads(self, relaxed: Relaxed, others: Sequence[str]) -> tuple[list[str], bool]:
        def reason(kept: Sequence[str]) -> Sequence[str] | None:
            denial = self._denial(relaxed, [*kept, self.held], self.free)
            return None if denial is None else denial.loads

        def fails(kept: Sequence[str]) -> bool | None:
            return _not(self.ask.can([*kept, self.held], self.free))

        if reason(others) is None:
            return irreducible(others, fails)
        return self._confirmed(narrowed(others, reason), fails)

    def _kinds(self, relaxed: Relaxed, loads: Sequence[str]) -> tuple[list[str], bool] | None:
        """Kinds of which there are too few for ``loads``; None where that was not settled."""

        def plenty(kept: Sequence[str]) -> list[str]:
            return [kind for kind in self.ask.kinds if kind not in kept]

        def reason(kept: Sequence[str]) -> Sequence[str] | None:
            denial = self._denial(relaxed, loads, plenty(kept))
            return None if denial is None else denial.kinds

        def fails(kept: Sequence[str]) -> bool | None:
            return _not(self.ask.can(loads, plenty(kept)))

        limited = [kind for kind in self.ask.kinds if kind not in self.free]
        if reason(limited) is not None:
            return self._confirmed(narrowed(limited, reason), fails)
        return irreducible(limited, fails) if fails(limited) else None

    def _confirmed(self, members: Sequence[str], fails: Fails) -> tuple[list[str], bool]:
        with self.ask.clock.at_most(_SHARE):
            return confirmed(members, fails, self.ask.clock.left())

    def _denial(
        self, relaxed: Relaxed, loads: Sequence[str], free: Collection[str]
    ) -> Denial | None:
        return relaxed.denial(loads, free, self.ask.seconds())


def _not(answer: bool | None) -> bool | None:
    return None if answer is None else not answer
