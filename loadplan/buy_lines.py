"""What ``loadplan buy`` prints."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.purchase.bought import Bought
from loadplan.purchase.money import money
from loadplan.purchase.point import Point
from loadplan.purchase.words import headline, proved_words
from loadplan.tables.purchase import named_lines, shopping_words, specification_words
from loadplan.terminal import stages
from loadplan.text import count


def buy_lines(bought: Bought) -> Iterator[str]:
    """The purchase, what stays held and why, the curve, and the plan's own figures."""
    yield f"{headline(bought)}."
    for name, offer, pieces in named_lines(bought, bought.purchase):
        price, cost = (money(one, bought.currency) for one in (offer.price, offer.price * pieces))
        what = specification_words(offer.specification, bought.day.units)
        yield f"  {pieces:,} x {name} at {price}: {cost} ({what})"
    for stay in bought.stays:
        yield f"  held: {stay.load}. {stay.why}"
    yield from proved_words(bought)
    yield from bought.remarks
    if bought.curve is not None:
        yield "Cost against loads ready:"
        for point in bought.curve.points:
            yield _point(bought, point)
    yield from stages(bought.plan)


def _point(bought: Bought, point: Point) -> str:
    total = count(len(bought.day.loads), "load")
    proved = "" if point.proved else " (not proved)"
    chosen = " <- chosen" if point.purchase.cost == bought.purchase.cost else ""
    words = shopping_words(bought, point.purchase)
    cost = money(point.purchase.cost, bought.currency)
    held = f", held {', '.join(point.held)}" if point.held else ""
    return f"  {cost}: {point.loads:,} of {total} ready{held}; buy {words}{proved}{chosen}"
