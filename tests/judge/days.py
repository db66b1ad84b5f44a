"""Seeded random days, and a hand rule that plans them: first come, first served."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Accessory, AddedWeight, Article, CargoClass, Routing, WeightFrom
from loadplan.day.day import Day
from loadplan.day.gear import Condition, FixedPiece, Gear, Kind
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.outcome.tie_down import TieDown
from tests.judge import oracle
from tests.judge.build import gear, trailer

HOUR = 3600
CLASSES = (
    CargoClass.TRACKED_MACHINE,
    CargoClass.WHEELED_MACHINE,
    CargoClass.ARTICULATED_MACHINE,
    CargoClass.LIGHT_VEHICLE,
    CargoClass.GENERAL,
)
TRAILERS = ("T-1", "T-2", "T-3", "T-4")


def random_day(seed: int) -> Day:
    """A day of five loads on four trailers with a cage that is sometimes short."""
    pick = random.Random(seed)
    loads = tuple(
        Load(
            id=f"L-{number}",
            trailer=TRAILERS[number % 4] if number else None,
            out=(6 + 3 * (number // 4) + pick.randrange(3)) * HOUR,
            back=(9 + 5 * (number // 4) + pick.randrange(4)) * HOUR,
        )
        for number in range(5)
    )
    articles = [one for load in loads for one in _cargo(pick, load)]
    return Day(
        loads=loads,
        articles=tuple(articles),
        gear=_cage(pick),
        trailers=tuple(
            trailer(
                name,
                anchors=pick.choice([None, 12, 20, 30]),
                anchor_wll=pick.choice([None, 5000, 9000]),
                winches=pick.choice([0, 4, 8]),
            )
            for name in TRAILERS
        ),
        house=HouseRules(
            least_wll_each=pick.choice([None, None, Fraction(2500)]),
            accessory_counts=pick.random() < 0.3,
            most_per_position=pick.choice([1, 2, 2, 3]),
            length_count_on_machines=pick.random() < 0.7,
            straps_on_machines=pick.random() < 0.7,
        ),
        turnaround=pick.choice([0, HOUR // 2]),
    )


def _cargo(pick: random.Random, load: Load) -> Iterator[Article]:
    for number in range(pick.choice([1, 1, 2])):
        kind = pick.choice(CLASSES)
        light = kind in (CargoClass.LIGHT_VEHICLE, CargoClass.GENERAL)
        weight = Fraction(pick.choice([900, 3000, 6400]) if light else pick.randrange(6, 30) * 1000)
        accessories = (Accessory(name="boom"), Accessory(name="blade", pinned=True))
        yield Article(
            id=f"{load.id}/{number}",
            load=load.id,
            cargo_class=kind,
            weight=weight,
            weight_from=pick.choice(list(WeightFrom)),
            added=(AddedWeight(what="bucket", weight=Fraction(400)),) * pick.randrange(2),
            length=Fraction(pick.choice([4, 8, 10, 14, 21])),
            blocked_forward=pick.random() < 0.3,
            routing=None if light else pick.choice([None, Routing.DIRECT, Routing.SAME_SIDE]),
            tie_point_wll=pick.choice([None, None, Fraction(6000)]),
            accessories=() if light else accessories[: pick.randrange(3)],
            reach=pick.choice([None, None, Fraction(12)]),
            shackles=0 if light else pick.choice([0, 0, 2]),
            sharp_edges=pick.random() < 0.4,
            chain_only=not light and pick.random() < 0.3,
        )


def _cage(pick: random.Random) -> tuple[Gear, ...]:
    def few() -> int:
        return pick.randrange(6, 26)

    return (
        gear("C-38", "chain", size="3/8", grade="G70", length=20, quantity=few()),
        gear("C-516", "chain", size="5/16", grade="70", length=16, quantity=few()),
        gear("C-12", "chain", size="1/2", grade="70", length=20, quantity=few()),
        gear("C-PLAIN", "chain", size="3/8", length=14, quantity=few()),
        gear("C-ODD", "chain", size="3/8", grade="40", length=20, quantity=4),
        gear("C-SCRAP", "chain", size="3/8", grade="70", quantity=4, condition=Condition.SCRAP),
        gear("C-KIT", "chain", size="3/8", grade="70", length=20, quantity=4, kept_on="T-1"),
        gear("LB-38", "lever binder", fits="5/16-3/8", wll=5400, quantity=few()),
        gear("RB-12", "ratchet binder", fits="3/8, 1/2", breaking_strength=27600, quantity=few()),
        gear("RB-KIT", "ratchet binder", fits="3/8", wll=6600, quantity=4, kept_on="T-1"),
        gear("LB-BARE", "lever binder", wll=5400, quantity=4),
        gear("S-2", "ratchet strap", size="2", length=27, quantity=few()),
        gear("S-4", "winch strap", size="4", length=30, quantity=few()),
        gear("R-2", "retractable strap", wll=3333, quantity=2, kept_on="T-2"),
        gear("W-38", "wire rope", size="3/8", length=30, quantity=few()),
        gear("T-58", "turnbuckle", breaking_strength=15000, quantity=few()),
        gear("SH-1", "shackle", wll=9500, quantity=few()),
        gear("SH-2", "shackle", wll=4000, quantity=few()),
        gear("EP-1", "edge protector", quantity=few()),
    )


def hand_plan(day: Day, seed: int) -> tuple[tuple[str, ...], list[TieDown]]:
    """Load by load, pieces at random; a load that cannot be made up so is held.

    The oracle alone decides what may stay, so the plan is as good as the oracle says.
    """
    pick = random.Random(seed)
    ready: list[str] = []
    plan: list[TieDown] = []
    for load in day.loads:
        for _ in range(30):
            tried = [
                one
                for item in day.articles
                if item.load == load.id
                for one in _article(day, load, item, pick)
            ]
            if not oracle.broken(day, (*ready, load.id), plan + tried):
                ready.append(load.id)
                plan += tried
                break
    return tuple(ready), plan


def _article(day: Day, load: Load, article: Article, pick: random.Random) -> list[TieDown]:
    """Tie-downs in filling order: some number of one random make, then the accessories."""
    over = article.routing is Routing.OVER or (
        article.routing is None and article.cargo_class is CargoClass.GENERAL
    )
    routing = Routing.OVER if over else article.routing or Routing.DIRECT
    places = [(name, 1) for name in oracle.OVER]
    if not over:
        rounds = range(1, day.house.most_per_position + 1)
        places = [(name, number) for number in rounds for name in oracle.CORNERS]
        places += [(name, number) for number in rounds for name in oracle.MIDDLE]
    number = pick.choice([2, 4, 4, 5, 6, 8])
    made = _make(day, load, pick, article, routing)
    found = [
        TieDown(load=load.id, article=article.id, position=name, number=at, routing=routing, **made)
        for name, at in places[:number]
    ]
    for accessory in article.accessories:
        if not accessory.pinned:
            made = _make(day, load, pick, None, Routing.DIRECT)
            found.append(
                TieDown(
                    load=load.id,
                    article=article.id,
                    position=accessory.name,
                    number=1,
                    routing=Routing.DIRECT,
                    accessory=True,
                    **made,
                )
            )
    return found


def _make(
    day: Day, load: Load, pick: random.Random, article: Article | None, routing: Routing
) -> dict[str, object]:
    """A random tension member with a tensioner of its kind, shackles and protectors as asked."""
    kinds = {one.id: one for one in day.gear if one.condition is Condition.GOOD}
    members = [one for one in kinds.values() if one.kind in oracle.MEMBERS]
    member = pick.choice(members)
    tensioner = None
    if member.kind is Kind.CHAIN:
        tensioner = pick.choice(["LB-38", "RB-12", "RB-KIT"])
    if member.kind is Kind.WIRE_ROPE:
        tensioner = "T-58"
    shackles = 0 if article is None else article.shackles
    protectors: tuple[tuple[str, int], ...] = ()
    if article is not None and article.sharp_edges and member.kind in oracle.STRAPS:
        protectors = (("EP-1", 1 if routing is Routing.DIRECT else 2),)
    return {
        "member": member.id,
        "tensioner": tensioner,
        "shackle": pick.choice(["SH-1", "SH-2"]) if shackles else None,
        "shackles": shackles,
        "protectors": protectors,
    }


def tightened(day: Day, ready: tuple[str, ...], plan: list[TieDown]) -> Day:
    """``day`` with nothing to spare: gear, anchor points, winches and strength just enough."""
    for change in (_weights, _quantities, _points):
        tight = change(day, ready, plan)
        if not oracle.broken(tight, ready, plan):
            day = tight
    return day


def _weights(day: Day, ready: tuple[str, ...], plan: list[TieDown]) -> Day:
    """Each article as heavy as its tie-downs hold, to the last fraction of a pound."""
    loads = {load.id: load for load in day.loads}
    articles = []
    for one in day.articles:
        own = [tied for tied in plan if tied.article == one.id]
        if own:
            strength = oracle.strength(day, loads[one.load], one, own)
            added = sum((item.weight for item in one.added), Fraction(0))
            one = replace(one, weight=strength / day.house.aggregate_share - added)
        articles.append(one)
    return replace(day, articles=tuple(articles))


def _quantities(day: Day, ready: tuple[str, ...], plan: list[TieDown]) -> Day:
    gear = (
        replace(one, quantity=oracle.most_out(day, ready, plan, one)) if one.usable else one
        for one in day.gear
    )
    return replace(day, gear=tuple(gear))


def _points(day: Day, ready: tuple[str, ...], plan: list[TieDown]) -> Day:
    kinds = {one.id: one.kind for one in day.gear}
    trailers = []
    for one in day.trailers:
        anchors, winches = [0], [0]
        for load in day.loads:
            if load.trailer == one.id:
                own = [tied for tied in plan if tied.load == load.id]
                anchors.append(sum(1 + (tied.routing is not Routing.DIRECT) for tied in own))
                winches.append(sum(kinds[tied.member] is Kind.WINCH_STRAP for tied in own))
        trailers.append(replace(one, anchors=max(anchors), winches=max(winches)))
    return replace(day, trailers=tuple(trailers))


def with_some_fixed(day: Day, plan: list[TieDown], seed: int) -> Day:
    """``day`` with some pieces of ``plan`` already on."""
    pick = random.Random(seed)
    fixed = []
    for tied in plan:
        for name, pieces in tied.pieces().items():
            if pick.random() < 0.15:
                fixed += [
                    FixedPiece(
                        load=tied.load,
                        article=tied.article,
                        position=tied.position,
                        number=tied.number,
                        gear=name,
                    )
                ] * pick.randint(1, pieces)
    return replace(day, fixed=tuple(fixed))
