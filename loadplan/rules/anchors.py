"""What the articles of one load share: the anchor points and winches of its trailer."""

from __future__ import annotations

from loadplan.day.article import Routing
from loadplan.day.trailer import Trailer
from loadplan.rules.requirement import AnchorRequirement, Step, WinchRequirement
from loadplan.rules.sources import ANCHOR_USE, TRAILERS, WINCH_USE
from loadplan.text import count

ANCHORS_USED = {Routing.DIRECT: 1, Routing.SAME_SIDE: 2, Routing.OVER: 2, Routing.ROUND: 0}


def anchors(trailer: Trailer | None) -> AnchorRequirement | None:
    """The tie-downs of a load stay within its trailer's anchor points; None if not counted.

    A direct or accessory tie-down uses one anchor point, a same-side or over one two (a winch
    stands on one of the two).
    """
    if trailer is None or trailer.anchors is None:
        return None
    steps = (
        Step(
            words="A tie-down to the article or an accessory uses one, one around or over it two",
            numbers="1 or 2 each",
            result="anchor points used",
            source=ANCHOR_USE,
        ),
        Step(
            words=f"Trailer {trailer.id} has",
            numbers=count(trailer.anchors, "anchor point"),
            result=count(trailer.anchors, "anchor point"),
            source=TRAILERS,
        ),
    )
    return AnchorRequirement(
        name="anchor points",
        source=ANCHOR_USE,
        steps=steps,
        at_most=trailer.anchors,
        per_tie_down=ANCHORS_USED,
    )


def winches(trailer: Trailer | None) -> WinchRequirement:
    """Winch straps of a load stay within its trailer's winches; without trailer there are none."""
    number = 0 if trailer is None else trailer.winches
    where = "No trailer is named" if trailer is None else f"Trailer {trailer.id} has"
    step = Step(
        words=f"{where}; each winch strap uses one",
        numbers=count(number, "winch", "winches"),
        result=count(number, "winch", "winches"),
        source=TRAILERS,
    )
    return WinchRequirement(name="winches", source=WINCH_USE, steps=(step,), at_most=number)
