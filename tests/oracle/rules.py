"""What an article asks for, straight from the rule text."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from tests.oracle.cells import key
from tests.oracle.day import Article, Day, Load

CORNERS = ("front left", "front right", "rear left", "rear right")
FRONT, REAR = CORNERS[:2], CORNERS[2:]
MIDDLE = ("mid left", "mid right")
OVER = tuple(f"over {n}" for n in range(1, 21))
CREDIT = {"direct": Fraction(1, 2), "same side": Fraction(1, 2), "over": Fraction(1)}
ANCHORS = {"direct": 1, "same side": 2, "over": 2}


@dataclass(kw_only=True)
class Need:
    """All that one article asks for, but what each piece must be.

    ``groups`` are sets of positions each of which must hold at least one tie-down.
    """

    count: int
    strength: Fraction
    credit: Fraction
    accessory_credit: Fraction
    positions: tuple[str, ...]
    most: int
    groups: tuple[tuple[str, ...], ...]
    obstacle: str = ""


def length_count(length: Fraction, weight: Fraction, blocked: bool, metric: bool) -> int:
    """49 CFR 393.110(b) and (c): tie-downs by length, weight and blocking."""
    five, ten = (Fraction("1.52"), Fraction("3.04")) if metric else (Fraction(5), Fraction(10))
    limit = 500 if metric else 1100
    if blocked:
        return max(1, math.ceil(length / ten))
    if length <= five:
        return 1 if weight <= limit else 2
    if length <= ten:
        return 2
    return 2 + math.ceil((length - ten) / ten)


def need(article: Article, load: Load, day: Day) -> Need:
    """The counts, the aggregate and the positions of one article."""
    count, groups = 1, set()
    counted = day.rule("length count on machines", True)
    if article.section == "general" or article.kind == "general" or counted:
        assert article.length is not None, article.id
        count = length_count(article.length, article.weight, article.blocked, day.metric)
    ends = article.routing != "over"
    if article.section == "general" and count >= 2 and ends:
        groups |= {FRONT, REAR}
    if article.section == "light vehicle" or article.kind == "light vehicle":
        count = max(count, 2)
        groups |= {FRONT, REAR} if ends else set()
    if article.section == "heavy":
        count = max(count, 4)
        groups = {(corner,) for corner in CORNERS}
    return Need(
        count=count,
        strength=day.rule_number("aggregate share", "0.5") * article.weight,
        credit=CREDIT[article.routing],
        accessory_credit=Fraction(day.rule("accessory counts in aggregate", False), 2),
        positions=OVER if article.routing == "over" else CORNERS + MIDDLE,
        most=1 if article.routing == "over" else int(day.rule_number("most per position", "2")),
        groups=tuple(groups),
        obstacle=_obstacle(article, load, day),
    )


def _obstacle(article: Article, load: Load, day: Day) -> str:
    if key(day.house.get("unrated points", (None, ""))[0]) != "hold":
        return ""
    if day.trailer(load).anchor_wll is None:
        return "anchor points unrated"
    if article.routing == "direct" and article.tie_point is None:
        return "tie points unrated"
    return ""
