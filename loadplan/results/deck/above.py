"""The deck from above: articles as blocks, tie-downs as numbered lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from loadplan.day.gear import WEBBING, Kind
from loadplan.day.units import Units
from loadplan.results.deck.inks import GREY, INK, PALE, PAPER, Inks, fitted, text_width
from loadplan.results.deck.labels import RADIUS, SIZE, label_width, room, spread
from loadplan.results.deck.placing import Block, Placing
from loadplan.results.deck.strokes import Frame, Stroke, strokes
from loadplan.tables.facts import ArticleFacts, RatedTieDown
from loadplan.text import mass

LABELS = 100.0
_MOST_ACROSS = 186.0
_MOST_OUT = 46.0
_ANCHORS_APART = 22.0
_STACKED_APART, _DEEP_ENOUGH = 38.0, 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """The part of the page a view may use, in dots."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True)
class Above:
    """The view from above: how deck lengths become dots, and the drawing."""

    inks: Inks
    area: Area
    placing: Placing
    units: Units

    @property
    def scale(self) -> float:
        """Dots per unit of length."""
        along = (self.area.right - self.area.left) / self.placing.view_length
        across = min(self.area.bottom - self.area.top - 2 * LABELS, _MOST_ACROSS)
        return min(along, across / self.placing.view_width)

    def x(self, along: float) -> float:
        """Dots from the left for a distance from the front of the deck."""
        spare = self.area.right - self.area.left - self.placing.view_length * self.scale
        return self.area.left + spare / 2 + along * self.scale

    @property
    def middle(self) -> float:
        """The centre line of the deck."""
        return (self.area.top + self.area.bottom) / 2

    def draw(self, articles: Sequence[ArticleFacts], *, front_structure: bool) -> bool:
        """Everything; False where labels were too many for the gear's names."""
        self._front(front_structure)
        frames: dict[str, Frame] = {}
        for block in self.placing.blocks:
            frames[block.article.id] = self._frame(block)
            self._block(block, frames[block.article.id])
        drawn = [stroke for facts in articles for stroke in _strokes(facts, frames)]
        self._deck()
        for stroke in drawn:
            self._line(stroke)
        for block in self.placing.blocks:
            self._names(block)
        sides = [[one for one in drawn if one.up is up] for up in (True, False)]
        named = [self._labels(side, up=up) for side, up in zip(sides, (True, False), strict=True)]
        return all(named)

    def _deck(self) -> None:
        """The outline of the deck, over the articles, so that what stands past it shows."""
        half = self.placing.deck_width * self.scale / 2
        left, right = self.x(0), self.x(self.placing.deck_length)
        known = self.placing.deck_length_known and self.placing.deck_width_known
        self.inks.box(
            left, self.middle - half, right, self.middle + half, width=3, dashed=not known
        )

    def _front(self, front_structure: bool) -> None:
        half, left = self.placing.deck_width * self.scale / 2, self.x(0)
        if front_structure:
            self.inks.line([(left, self.middle - half), (left, self.middle + half)], width=11)
        y = self.middle
        self.inks.line([(left - 14, y), (left - 40, y)], width=5)
        self.inks.shape([(left - 38, y - 13), (left - 38, y + 13), (left - 60, y)], fill=INK)
        self.inks.text((left - 12, y - 40), "right", size=17, anchor="rm")
        self.inks.text((left - 12, y + 40), "left", size=17, anchor="rm")

    def _across(self, block: Block) -> float:
        """The middle of a block, in dots from the top; left is down."""
        return self.middle + block.aside * self.scale

    def _frame(self, block: Block) -> Frame:
        blocks = self.placing.blocks
        ahead = [one.rear for one in blocks if one.rear <= block.front]
        past = [one.front for one in blocks if one.front >= block.rear]
        before = block.front - max(ahead, default=0.0)
        behind = min(past, default=self.placing.deck_length) - block.rear
        half, deck = block.width * self.scale / 2, self.placing.deck_width * self.scale / 2
        return Frame(
            left=self.x(block.front),
            right=self.x(block.rear),
            top=self._across(block) - half,
            bottom=self._across(block) + half,
            deck_top=self.middle - deck,
            deck_bottom=self.middle + deck,
            before=self._outward(before, shared=bool(ahead)),
            behind=self._outward(behind, shared=bool(past)),
        )

    def _outward(self, free: float, *, shared: bool) -> float:
        """How far from the article's end its end anchors stand; a shared gap is parted."""
        dots = free * self.scale
        return min(_MOST_OUT, (dots - _ANCHORS_APART) / 2 if shared else max(0.0, dots))

    def _block(self, block: Block, frame: Frame) -> None:
        self.inks.box(
            frame.left,
            frame.top,
            frame.right,
            frame.bottom,
            fill=PALE,
            width=3,
            dashed=not block.to_scale,
        )

    def _line(self, stroke: Stroke) -> None:
        if stroke.kind in WEBBING or stroke.kind is Kind.STEEL_STRAPPING:
            self.inks.line(stroke.path, width=9)
            self.inks.line(stroke.path, width=3, ink=PAPER)
        elif stroke.kind is Kind.CHAIN:
            self.inks.line(stroke.path, width=5)
        else:
            for start, end in pairwise(stroke.path):
                self.inks.dashed(start, end, width=5, dash=9)
        for point in stroke.tie_points:
            self.inks.disc(point, 6)
        for x, y in stroke.anchors:
            self.inks.box(x - 6, y - 6, x + 6, y + 6, fill=PAPER, width=3)
        if stroke.accessory is not None:
            _diamond(self.inks, stroke.accessory, fill=INK)

    def _names(self, block: Block) -> None:
        """Id and weight in the middle of the block, and marks of its pinned accessories."""
        article = block.article
        x, room_x = self.x(block.front + block.length / 2), block.length * self.scale - 12
        across = self._across(block) - len(block.under) * _STACKED_APART
        weight = mass(article.carried_weight, self.units)
        deep = block.width * self.scale > _DEEP_ENOUGH and not self._stacked(block)
        big = deep and text_width(article.id, 24) <= room_x and text_width(weight, 20) <= room_x
        sizes = (24, 20) if big else (18, 16)
        up, down = (12, 13) if big else (9, 9)
        name = fitted(article.id, sizes[0], room_x + 14)
        self.inks.plate((x, across - up), name, size=sizes[0], bold=True)
        weight = fitted(weight, sizes[1], room_x + 14)
        self.inks.plate((x, across + down), weight, size=sizes[1])
        pinned = sum(one.pinned for one in article.accessories)
        y = self._across(block) + 0.36 * block.width * self.scale
        for place in range(pinned):
            share = 0.72 + 0.16 * place / pinned
            _diamond(self.inks, (self.x(block.front + share * block.length), y), fill=PAPER)

    def _stacked(self, block: Block) -> bool:
        """Whether it is one of a stack."""
        return bool(block.under) or any(block.article in one.under for one in self.placing.blocks)

    def _labels(self, side: Sequence[Stroke], *, up: bool) -> bool:
        """The numbers, and the gear's names where there is room for all of them."""
        ordered = sorted(side, key=lambda stroke: (stroke.label_x, stroke.number))
        left, right = self.area.left - 30, self.area.right + 30
        widths = [label_width(stroke.lines) for stroke in ordered]
        named = room(widths) <= right - left
        if not named:
            widths = [2 * RADIUS + 2] * len(ordered)
        middles = spread([one.label_x for one in ordered], widths, left, right)
        half = self.placing.view_width * self.scale / 2
        y = self.middle - half - 26 if up else self.middle + half + 26
        for stroke, x, width in zip(ordered, middles, widths, strict=True):
            from_ = [(stroke.label_x, stroke.path[0][1])]
            anchor = min(stroke.anchors or from_, key=lambda point: abs(point[1] - y))
            self.inks.line([anchor, (x, y)], width=1, ink=GREY)
            self.inks.disc((x, y), RADIUS)
            self.inks.text((x, y), str(stroke.number), size=19, anchor="mm", ink=PAPER, bold=True)
            if named:
                self._gear((x, y), stroke.lines, width, up=up)
        return named

    def _gear(
        self, at: tuple[float, float], lines: Sequence[str], width: float, *, up: bool
    ) -> None:
        x, y = at
        for place, line in enumerate(reversed(lines) if up else lines):
            aside = RADIUS + 12 + place * (SIZE + 1)
            text = fitted(line, SIZE, width + 2)
            self.inks.text((x, y - aside if up else y + aside), text, size=SIZE, anchor="mm")


def _strokes(facts: ArticleFacts, frames: Mapping[str, Frame]) -> Iterator[Stroke]:
    """The tie-downs of one article or group, each around the articles it holds."""
    held: dict[tuple[str, ...], list[RatedTieDown]] = {}
    for one in facts.tie_downs:
        served = facts.demand.served_at(one.tie_down.position)
        held.setdefault(tuple(article.id for article in served), []).append(one)
    for articles, tie_downs in held.items():
        frame = frames[articles[0]]
        for article in articles[1:]:
            frame = frame.joined(frames[article])
        yield from strokes(tie_downs, frame)


def _diamond(inks: Inks, at: tuple[float, float], *, fill: int) -> None:
    x, y = at
    inks.shape([(x - 9, y), (x, y - 9), (x + 9, y), (x, y + 9)], fill=fill)
