"""House rules that ask something of every tie-down of an article."""

from __future__ import annotations

from loadplan.day.article import Article
from loadplan.day.gear import TENSION_MEMBERS, WEBBING
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.rules.requirement import (
    CannotPlan,
    EachWLLRequirement,
    MemberRequirement,
    Step,
)
from loadplan.rules.sources import house_rule
from loadplan.text import mass_up

LEAST_EACH = house_rule("Least WLL each")
STRAPS = house_rule("Straps on machines")
UNRATED = house_rule("Unrated points")
NO_WEBBING = MemberRequirement(
    name="no straps on machines",
    source=STRAPS,
    steps=(
        Step(
            words="Straps on machines: no",
            numbers="chain, wire rope, rope or steel strapping",
            result="no webbing",
            source=STRAPS,
        ),
    ),
    kinds=TENSION_MEMBERS - WEBBING,
)


def least_each(house: HouseRules, units: Units) -> tuple[EachWLLRequirement, ...]:
    """Each main tie-down has the least WLL the house asks, if it asks any."""
    if house.least_wll_each is None:
        return ()
    least = mass_up(house.least_wll_each, units)
    step = Step(words="Each tie-down has at least", numbers=least, result=least, source=LEAST_EACH)
    return (
        EachWLLRequirement(
            name="least WLL each", source=LEAST_EACH, steps=(step,), at_least=house.least_wll_each
        ),
    )


def straps_on_machines(article: Article, house: HouseRules) -> tuple[MemberRequirement, ...]:
    """No webbing on the machine classes where the house bars it (a light vehicle is none)."""
    barred = not house.straps_on_machines and article.cargo_class.is_machine
    return (NO_WEBBING,) if barred else ()


def unrated_points(
    article: Article, trailer: Trailer | None, house: HouseRules, *, tie_points: bool
) -> tuple[CannotPlan, ...]:
    """Why ``article`` cannot be planned where the house holds unrated points.

    ``tie_points``: whether any of its tie-downs holds a point of the article itself.
    """
    if house.unrated_points is not UnratedPoints.HOLD:
        return ()
    found = []
    if trailer is None:
        why = "The load names no trailer, so its anchor points have no rating."
        found.append(_held("unrated anchor points", why))
    elif trailer.anchor_wll is None:
        why = f"The anchor points of trailer {trailer.id} have no rating (Anchor WLL is blank)."
        found.append(_held("unrated anchor points", why))
    if tie_points and article.tie_point_wll is None:
        why = f"The tie points of {article.id} have no rating (Tie point WLL is blank)."
        found.append(_held("unrated tie points", why))
    return tuple(found)


def _held(name: str, why: str) -> CannotPlan:
    step = Step(words="Unrated points: hold", numbers="no rating", result="held", source=UNRATED)
    return CannotPlan(name=name, source=UNRATED, steps=(step,), why=why)
