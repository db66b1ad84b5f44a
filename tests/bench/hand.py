"""Planning by hand: loads one after the other, each article with the smallest gear that fits."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from fractions import Fraction
from functools import partial

from tests.oracle.assembly import Assembly, candidates, protectors
from tests.oracle.day import Article, Day, Load
from tests.oracle.rules import ANCHORS, Need, need

Order = Callable[[Load], object]
ORDERS: dict[str, Order] = {
    "largest first": lambda load: -sum(a.weight for a in load.articles),
    "smallest first": lambda load: sum(a.weight for a in load.articles),
    "by departure": lambda load: load.out,
}
Set = list[tuple[Assembly, bool]]


def by_hand(day: Day, order: Order) -> list[Fraction]:
    """Ready loads at each priority, tie-downs, mixed sets, strength issued."""
    booked: dict[str, Counter[str]] = {}
    ready: list[Load] = []
    sets: list[Set] = []
    named = sorted(day.loads.items(), key=lambda item: (item[1].priority, order(item[1])))
    for name, load in named:
        taken: Counter[str] = Counter()
        points = winches = 0
        mine: list[Set] = []
        for article in sorted(load.articles, key=lambda a: -a.weight):
            chosen = _article(day, load, article, partial(_free, day, load, booked, taken))
            if chosen is None:
                break
            taken += _pieces(day, load, article, chosen, booked, taken)
            points += sum(1 if part else ANCHORS[article.routing] for _, part in chosen)
            winches += sum(a.winch for a, _ in chosen)
            mine.append(chosen)
        trailer = day.trailer(load)
        fits = trailer.anchors is None or points <= trailer.anchors
        if len(mine) == len(load.articles) and fits and winches <= trailer.winches:
            enough = all(_free(day, load, booked, Counter(), p) >= n for p, n in taken.items())
            if enough:
                booked[name] = taken
                ready.append(load)
                sets += mine
    return _value(day, ready, sets)


def _article(day: Day, load: Load, article: Article, free: Callable[[str], int]) -> Set | None:
    """As few tie-downs as do, each the smallest that keeps up; then one for each accessory."""
    wants = need(article, load, day)
    if wants.obstacle:
        return None
    options = sorted(candidates(day, load, article, accessory=False), key=lambda a: a.issued)
    for number in range(wants.count, len(wants.positions) * wants.most + 1):
        left: Counter[str] = Counter()
        found = _fill(wants, options, number, free, left)
        if found is not None:
            break
    else:
        return None
    chosen: Set = [(assembly, False) for assembly in found]
    parts = sorted(candidates(day, load, article, accessory=True), key=lambda a: a.issued)
    for _ in article.accessories:
        part = next((a for a in parts if _there(a, free, left)), None)
        if part is None:
            return None
        left += part.pieces
        chosen.append((part, True))
    return chosen


def _fill(
    wants: Need,
    options: list[Assembly],
    number: int,
    free: Callable[[str], int],
    left: Counter[str],
) -> list[Assembly] | None:
    """``number`` tie-downs one after the other: the smallest that keeps up, else the strongest."""
    missing, found = wants.strength, []
    for still in range(number, 0, -1):
        there = [a for a in options if _there(a, free, left)]
        if not there:
            return None
        keeps_up = [a for a in there if still * wants.credit * a.wll >= missing]
        one = keeps_up[0] if keeps_up else max(there, key=lambda a: a.wll)
        found.append(one)
        left += one.pieces
        missing -= wants.credit * one.wll
    return found if missing <= 0 else None


def _there(assembly: Assembly, free: Callable[[str], int], left: Counter[str]) -> bool:
    return all(free(p) - left[p] >= n for p, n in assembly.pieces.items())


def _pieces(
    day: Day,
    load: Load,
    article: Article,
    chosen: Set,
    booked: dict[str, Counter[str]],
    taken: Counter[str],
) -> Counter[str]:
    """The pieces of a set, edge protectors from the kinds that have most left."""
    found: Counter[str] = Counter()
    for assembly, part in chosen:
        found += assembly.pieces
        for _ in range(protectors(article, assembly, part)):
            kinds = [
                p
                for p, g in day.gear.items()
                if g.kind == "edge protector" and g.kept_on in (None, load.trailer)
            ]
            if kinds:
                found[max(kinds, key=lambda p: _free(day, load, booked, taken + found, p))] += 1
    return found


def _free(
    day: Day, load: Load, booked: dict[str, Counter[str]], taken: Counter[str], piece: str
) -> int:
    """Pieces left for the whole time ``load`` would keep them."""
    gear = day.gear[piece]
    end = day.until(load, gear)
    moments = [load.out] + [ld.out for ld in day.loads.values() if load.out < ld.out < end]
    out = max(
        sum(
            pieces[piece]
            for name, pieces in booked.items()
            if day.loads[name].out <= moment < day.until(day.loads[name], gear)
        )
        for moment in moments
    )
    return gear.usable - out - taken[piece]


def _value(day: Day, ready: list[Load], sets: list[Set]) -> list[Fraction]:
    going = [load.priority for load in ready]
    mixed = sum(max(0, len({a.pair for a, part in one if not part}) - 1) for one in sets)
    issued = sum((a.issued for one in sets for a, _ in one), Fraction(0))
    priorities = sorted({load.priority for load in day.loads.values()})
    counted = [Fraction(going.count(priority)) for priority in priorities]
    return [*counted, Fraction(sum(map(len, sets))), Fraction(mixed), issued]
