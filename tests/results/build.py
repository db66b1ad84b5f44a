"""A small day and its plan by hand, for the tests of tables and pages.

Load 1: a 21,000 lb excavator with a 900 lb bucket added, 21,900 lb, so 10,950 lb are needed. Each
direct tie-down is a grade 70 3/8 in chain (6,600 lb in the table) on a 5,400 lb binder, so the
binder is the weakest part: 5 x 1/2 x 5,400 = 13,500 lb. Its boom has a tie-down of its own that
does not count; its blade is pinned.
Load 2: 8,000 lb of lumber with sharp edges, 16 ft long: 2 + (16 - 10) / 10 rounded up = 3 straps
over it, 3 x 5,400 = 16,200 lb against 4,000 lb.
Load 3 is held; a chain is on it already.
"""

from __future__ import annotations

import datetime
from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Accessory, AddedWeight, Article, CargoClass, Routing, WeightFrom
from loadplan.day.day import Day
from loadplan.day.gear import Condition, FixedPiece, Gear, Kind
from loadplan.day.load import Load
from loadplan.day.size import read_fits, read_size
from loadplan.day.trailer import Trailer
from loadplan.judge.judge import judge
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.stage import Stage
from loadplan.outcome.tie_down import TieDown

HOUR = 3600


def gear(name, kind, *, size="", fits="", wll=None, **known) -> Gear:
    """One row of gear."""
    return Gear(
        id=name,
        kind=Kind(kind),
        size=read_size(size) if size else None,
        size_text=size,
        fits=(read_fits(fits) or ()) if fits else (),
        wll=None if wll is None else Fraction(wll),
        **known,
    )


CAGE = (
    gear("CH-1", "chain", size="3/8", grade="70", quantity=10),
    gear("CH-2", "chain", size="3/8", quantity=3),
    gear("B-1", "ratchet binder", fits="5/16-3/8", wll=5400, quantity=8),
    gear("WS-1", "winch strap", size="4", wll=5400, quantity=6),
    gear("EP-1", "edge protector", quantity=8),
    gear("B-OLD", "lever binder", fits="3/8", wll=5400, condition=Condition.SCRAP),
    gear("CH-?", "chain", size="3/8", grade="G75", quantity=2),
)
TRAILERS = (
    Trailer(
        id="T-1",
        deck_length=Fraction(30),
        deck_width=Fraction("8.5"),
        deck_height=Fraction(3),
        payload=Fraction(60000),
        anchors=16,
        anchor_wll=Fraction(6000),
    ),
    Trailer(
        id="T-2",
        deck_length=Fraction(48),
        deck_width=Fraction("8.5"),
        deck_height=Fraction(5),
        payload=Fraction(48000),
        anchors=20,
        winches=12,
        front_structure=True,
    ),
)
LOADS = (
    Load(id="1", trailer="T-1", out=6 * HOUR, back=10 * HOUR, driver="R. Keller"),
    Load(id="2", trailer="T-2", out=7 * HOUR, back=12 * HOUR, priority=2, destination="Lodge roof"),
    Load(id="3", out=8 * HOUR, back=11 * HOUR, priority=3, notes="Call ahead"),
)
EXCAVATOR = Article(
    id="EX-1",
    load="1",
    cargo_class=CargoClass.TRACKED_MACHINE,
    weight=Fraction(21000),
    description="Excavator",
    weight_from=WeightFrom.PLATE,
    added=(AddedWeight(what="bucket", weight=Fraction(900)),),
    length=Fraction(24),
    width=Fraction(8),
    height=Fraction("9.5"),
    tie_point_wll=Fraction(12000),
    accessories=(Accessory(name="boom"), Accessory(name="blade", pinned=True)),
)
LUMBER = Article(
    id="LU-2",
    load="2",
    cargo_class=CargoClass.GENERAL,
    weight=Fraction(8000),
    weight_from=WeightFrom.SCALE,
    length=Fraction(16),
    sharp_edges=True,
)
ROLLER = Article(
    id="RL-3",
    load="3",
    cargo_class=CargoClass.WHEELED_MACHINE,
    weight=Fraction(12000),
    length=Fraction(14),
    width=Fraction(6),
    height=Fraction(9),
)
ARTICLES = (EXCAVATOR, LUMBER, ROLLER)
DAY = Day(
    loads=LOADS,
    articles=ARTICLES,
    gear=CAGE,
    trailers=TRAILERS,
    fixed=(FixedPiece(load="3", article="RL-3", position="front left", gear="CH-2"),),
    yard="North yard",
    date=datetime.date(2026, 7, 14),
    turnaround=HOUR,
    warnings=("'Cargo'!Z1  Colour is not a known column and was left out.",),
    name="small",
)


def chain(position, number=1, *, load="1", article="EX-1", **known) -> TieDown:
    """A direct chain tie-down."""
    values = {"member": "CH-1", "tensioner": "B-1", **known}
    return TieDown(
        load=load,
        article=article,
        position=position,
        number=number,
        routing=Routing.DIRECT,
        **values,
    )


def strap(number) -> TieDown:
    """A winch strap over the lumber with its edge protectors."""
    return TieDown(
        load="2",
        article="LU-2",
        position=f"over {number}",
        number=1,
        routing=Routing.OVER,
        member="WS-1",
        protectors=(("EP-1", 2),),
    )


TIE_DOWNS = (
    *(chain(position) for position in ("front left", "front right", "rear left", "rear right")),
    chain("front left", 2),
    chain("boom", member="CH-2", accessory=True),
    *(strap(number) for number in (1, 2, 3)),
)
STAGES = (
    Stage(
        name="loads ready at priority 1",
        value=Fraction(1),
        bound=Fraction(1),
        proved=True,
        greatest=True,
        unit="loads",
        seconds=0.02,
    ),
    Stage(name="tie-downs", value=Fraction(9), bound=Fraction(9), proved=True, seconds=0.05),
    Stage(name="mixed sets", value=Fraction(0), bound=Fraction(0), proved=True, seconds=0.01),
    Stage(
        name="strength issued",
        value=Fraction(84250),
        bound=Fraction(84250),
        proved=True,
        unit="lb",
        seconds=0.1,
    ),
)
SHORT = Shortage(
    load="3",
    article="RL-3",
    short_of="binder for 3/8 in chain, 3,000 lb or more",
    pieces=2,
    why="All 8 are out on load 1 at 08:00.",
    way_out="Send load 3 after 11:00.",
)


def plan_of(day=DAY, ready=("1", "2"), tie_downs=TIE_DOWNS, **known) -> DayPlan:
    """A plan with its judgement, which has nothing against it."""
    judgement = judge(day, ready, tie_downs)
    assert judgement.disagreements == ()
    values = {"stages": STAGES, "shortages": (SHORT,), **known}
    return DayPlan(day=day, ready=ready, tie_downs=tie_downs, judgement=judgement, **values)


def plan_of_one(article, tie_downs, *, trailer=None, house=None, **known) -> DayPlan:
    """A plan of a single ready load with one article."""
    day = replace(
        DAY,
        loads=(Load(id="1", trailer=None if trailer is None else trailer.id),),
        articles=(article,),
        trailers=() if trailer is None else (trailer,),
        fixed=(),
        **({} if house is None else {"house": house}),
        **known,
    )
    return plan_of(day, ready=("1",), tie_downs=tie_downs, shortages=())
