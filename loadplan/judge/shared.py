"""What the articles of one load share: the anchor points and winches of its trailer."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.judge.case import LoadCase
from loadplan.judge.finding import Finding
from loadplan.judge.wording import NOTHING, working
from loadplan.outcome.check import Check, Verdict
from loadplan.rules.requirement import AnchorRequirement
from loadplan.text import count


def shared(case: LoadCase) -> Iterator[Finding]:
    """What the tie-downs of the load use together, against what its trailer offers.

    Winches are mentioned only where there are any or one is used.
    """
    if case.demand.anchors is not None:
        yield _anchors(case, case.demand.anchors)
    winches = case.demand.winches
    used = case.winch_straps
    if used or winches.at_most:
        yield Finding(
            requirement=winches,
            need=f"{used:,}",
            have=f"{winches.at_most:,}",
            unit="winches",
            met=used <= winches.at_most,
            broken=f"the plan has {count(used, 'winch strap')}, and the trailer "
            f"{count(winches.at_most, 'winch', 'winches')}",
        )


def offered(case: LoadCase) -> Iterator[Check]:
    """The anchor points a held load has to do with: what it would use is not known."""
    asked = case.demand.anchors
    if asked is not None:
        yield Check(
            load=case.load.id,
            article="",
            name=asked.name,
            need=NOTHING,
            have=f"{asked.at_most:,}",
            unit="anchor points",
            verdict=Verdict.ADVICE,
            working=working(asked, "The load is held."),
            source=asked.source.cite(),
        )


def _anchors(case: LoadCase, asked: AnchorRequirement) -> Finding:
    used = sum(asked.per_tie_down[tie_down.routing] for tie_down in case.tie_downs)
    return Finding(
        requirement=asked,
        need=f"{used:,}",
        have=f"{asked.at_most:,}",
        unit="anchor points",
        met=used <= asked.at_most,
        broken=f"the tie-downs use {count(used, 'anchor point')}, and the trailer has "
        f"{asked.at_most:,}",
    )
