"""Ways to spoil a plan or to change the day under it.

Each mutation takes a random source and a plan and gives another plan. Some happen to break no
rule; which do is for the oracle to say.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from loadplan.day.article import Accessory, AddedWeight, Article, Routing, SecuredUnder
from loadplan.day.day import Day
from loadplan.day.gear import Condition, FixedPiece, Gear, Kind
from loadplan.day.house import UnratedPoints
from loadplan.day.load import Load
from loadplan.outcome.tie_down import TieDown
from tests.judge.days import CLASSES, HOUR

POSITIONS = (
    *("front left", "front right", "rear left", "rear right", "mid left", "mid right"),
    *("over 1", "over 2", "over 3", "over 7", "boom", "blade", "tail"),
)
SECTIONS = (SecuredUnder.HEAVY, SecuredUnder.LIGHT_VEHICLE, SecuredUnder.GENERAL)
ROUTINGS = (Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER)


@dataclass(frozen=True)
class Plan:
    """A day with what a plan says of it."""

    day: Day
    ready: tuple[str, ...]
    tie_downs: tuple[TieDown, ...]


Mutation = Callable[[random.Random, Plan], Plan]


def mutations() -> dict[str, Mutation]:
    """Every mutation by name."""
    return {
        **{f"tie-down: {name}": _of_tie_downs(change) for name, change in _TIE_DOWNS.items()},
        **{f"gear: {name}": _of_gear(change) for name, change in _GEAR.items()},
        **{f"article: {name}": _of_article(change) for name, change in _ARTICLES.items()},
        **{f"load: {name}": _of_load(change) for name, change in _LOADS.items()},
        **{f"trailer: {name}": _of_trailer(change) for name, change in _TRAILERS.items()},
        **{f"house: {name}": _of_house(change) for name, change in _HOUSE.items()},
        "drop a tie-down": _drop,
        "one tie-down twice": _twice,
        "swap two places": _swap_places,
        "one piece for two": _one_piece_for_two,
        "hold a ready load": _hold,
        "a held load is ready": _send,
        "hold a ready load and its tie-downs": _hold_whole,
        "an unknown load is ready": _send_unknown,
        "a load ready twice": _send_twice,
        "fix a planned piece": _fix_planned,
        "fix another piece": _fix_other,
        "longer turnaround": _turnaround,
    }


def _id(pick: random.Random, plan: Plan) -> str:
    return pick.choice([*(one.id for one in plan.day.gear), "NO-1"])


_TIE_DOWNS: dict[str, Callable[[random.Random, Plan, TieDown], TieDown]] = {
    "another member": lambda pick, plan, one: replace(one, member=_id(pick, plan)),
    "a weaker chain": lambda pick, plan, one: replace(one, member="C-PLAIN"),
    "a chain of another size": lambda pick, plan, one: replace(one, member="C-516"),
    "a scrap chain": lambda pick, plan, one: replace(one, member="C-SCRAP"),
    "another kit": lambda pick, plan, one: replace(one, member="C-KIT"),
    "another tensioner": lambda pick, plan, one: replace(one, tensioner=_id(pick, plan)),
    "no tensioner": lambda pick, plan, one: replace(one, tensioner=None),
    "another binder": lambda pick, plan, one: replace(
        one, tensioner=pick.choice(["LB-38", "RB-12", "RB-KIT", "LB-BARE", "T-58"])
    ),
    "another shackle": lambda pick, plan, one: replace(one, shackle=_id(pick, plan)),
    "no shackle": lambda pick, plan, one: replace(one, shackle=None),
    "no shackles at all": lambda pick, plan, one: replace(one, shackle=None, shackles=0),
    "another number of shackles": lambda pick, plan, one: replace(
        one, shackle="SH-1", shackles=pick.choice([-1, 0, 1, 2, 3])
    ),
    "no protectors": lambda pick, plan, one: replace(one, protectors=()),
    "other protectors": lambda pick, plan, one: replace(
        one, protectors=((pick.choice(["EP-1", "EP-1", "SH-1", "NO-1"]), pick.randrange(-1, 4)),)
    ),
    "another position": lambda pick, plan, one: replace(one, position=pick.choice(POSITIONS)),
    "another number": lambda pick, plan, one: replace(one, number=pick.choice([0, 1, 2, 3, 4])),
    "another routing": lambda pick, plan, one: replace(one, routing=pick.choice(ROUTINGS)),
    "accessory or not": lambda pick, plan, one: replace(one, accessory=not one.accessory),
    "another load": lambda pick, plan, one: replace(
        one, load=pick.choice(["L-0", "L-1", "L-2", "L-3", "L-4", "L-9"])
    ),
    "another article": lambda pick, plan, one: replace(
        one, article=pick.choice([*(item.id for item in plan.day.articles), "M-9"])
    ),
}
_GEAR: dict[str, Callable[[random.Random, Plan, Gear], Gear]] = {
    "scrap": lambda pick, plan, one: replace(one, condition=Condition.SCRAP),
    "on hold": lambda pick, plan, one: replace(one, condition=Condition.HOLD),
    "fewer": lambda pick, plan, one: replace(
        one, quantity=max(0, one.quantity - pick.choice([1, 4]))
    ),
    "few": lambda pick, plan, one: replace(one, quantity=pick.randrange(9)),
    "weaker marking": lambda pick, plan, one: replace(one, wll=Fraction(pick.randrange(500, 6000))),
    "no rating": lambda pick, plan, one: replace(
        one, wll=None, breaking_strength=None, size=None, grade=""
    ),
    "a third of its breaking strength": lambda pick, plan, one: replace(
        one, wll=None, size=None, breaking_strength=Fraction(pick.randrange(3000, 30000))
    ),
    "kit of another trailer": lambda pick, plan, one: replace(
        one, kept_on=pick.choice(["T-1", "T-2", "T-3"])
    ),
    "to the cage": lambda pick, plan, one: replace(one, kept_on=None),
    "fits nothing": lambda pick, plan, one: replace(one, fits=()),
    "shorter": lambda pick, plan, one: replace(one, length=pick.choice([None, Fraction(11)])),
    "another kind": lambda pick, plan, one: replace(one, kind=pick.choice(list(Kind)[:5])),
}
_ARTICLES: dict[str, Callable[[random.Random, Plan, Article], Article]] = {
    "heavier": lambda pick, plan, one: replace(one, weight=one.weight * pick.choice([2, 3])),
    "a bucket more": lambda pick, plan, one: replace(
        one,
        added=(*one.added, AddedWeight(what="more", weight=Fraction(pick.randrange(5000)))),
    ),
    "longer": lambda pick, plan, one: replace(one, length=Fraction(pick.choice([5, 11, 31, 61]))),
    "blocked or not": lambda pick, plan, one: replace(one, blocked_forward=not one.blocked_forward),
    "another class": lambda pick, plan, one: replace(one, cargo_class=pick.choice(CLASSES)),
    "another section": lambda pick, plan, one: replace(one, secured_under=pick.choice(SECTIONS)),
    "another routing": lambda pick, plan, one: replace(one, routing=pick.choice(ROUTINGS)),
    "weaker tie points": lambda pick, plan, one: replace(
        one, tie_point_wll=Fraction(pick.randrange(1000, 6000))
    ),
    "one accessory more": lambda pick, plan, one: replace(
        one, accessories=(*one.accessories, Accessory(name="mast", pinned=pick.random() < 0.2))
    ),
    "no accessories": lambda pick, plan, one: replace(one, accessories=()),
    "pinned or not": lambda pick, plan, one: replace(
        one,
        accessories=tuple(replace(item, pinned=not item.pinned) for item in one.accessories),
    ),
    "more reach": lambda pick, plan, one: replace(one, reach=Fraction(pick.choice([16, 20, 28]))),
    "shackles": lambda pick, plan, one: replace(one, shackles=pick.choice([0, 1, 2])),
    "sharp edges": lambda pick, plan, one: replace(one, sharp_edges=True),
    "chain only": lambda pick, plan, one: replace(one, chain_only=True),
}
_LOADS: dict[str, Callable[[random.Random, Plan, Load], Load]] = {
    "earlier": lambda pick, plan, one: replace(one, out=one.out - pick.choice([1, 2, 3]) * HOUR),
    "later back": lambda pick, plan, one: replace(one, back=one.back + pick.choice([1, 4]) * HOUR),
    "a second longer": lambda pick, plan, one: replace(one, out=one.out - 1, back=one.back + 1),
    "another trailer": lambda pick, plan, one: replace(
        one, trailer=pick.choice([None, "T-1", "T-2", "T-3", "T-4"])
    ),
}
_TRAILERS: dict[str, Callable] = {
    "fewer anchors": lambda pick, plan, one: replace(one, anchors=pick.randrange(14)),
    "weaker anchors": lambda pick, plan, one: replace(
        one, anchor_wll=Fraction(pick.randrange(1000, 6000))
    ),
    "fewer winches": lambda pick, plan, one: replace(one, winches=pick.randrange(3)),
}
_HOUSE: dict[str, Callable] = {
    "least WLL each": lambda pick, house: replace(
        house, least_wll_each=Fraction(pick.randrange(2000, 6000))
    ),
    "a greater share": lambda pick, house: replace(
        house, aggregate_share=pick.choice([Fraction(3, 5), Fraction(4, 5), Fraction(1)])
    ),
    "no straps": lambda pick, house: replace(house, straps_on_machines=False),
    "length counts": lambda pick, house: replace(house, length_count_on_machines=True),
    "one per position": lambda pick, house: replace(house, most_per_position=1),
    "accessories do not count": lambda pick, house: replace(house, accessory_counts=False),
    "hold unrated points": lambda pick, house: replace(house, unrated_points=UnratedPoints.HOLD),
    "heavy from": lambda pick, house: replace(house, heavy_from=Fraction(10000)),
}


def _of_tie_downs(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        at = pick.randrange(len(plan.tie_downs))
        changed = change(pick, plan, plan.tie_downs[at])
        return replace(plan, tie_downs=(*plan.tie_downs[:at], changed, *plan.tie_downs[at + 1 :]))

    return mutate


def _of_gear(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        used = sorted({name for tied in plan.tie_downs for name in tied.pieces()})
        name = pick.choice(used)
        gear = tuple(change(pick, plan, one) if one.id == name else one for one in plan.day.gear)
        return replace(plan, day=replace(plan.day, gear=gear))

    return mutate


def _of_article(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        name = pick.choice([one.id for one in plan.day.articles if one.load in plan.ready])
        articles = tuple(
            change(pick, plan, one) if one.id == name else one for one in plan.day.articles
        )
        return replace(plan, day=replace(plan.day, articles=articles))

    return mutate


def _of_load(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        name = pick.choice(plan.ready)
        loads = tuple(change(pick, plan, one) if one.id == name else one for one in plan.day.loads)
        return replace(plan, day=replace(plan.day, loads=loads))

    return mutate


def _of_trailer(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        trailers = tuple(change(pick, plan, one) for one in plan.day.trailers)
        return replace(plan, day=replace(plan.day, trailers=trailers))

    return mutate


def _of_house(change) -> Mutation:
    def mutate(pick: random.Random, plan: Plan) -> Plan:
        return replace(plan, day=replace(plan.day, house=change(pick, plan.day.house)))

    return mutate


def _drop(pick: random.Random, plan: Plan) -> Plan:
    at = pick.randrange(len(plan.tie_downs))
    return replace(plan, tie_downs=plan.tie_downs[:at] + plan.tie_downs[at + 1 :])


def _twice(pick: random.Random, plan: Plan) -> Plan:
    one = pick.choice(plan.tie_downs)
    return replace(plan, tie_downs=(*plan.tie_downs, replace(one, number=pick.choice([1, 2, 3]))))


def _swap_places(pick: random.Random, plan: Plan) -> Plan:
    tie_downs = list(plan.tie_downs)
    first, second = pick.randrange(len(tie_downs)), pick.randrange(len(tie_downs))
    one, other = tie_downs[first], tie_downs[second]
    tie_downs[first] = replace(one, position=other.position, number=other.number)
    tie_downs[second] = replace(other, position=one.position, number=one.number)
    return replace(plan, tie_downs=tuple(tie_downs))


def _one_piece_for_two(pick: random.Random, plan: Plan) -> Plan:
    """The day owns one piece fewer of some gear than the plan has in all its tie-downs."""
    name = pick.choice(plan.tie_downs).member
    number = sum(tied.member == name for tied in plan.tie_downs) - 1
    gear = tuple(replace(one, quantity=number) if one.id == name else one for one in plan.day.gear)
    return replace(plan, day=replace(plan.day, gear=gear))


def _hold(pick: random.Random, plan: Plan) -> Plan:
    name = pick.choice(plan.ready)
    return replace(plan, ready=tuple(one for one in plan.ready if one != name))


def _hold_whole(pick: random.Random, plan: Plan) -> Plan:
    name = pick.choice(plan.ready)
    return replace(
        plan,
        ready=tuple(one for one in plan.ready if one != name),
        tie_downs=tuple(one for one in plan.tie_downs if one.load != name),
    )


def _send(pick: random.Random, plan: Plan) -> Plan:
    held = [one.id for one in plan.day.loads if one.id not in plan.ready]
    return replace(plan, ready=(*plan.ready, *held[:1]))


def _send_unknown(pick: random.Random, plan: Plan) -> Plan:
    return replace(plan, ready=(*plan.ready, "L-9"))


def _send_twice(pick: random.Random, plan: Plan) -> Plan:
    return replace(plan, ready=(*plan.ready, pick.choice(plan.ready)))


def _fix_planned(pick: random.Random, plan: Plan) -> Plan:
    tied = pick.choice(plan.tie_downs)
    return _with_fixed(plan, tied, tied.member)


def _fix_other(pick: random.Random, plan: Plan) -> Plan:
    tied = pick.choice(plan.tie_downs)
    number = pick.choice([tied.number, tied.number, 2])
    return _with_fixed(plan, replace(tied, number=number), pick.choice(plan.day.gear).id)


def _with_fixed(plan: Plan, tied: TieDown, name: str) -> Plan:
    piece = FixedPiece(
        load=tied.load,
        article=tied.article,
        position=tied.position,
        number=tied.number,
        gear=name,
    )
    return replace(plan, day=replace(plan.day, fixed=(*plan.day.fixed, piece)))


def _turnaround(pick: random.Random, plan: Plan) -> Plan:
    return replace(plan, day=replace(plan.day, turnaround=pick.choice([1, 2]) * HOUR))
