"""What no gear in the cage could do, and how far the best of it falls short."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from loadplan.day.gear import Gear
from loadplan.outcome.shortage import Shortage
from loadplan.plan.assembly import Place, main_places
from loadplan.plan.sets import ANY_GEAR, ArticleSets, LoadSets, Sets, obstacles_to
from loadplan.text import count, length, mass_down, mass_up, names


def impossible(sets: Sets, one: LoadSets) -> Iterator[Shortage]:
    """Each demand of the load that no number of pieces of what the cage has can meet."""
    for article in one.articles:
        for what, why in _lacks(sets, one, article):
            yield Shortage(
                load=one.load.id, article=article.demand.article.id, short_of=what, why=why
            )


def _lacks(sets: Sets, one: LoadSets, article: ArticleSets) -> Iterator[tuple[str, str]]:
    found = tuple(obstacles_to(article))
    if article.demand.obstacles or not found:
        yield from found
        return
    asked = tuple(_asked(sets, one, article))
    caps = "" if asked else _caps(sets, one, article)
    what, why = found[-1]
    yield from ((ANY_GEAR, one) for one in asked)
    if not asked:
        yield from (*found[:-1], (what, f"{why} {caps}".strip()))


def _asked(sets: Sets, one: LoadSets, article: ArticleSets) -> Iterator[str]:
    """For main positions where nothing suits: which demand alone keeps everything out."""
    places = main_places(article.demand, one.demand, sets.cage.kit_of(one.load))
    seen: set[Place] = set()
    for place in places.values():
        if place in seen or sets.cage.assemblies(place):
            continue
        seen.add(place)
        found = [
            words
            for words, eased in _eased(sets, place)
            if eased != place and sets.cage.assemblies(eased)
        ]
        if found:
            yield f"No gear in the cage suits it: {names(found, 'or')}."


def _eased(sets: Sets, place: Place) -> Iterator[tuple[str, Place]]:
    """Each demand in words, with the place as it would be without it."""
    units = sets.day.units
    if place.reach is not None:
        free = replace(place, reach=None)
        longest = _longest(sets, free)
        have = "of known length" if longest is None else f"but the longest is {longest}"
        if longest is None:
            have = "but none that suits it has a length in the workbook"
        yield f"it needs tension members of {length(place.reach, units)}, {have}", free
    if place.members:
        kinds = frozenset.intersection(*(kinds for kinds, _ in place.members))
        sizes = [size for _, size in place.members if size is not None]
        least = f" of {max(sizes, key=lambda size: size.inches)} or more" if sizes else ""
        allowed = names(sorted(kind.value for kind in kinds), "or")
        yield f"it takes {allowed}{least} only, and the cage has none", replace(place, members=())
    if place.shackles:
        words = f"it needs {count(place.shackles, 'shackle')} of one rated kind at each tie-down"
        yield f"{words}, and the cage has none", replace(place, shackles=0)
    if place.least:
        free = replace(place, least=Fraction(0))
        best = max((a.wll for a in sets.cage.assemblies(free)), default=Fraction(0))
        words = f"each tie-down must have {mass_up(place.least, units)}"
        yield f"{words}, and the strongest has {mass_down(best, units)}", free
    if not place.winches:
        words = "winch straps would do, but the trailer has no winch"
        yield words, replace(place, winches=True)


def _longest(sets: Sets, place: Place) -> str | None:
    gear: dict[str, Gear] = sets.day.gear_by_id
    lengths = [gear[a.member].length for a in sets.cage.assemblies(place)]
    known = [one for one in lengths if one is not None]
    return length(max(known), sets.day.units) if known else None


def _caps(sets: Sets, one: LoadSets, article: ArticleSets) -> str:
    """Which point holds the strength down, where a point does."""
    best = max((a.wll for place in article.classes for a in place.assemblies), default=None)
    anchor = one.demand.anchor_wll
    points = [at.tie_point_wll for at in article.demand.position_sets]
    tie = min((point for point in points if point is not None), default=None)
    units = sets.day.units
    if best is None or best not in (anchor, tie):
        return ""
    what = "anchor points of the trailer" if best == anchor else "tie points of the article"
    return f"The {what} hold each tie-down to {mass_down(best, units)}."


def trailer_short(one: LoadSets) -> Shortage:
    """Where every article could be held, but not all within the trailer's points and winches."""
    fewest = _fewest_points(one)
    points = None if one.anchors is None else one.anchors.at_most
    if points is not None and fewest > points:
        return Shortage(
            load=one.load.id,
            short_of="anchor points on the trailer",
            why=f"At least {fewest:,} anchor points are needed, whatever number of pieces the cage "
            f"has; the trailer has {points:,}.",
        )
    limits = [] if points is None else [count(points, "anchor point")]
    what = [] if points is None else ["anchor points"]
    limits.append(count(one.demand.winches.at_most, "winch", "winches"))
    places = (place for article in one.articles for place in article.classes)
    if any(assembly.winch for place in places for assembly in place.assemblies):
        what.append("winches")
    protectors = ""
    if one.needs_protectors():
        what.append("edge protectors")
        protectors = " Webbing on it needs edge protectors."
    return Shortage(
        load=one.load.id,
        short_of=names(what, "or"),
        why="No set of tie-downs fits the trailer, whatever number of pieces the cage has; it has "
        f"{names(limits)}.{protectors}",
    )


def _fewest_points(one: LoadSets) -> int:
    """Anchor points that the counts alone, or the strongest gear, take at the least."""
    if one.anchors is None:
        return 0
    per = one.anchors.per_tie_down
    total = 0
    for article in one.articles:
        least = min(per[at.routing] for at in article.demand.position_sets)
        total += max(article.fewest(), _by_strength(article)) * least
        total += sum(asked.number for asked in article.demand.accessories)
    return total


def _by_strength(article: ArticleSets) -> int:
    """The fewest tie-downs that reach the first strength over all positions."""
    for asked in article.demand.strengths:
        best = max(
            (
                asked.credit_of(place.routing) * a.wll
                for place in article.classes
                for a in place.assemblies
            ),
            default=Fraction(0),
        )
        if asked.positions is None and best > 0 and not asked.accessory_credit:
            return -(-asked.need // best)
    return 0
