"""The WLL of a whole tie-down: the lowest of its parts (49 CFR 393.108(a))."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Part(StrEnum):
    """The parts of a tie-down, in the order in which the weakest is named on equal values."""

    TENSION_MEMBER = "tension member"
    TENSIONER = "tensioner"
    CONNECTOR = "connector"
    ANCHOR_POINT = "anchor point"
    TIE_POINT = "tie point"


@dataclass(frozen=True, slots=True, kw_only=True)
class TieDownRating:
    """WLLs of the parts in the day's mass unit, the tie-down's own, and its weakest part.

    None stands for a part that is not there or that has no rating and so does not cap.
    """

    member: Fraction
    tensioner: Fraction | None
    connector: Fraction | None
    anchor: Fraction | None
    tie_point: Fraction | None
    wll: Fraction
    weakest: Part


def rate_tie_down(
    *,
    member: Fraction,
    tensioner: Fraction | None = None,
    connector: Fraction | None = None,
    anchor: Fraction | None = None,
    tie_point: Fraction | None = None,
) -> TieDownRating:
    """The rating of a tie-down from the WLLs of its parts: the lowest of all.

    Pass None for a part that is absent or unrated. On equal values the first in the order of
    :class:`Part` is named.
    """
    wll, weakest = member, Part.TENSION_MEMBER
    for part, value in (
        (Part.TENSIONER, tensioner),
        (Part.CONNECTOR, connector),
        (Part.ANCHOR_POINT, anchor),
        (Part.TIE_POINT, tie_point),
    ):
        if value is not None and value < wll:
            wll, weakest = value, part
    return TieDownRating(
        member=member,
        tensioner=tensioner,
        connector=connector,
        anchor=anchor,
        tie_point=tie_point,
        wll=wll,
        weakest=weakest,
    )
