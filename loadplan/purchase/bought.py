"""What came of buying: the purchase, the plan it makes, the curve, and what stays all the same."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.purchase.point import Curve, Point
from loadplan.purchase.purchase import Purchase


@dataclass(frozen=True, slots=True, kw_only=True)
class Stay:
    """Why a load is held in spite of the purchase, in one or more sentences."""

    load: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Bought:
    """The outcome of ``loadplan buy``.

    ``day`` is the day as read, ``plan`` the judged plan of the day with the pieces of ``point``
    owned. ``before`` is what goes with nothing bought, None where the time did not reach to find
    it. ``curve`` is there only with a ``budget``. ``remarks`` are sentences on what is not proved.
    ``compared``: no purchase of the same cost and pieces makes a plan that comes first.
    """

    day: Day
    plan: DayPlan
    point: Point
    before: Point | None
    curve: Curve | None = None
    budget: Fraction | None = None
    stays: tuple[Stay, ...] = ()
    remarks: tuple[str, ...] = ()
    compared: bool = True

    @property
    def purchase(self) -> Purchase:
        """What is bought."""
        return self.point.purchase

    @property
    def proved(self) -> bool:
        """Whether the purchase, the whole curve and the plan are proved."""
        curve = self.curve is None or self.curve.proved
        return self.point.proved and self.compared and curve and self.plan.proved

    @property
    def currency(self) -> str:
        """The currency of the prices as typed, "" where none is."""
        return self.day.currency
