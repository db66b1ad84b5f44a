"""Whether a changed day lets given loads go: planned, and judged."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, fields

from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.judge.judge import judge
from loadplan.outcome.tie_down import Shown
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.sets import sets_of
from loadplan.problems import JudgementDisagrees
from loadplan.purchase.cheapest import cheapest_purchase
from loadplan.purchase.owned import with_purchase
from loadplan.purchase.program import purchase_program
from loadplan.purchase.purchase import Purchase
from loadplan.shortfall.servable import MOST_TOGETHER, Servable

_EACH = 5.0  # seconds for one question
_FEW = 60  # loads of a day whose every question is asked of one program


@dataclass(slots=True)
class Planner:
    """Plans changed days within the time; ``open`` tells of questions that were not settled.

    ``first`` are some of the loads that the gear will hardly do for, fewest first: each of these
    groups is looked at before all loads are, without whole numbers. ``known`` are the questions
    that can be asked of days by now; those of which only the times of trips differ share one.
    """

    clock: Clock
    known: list[Servable] = field(default_factory=list)
    open: bool = False

    def goes(self, day: Day, loads: Collection[str], *first: Collection[str]) -> bool | None:
        """Whether ``loads`` can all go on ``day``; None where that was not settled."""
        try:
            return self._goes(day, loads, first)
        except OutOfTimeError:
            self.open = True
            return None

    def buys(
        self,
        day: Day,
        loads: Collection[str],
        offers: Sequence[Price],
        *first: Collection[str],
    ) -> Purchase | None:
        """The cheapest purchase of ``offers`` with which ``loads`` go; None where none was found.

        Raises ``JudgementDisagrees`` where the judgement does not agree that they do.
        """
        try:
            return self._bought(day, loads, offers, first)
        except OutOfTimeError:
            self.open = True
            return None

    def _goes(self, day: Day, loads: Collection[str], first: Sequence[Collection[str]]) -> bool:
        self.clock.tick()
        asked: list[Servable] = []
        for group in first:
            if len(group) <= MOST_TOGETHER:
                asked.append(self._asked(day, group, asked))
                if asked[-1].denial([*group], ()) is not None:
                    return False
        plan = self._asked(day, loads, asked).plan(loads)
        if plan is not None:
            _judged(day, loads, plan)
        return plan is not None

    def _asked(self, day: Day, loads: Collection[str], before: Sequence[Servable] = ()) -> Servable:
        """What can be asked about ``loads`` on ``day``, of which ``before`` were asked already."""
        clock = Clock(self._seconds())
        for ask in (*reversed(before), *self.known):
            if _times_alone_differ(day, ask.program.day) and ask.place.keys() >= {*loads}:
                return ask.at_times_of(day, clock)
        few = len(day.loads) <= _FEW
        every = [load.id for load in day.loads] if few else loads
        made = Servable.of(day, sets_of(day), clock, every)
        if few:
            self.known.append(made)
        return made

    def _bought(
        self,
        day: Day,
        loads: Collection[str],
        offers: Sequence[Price],
        first: Sequence[Collection[str]],
    ) -> Purchase | None:
        self.clock.tick()
        for group in first:
            if len(group) <= MOST_TOGETHER and self._denied(day, group, offers):
                return None
        if len(loads) > MOST_TOGETHER:
            raise OutOfTimeError
        found = cheapest_purchase(day, loads, offers, seconds=self._seconds())
        if found is None:
            return None
        then = with_purchase(day, found)
        if found.plan is not None:
            _judged(then, loads, found.plan)
        elif not self._goes(then, loads, ()):
            # The kinds bought have other ids than those offered.
            raise JudgementDisagrees(("a purchase does not make its loads ready",))
        return found

    def _denied(self, day: Day, loads: Collection[str], offers: Sequence[Price]) -> bool:
        """Whether it is plain without whole numbers that ``loads`` cannot all go."""
        ask = Servable.by(purchase_program(day, loads, offers), Clock(self._seconds()))
        return ask.denial([*loads], ask.kinds) is not None

    def _seconds(self) -> float:
        return min(_EACH, self.clock.left())


def _times_alone_differ(day: Day, other: Day) -> bool:
    """Whether ``day`` was made from ``other`` by changing trips, or is ``other``."""
    rest = (one.name for one in fields(Day) if one.name != "loads")
    return all(getattr(day, name) is getattr(other, name) for name in rest)


def _judged(day: Day, loads: Collection[str], plan: Shown) -> None:
    ready, tie_downs = plan
    judgement = judge(day, ready, tie_downs)
    if judgement.disagreements or set(ready) != set(loads):
        raise JudgementDisagrees(judgement.disagreements)
