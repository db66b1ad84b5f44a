"""A purchase in words, the same on the page and in the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.purchase.bought import Bought
from loadplan.purchase.money import money
from loadplan.text import count


def headline(bought: Bought) -> str:
    """``Buy 3 pieces for $91: 5 of 5 loads ready, 3 without buying``."""
    total = len(bought.day.loads)
    ready = f"{len(bought.plan.ready)} of {count(total, 'load')} ready"
    if not bought.purchase.pieces:
        return f"Buy nothing: {ready}"
    pieces = count(bought.purchase.pieces, "piece")
    text = f"Buy {pieces} for {money(bought.purchase.cost, bought.currency)}: {ready}"
    return text if bought.before is None else f"{text}, {bought.before.loads} without buying"


def proved_words(bought: Bought) -> Iterator[str]:
    """What is proved of the purchase, and what is not."""
    purchase = bought.purchase
    if bought.point.proved and purchase.pieces:
        yield (
            "Proved: no purchase from Prices with which as many loads are ready, priority by "
            "priority, costs less, and none of this cost has fewer pieces."
        )
    elif not purchase.pieces and not bought.point.proved:
        yield "Not proved: a purchase that gets more loads ready is not ruled out."
    elif not bought.point.proved:
        if purchase.bound:
            yield f"No purchase below {money(purchase.bound, bought.currency)} does as much."
        yield (
            "Not proved: a cheaper purchase, one of fewer pieces or one with more loads ready is "
            "not ruled out."
        )
    if bought.budget is not None:
        yield f"The budget is {money(bought.budget, bought.currency)}."
    if bought.curve is not None and not bought.curve.complete:
        yield "The curve ends where the time limit came; more money may get more loads ready."
