"""Why a load stays in spite of a purchase."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.sets import obstacles_to
from loadplan.purchase.cheapest import settle
from loadplan.purchase.program import purchase_program
from loadplan.purchase.purchase import Purchase
from loadplan.purchase.search import Search
from loadplan.text import count, names

_OPEN = "The time limit came before the reason was found."


@dataclass(frozen=True, slots=True, kw_only=True)
class Staying:
    """Finds why loads of ``day`` stay while ``ready`` go; ``offers`` are all there is to buy."""

    day: Day
    ready: Collection[str]
    offers: Sequence[Price]
    clock: Clock

    def why(self, load: str, too_dear: Callable[[Purchase], str]) -> str:
        """The reason in sentences; ``too_dear`` says it where a purchase would do."""
        try:
            return self._why(load, too_dear)
        except OutOfTimeError:
            return _OPEN

    def _why(self, load: str, too_dear: Callable[[Purchase], str]) -> str:
        for loads, words in (
            ([load], "On its own it"),
            ([*self.ready, load], "Together with the loads that go it"),
        ):
            search = Search(purchase_program(self.day, loads, self.offers), self.clock)
            found = settle(search)
            if found is None:
                return self._lacks(search, loads, load, words)
        assert found is not None
        return too_dear(found)

    def _lacks(self, search: Search, loads: list[str], load: str, words: str) -> str:
        """What is lacking once everything on offer is bought."""
        for one in search.program.sets.loads:
            whys = [
                f"{article.demand.article.id}: {why}"
                for article in one.articles
                for _, why in obstacles_to(article)
            ]
            if one.load.id == load and whys:
                return f"{' '.join(whys)} That is with everything on Prices in the cage."
        missing = settle(Search(purchase_program(self.day, loads, self._beyond()), self.clock))
        if missing is None:
            return _no_room(self.day, load)
        pieces = _pieces(missing)
        return f"{words} lacks {names(pieces)}, even with everything on Prices bought."

    def _beyond(self) -> list[Price]:
        """Everything on offer for nothing, and at a price of 1 what is beyond it."""
        free = [replace(offer, price=Fraction(0)) for offer in self.offers]
        kinds = {gear.id: gear for gear in self.day.gear if gear.usable}
        kinds |= {offer.specification.id: offer.specification for offer in self.offers}
        endless = {offer.specification.id for offer in self.offers if offer.most is None}
        return free + [
            Price(specification=gear, price=Fraction(1))
            for name, gear in kinds.items()
            if name not in endless
        ]


def _pieces(missing: Purchase) -> list[str]:
    found: dict[str, int] = {}
    for offer, pieces in missing.lines:
        if offer.price:
            gear = offer.specification.id
            found[gear] = found.get(gear, 0) + pieces
    return [f"{pieces:,} x {gear}" for gear, pieces in found.items()]


def _no_room(day: Day, load: str) -> str:
    """Where no number of pieces would do: the anchor points or winches of the trailer."""
    trailer = day.trailer_of(day.load_by_id[load])
    points = (
        ""
        if trailer is None or trailer.anchors is None
        else (f" ({count(trailer.anchors, 'anchor point')})")
    )
    return f"No set of tie-downs fits its trailer{points}, whatever is bought."
