"""Advice on ratings: what is unrated, what is not read from a source, what passes narrowly."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from loadplan.day.article import WeightFrom
from loadplan.day.day import Day
from loadplan.day.house import UnratedPoints
from loadplan.judge.case import ArticleCase, LoadCase
from loadplan.judge.strength import planned_strength
from loadplan.judge.wording import NOTHING, need_and_have, sentences
from loadplan.outcome.check import Check, Verdict
from loadplan.rules.anchors import ANCHORS_USED
from loadplan.rules.canada import in_rules
from loadplan.rules.looks import UNRATED_TIE_POINTS
from loadplan.rules.sources import ANCHOR_USE, ESTIMATE, LOWEST_PART
from loadplan.source import Certainty, Source
from loadplan.text import mass_down

_RATED = {
    Certainty.MEMORY: "Rated from memory",
    Certainty.PRACTICE: "Rated by common practice, no source",
    Certainty.HANDBOOK: "Rated from the official handbook, not the regulation text read",
}


def article_advice(case: ArticleCase) -> Iterator[Check]:
    """Tie point rating, pieces to confirm and the margin on an estimated weight."""
    yield from _tie_points(case)
    yield from _to_confirm(case)
    yield from _narrow(case)


def load_advice(case: LoadCase) -> Iterator[Check]:
    """Anchor rating, an anchor count that is not given, and winches without a rating."""
    anchor_wll = None if case.trailer is None else case.trailer.anchor_wll
    yield from _point(case.day, (case.load.id, "", "anchor point rating"), anchor_wll)
    if case.demand.anchors is None:
        used = sum(ANCHORS_USED[tie_down.routing] for tie_down in case.tie_downs)
        yield _advice(
            (case.load.id, "", "anchor points"),
            need=f"{used:,}" if case.ready else NOTHING,
            have=NOTHING,
            unit="anchor points",
            working="How many anchor points there are is not given",
            source=ANCHOR_USE,
        )
    if case.winch_straps:
        yield _advice(
            (case.load.id, "", "winch rating"),
            need="rated",
            have="unrated",
            working="Winches have no rating in the day workbook and do not limit the figures: "
            "read their marking",
            source=in_rules(case.day, LOWEST_PART),
        )


def _point(day: Day, named: tuple[str, str, str], wll: Fraction | None) -> Iterator[Check]:
    """Whether a point is rated; where the house holds unrated ones, that is a demand instead."""
    if wll is None and day.house.unrated_points is UnratedPoints.HOLD:
        return
    what = "It is unrated and does not limit the figures" if wll is None else ""
    yield _advice(
        named,
        need="rated",
        have="unrated" if wll is None else mass_down(wll, day.units),
        working=sentences(["No tie-down is stronger than the points it holds to", what]),
        source=in_rules(day, LOWEST_PART),
        met=wll is not None,
    )


def _tie_points(case: ArticleCase) -> Iterator[Check]:
    """Whether the points of the article that its tie-downs hold are rated, where they hold any.

    Its demand gives their rating, or has a line to look at them where there is none.
    """
    wll = next((one.tie_point_wll for one in case.demand.position_sets if one.tie_point_wll), None)
    unrated = any(look.name == UNRATED_TIE_POINTS.name for look in case.demand.looks)
    if wll is not None or unrated:
        yield from _point(case.day, (case.load.id, case.article.id, "tie point rating"), wll)


def _to_confirm(case: ArticleCase) -> Iterator[Check]:
    """Load-bearing pieces whose rating is from memory or has no source, each named once."""
    pieces = dict.fromkeys(piece for tied in case.tie_downs for piece in tied.pieces())
    for piece in pieces:
        rating = case.ratings.get(piece)
        if rating is None or rating.wll is None or rating.source.certainty not in _RATED:
            continue
        yield _advice(
            (case.load.id, case.article.id, f"rating of {piece}"),
            need="a marking",
            have=mass_down(rating.wll, case.day.units),
            working=f"{_RATED[rating.source.certainty]}: {rating.reason}",
            source=rating.source,
        )


def _narrow(case: ArticleCase) -> Iterator[Check]:
    """How far the planned strength exceeds the need, where the weight is an estimate.

    Of an article without tie-downs nothing is said: its load is held.
    """
    margins = [
        planned_strength(case, asked) / asked.need - 1
        for asked in case.demand.strengths
        if asked.need > 0
    ]
    estimated = case.article.weight_from is WeightFrom.ESTIMATE
    if not (estimated and margins and case.tie_downs):
        return
    asked, smallest = case.day.house.estimate_margin, min(margins)
    need, have = need_and_have(asked * 100, smallest * 100, 1)
    yield _advice(
        (case.load.id, case.article.id, "margin on estimated weight"),
        need=need,
        have=have,
        unit="%",
        working=f"The weight is an estimate. Planned / needed - 1 = {have} %",
        source=ESTIMATE,
        met=smallest >= asked,
    )


def _advice(
    named: tuple[str, str, str],
    *,
    need: str,
    have: str,
    working: str,
    source: Source,
    unit: str = "",
    met: bool = False,
) -> Check:
    """One advice line; ``named`` is load, article and the line's name."""
    load, article, name = named
    return Check(
        load=load,
        article=article,
        name=name,
        need=need,
        have=have,
        unit=unit,
        verdict=Verdict.MET if met else Verdict.ADVICE,
        working=sentences([working]),
        source=source.cite(),
    )
