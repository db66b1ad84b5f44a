"""Accessory equipment, 49 CFR 393.130(b)(1): lowered, and tied down unless pinned."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Accessory, Article
from loadplan.day.house import AccessoryWLL
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import AccessoryRequirement, CountRequirement, Look, Step
from loadplan.rules.sources import ACCESSORIES, ONE_PER_ACCESSORY, house_rule
from loadplan.text import count, mass, mass_up

NUMBER_RULE = house_rule("Accessory tie-downs")
IN_NUMBER_RULE = house_rule("Accessory counts in number")
WLL_RULE = house_rule("Accessory WLL")


def accessory_tie_downs(article: Article, profile: Profile) -> tuple[AccessoryRequirement, ...]:
    """One tie-down, or as many as the house says, for each accessory that is not pinned.

    It counts neither toward the number of the article's tie-downs nor toward its aggregate WLL,
    and may be of any WLL, unless house rules say so.
    """
    return tuple(
        _tie_down(accessory, profile) for accessory in article.accessories if not accessory.pinned
    )


def counted_in_number(
    counts: tuple[CountRequirement, ...],
    accessories: tuple[AccessoryRequirement, ...],
    profile: Profile,
) -> tuple[CountRequirement, ...]:
    """``counts`` less the accessories' tie-downs, where the house counts them in the number.

    Only counts over all tie-downs: an accessory stands at no corner. Its tie-downs are always
    there, so what is left to ask is exact.
    """
    there = sum(accessory.number for accessory in accessories)
    if not there or not profile.house.accessory_in_number:
        return counts
    return tuple(one if one.positions is not None else _less(one, there) for one in counts)


def accessory_looks(article: Article, profile: Profile) -> tuple[Look, ...]:
    """Lowered accessories, the pins of those that have no tie-down, and weights not known."""
    looks = []
    half = profile.house.accessory_wll is AccessoryWLL.HALF
    for accessory in article.accessories:
        if accessory.pinned:
            text = f"{accessory.name}: lowered, and its pin or lock stops every movement."
            looks.append(Look(name="accessory pinned", source=ACCESSORIES, text=text))
            continue
        text = f"{accessory.name}: completely lowered, and its own tie-down is tight."
        looks.append(Look(name="accessory lowered", source=ACCESSORIES, text=text))
        if half and accessory.weight is None:
            text = f"{accessory.name}: its weight is not given, so no WLL is asked here."
            looks.append(Look(name="accessory weight", source=WLL_RULE, text=text))
    return tuple(looks)


def _less(asked: CountRequirement, there: int) -> CountRequirement:
    left = max(0, asked.at_least - there)
    step = Step(
        words="Less the tie-downs of accessories",
        numbers=f"{asked.at_least} - {there}",
        result=count(left, "tie-down"),
        source=IN_NUMBER_RULE,
    )
    return replace(asked, at_least=left, steps=(*asked.steps, step))


def _tie_down(accessory: Accessory, profile: Profile) -> AccessoryRequirement:
    number = profile.house.accessory_tie_downs
    least = _least(accessory, profile)
    words = "one tie-down of its own" if number == 1 else f"{number} tie-downs of its own"
    steps = [
        Step(
            words=f"Not pinned: {words}, of any WLL" if least is None else f"Not pinned: {words}",
            numbers=f"{number}",
            result=count(number, "tie-down"),
            source=ONE_PER_ACCESSORY if number == 1 else NUMBER_RULE,
        )
    ]
    if least is not None and accessory.weight is not None:
        steps.append(
            Step(
                words="Of at least half its weight",
                numbers=f"1/2 x {mass(accessory.weight, profile.units)}",
                result=mass_up(least, profile.units),
                source=WLL_RULE,
            )
        )
    return AccessoryRequirement(
        name=f"tie-down of {accessory.name}",
        source=ACCESSORIES,
        steps=tuple(steps),
        accessory=accessory.name,
        number=number,
        at_least=least,
    )


def _least(accessory: Accessory, profile: Profile) -> Fraction | None:
    if profile.house.accessory_wll is AccessoryWLL.ANY or accessory.weight is None:
        return None
    return accessory.weight / 2
