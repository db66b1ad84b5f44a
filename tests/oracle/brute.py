"""Every plan of a very small day, one by one, to check the optimum itself.

For each article all sets of tie-downs that hold it are listed, then all ways to put the articles
of a load together, then all ways to put the loads together. Of ways that take the same pieces or
more and are no better, none is kept. No solver, no rounding.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import combinations_with_replacement, product
from math import comb

from tests.oracle.assembly import Assembly, candidates, completes, protectors
from tests.oracle.day import Article, Day, Fixed, Load
from tests.oracle.rules import ANCHORS, Need, need

MOST_SETS = 5000
Value = tuple[int, int, Fraction]


class TooBigError(Exception):
    """The day has more plans than can be looked at."""


@dataclass(frozen=True)
class Way:
    """One way to tie something down: new pieces, points used, and what it is worth.

    ``value`` is tie-downs, mixed sets, strength issued; of two, the smaller is better.
    """

    pieces: tuple[tuple[str, int], ...]
    points: int
    winches: int
    guards: int
    value: Value

    def beats(self, other: Way) -> bool:
        """No more of anything, and no worse."""
        mine, theirs = Counter(dict(self.pieces)), Counter(dict(other.pieces))
        return (
            self.points <= other.points
            and self.winches <= other.winches
            and self.guards <= other.guards
            and all(self.value[i] <= other.value[i] for i in range(3))
            and mine <= theirs
        )


@dataclass
class Kept:
    """Ways none of which beats another."""

    limit: int
    ways: list[Way] = field(default_factory=list)
    seen: set[Way] = field(default_factory=set)

    def add(self, way: Way) -> None:
        """Adds one way unless one that is kept beats it."""
        if way in self.seen:
            return
        self.seen.add(way)
        if len(self.seen) > self.limit:
            raise TooBigError
        if any(kept.beats(way) for kept in self.ways):
            return
        self.ways = [kept for kept in self.ways if not way.beats(kept)]
        self.ways.append(way)


def brute(day: Day, limit: int = 1500) -> list[Fraction]:
    """The best vector: ready loads at each priority, tie-downs, mixed sets, strength issued."""
    names = list(day.loads)
    priorities = sorted({load.priority for load in day.loads.values()})
    ways = [load_ways(day, name, limit) for name in names]
    best: list[Fraction] | None = None
    looked = 0

    def go(at: int, taken: list[Way | None]) -> None:
        nonlocal best, looked
        looked += 1
        if looked > 20 * limit:
            raise TooBigError
        if not _pool_holds(day, names, taken):
            return
        if at == len(names):
            value = _value(day, names, taken, priorities)
            if best is None or _order(value, len(priorities)) < _order(best, len(priorities)):
                best = value
            return
        for way in [*ways[at], None]:
            go(at + 1, [*taken, way])

    go(0, [])
    assert best is not None
    return best


def _value(
    day: Day, names: list[str], taken: list[Way | None], priorities: list[int]
) -> list[Fraction]:
    going = [day.loads[n].priority for n, way in zip(names, taken, strict=True) if way is not None]
    sums = [
        sum((Fraction(w.value[i]) for w in taken if w is not None), Fraction(0)) for i in range(3)
    ]
    return [*(Fraction(going.count(p)) for p in priorities), *sums]


def _order(value: list[Fraction], priorities: int) -> list[Fraction]:
    return [-v for v in value[:priorities]] + value[priorities:]


def _pool_holds(day: Day, names: list[str], taken: list[Way | None]) -> bool:
    """At every departure: pieces already on, and new ones, are not more than are usable."""
    chosen = dict(zip(names, taken, strict=False))
    for moment in {load.out for load in day.loads.values()}:
        for piece, gear in day.gear.items():
            out = 0
            for name, load in day.loads.items():
                if load.out <= moment < day.until(load, gear):
                    out += sum(f.pieces.count(piece) for f in day.fixed if f.load == name)
                    way = chosen.get(name)
                    out += dict(way.pieces).get(piece, 0) if way is not None else 0
            if out > gear.usable:
                return False
    return True


def load_ways(day: Day, name: str, limit: int) -> list[Way]:
    """Every way a load can be ready, edge protectors chosen as well."""
    load = day.loads[name]
    per_article = [article_ways(day, load, article, limit) for article in load.articles]
    kept = Kept(limit)
    trailer = day.trailer(load)
    for ways in product(*per_article):
        way = _together(list(ways))
        if trailer.anchors is not None and way.points > trailer.anchors:
            continue
        if way.winches > trailer.winches:
            continue
        for guards in _guards(day, load, way.guards):
            pieces = Counter(dict(way.pieces)) + guards
            if all(day.gear[p].usable >= number for p, number in pieces.items()):
                kept.add(Way(_sorted(pieces), way.points, way.winches, 0, way.value))
    return kept.ways


def _guards(day: Day, load: Load, number: int) -> Iterator[Counter[str]]:
    kinds = [
        p
        for p, gear in day.gear.items()
        if gear.kind == "edge protector" and gear.usable and gear.kept_on in (None, load.trailer)
    ]
    for chosen in combinations_with_replacement(kinds, number):
        yield Counter(chosen)


def article_ways(day: Day, load: Load, article: Article, limit: int) -> list[Way]:
    """Every set of tie-downs that holds one article, with its accessories."""
    wants = need(article, load, day)
    kept = Kept(limit)
    if wants.obstacle:
        return []
    begun = [f for f in day.fixed if f.article == article.id.casefold()]
    main = [f for f in begun if f.position in wants.positions]
    options = candidates(day, load, article, accessory=False)
    endings = [[a for a in options if completes(day, a, f)] for f in main]
    for parts in product(*_accessory_options(day, load, article, begun)):
        extra = sum((wants.accessory_credit * a.wll for _, a in parts), Fraction(0))
        for ends in product(*endings):
            closed = list(zip(main, ends, strict=True))
            for fresh in _enough(wants, options, closed, extra):
                kept.add(_way(day, article, closed, fresh, list(parts)))
    return kept.ways


def _accessory_options(
    day: Day, load: Load, article: Article, begun: list[Fixed]
) -> list[list[tuple[Fixed | None, Assembly]]]:
    options = candidates(day, load, article, accessory=True)
    found: list[list[tuple[Fixed | None, Assembly]]] = []
    for part in article.accessories:
        fixed = next((f for f in begun if f.position == part.casefold()), None)
        found.append([(fixed, a) for a in options if fixed is None or completes(day, a, fixed)])
    return found


def _enough(
    wants: Need, options: list[Assembly], closed: list[tuple[Fixed, Assembly]], extra: Fraction
) -> Iterator[tuple[Assembly, ...]]:
    """Every set of new tie-downs that meets the counts and the aggregate, and could spare none."""
    standing = Counter(fixed.position for fixed, _ in closed)
    room = len(wants.positions) * wants.most - len(closed)
    empty = sum(not any(standing[p] for p in group) for group in wants.groups)
    fewest = max(empty, wants.count - len(closed), 0)
    have = extra + sum((wants.credit * a.wll for _, a in closed), Fraction(0))
    for number in range(fewest, room + 1):
        if comb(len(options) + number, number) > MOST_SETS:
            raise TooBigError
        held_by_all = True
        for fresh in combinations_with_replacement(options, number):
            credited = [wants.credit * a.wll for a in fresh]
            total = have + sum(credited)
            if total < wants.strength:
                held_by_all = False
            elif number == fewest or total - min(credited) < wants.strength:
                yield fresh
        if held_by_all:
            break


def _way(
    day: Day,
    article: Article,
    closed: list[tuple[Fixed, Assembly]],
    fresh: tuple[Assembly, ...],
    parts: list[tuple[Fixed | None, Assembly]],
) -> Way:
    tie_downs: list[tuple[Fixed | None, Assembly, bool]] = [
        *((fixed, a, False) for fixed, a in closed),
        *((None, a, False) for a in fresh),
        *((fixed, a, True) for fixed, a in parts),
    ]
    pieces: Counter[str] = Counter()
    points = guards = 0
    for fixed, assembly, accessory in tie_downs:
        on = fixed.pieces if fixed else []
        pieces += assembly.pieces - Counter(on)
        points += 1 if accessory else ANCHORS[article.routing]
        already = sum(day.gear[p].kind == "edge protector" for p in on)
        guards += max(0, protectors(article, assembly, accessory) - already)
    pairs = {a.pair for _, a, accessory in tie_downs if not accessory}
    issued = sum((a.issued for _, a, _ in tie_downs), Fraction(0))
    winches = sum(a.winch for _, a, _ in tie_downs)
    return Way(_sorted(pieces), points, winches, guards, (len(tie_downs), len(pairs) - 1, issued))


def _together(ways: list[Way]) -> Way:
    pieces: Counter[str] = Counter()
    for way in ways:
        pieces += Counter(dict(way.pieces))
    return Way(
        _sorted(pieces),
        sum(w.points for w in ways),
        sum(w.winches for w in ways),
        sum(w.guards for w in ways),
        (
            sum(w.value[0] for w in ways),
            sum(w.value[1] for w in ways),
            sum((w.value[2] for w in ways), Fraction(0)),
        ),
    )


def _sorted(pieces: Counter[str]) -> tuple[tuple[str, int], ...]:
    return tuple(sorted((p, n) for p, n in pieces.items() if n > 0))
