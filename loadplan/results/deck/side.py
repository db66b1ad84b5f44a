"""The load from the side: heights against the height limit, as far as they are known."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.results.deck.above import Area
from loadplan.results.deck.inks import GREY, INK, PALE, Inks, fitted
from loadplan.results.deck.placing import Block, Placing
from loadplan.text import length

_DECK_HEIGHT = {Units.US: 5.0, Units.METRIC: 1.5}
_USUAL_HEIGHT = {Units.US: 6.0, Units.METRIC: 1.8}


@dataclass(frozen=True)
class Side:
    """The view from the side, on its own smaller scale."""

    inks: Inks
    area: Area
    placing: Placing
    trailer: Trailer | None
    limit: Fraction
    units: Units

    @property
    def deck_height(self) -> Fraction | None:
        """Height of the deck above the ground, where it is known."""
        return None if self.trailer is None else self.trailer.deck_height

    def overall(self, block: Block) -> Fraction | None:
        """Height of the article's top above the ground, where both heights are known."""
        if self.deck_height is None or block.article.height is None:
            return None
        below = [one.height for one in block.under]
        if any(height is None for height in below):
            return None
        return self.deck_height + block.article.height + sum(filter(None, below), Fraction(0))

    @property
    def _deck(self) -> float:
        return float(self.deck_height or _DECK_HEIGHT[self.units])

    def _tall(self, article: Article) -> float:
        high = article.height
        return _USUAL_HEIGHT[self.units] if high is None else float(high)

    def _foot(self, block: Block) -> float:
        """How high above the ground it stands."""
        return self._deck + sum(self._tall(one) for one in block.under)

    def _top(self, block: Block) -> float:
        return self._foot(block) + self._tall(block.article)

    @property
    def scale(self) -> float:
        """Dots per unit of length."""
        tops = [self._top(block) for block in self.placing.blocks]
        high = max([float(self.limit), *tops]) * 1.04
        along = (self.area.right - self.area.left) / self.placing.view_length
        return min(along, (self.area.bottom - self.area.top) / high)

    def _x(self, along: float) -> float:
        return self.area.left + along * self.scale

    def _y(self, up: float) -> float:
        return self.area.bottom - up * self.scale

    def draw(self) -> None:
        """Ground, trailer, articles with their overall height, and the limit."""
        ground = self.area.bottom
        self.inks.line([(self.area.left - 16, ground), (self.area.right, ground)], ink=GREY)
        self._trailer()
        for block in self.placing.blocks:
            self._article(block)
        limit = self._y(float(self.limit))
        self.inks.dashed((self.area.left - 16, limit), (self.area.right, limit), width=3)
        for block in self.placing.blocks:
            self._height(block)

    def _trailer(self) -> None:
        top, thick = self._y(self._deck), max(6.0, 0.06 * self._deck * self.scale)
        rear = self._x(self.placing.deck_length)
        radius = min(15.0, (self.area.bottom - top) * 0.34)
        for place in range(2):
            x = rear - (1.3 + 2.5 * place) * radius
            self.inks.disc((x, self.area.bottom - radius), radius, fill=GREY)
        self.inks.box(self._x(0), top, rear, top + thick, fill=INK, dashed=self.deck_height is None)

    def _article(self, block: Block) -> None:
        top, foot = self._y(self._top(block)), self._y(self._foot(block))
        left, right = self._x(block.front), self._x(block.rear)
        known = block.article.height is not None
        self.inks.box(
            left,
            top,
            right,
            foot,
            fill=PALE,
            dashed=not (known and block.length_known),
        )
        middle = (left + right) / 2
        name = fitted(block.article.id, 18, right - left - 8)
        self.inks.text((middle, (top + foot) / 2), name, size=18, anchor="mm")

    def _height(self, block: Block) -> None:
        """The overall height above the article, on a plate that the limit line does not cross."""
        middle = self._x(block.front + block.length / 2)
        if any(block.article in one.under for one in self.placing.blocks):
            return
        top = self._y(self._top(block))
        overall = self.overall(block)
        words = "?" if overall is None else length(overall, self.units)
        over = overall is not None and overall > self.limit
        self.inks.plate((middle, top - 14), f"OVER: {words}" if over else words, size=18, bold=over)
