"""Buying from Python: the least-cost purchase of a day, planned and judged like any other day."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.progress import Progress
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.problems import Code, Place, Problem, WorkbookRejected
from loadplan.purchase.bought import Bought, Stay
from loadplan.purchase.cheapest import settle
from loadplan.purchase.curve import curve_of, point_at
from loadplan.purchase.money import money
from loadplan.purchase.owned import with_purchase
from loadplan.purchase.point import Curve, Point
from loadplan.purchase.program import purchase_program
from loadplan.purchase.purchase import Purchase, purchase_of
from loadplan.purchase.search import Search
from loadplan.purchase.seen import agrees, counts, order, seen
from loadplan.purchase.stay import Staying
from loadplan.purchase.ties import equals_of
from loadplan.text import count

# Shares of the time that is left when their turn comes.
_SEARCH, _BEFORE, _EQUALS, _PLAN, _EXPLAIN = 0.6, 0.3, 0.2, 0.7, 0.5
_MOST_EQUALS = 12
NO_TIME = (
    "The time limit came before a purchase was found: the plan is of what the cage has. "
    "Give it longer with --time-limit."
)
NOT_COMPARED = (
    "Other purchases of the same cost and pieces were not all compared: one of them might make "
    "a plan of fewer tie-downs, fewer mixed sets or less rated strength."
)
NOT_SEEN = "The time limit came before a plan with every load the purchase is for was found."
NO_PRICES = Problem(
    code=Code.NO_ROWS,
    place=Place(sheet="Prices"),
    found="There are no prices, so nothing can be bought.",
    remedy="Write on the sheet Prices what can be had, one row for each kind of piece.",
)


def buy(
    day: Day,
    *,
    budget: Fraction | None = None,
    time_limit: Fraction | float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Bought:
    """What to buy of ``day.prices``.

    Without ``budget`` the least-cost purchase that makes every load ready or, where none does, the
    most loads in the plan's order; with it the most loads for the money, and the whole curve. Of
    equal cost the fewest pieces, then the plan that comes first in the plan's order. The day is
    planned anew with every purchase that is told, and judged. ``time_limit`` is in seconds, for
    all of it. Raises ``WorkbookRejected`` where there are no prices, ``SolverFailed`` where plan
    and purchase contradict each other, and what :func:`loadplan.api.plan_day` raises.
    """
    if not day.prices:
        raise WorkbookRejected([NO_PRICES])
    seconds = float(day.time_limit if time_limit is None else time_limit)
    return _Buying(day, budget, Clock(seconds, progress)).run()


def write_bought(bought: Bought, path: Path | str, *, force: bool = False) -> None:
    """Write the results workbook of a purchase to ``path``; see ``loadplan.api.write_results``."""
    from loadplan.results.save import save_results

    save_results(bought.plan, Path(path), force=force, bought=bought)


@dataclass(slots=True)
class _Buying:
    day: Day
    budget: Fraction | None
    clock: Clock

    def run(self) -> Bought:
        search = Search(
            purchase_program(self.day, [load.id for load in self.day.loads], self.day.prices),
            self.clock,
        )
        curve: Curve | None = None
        try:
            with self.clock.at_most(_SEARCH):
                point, curve = self._point(search)
        except OutOfTimeError:
            return self._nothing_found()
        before = curve.points[0] if curve is not None else self._before(search)
        point, plan, remarks = self._planned(search, point)
        stays = tuple(self._stays(plan))
        if curve is not None:
            curve = self._confirmed(curve, point)
        return Bought(
            day=self.day,
            plan=replace(plan, remarks=(*plan.remarks, self._bought_words(point.purchase))),
            point=point,
            before=before,
            curve=curve,
            budget=self.budget,
            stays=stays,
            remarks=tuple(remarks),
            compared=NOT_COMPARED not in remarks,
        )

    def _point(self, search: Search) -> tuple[Point, Curve | None]:
        """What to buy, and the curve where there is a budget."""
        if self.budget is not None:
            curve = curve_of(search)
            point = curve.within(self.budget)
            if not curve.complete and point == curve.points[-1]:
                point = replace(point, proved=False)
            return point, curve
        purchase = settle(search)
        if purchase is None:
            return point_at(search, None), None
        return Point(purchase=purchase, ready=search.possible, proved=purchase.proved), None

    def _before(self, search: Search) -> Point | None:
        """What goes with nothing bought."""
        try:
            with self.clock.at_most(_BEFORE):
                return point_at(search, Fraction(0))
        except OutOfTimeError:
            return None

    def _nothing_found(self) -> Bought:
        """The plan of the day as it is."""
        nothing = purchase_of((), proved=False)
        plan = self._plan(nothing, self.clock.left())
        point = Point(purchase=nothing, ready=counts(plan), proved=False, held=plan.held)
        return Bought(
            day=self.day,
            plan=plan,
            point=point,
            before=None,
            budget=self.budget,
            remarks=(NO_TIME,),
        )

    def _planned(self, search: Search, point: Point) -> tuple[Point, DayPlan, list[str]]:
        """The plan of the purchase, or of an equal one that makes a better plan."""
        search.hold_ready(point.ready)
        search.spend(point.purchase.cost)
        remarks: list[str] = []
        with self.clock.at_most(_EQUALS):
            equals = equals_of(search, point.purchase, _MOST_EQUALS) if point.proved else []
        purchases = [point.purchase, *(equals or [])]
        plans = []
        for number, purchase in enumerate(purchases):
            share = _PLAN * self.clock.left() / (len(purchases) - number)
            plans.append(self._plan(purchase, share))
        shown = [agrees(point, plan) for plan in plans]
        best = min(range(len(plans)), key=lambda at: (not shown[at], order(plans[at]), at))
        if equals is None or not all(plan.proved for plan in plans[1:]):
            remarks.append(NOT_COMPARED)
        if not shown[best]:
            remarks.append(NOT_SEEN)
        point = replace(point, purchase=purchases[best])
        return seen(point, plans[best]), plans[best], remarks

    def _confirmed(self, curve: Curve, chosen: Point) -> Curve:
        """The curve with every point planned; one whose plan is not seen is not proved."""
        points: list[Point] = []
        for number, point in enumerate(curve.points):
            if point.purchase.cost == chosen.purchase.cost:
                points.append(chosen)
                continue
            share = self.clock.left() / (len(curve.points) - number)
            plan = self._plan(point.purchase, share)
            points.append(seen(point, plan))
        return replace(curve, points=tuple(points))

    def _stays(self, plan: DayPlan) -> Iterator[Stay]:
        with self.clock.at_most(_EXPLAIN):
            staying = Staying(
                day=self.day, ready=plan.ready, offers=self.day.prices, clock=self.clock
            )
            for load in plan.held:
                yield Stay(load=load, why=staying.why(load, self._too_dear))

    def _too_dear(self, purchase: Purchase) -> str:
        """What a load would take that the budget does not reach; the purchase is judged first."""
        self._plan(purchase, self.clock.left() / 4)
        amount = money(purchase.cost, self.day.currency)
        if self.budget is None:
            return f"A purchase of {amount} would do; that was not settled in the time limit."
        return (
            f"With the loads that go it takes a purchase of {amount}; "
            f"the budget is {money(self.budget, self.day.currency)}."
        )

    def _plan(self, purchase: Purchase, seconds: float) -> DayPlan:
        return plan_day(
            with_purchase(self.day, purchase),
            time_limit=max(1.0, seconds),
            progress=self.clock.tell,
            known=purchase.plan,
        )

    def _bought_words(self, purchase: Purchase) -> str:
        if not purchase.pieces:
            return "Nothing is bought for this plan."
        pieces = count(purchase.pieces, "piece")
        return (
            f"This is the plan with {pieces} bought for {money(purchase.cost, self.day.currency)}; "
            "see the sheet What to buy."
        )
