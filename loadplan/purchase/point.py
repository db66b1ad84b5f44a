"""The points of a curve: what is bought, what it costs, how many loads are ready for it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.purchase.purchase import Purchase


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One point of the curve: what is bought, and how many loads are ready at each priority.

    ``held`` are the loads that stay in the plan made with the purchase, once there is one.

    ``proved``: no purchase that costs as much or less gets better loads ready, and no cheaper one,
    nor one of that cost with fewer pieces, gets these.
    """

    purchase: Purchase
    ready: tuple[int, ...]
    proved: bool
    held: tuple[str, ...] = ()

    @property
    def loads(self) -> int:
        """Loads ready in all."""
        return sum(self.ready)


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """The points from nothing bought on, each dearer than the one before and better.

    Better is the plan's order: more loads ready at priority 1, then at priority 2, and so on.
    ``priorities`` names the columns of every point's ``ready``. ``complete``: no purchase gets
    better loads ready than the last point's; else the time came first.
    """

    priorities: tuple[int, ...]
    points: tuple[Point, ...]
    complete: bool

    @property
    def proved(self) -> bool:
        """Whether all of it is proved."""
        return self.complete and all(point.proved for point in self.points)

    def within(self, budget: Fraction) -> Point:
        """The last point that costs no more than ``budget``."""
        return [point for point in self.points if point.purchase.cost <= budget][-1]
