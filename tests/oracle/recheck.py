"""Works a results workbook out again from the day workbook, cell by cell.

``recheck`` answers with sentences, one for every rule that is broken and every figure that is not
what it should be; an empty list means the plan and its sheets are right.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

from tests.oracle.assembly import ALONE, Assembly, allowed, assemble, protectors, takes
from tests.oracle.cells import key
from tests.oracle.day import Article, Day, Load, read_day
from tests.oracle.recheck_fixed import fixed_faults
from tests.oracle.recheck_sheets import sheet_faults
from tests.oracle.results import Results, TieDown, amount, is_strength, read_results
from tests.oracle.rules import ANCHORS, CORNERS, MIDDLE, Need, need


def recheck(day_path: str | Path, results_path: str | Path) -> list[str]:
    """Every disagreement between the day workbook and its results."""
    day = read_day(day_path)
    results = read_results(results_path, day)
    return results.unread or list(faults(day, results))


def faults(day: Day, results: Results) -> Iterator[str]:
    """All that is wrong with results that could be read."""
    if list(results.summary) != list(day.loads):
        yield f"Summary lists {list(results.summary)}, the day has {list(day.loads)}"
        return
    articles = {a.id.casefold(): (name, a) for name, ld in day.loads.items() for a in ld.articles}
    by_article: dict[str, list[tuple[TieDown, Assembly]]] = defaultdict(list)
    for tie_down in results.tie_downs:
        name, article = articles.get(tie_down.article, ("", None))
        if article is None or tie_down.load != name or name not in results.ready:
            yield f"{tie_down.where}: not an article of a ready load"
            return
        unknown = [p for p in tie_down.pieces if p not in day.gear]
        if unknown:
            yield f"{tie_down.where}: {unknown} not in Gear"
            return
        assembly = _assembly(day, day.loads[name], article, tie_down)
        yield from _tie_down(day, day.loads[name], article, tie_down, assembly)
        by_article[tie_down.article].append((tie_down, assembly))
    for name in results.ready:
        load = day.loads[name]
        for article in load.articles:
            yield from _article(day, load, article, by_article[article.id.casefold()])
        mine = [pair for a in load.articles for pair in by_article[a.id.casefold()]]
        yield from _load(day, load, mine)
    yield from _pool(day, results)
    yield from fixed_faults(day, results)
    yield from sheet_faults(day, results, by_article)


def vector(day: Day, results: Results) -> list[Fraction]:
    """What the plan is worth: ready loads at each priority, tie-downs, mixed sets, strength."""
    ready = [day.loads[name].priority for name in results.ready]
    pairs: dict[str, set[tuple[str, str | None]]] = defaultdict(set)
    issued = Fraction(0)
    for one in results.tie_downs:
        if not _is_accessory(day.loads[one.load], one):
            pairs[one.article].add((one.member, one.tensioner))
        for piece, count in one.pieces.items():
            if day.gear[piece].kind != "edge protector":
                issued += count * (day.gear[piece].wll or Fraction(0))
    mixed = sum(len(p) - 1 for p in pairs.values())
    counted = [Fraction(ready.count(p)) for p in sorted({ld.priority for ld in day.loads.values()})]
    return [*counted, Fraction(len(results.tie_downs)), Fraction(mixed), issued]


def _is_accessory(load: Load, one: TieDown) -> bool:
    article = next(a for a in load.articles if a.id.casefold() == one.article)
    return one.position in {part.casefold() for part in article.accessories}


def _assembly(day: Day, load: Load, article: Article, one: TieDown) -> Assembly:
    shackle = next(iter(one.shackles), None)
    return assemble(
        day,
        load,
        article,
        _is_accessory(load, one),
        day.gear[one.member],
        day.gear[one.tensioner] if one.tensioner else None,
        day.gear[shackle] if shackle else None,
        sum(one.shackles.values()),
    )


def _tie_down(
    day: Day, load: Load, article: Article, one: TieDown, assembly: Assembly
) -> Iterator[str]:
    accessory = _is_accessory(load, one)
    yield from (f"{one.where}: {fault}" for fault in _pieces(day, load, article, one, accessory))
    yield from (f"{one.where}: {f}" for f in _figures(day, article, one, assembly, accessory))
    if not accessory and assembly.wll < day.rule_weight("least wll each"):
        yield f"{one.where}: WLL {assembly.wll} below the house rule"


def _pieces(day: Day, load: Load, article: Article, one: TieDown, accessory: bool) -> Iterator[str]:
    """Whether these pieces make one tie-down that may be used here."""
    member = day.gear[one.member]
    for piece in one.pieces:
        gear = day.gear[piece]
        if gear.kind != "edge protector" and gear.wll is None:
            yield f"{gear.id} has no known WLL"
        if not gear.usable:
            yield f"{gear.id} is not good"
        if gear.kept_on not in (None, load.trailer):
            yield f"{gear.id} is kept on another trailer"
    if not allowed(day, load, article, accessory, member):
        yield f"{member.id} may not be used here"
    alone = member.kind in ALONE or member.kind == "winch strap"
    if one.tensioner is None and not alone:
        yield f"{member.id} needs a tensioner"
    if one.tensioner is not None and (alone or not takes(day.gear[one.tensioner], member)):
        yield f"{one.tensioner} does not go with {member.id}"
    wanted = 0 if accessory else article.shackles
    if sum(one.shackles.values()) != wanted or len(one.shackles) > 1:
        yield f"shackles {dict(one.shackles)}, {wanted} of one kind wanted"
    begun = [f for f in day.fixed if (f.article, f.position) == (one.article, one.position)]
    on = sum(day.gear[p].kind == "edge protector" for f in begun for p in f.pieces)
    asked = protectors(article, _assembly(day, load, article, one), accessory)
    have = sum(one.protectors.values())
    if have < asked or have > max(asked, on):
        yield f"{have} edge protectors, {asked} wanted"


def _figures(
    day: Day, article: Article, one: TieDown, assembly: Assembly, accessory: bool
) -> Iterator[str]:
    """Whether the row's own figures are right."""
    row, wants = one.row, need(article, day.loads[one.load], day)
    names = ("member wll", "tensioner wll", "connector wll", "anchor wll", "tie point wll")
    for name, exact in zip(names, assembly.parts, strict=True):
        shown = row[name]
        if exact is None:
            unrated = name == "anchor wll" or (
                name == "tie point wll" and article.routing == "direct" and not accessory
            )
            if key(shown) != ("unrated" if unrated else ""):
                yield f"{name} is {shown!r}, should be {'unrated' if unrated else 'blank'}"
        elif not is_strength(shown, exact):
            yield f"{name} is {shown!r}, should be {exact}"
    credit = wants.accessory_credit if accessory else wants.credit
    if not is_strength(row["tie-down wll"], assembly.wll):
        yield f"tie-down WLL is {row['tie-down wll']!r}, should be {assembly.wll}"
    if key(row["weakest part"]) != assembly.weakest:
        yield f"weakest part is {row['weakest part']!r}, should be {assembly.weakest}"
    if amount(row["credit"]) != credit:
        yield f"credit is {row['credit']!r}, should be {credit}"
    if not is_strength(row["credited wll"], credit * assembly.wll):
        yield f"credited WLL is {row['credited wll']!r}, should be {credit * assembly.wll}"
    if key(row["counts in aggregate"]) != ("yes" if credit else "no"):
        yield f"counts in aggregate is {row['counts in aggregate']!r}"
    if key(row["routing"]) != ("direct" if accessory else article.routing):
        yield f"routing is {row['routing']!r}"
    kind = day.gear[one.member].kind
    own = {"winch strap": "trailer winch", "steel strapping": ""}.get(kind, "built in")
    if one.tensioner is None and key(row["tensioner"]) != own:
        yield f"tensioner is {row['tensioner']!r}, should be {own!r}"


def _article(
    day: Day, load: Load, article: Article, mine: list[tuple[TieDown, Assembly]]
) -> Iterator[str]:
    """Counts, positions, aggregate and accessories of one article of a ready load."""
    where = f"{load.id}, {article.id}"
    wants = need(article, load, day)
    parts = {part.casefold() for part in article.accessories}
    at = Counter(t.position for t, _ in mine if t.position not in parts)
    if wants.obstacle:
        yield f"{where}: {wants.obstacle}"
    for part in parts:
        if sum(t.position == part for t, _ in mine) != 1:
            yield f"{where}: accessory {part} has not exactly one tie-down"
    if sum(at.values()) < wants.count:
        yield f"{where}: {sum(at.values())} tie-downs, {wants.count} needed"
    for group in wants.groups:
        if not any(at[position] for position in group):
            yield f"{where}: none at {' or '.join(group)}"
    for position, number in at.items():
        if position not in wants.positions or number > wants.most:
            yield f"{where}: {number} at {position}"
    have = sum(_credit(wants, t.position in parts) * a.wll for t, a in mine)
    if have < wants.strength:
        yield f"{where}: aggregate {have}, {wants.strength} needed"
    numbers = defaultdict(list)
    for t, _ in mine:
        numbers[t.position].append(t.number)
    begun = [f for f in day.fixed if f.article == article.id.casefold()]
    for position, given in numbers.items():
        if not begun and sorted(given) != list(range(1, len(given) + 1)):
            yield f"{where}: numbers {given} at {position}"
        if len(set(given)) < len(given):
            yield f"{where}: a number twice at {position}"
    if not begun:
        yield from (f"{where}: {fault}" for fault in _order(wants, at))


def _credit(wants: Need, accessory: bool) -> Fraction:
    return wants.accessory_credit if accessory else wants.credit


def _order(wants: Need, at: Counter[str]) -> Iterator[str]:
    """Each corner once, then the second places at the corners, then the middle."""
    if wants.positions[0].startswith("over"):
        if any(not at[f"over {n}"] for n in range(1, sum(at.values()) + 1)):
            yield f"over positions are not filled in order: {dict(at)}"
        return
    corners = [at[corner] for corner in CORNERS]
    if max(corners) > 1 and min(corners) == 0:
        yield f"a second place before each corner has one: {dict(at)}"
    if any(at[p] for p in MIDDLE) and min(corners) < min(2, wants.most):
        yield f"the middle before the corners: {dict(at)}"


def _load(day: Day, load: Load, mine: list[tuple[TieDown, Assembly]]) -> Iterator[str]:
    """Anchor points and winches of one load."""
    trailer = day.trailer(load)
    points = sum(ANCHORS[key(t.row["routing"])] for t, _ in mine)
    if trailer.anchors is not None and points > trailer.anchors:
        yield f"{load.id}: {points} anchor points, {trailer.anchors} there are"
    winches = sum(a.winch for _, a in mine)
    if winches > trailer.winches:
        yield f"{load.id}: {winches} winches, {trailer.winches} there are"


def _pool(day: Day, results: Results) -> Iterator[str]:
    """Pieces out at every departure, those already on held loads too."""
    taken = taken_by_load(day, results)
    for piece, gear in day.gear.items():
        for moment in sorted({load.out for load in day.loads.values()}):
            out = sum(
                taken[name][piece]
                for name, load in day.loads.items()
                if load.out <= moment < day.until(load, gear)
            )
            if out > gear.usable:
                yield f"{gear.id}: {out} out at {moment} s, {gear.usable} usable"


def taken_by_load(day: Day, results: Results) -> dict[str, Counter[str]]:
    """Pieces each load takes; a held load has those already on."""
    taken: dict[str, Counter[str]] = {name: Counter() for name in day.loads}
    for one in results.tie_downs:
        taken[one.load].update(one.pieces)
    for fixed in day.fixed:
        if fixed.load not in results.ready:
            taken[fixed.load].update(fixed.pieces)
    return taken
