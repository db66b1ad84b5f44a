"""The ways out of one held load, each planned and judged, no money first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.day.gear import Condition, Price
from loadplan.outcome.held import Conflict, Way, WayOut
from loadplan.purchase.money import money
from loadplan.purchase.owned import with_purchase
from loadplan.purchase.purchase import Purchase
from loadplan.shortfall.delay import Delay, least_delay, moved
from loadplan.shortfall.near import near
from loadplan.shortfall.planned import Planner
from loadplan.shortfall.policy import otherwise
from loadplan.shortfall.words import kind_words
from loadplan.text import count, names

MOST = 3
_DELAYS = 0.5  # share of the time left: there are many to try
_STAY = "Every other load that is ready stays ready"


@dataclass(slots=True)
class Ways:
    """Looks for ways out of ``load`` on ``day``; ``ready`` go without it, ``held`` do not."""

    day: Day
    load: str
    ready: Sequence[str]
    held: Sequence[str]
    conflicts: Sequence[Conflict]
    plan: Planner

    @property
    def wanted(self) -> list[str]:
        """Loads that are to go: those that are ready, and this one."""
        going = {*self.ready, self.load}
        return [load.id for load in self.day.loads if load.id in going]

    def find(self) -> tuple[WayOut, ...]:
        """Up to three, different in kind."""
        found: list[WayOut] = []
        looks: tuple[Callable[[], WayOut | None], ...] = (
            self._repair,
            self._delay,
            self._purchase,
            self._policy,
            self._swap,
        )
        for look in looks:
            one = look() if len(found) < MOST else None
            if one is not None:
                found.append(one)
        return tuple(found)

    def _repair(self) -> WayOut | None:
        offers = [
            Price(specification=gear, price=Fraction(1), most=gear.quantity)
            for gear in self.day.gear
            if gear.condition is Condition.HOLD and gear.quantity
        ]
        found = self._bought(offers)
        if found is None:
            return None
        pieces = names([f"{n:,} x {o.specification.id}" for o, n in found.lines])
        fewest = "" if found.proved else " (fewer are not ruled out)"
        return WayOut(
            way=Way.REPAIR,
            text=f"Inspect and pass {pieces}, now on hold, as good{fewest}.",
            price=count(found.pieces, "piece") + " to pass",
            elsewhere=self._elsewhere(with_purchase(self.day, found)),
        )

    def _delay(self) -> WayOut | None:
        if not self.conflicts:
            return None
        rank = {load: -self.day.load_by_id[load].priority for load in self._in_every_conflict}
        movable = sorted(rank, key=lambda load: (load != self.load, rank[load]))
        first = self.conflicts[0].loads
        with self.plan.clock.at_most(_DELAYS):
            found = least_delay(self.day, self.wanted, first, movable, self.plan)
        if found is None:
            return None
        then = moved(self.day, found.load, found.minutes)
        return WayOut(
            way=Way.DELAY,
            text=self._leave(found, then),
            price=f"{count(found.minutes, 'minute')}"
            + ("" if found.least else ", not proved least"),
            elsewhere=self._elsewhere(then, self._trailer_back(found, then)),
        )

    @property
    def _in_every_conflict(self) -> list[str]:
        """Loads without which no conflict would be left; no other alone makes a difference."""
        if not self.conflicts:
            return []
        first, *rest = self.conflicts
        return [load for load in first.loads if all(load in one.loads for one in rest)]

    def _leave(self, found: Delay, then: Day) -> str:
        old, new = self.day.load_by_id[found.load], then.load_by_id[found.load]
        clock = self.day.clock
        return (
            f"Let load {found.load} leave at {clock(new.out)} instead of {clock(old.out)}, back "
            f"{clock(new.back)} instead of {clock(old.back)}."
        )

    def _trailer_back(self, found: Delay, then: Day) -> str:
        new = then.load_by_id[found.load]
        who = [f"trailer {new.trailer}"] if new.trailer else []
        who += [new.driver] if new.driver else []
        return f"; {names(who) or f'load {new.id}'} back at {self.day.clock(new.back)}"

    def _purchase(self) -> WayOut | None:
        found = self._bought(self.day.prices)
        if found is None:
            return None
        currency = self.day.currency
        least = "" if found.proved else ", not proved least"
        return WayOut(
            way=Way.PURCHASE,
            text=f"Buy {_bought(found, currency)}.",
            price=money(found.cost, currency) + least,
            elsewhere=self._elsewhere(with_purchase(self.day, found)),
        )

    def _bought(self, offers: Sequence[Price]) -> Purchase | None:
        if not offers:
            return None
        beside = near(self.day, self.wanted, self.load)
        return self.plan.buys(self.day, self.wanted, offers, [self.load], beside)

    def _policy(self) -> WayOut | None:
        for other in otherwise(self.day):
            try:
                goes = self.plan.goes(other.day, self.wanted, [self.load])
            except ValueError:
                # The other reading needs a figure that the workbook does not give.
                continue
            if goes:
                return WayOut(
                    way=Way.POLICY,
                    text=f"Plan {other.text}.",
                    price="no money; the yard's own rule",
                    elsewhere=self._elsewhere(other.day, "; the rule counts for every load"),
                )
        return None

    def _swap(self) -> WayOut | None:
        others = [load for load in self._in_every_conflict if load != self.load]
        others.sort(key=lambda load: -self.day.load_by_id[load].priority)
        for other in others:
            going = [load for load in self.wanted if load != other]
            if self.plan.goes(self.day, going):
                return WayOut(
                    way=Way.SWAP,
                    text=f"Send {self._ranked(self.load)} in place of {self._ranked(other)}.",
                    price="one load",
                    elsewhere=f"Load {other} stays; every other load that is ready stays ready.",
                )
        return None

    def _ranked(self, load: str) -> str:
        """A load with its priority: a swap may let one of a later priority go first."""
        return f"load {load} (priority {self.day.load_by_id[load].priority})"

    def _elsewhere(self, then: Day, more: str = "") -> str:
        """What else changes: who stays held, and who would go first by priority."""
        held = sorted(self.held, key=lambda load: (load.casefold(), load))
        first = [load for load in held if self._goes_first(load, then)]
        text = f"{_STAY}{more}."
        if first:
            text += (
                f" By priority the plan may send load {names(first, 'or')} with it instead: to "
                f"send load {self.load}, give it the better priority on Loads."
            )
        return text

    def _goes_first(self, other: str, then: Day) -> bool:
        if other == self.load:
            return False
        by_id = self.day.load_by_id
        before = by_id[other].priority <= by_id[self.load].priority
        going = [load.id for load in then.loads if load.id in {*self.ready, other}]
        return before and bool(self.plan.goes(then, going, near(then, going, other)))


def _bought(found: Purchase, currency: str) -> str:
    return names([" ".join(_line(offer, n, currency)) for offer, n in found.lines])


def _line(offer: Price, pieces: int, currency: str) -> Iterator[str]:
    one = offer.specification
    yield f"{pieces:,} x {one.id or kind_words(one)}"
    yield f"({kind_words(one)})" if one.id else ""
    yield f"at {money(offer.price, currency)}"
