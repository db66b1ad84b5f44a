"""A purchase: which offers are taken, how many pieces of each, and how far it is proved."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from loadplan.day.gear import Price
from loadplan.outcome.tie_down import Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """Offers taken, each with its pieces (1 or more), in the order they were offered.

    ``cost`` is in the unit of the offers' prices, ``pieces`` their number in all. No purchase that
    does the same costs less than ``bound``; ``proved`` says that none costs less than ``cost``
    and that none of that cost has fewer pieces. ``plan`` shows that it does: the loads ready and
    their tie-downs, not judged; None where it was not read.
    """

    lines: tuple[tuple[Price, int], ...]
    cost: Fraction
    pieces: int
    bound: Fraction
    proved: bool
    plan: Shown | None = field(default=None, compare=False, repr=False)


def purchase_of(
    lines: tuple[tuple[Price, int], ...],
    *,
    bound: Fraction | None = None,
    proved: bool,
    plan: Shown | None = None,
) -> Purchase:
    """The purchase of ``lines``, its cost and pieces summed from them.

    ``bound`` None: nothing less could do.
    """
    taken = tuple((offer, pieces) for offer, pieces in lines if pieces)
    cost = sum((offer.price * pieces for offer, pieces in taken), Fraction(0))
    return Purchase(
        lines=taken,
        cost=cost,
        pieces=sum(pieces for _, pieces in taken),
        bound=cost if bound is None else min(bound, cost),
        proved=proved,
        plan=plan,
    )
