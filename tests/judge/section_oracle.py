"""An oracle for two sample days: mixed cargo with a group, and a day under the Canadian rule.

What each article asks is written down here by hand, from the text of its section and the figures
of its row; the make-up of a tie-down, the pool and the order of places are those of
:mod:`tests.judge.oracle`. It knows nothing of the package's rules.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from loadplan.day.article import Routing
from loadplan.day.day import Day
from loadplan.day.gear import Condition, Gear, Kind
from loadplan.outcome.tie_down import TieDown
from tests.judge import oracle

CORNERS, SIDES = oracle.CORNERS, oracle.CORNERS + oracle.MIDDLE
FRONT, REAR = tuple(CORNERS[:2]), tuple(CORNERS[2:])
LEGS = [f"leg {number}" for number in range(1, 5)]
DIAGONALS = ["diagonal left to right", "diagonal right to left"]
ANY = frozenset(Kind)
CHAINS = frozenset({Kind.CHAIN})
CREDIT = {Routing.DIRECT: Fraction(1, 2), Routing.OVER: Fraction(1), Routing.ROUND: Fraction(0)}


@dataclass(frozen=True)
class Asks:
    """What one article, or group, asks: its strength, its places, how many where, of what.

    ``places`` are the places of each way to run; ``least`` the fewest tie-downs at some places;
    ``each`` the least WLL of every tie-down at some places.
    """

    load: str
    strength: Fraction
    places: Mapping[Routing, list[str]]
    least: Mapping[tuple[str, ...], int]
    most: int = 1
    kinds: frozenset[Kind] = ANY
    each: Mapping[tuple[str, ...], Fraction] = field(default_factory=dict)
    accessories: tuple[str, ...] = ()


def over(load: str, strength: float, count: int, **more) -> Asks:
    """Tie-downs over the article, ``count`` of them or more."""
    places = {Routing.OVER: oracle.OVER}
    return Asks(load, Fraction(strength), places, {tuple(oracle.OVER): count}, **more)


def sides(load: str, strength: float, least: Mapping[tuple[str, ...], int], **more) -> Asks:
    """Direct tie-downs at the corners and the middle, two at most at each."""
    return Asks(load, Fraction(strength), {Routing.DIRECT: SIDES}, least, most=2, **more)


CORNER_EACH = {(corner,): 1 for corner in CORNERS}
# In lb. Half of each weight; the numbers by length are for what is not blocked forward.
MIXED = {
    # Two pallets side by side, 4 ft long and over 1,100 lb each: two (393.110(b)(2)); 4,400 lb.
    "CEM": over("1", 2200, 2),
    # 16 ft: two for the first 10, one for the 6 begun after them; 6,200 lb.
    "FORMS": over("1", 3100, 3),
    # 393.130: each corner; 15 ft asks for three; 8,350 lb; its row asks for chain.
    "EX-1": sides("2", 4175, {**CORNER_EACH, tuple(SIDES): 4}, kinds=CHAINS, accessories=("boom",)),
    # 393.136(f): chain; one around the top of half the weight or more, four legs of a quarter.
    "ROCK": Asks(
        "2",
        Fraction(4000),
        {Routing.ROUND: ["ring"], Routing.DIRECT: LEGS},
        {("ring",): 1, **{(leg,): 1 for leg in LEGS}},
        kinds=CHAINS,
        each={("ring",): Fraction(4000), tuple(LEGS): Fraction(2000)},
    ),
    # 393.128, and two at each end by the house rule; 17 ft asks for three; 5,200 lb.
    "UT-1": sides("3", 2600, {FRONT: 2, REAR: 2, tuple(SIDES): 3}),
    # 393.120(b)(1): two crossing diagonals and one straight over; 6,400 lb.
    "COIL": Asks(
        "3",
        Fraction(3200),
        {Routing.OVER: [*DIAGONALS, *oracle.OVER]},
        {(DIAGONALS[0],): 1, (DIAGONALS[1],): 1, tuple(oracle.OVER): 1},
    ),
    # 393.116(f): two, a sixth of 18,000 lb together; 4,000 lb each (393.116(b)(3)).
    "LOGS": over("4", 3000, 2, each={tuple(oracle.OVER): Fraction(4000)}),
    # 3 ft and 900 lb: one.
    "NAILS": over("4", 450, 1),
    # 393.126: each corner; chain or wire rope; 14,000 lb.
    "OFFICE": Asks(
        "5",
        Fraction(7000),
        {Routing.DIRECT: CORNERS},
        CORNER_EACH,
        most=2,
        kinds=frozenset({Kind.CHAIN, Kind.WIRE_ROPE}),
    ),
}
# In kg. Standard 10: s. 10 half the weight, s. 22 by length, s. 88, s. 89 with 2,268 kg each.
CANADA = {
    "EX-2": sides(
        "1",
        2255,
        {**CORNER_EACH, tuple(SIDES): 4},
        kinds=CHAINS,
        each={tuple(SIDES): Fraction(2268)},
        accessories=("boom",),
    ),
    # 6.096 m: two for the first 3.04 m, and two for the 3.056 m after them.
    "CULVERT": over("2", 700, 4),
    "UT-1": sides("3", 1200, {FRONT: 1, REAR: 1, tuple(SIDES): 2}),
}


def broken(
    day: Day, asks: Mapping[str, Asks], ready: tuple[str, ...], tie_downs: list[TieDown]
) -> set[str]:
    """What is wrong with a plan of which the loads ``ready`` go, in short names."""
    found: set[str] = set()
    for tied in tie_downs:
        if tied.article not in asks or asks[tied.article].load != tied.load:
            found.add("where")
        elif tied.load not in ready:
            found.add("held")
    for name, asked in asks.items():
        if asked.load in ready:
            own = [one for one in tie_downs if (one.article, one.load) == (name, asked.load)]
            found |= _article(day, asked, own)
    for load in day.loads:
        trailer = next(one for one in day.trailers if one.id == load.trailer)
        own = [tied for tied in tie_downs if tied.load == load.id]
        ends = {Routing.DIRECT: 1, Routing.OVER: 2, Routing.SAME_SIDE: 2, Routing.ROUND: 0}
        used = sum(ends[tied.routing] for tied in own)
        if load.id in ready and trailer.anchors is not None and used > trailer.anchors:
            found.add("anchors")
    return found | oracle._pool(day, ready, tie_downs)


def _article(day: Day, asked: Asks, own: list[TieDown]) -> set[str]:
    gear = {one.id: one for one in day.gear}
    trailer = next(
        one
        for load in day.loads
        for one in day.trailers
        if load.id == asked.load and one.id == load.trailer
    )
    found, strength = set(), Fraction(0)
    routes = {place: way for way, places in asked.places.items() for place in places}
    there: Counter[str] = Counter()
    for tied in own:
        parts = [tied.member, *([tied.tensioner] if tied.tensioner else [])]
        if any(name not in gear for name in parts) or tied.shackle or tied.protectors:
            return {"pieces"}
        if _of_pieces([gear[name] for name in parts], day):
            found.add("pieces")
            continue
        wll = [oracle.wll(gear[name]) for name in parts]
        if trailer.anchor_wll is not None and tied.routing is not Routing.ROUND:
            wll.append(trailer.anchor_wll)
        if tied.accessory:
            right = tied.position in asked.accessories and tied.number == 1
            if not right or tied.routing is not Routing.DIRECT:
                found.add("accessory")
            continue
        if tied.position not in routes or tied.routing is not routes[tied.position]:
            found.add("place")
            continue
        there[tied.position] += 1
        strength += CREDIT[tied.routing] * min(wll)
        if gear[tied.member].kind not in asked.kinds:
            found.add("kind")
        if any(tied.position in where and min(wll) < least for where, least in asked.each.items()):
            found.add("each")
    return found | _counts(asked, own, there, strength)


def _counts(asked: Asks, own: list[TieDown], there: Counter[str], strength: Fraction) -> set[str]:
    found = set()
    if strength < asked.strength:
        found.add("strength")
    if any(sum(there[one] for one in where) < least for where, least in asked.least.items()):
        found.add("count")
    boomed = Counter(tied.position for tied in own if tied.accessory)
    if boomed != Counter(asked.accessories):
        found.add("accessory")
    for position in there:
        numbers = sorted(one.number for one in own if one.position == position)
        if numbers != list(range(1, len(numbers) + 1)) or len(numbers) > asked.most:
            found.add("numbers")
    return found | _order(asked, there)


def _order(asked: Asks, there: Counter[str]) -> set[str]:
    """Over places from the first on; corners once, then twice, then the middle."""
    gone = [there[place] for place in oracle.OVER]
    if sorted(gone, reverse=True) != gone:
        return {"order"}
    if asked.places.get(Routing.DIRECT) in (CORNERS, SIDES):
        corners, middle = [there[one] for one in CORNERS], [there[one] for one in oracle.MIDDLE]
        if max(corners) - min(corners) > 1 or (any(middle) and min(corners) < 2):
            return {"order"}
    return set()


def _of_pieces(pieces: list[Gear], day: Day) -> bool:
    """Whether these do not make a tie-down: unfit, unmarked or of unknown WLL."""
    member, tensioner = pieces[0], pieces[1] if len(pieces) > 1 else None
    canada = day.rules.value == "Canada"
    for piece in pieces:
        if piece.condition is not Condition.GOOD or oracle.wll(piece) is None:
            return True
        if canada and piece.kind is Kind.CHAIN and piece.wll is None and not piece.grade:
            return True
    return member.kind not in oracle.MEMBERS or not oracle._tightened(member, tensioner)
