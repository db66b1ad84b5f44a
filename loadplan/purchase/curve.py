"""The curve of a day: for each better set of ready loads, the least that must be paid for it."""

from __future__ import annotations

from fractions import Fraction

from loadplan.plan.clock import OutOfTimeError
from loadplan.purchase.cheapest import cheapest_now
from loadplan.purchase.point import Curve, Point
from loadplan.purchase.program import Array
from loadplan.purchase.search import Search


def curve_of(search: Search) -> Curve:
    """The curve of the day and offers of ``search``, as far as its clock lets it be found.

    Raises ``OutOfTimeError`` where not even the first point was.
    """
    points: list[Point] = []
    complete = False
    cost: Fraction | None = Fraction(0)
    values: Array | None = None
    try:
        while cost is not None:
            points.append(point_at(search, cost, values))
            cost, values = _next_cost(search, points[-1].ready)
        complete = True
    except OutOfTimeError:
        if not points:
            raise
    loads = search.program.day.loads
    return Curve(
        priorities=tuple(sorted({load.priority for load in loads})),
        points=tuple(points),
        complete=complete,
    )


def point_at(search: Search, budget: Fraction | None, values: Array | None = None) -> Point:
    """The best loads that can be ready for ``budget`` (None: any), then least cost and pieces.

    ``values`` is a plan within the budget, if one is known.
    """
    search.spend(budget)
    counts: list[int] = []
    for priority, most in enumerate(search.possible):
        search.clock.stage = "loads ready for the money"
        if values is None or search.ready(values)[: priority + 1] != (*counts, most):
            search.hold_ready(counts)
            answer = search.most_ready(priority, values)
            if answer.values is None or not answer.proved:
                raise OutOfTimeError
            values = answer.values
        counts.append(search.ready(values)[priority])
    search.hold_ready(counts)
    purchase = cheapest_now(search)
    if purchase is None:
        raise OutOfTimeError
    return Point(purchase=purchase, ready=tuple(counts), proved=purchase.proved)


def _next_cost(search: Search, ready: tuple[int, ...]) -> tuple[Fraction | None, Array | None]:
    """The least cost for which better loads than ``ready`` go, and a plan that shows it.

    Better means: as many at the priorities before one, and one more there. None where no purchase
    gets there.
    """
    cost: Fraction | None = None
    best: Array | None = None
    for priority in range(len(ready)):
        if ready[priority] == search.possible[priority]:
            continue
        search.clock.stage = "cost of one load more"
        search.spend(None if cost is None else cost - search.step)
        search.hold_ready([*ready[:priority], ready[priority] + 1])
        answer = search.least_cost()
        if not answer.proved:
            raise OutOfTimeError
        if answer.values is not None:
            cost, best = search.cost(answer.values), answer.values
    return cost, best
