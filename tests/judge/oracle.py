"""An oracle: which rules a plan breaks, written from the text of the rules.

It shares the nouns of the day and of the outcome with the package and nothing else: ratings,
demands, order and pool are worked out here a second time, the plainest way there is. It knows the
gear that the days of :mod:`tests.judge.days` use. Each broken rule is one short name.
"""

from __future__ import annotations

import math
from collections import Counter
from fractions import Fraction

from loadplan.day.article import Article, CargoClass, Routing, SecuredUnder
from loadplan.day.day import Day
from loadplan.day.gear import Condition, Gear, Kind
from loadplan.day.house import UnratedPoints
from loadplan.day.load import Load
from loadplan.outcome.tie_down import TieDown

CORNERS = ["front left", "front right", "rear left", "rear right"]
MIDDLE = ["mid left", "mid right"]
OVER = [f"over {number}" for number in range(1, 21)]
HALF = Fraction(1, 2)
STRAPS = {Kind.WINCH_STRAP, Kind.RATCHET_STRAP, Kind.RETRACTABLE_STRAP}
MEMBERS = STRAPS | {Kind.CHAIN, Kind.WIRE_ROPE, Kind.ROPE, Kind.STEEL_STRAPPING}
MACHINES = {CargoClass.TRACKED_MACHINE, CargoClass.WHEELED_MACHINE, CargoClass.ARTICULATED_MACHINE}
# 49 CFR 393.108, in lb: (grade, inches) of chain, inches of webbing and wire rope
CHAIN = {
    (30, Fraction(3, 8)): 2650,
    (30, Fraction(5, 16)): 1900,
    (70, Fraction(3, 8)): 6600,
    (70, Fraction(5, 16)): 4700,
    (70, Fraction(1, 2)): 11300,
}
WEBBING = {Fraction(2): 2000, Fraction(3): 3000, Fraction(4): 4000}
WIRE_ROPE = {Fraction(3, 8): 3000}


def broken(day: Day, ready: tuple[str, ...], tie_downs: list[TieDown]) -> set[str]:
    """The names of the rules that the plan breaks; none for a plan that stands."""
    loads = {load.id: load for load in day.loads}
    cargo = {article.id: article for article in day.articles}
    found: set[str] = set()
    if any(name not in loads for name in ready) or len(set(ready)) < len(ready):
        found.add("ready loads")
    for tied in tie_downs:
        if tied.load not in loads or tied.article not in cargo:
            found.add("unknown load or article")
        elif cargo[tied.article].load != tied.load:
            found.add("article on another load")
        elif tied.load not in ready:
            found.add("tie-down on a held load")
    for name in ready:
        if name in loads:
            found |= _load(day, loads[name], tie_downs)
    found |= _fixed(day, ready, tie_downs)
    return found | _pool(day, ready, tie_downs)


def wll(gear: Gear) -> Fraction | None:
    """Marking, else table, else one third of the breaking strength to the nearest whole unit."""
    if gear.wll is not None:
        return gear.wll
    across = None if gear.size is None else gear.size.across
    table: Fraction | int | None = None
    if gear.kind is Kind.CHAIN:
        grade = {"": 30, "G30": 30, "70": 70, "G70": 70}.get(gear.grade)
        table = CHAIN.get((grade, across))
    elif gear.kind in STRAPS:
        table = WEBBING.get(across)
    elif gear.kind is Kind.WIRE_ROPE:
        table = WIRE_ROPE.get(across)
    if table is not None:
        return Fraction(table)
    if gear.breaking_strength is not None:
        return Fraction(math.floor(gear.breaking_strength / 3 + HALF))
    return None


def _load(day: Day, load: Load, tie_downs: list[TieDown]) -> set[str]:
    found: set[str] = set()
    trailer = next((one for one in day.trailers if one.id == load.trailer), None)
    anchors = winches = 0
    gear = {one.id: one for one in day.gear}
    for article in day.articles:
        if article.load != load.id:
            continue
        own = [tied for tied in tie_downs if (tied.load, tied.article) == (load.id, article.id)]
        found |= _article(day, load, article, own)
        for tied in own:
            anchors += 1 if tied.routing is Routing.DIRECT else 2
            member = gear.get(tied.member)
            winches += member is not None and member.kind is Kind.WINCH_STRAP
    if trailer is not None and trailer.anchors is not None and anchors > trailer.anchors:
        found.add("anchor points")
    if winches > (0 if trailer is None else trailer.winches):
        found.add("winches")
    return found


def _article(day: Day, load: Load, article: Article, own: list[TieDown]) -> set[str]:
    house = day.house
    trailer = next((one for one in day.trailers if one.id == load.trailer), None)
    anchor = None if trailer is None else trailer.anchor_wll
    machine = article.cargo_class in MACHINES
    weight = article.weight + sum((one.weight for one in article.added), Fraction(0))
    routing = article.routing
    if routing is None:
        routing = Routing.OVER if article.cargo_class is CargoClass.GENERAL else Routing.DIRECT
    found: set[str] = set()
    unrated = anchor is None or (routing is Routing.DIRECT and article.tie_point_wll is None)
    if unrated and house.unrated_points is UnratedPoints.HOLD:
        found.add("unrated points")
    places = OVER if routing is Routing.OVER else CORNERS + MIDDLE
    most = 1 if routing is Routing.OVER else house.most_per_position
    main = [tied for tied in own if not tied.accessory]
    for tied in own:
        found |= _tie_down(day, load, article, tied, routing)
        if tied.accessory and tied.position not in [one.name for one in article.accessories]:
            found.add("place")
        if not tied.accessory and tied.position not in places:
            found.add("place")
    main = [tied for tied in main if tied.position in places]
    there = Counter(tied.position for tied in main)
    if any(number > most for number in there.values()):
        found.add("most per position")
    for one in article.accessories:
        number = sum(tied.accessory and tied.position == one.name for tied in own)
        if number != (0 if one.pinned else 1):
            found.add("accessories")
    found |= _order(day, article, own, main, routing, most)
    found |= _counts(day, article, weight, machine, routing, there)
    least = house.least_wll_each or 0
    if any(_lowest(day, article, tied, anchor) < least for tied in main):
        found.add("least WLL each")
    if strength(day, load, article, own) < house.aggregate_share * weight:
        found.add("aggregate")
    return found


def strength(day: Day, load: Load, article: Article, own: list[TieDown]) -> Fraction:
    """What the tie-downs of an article add up to, credited."""
    trailer = next((one for one in day.trailers if one.id == load.trailer), None)
    anchor = None if trailer is None else trailer.anchor_wll
    over = article.routing is Routing.OVER or (
        article.routing is None and article.cargo_class is CargoClass.GENERAL
    )
    total = Fraction(0)
    unpinned = [one.name for one in article.accessories if not one.pinned]
    for tied in own:
        lowest = _lowest(day, article, tied, anchor)
        if tied.accessory and tied.position in unpinned and day.house.accessory_counts:
            total += HALF * lowest
        if not tied.accessory and tied.position in (OVER if over else CORNERS + MIDDLE):
            total += lowest if over else HALF * lowest
    return total


def _counts(
    day: Day, article: Article, weight: Fraction, machine: bool, routing: Routing, there: Counter
) -> set[str]:
    house = day.house
    under = article.secured_under
    if under is None:
        if machine:
            heavy = weight >= house.heavy_from
            under = SecuredUnder.HEAVY if heavy else SecuredUnder.LIGHT_VEHICLE
        elif article.cargo_class is CargoClass.LIGHT_VEHICLE:
            under = SecuredUnder.LIGHT_VEHICLE
        else:
            under = SecuredUnder.GENERAL
    need = 0
    general = under is SecuredUnder.GENERAL
    if general or article.cargo_class is CargoClass.GENERAL or house.length_count_on_machines:
        need = by_length(article.length, weight, article.blocked_forward)
    ends = need >= 2 and general
    if under is SecuredUnder.LIGHT_VEHICLE or (
        general and article.cargo_class is CargoClass.LIGHT_VEHICLE
    ):
        need = max(need, 2)
        ends = True
    found = set()
    if under is SecuredUnder.HEAVY:
        need = max(need, 4)
        if any(there[corner] == 0 for corner in CORNERS):
            found.add("corners")
    if ends and routing is not Routing.OVER:
        if there["front left"] + there["front right"] == 0:
            found.add("front")
        if there["rear left"] + there["rear right"] == 0:
            found.add("rear")
    if sum(there.values()) < need:
        found.add("count")
    return found


def by_length(length: Fraction, weight: Fraction, blocked: bool) -> int:
    """49 CFR 393.110 in ft and lb."""
    if blocked:
        return max(1, math.ceil(length / 10))
    if length <= 5:
        return 1 if weight <= 1100 else 2
    return 2 if length <= 10 else 2 + math.ceil((length - 10) / 10)


def _lowest(day: Day, article: Article, tied: TieDown, anchor: Fraction | None) -> Fraction:
    """The WLL of a tie-down; 0 where a piece has none."""
    gear = {one.id: one for one in day.gear}
    parts = []
    for name in (tied.member, tied.tensioner, tied.shackle):
        if name is not None:
            rated = wll(gear[name]) if name in gear else None
            if rated is None:
                return Fraction(0)
            parts.append(rated)
    if anchor is not None:
        parts.append(anchor)
    if not tied.accessory and tied.routing is Routing.DIRECT and article.tie_point_wll is not None:
        parts.append(article.tie_point_wll)
    return min(parts)


def _tie_down(day: Day, load: Load, article: Article, tied: TieDown, routing: Routing) -> set[str]:
    gear = {one.id: one for one in day.gear}
    names = [tied.member, *[one for one, _ in tied.protectors]]
    names += [name for name in (tied.tensioner, tied.shackle) if name is not None]
    if any(name not in gear for name in names):
        return {"unknown gear"}
    found = set()
    for name in names:
        piece = gear[name]
        if piece.condition is not Condition.GOOD:
            found.add("condition")
        if piece.kept_on not in (None, load.trailer):
            found.add("kit")
        if piece.kind is Kind.RETRACTABLE_STRAP and piece.kept_on is None:
            found.add("kit")
        if piece.kind is not Kind.EDGE_PROTECTOR and wll(piece) is None:
            found.add("rating")
    member = gear[tied.member]
    tensioner = None if tied.tensioner is None else gear[tied.tensioner]
    if member.kind not in MEMBERS:
        found.add("tension member")
    if not _tightened(member, tensioner):
        found.add("tensioner")
    asked = 0 if tied.accessory else article.shackles
    if tied.shackles != asked or (tied.shackle is None) != (asked == 0):
        found.add("shackles")
    if tied.shackle is not None and gear[tied.shackle].kind is not Kind.SHACKLE:
        found.add("shackles")
    for name, pieces in tied.protectors:
        if gear[name].kind is not Kind.EDGE_PROTECTOR or pieces < 1:
            found.add("edge protectors")
    if member.kind is Kind.WINCH_STRAP and (tied.accessory or tied.routing is not Routing.OVER):
        found.add("winch strap")
    if tied.routing is not (Routing.DIRECT if tied.accessory else routing):
        found.add("routing")
    if not tied.accessory and tied.position in (
        OVER if routing is Routing.OVER else CORNERS + MIDDLE
    ):
        found |= _row_asks(day, article, tied, member, routing)
    return found


def _tightened(member: Gear, tensioner: Gear | None) -> bool:
    if member.kind is Kind.CHAIN:
        return (
            tensioner is not None
            and tensioner.kind in (Kind.LEVER_BINDER, Kind.RATCHET_BINDER)
            and member.size is not None
            and member.size in tensioner.fits
        )
    if member.kind in (Kind.WIRE_ROPE, Kind.ROPE):
        return tensioner is not None and tensioner.kind is Kind.TURNBUCKLE
    return tensioner is None


def _row_asks(
    day: Day, article: Article, tied: TieDown, member: Gear, routing: Routing
) -> set[str]:
    found = set()
    if article.reach is not None and (member.length is None or member.length < article.reach):
        found.add("reach")
    if article.chain_only and member.kind is not Kind.CHAIN:
        found.add("chain only")
    if (
        not day.house.straps_on_machines
        and article.cargo_class in MACHINES
        and member.kind in STRAPS
    ):
        found.add("straps on machines")
    protectors = sum(pieces for _, pieces in tied.protectors)
    needed = 1 if routing is Routing.DIRECT else 2
    if article.sharp_edges and member.kind in STRAPS and protectors < needed:
        found.add("edge protectors")
    return found


def _order(
    day: Day,
    article: Article,
    own: list[TieDown],
    main: list[TieDown],
    routing: Routing,
    most: int,
) -> set[str]:
    """Numbers from 1 at each place, and places filled in order, but for what is fixed."""
    begun: dict[str, set[int]] = {}
    for piece in day.fixed:
        if piece.article == article.id:
            begun.setdefault(piece.position, set()).add(piece.number)
    found = set()
    for position in {tied.position for tied in own}:
        numbers = sorted(tied.number for tied in own if tied.position == position)
        expected = sorted(set(numbers) & begun.get(position, set()))
        number = 1
        while len(expected) < len(numbers):
            if number not in expected and number not in begun.get(position, set()):
                expected.append(number)
            number += 1
        if sorted(expected) != numbers:
            found.add("numbers")
    standing = Counter(
        tied.position for tied in main if tied.number in begun.get(tied.position, set())
    )
    left = Counter(tied.position for tied in main) - standing
    while left:
        open_now = [one for one in left if _open(one, standing, routing, most)]
        if not open_now:
            return found | {"order"}
        standing[open_now[0]] += 1
        left -= Counter(open_now[:1])
    return found


def _open(position: str, standing: Counter, routing: Routing, most: int) -> bool:
    """Whether the next free tie-down may be put at ``position``."""
    if routing is Routing.OVER:
        before = OVER[: OVER.index(position)]
        return all(standing[one] for one in before)
    fullness = [standing[corner] for corner in CORNERS]
    if position in MIDDLE:
        return min(fullness) >= min(2, most)
    return standing[position] == min(fullness)


def _fixed(day: Day, ready: tuple[str, ...], tie_downs: list[TieDown]) -> set[str]:
    for piece in day.fixed:
        if piece.load not in ready:
            continue
        fixed = sum(
            (one.load, one.article, one.position, one.number, one.gear)
            == (piece.load, piece.article, piece.position, piece.number, piece.gear)
            for one in day.fixed
        )
        there = [
            tied
            for tied in tie_downs
            if (tied.load, tied.article, tied.position, tied.number)
            == (piece.load, piece.article, piece.position, piece.number)
        ]
        if not there or taken(there[0], piece.gear) < fixed:
            return {"fixed"}
    return set()


def taken(tied: TieDown, name: str) -> int:
    """How many pieces of the gear ``name`` a tie-down takes."""
    pieces = (tied.member == name) + (tied.tensioner == name)
    if tied.shackle == name:
        pieces += max(0, tied.shackles)
    return pieces + sum(max(0, number) for one, number in tied.protectors if one == name)


def _pool(day: Day, ready: tuple[str, ...], tie_downs: list[TieDown]) -> set[str]:
    for gear in day.gear:
        usable = gear.quantity if gear.condition is Condition.GOOD else 0
        if most_out(day, ready, tie_downs, gear) > usable:
            return {"pool"}
    return set()


def most_out(day: Day, ready: tuple[str, ...], tie_downs: list[TieDown], gear: Gear) -> int:
    """Look at every departure: which loads are out, and how many pieces each of them has."""
    extra = day.turnaround if gear.kept_on is None else 0
    on = {load.id: 0 for load in day.loads}
    for tied in tie_downs:
        if tied.load in on and tied.load in ready:
            on[tied.load] += taken(tied, gear.id)
    for piece in day.fixed:
        if piece.load not in ready:
            on[piece.load] += piece.gear == gear.id
    moments = {load.out for load in day.loads}
    return max(
        sum(on[load.id] for load in day.loads if load.out <= moment < load.back + extra)
        for moment in moments
    )
