"""Tie-downs as lines on the picture: from tie point to anchor point, each with its label."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from loadplan.day.article import Routing
from loadplan.day.gear import Kind
from loadplan.results.deck.inks import Point
from loadplan.tables.facts import RatedTieDown

_DEEP = 0.2
_BACK_AND_FORTH = 34.0
_BESIDE_MIDDLE = 0.12
_SLANT, _LEAST_SLANT = 0.5, 48.0
# The legs of a boulder's ring run out to the four corners.
_LEGS = {
    "leg 1": "front left",
    "leg 2": "front right",
    "leg 3": "rear left",
    "leg 4": "rear right",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """One article and the deck edges beside it, in dots; ``before`` and ``behind`` are free."""

    left: float
    right: float
    top: float
    bottom: float
    deck_top: float
    deck_bottom: float
    before: float
    behind: float

    @property
    def long(self) -> float:
        """Its length in dots."""
        return self.right - self.left

    def joined(self, other: Frame) -> Frame:
        """The frame around this one and ``other``, which stands beside or behind it."""
        return replace(
            self,
            left=min(self.left, other.left),
            right=max(self.right, other.right),
            top=min(self.top, other.top),
            bottom=max(self.bottom, other.bottom),
            behind=other.behind,
        )

    @property
    def middle(self) -> float:
        """Half-way across."""
        return (self.top + self.bottom) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """One tie-down as drawn.

    ``label_x`` is where its label would best stand, ``up`` whether that is above the deck.
    ``anchors`` is empty where it hooks to none.
    ``accessory`` is where its accessory is marked, None for a main tie-down.
    """

    number: int
    lines: tuple[str, ...]
    label_x: float
    path: tuple[Point, ...]
    anchors: tuple[Point, ...]
    tie_points: tuple[Point, ...]
    up: bool
    kind: Kind
    accessory: Point | None = None


def strokes(tie_downs: Sequence[RatedTieDown], frame: Frame) -> Iterator[Stroke]:
    """The tie-downs of one article as lines around its ``frame``."""
    main = [one for one in tie_downs if not one.tie_down.accessory]
    extra = [one for one in tie_downs if one.tie_down.accessory]
    along = [one for one in main if "lengthwise" in one.tie_down.position]
    over = [one for one in main if one.tie_down.routing is Routing.OVER and one not in along]
    rings = [one for one in main if one.tie_down.routing is Routing.ROUND]
    for place, one in enumerate(over):
        yield _over(one, frame, (place + 0.5) / len(over), up=place % 2 == 0)
    for place, one in enumerate(along):
        yield _lengthwise(one, frame, (place + 0.5) / len(along))
    for place, one in enumerate(rings):
        yield _ring(one, frame, (place + 0.5) / len(rings))
    for place, one in enumerate(main):
        if one not in (*over, *along, *rings):
            yield _outward(one, frame, place)
    for place, one in enumerate(extra):
        share = (place + 1) / (len(extra) + 1) - _BESIDE_MIDDLE
        yield _accessory(one, frame, share, up=place % 2 == 1)


def _over(one: RatedTieDown, frame: Frame, share: float, *, up: bool) -> Stroke:
    diagonal = "diagonal" in one.tie_down.position
    # Diagonals cross over the eye, which is in the middle.
    x = frame.left + (0.5 if diagonal else share) * frame.long
    slant = max(_SLANT * frame.long, _LEAST_SLANT) if diagonal else 0.0
    if "right to left" in one.tie_down.position:
        slant = -slant
    ends = ((x - slant, frame.deck_top), (x + slant, frame.deck_bottom))
    return Stroke(
        number=one.number,
        lines=_lines(one),
        label_x=ends[0 if up else 1][0],
        path=ends,
        anchors=ends,
        tie_points=(),
        up=up,
        kind=one.member.kind,
    )


def _lengthwise(one: RatedTieDown, frame: Frame, share: float) -> Stroke:
    """From before the article over its whole length to behind it, ``share`` of the way across."""
    y = frame.top + share * (frame.bottom - frame.top)
    ends = ((frame.left - frame.before, y), (frame.right + frame.behind, y))
    return Stroke(
        number=one.number,
        lines=_lines(one),
        label_x=ends[0][0],
        path=ends,
        anchors=ends,
        tie_points=(),
        up=True,
        kind=one.member.kind,
    )


def _ring(one: RatedTieDown, frame: Frame, share: float) -> Stroke:
    """Round the article only, drawn just inside its outline; it has no anchor."""
    inset = 7.0 + 8 * share
    left, right = frame.left + inset, frame.right - inset
    top, bottom = frame.top + inset, frame.bottom - inset
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    return Stroke(
        number=one.number,
        lines=_lines(one),
        label_x=left + share * (right - left),
        path=corners,
        anchors=(),
        tie_points=(),
        up=True,
        kind=one.member.kind,
    )


def _outward(one: RatedTieDown, frame: Frame, place: int) -> Stroke:
    """From a corner or the middle of a side out to the deck edge of that side."""
    position = _LEGS.get(one.tie_down.position, one.tie_down.position)
    up = "right" in position if ("left" in position or "right" in position) else place % 2 == 0
    tie_x, anchor_x = _ends(position, one.tie_down.number - 1, frame)
    deep = _DEEP * (frame.bottom - frame.top)
    tie = (tie_x, frame.top + deep if up else frame.bottom - deep)
    edge = frame.deck_top if up else frame.deck_bottom
    anchors: tuple[Point, ...] = ((anchor_x, edge),)
    path: tuple[Point, ...] = (tie, anchors[0])
    if one.tie_down.routing is Routing.SAME_SIDE:
        inward = -_BACK_AND_FORTH if "rear" in position else _BACK_AND_FORTH
        anchors = (*anchors, (anchor_x + inward, edge))
        path = (anchors[0], tie, anchors[1])
    return Stroke(
        number=one.number,
        lines=_lines(one),
        label_x=anchor_x,
        path=path,
        anchors=anchors,
        tie_points=(tie,),
        up=up,
        kind=one.member.kind,
    )


def _ends(position: str, before: int, frame: Frame) -> tuple[float, float]:
    """Where along the deck tie point and anchor are, with ``before`` others at the position."""
    step = before * min(0.09 * frame.long, 34)
    inset = min(0.1 * frame.long, 26) + step
    if "front" in position:
        return frame.left + inset, frame.left - frame.before + step
    if "rear" in position:
        return frame.right - inset, frame.right + frame.behind - step
    middle = (frame.left + frame.right) / 2 + before * 24
    return middle, middle + 14


def _accessory(one: RatedTieDown, frame: Frame, share: float, *, up: bool) -> Stroke:
    x = frame.left + share * frame.long
    aside = 0.24 * (frame.bottom - frame.top)
    mark = (x, frame.middle - aside if up else frame.middle + aside)
    anchor = (x + 16, frame.deck_top if up else frame.deck_bottom)
    return Stroke(
        number=one.number,
        lines=(one.tie_down.position, *_lines(one)),
        label_x=anchor[0],
        path=(mark, anchor),
        anchors=(anchor,),
        tie_points=(),
        up=up,
        kind=one.member.kind,
        accessory=mark,
    )


def _lines(one: RatedTieDown) -> tuple[str, ...]:
    tensioner = "" if one.tensioner is None else one.tensioner.id
    winch = "winch" if one.member.kind is Kind.WINCH_STRAP else ""
    return tuple(line for line in (one.member.id, tensioner or winch) if line)
