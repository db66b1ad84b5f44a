"""Small days and plans for the tests of the judgement, in lb and ft."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Article, CargoClass, Routing
from loadplan.day.day import Day
from loadplan.day.gear import Gear, Kind
from loadplan.day.load import Load
from loadplan.day.size import read_fits, read_size
from loadplan.day.trailer import Trailer
from loadplan.judge.judge import judge
from loadplan.outcome.check import Check
from loadplan.outcome.tie_down import TieDown

CORNERS = ("front left", "front right", "rear left", "rear right")
_EXACT = {
    *("weight", "length", "width", "height", "reach", "tie_point_wll", "wll"),
    *("breaking_strength", "deck_length", "deck_width", "deck_height", "payload", "anchor_wll"),
}


def exact(known):
    """``known`` with the numbers of quantities as Fractions."""
    return {
        name: Fraction(value) if name in _EXACT and value is not None else value
        for name, value in known.items()
    }


def gear(name, kind, *, size="", fits="", **known) -> Gear:
    """One row of gear; 12 pieces unless said otherwise."""
    return Gear(
        id=name,
        kind=Kind(kind),
        size=read_size(size) if size else None,
        size_text=size,
        fits=(read_fits(fits) or ()) if fits else (),
        **exact({"quantity": 12, **known}),
    )


# Table ratings (49 CFR 393.108): grade 70 3/8 in 6,600 lb, 5/16 in 4,700 lb; unmarked 3/8 in
# 2,650 lb; webbing 2 in 2,000 lb, 4 in 4,000 lb; wire rope 3/8 in 3,000 lb.
CAGE = (
    gear("C-38", "chain", size="3/8", grade="70", length=20),
    gear("C-516", "chain", size="5/16", grade="70", length=16),
    gear("C-PLAIN", "chain", size="3/8"),
    gear("B-38", "lever binder", fits="5/16-3/8", wll=5400),
    gear("RB-12", "ratchet binder", fits="1/2", wll=9200),
    gear("S-2", "ratchet strap", size="2", length=27),
    gear("S-4", "winch strap", size="4", length=30),
    gear("W-38", "wire rope", size="3/8", length=30),
    gear("T-58", "turnbuckle", wll=5200),
    gear("SH-1", "shackle", wll=9500),
    gear("EP-1", "edge protector"),
    gear("ST-1", "steel strapping", size="1-1/4 x 0.029"),
)
TRAILER = Trailer(id="T-1")


def trailer(name="T-1", **known) -> Trailer:
    """A trailer with what is ``known`` of it."""
    return Trailer(id=name, **exact(known))


def machine(**known) -> Article:
    """A tracked machine ``M-1`` of 20,000 lb, 18 ft long, on load ``L-1``, weighed on a scale.

    It needs 10,000 lb and four tie-downs; by length 2 + 8/10 rounded up = 3.
    """
    values = {"weight": 20000, "length": 18, **known}
    return Article(
        **{
            "id": "M-1",
            "load": "L-1",
            "cargo_class": CargoClass.TRACKED_MACHINE,
            **exact(values),
        }
    )


def crate(**known) -> Article:
    """General cargo ``G-1`` of 3,000 lb, 8 ft long, tied over: two tie-downs, 1,500 lb."""
    return machine(
        **{"id": "G-1", "cargo_class": CargoClass.GENERAL, "weight": 3000, "length": 8, **known}
    )


def day(*articles: Article, cage: Sequence[Gear] = CAGE, on: Trailer = TRAILER, **known) -> Day:
    """A day whose loads all ride on trailer ``T-1`` all day unless ``loads`` says otherwise."""
    cargo = articles or (machine(),)
    names = dict.fromkeys(article.load for article in cargo)
    values = {
        "loads": tuple(Load(id=name, trailer=on.id) for name in names),
        "trailers": (on,),
        **known,
    }
    return Day(articles=cargo, gear=tuple(cage), **values)


def with_gear(cage: Sequence[Gear], name: str, **changed) -> tuple[Gear, ...]:
    """``cage`` with the gear ``name`` changed."""
    return tuple(replace(one, **exact(changed)) if one.id == name else one for one in cage)


def tied(position, number=1, **known) -> TieDown:
    """One tie-down of ``M-1`` with a 3/8 in chain and its binder: 5,400 lb, the binder's."""
    values = {
        "load": "L-1",
        "article": "M-1",
        "routing": Routing.DIRECT,
        "member": "C-38",
        "tensioner": "B-38",
        **known,
    }
    return TieDown(position=position, number=number, **values)


def four(**known) -> list[TieDown]:
    """One tie-down at each corner: 4 x 1/2 x 5,400 = 10,800 lb."""
    return [tied(corner, **known) for corner in CORNERS]


def over(number=1, **known) -> TieDown:
    """One 2 in ratchet strap over ``G-1``: 2,000 lb, credited whole."""
    values = {
        "article": "G-1",
        "routing": Routing.OVER,
        "member": "S-2",
        "tensioner": None,
        **known,
    }
    return tied(f"over {number}", **values)


def broken(whole: Day, tie_downs, ready=("L-1",)) -> list[str]:
    """The disagreements with a plan."""
    return list(judge(whole, ready, tie_downs).disagreements)


def checks(whole: Day, tie_downs, ready=("L-1",)) -> dict[tuple[str, str], Check]:
    """The checks of a plan by article ("" for the load) and name."""
    return {(check.article, check.name): check for check in judge(whole, ready, tie_downs).checks}


def row(check: Check) -> tuple[str, str, str, str]:
    """Need, have, unit and verdict of a check."""
    return (check.need, check.have, check.unit, check.verdict.value)
