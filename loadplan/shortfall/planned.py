"""Whether a changed day lets given loads go: planned, and judged."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.judge.judge import judge
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.problems import JudgementDisagrees
from loadplan.purchase.cheapest import cheapest_purchase
from loadplan.purchase.owned import with_purchase
from loadplan.purchase.program import purchase_program
from loadplan.purchase.purchase import Purchase
from loadplan.shortfall.relaxed import Relaxed
from loadplan.shortfall.servable import MOST_TOGETHER

_EACH = 5.0  # seconds for one question


@dataclass(slots=True)
class Planner:
    """Plans changed days within the time; ``open`` tells of questions that were not settled.

    ``first`` are some of the loads that the gear will hardly do for, fewest first: each of these
    groups is looked at before all loads are, without whole numbers.
    """

    clock: Clock
    open: bool = False

    def goes(self, day: Day, loads: Collection[str], *first: Collection[str]) -> bool | None:
        """Whether ``loads`` can all go on ``day``; None where that was not settled."""
        try:
            return self._bought(day, loads, (), first) is not None
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

    def _seconds(self) -> float:
        return min(_EACH, self.clock.left())

    def _bought(
        self,
        day: Day,
        loads: Collection[str],
        offers: Sequence[Price],
        first: Sequence[Collection[str]],
    ) -> Purchase | None:
        self.clock.tick()
        few = (group for group in first if len(group) <= MOST_TOGETHER)
        if any(self._denied(day, group, offers) for group in few):
            return None
        if len(loads) > MOST_TOGETHER:
            raise OutOfTimeError
        found = cheapest_purchase(day, loads, offers, seconds=self._seconds())
        if found is None:
            return None
        if found.plan is None:
            # The kinds bought have other ids than those offered: plan with what was bought.
            self._must_go(with_purchase(day, found), loads)
            return found
        self._judge(with_purchase(day, found), loads, found)
        return found

    def _denied(self, day: Day, loads: Collection[str], offers: Sequence[Price]) -> bool:
        """Whether it is plain without whole numbers that ``loads`` cannot all go."""
        program = purchase_program(day, loads, offers)
        names, matrix = program.names, program.matrix
        mine = [one.load.id for one in program.sets.loads]
        relaxed = Relaxed.of(matrix, mine, program.ready, names, program.bought)
        return relaxed.denial(mine, names, self._seconds()) is not None

    def _must_go(self, day: Day, loads: Collection[str]) -> None:
        again = cheapest_purchase(day, loads, (), seconds=self._seconds())
        if again is None:
            raise JudgementDisagrees(("a purchase does not make its loads ready",))
        self._judge(day, loads, again)

    def _judge(self, day: Day, loads: Collection[str], found: Purchase) -> None:
        assert found.plan is not None
        ready, tie_downs = found.plan
        judgement = judge(day, ready, tie_downs)
        if judgement.disagreements or set(ready) != set(loads):
            raise JudgementDisagrees(judgement.disagreements)
