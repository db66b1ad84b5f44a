"""Whether ``Summary``, ``Pick list``, ``Gear use`` and ``Checks`` say what the plan says."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from fractions import Fraction

from tests.oracle.assembly import Assembly
from tests.oracle.cells import Cell, key, seconds
from tests.oracle.day import Article, Day, Load
from tests.oracle.results import Results, TieDown, amount, is_need, is_strength
from tests.oracle.rules import need
from tests.oracle.workbook import Record

ByArticle = Mapping[str, list[tuple[TieDown, Assembly]]]


def sheet_faults(day: Day, results: Results, by_article: ByArticle) -> Iterator[str]:
    """Every figure on the flat sheets that is not what it should be."""
    for name, load in day.loads.items():
        row = results.summary[name]
        for fault in _summary(day, load, row, name in results.ready, by_article):
            yield f"Summary {load.id}: {fault}"
    yield from _pick_list(day, results)
    yield from _gear_use(day, results)
    yield from _checks(day, results, by_article)


def credited(day: Day, load: Load, article: Article, by_article: ByArticle) -> Fraction:
    """The AWLL planned on one article."""
    wants = need(article, load, day)
    parts = {part.casefold() for part in article.accessories}
    return sum(
        (
            (wants.accessory_credit if t.position in parts else wants.credit) * a.wll
            for t, a in by_article.get(article.id.casefold(), [])
        ),
        Fraction(0),
    )


def _summary(
    day: Day, load: Load, row: Record, ready: bool, by_article: ByArticle
) -> Iterator[str]:
    needs = [need(a, load, day).strength for a in load.articles]
    have = [credited(day, load, a, by_article) for a in load.articles]
    weight = sum((a.weight for a in load.articles), Fraction(0))
    if key(row["status"]) not in ("ready", "held"):
        yield f"status {row['status']!r}"
    if key(row["trailer"]) != (load.trailer or ""):
        yield f"trailer {row['trailer']!r}"
    if not _is_time(day, row["out"], load.out) or not _is_time(day, row["back"], load.back):
        yield f"times {row['out']!r} to {row['back']!r}, should be {load.out} s to {load.back} s"
    if amount(row["priority"]) != load.priority or amount(row["articles"]) != len(load.articles):
        yield f"priority {row['priority']!r}, articles {row['articles']!r}"
    if not is_need(row["weight"], weight):
        yield f"weight {row['weight']!r}, should be {weight}"
    tie_downs = sum(len(by_article.get(a.id.casefold(), [])) for a in load.articles)
    if (amount(row["tie-downs"]) or 0) != tie_downs:
        yield f"tie-downs {row['tie-downs']!r}, should be {tie_downs}"
    if not is_need(row["awll needed"], sum(needs, Fraction(0))):
        yield f"AWLL needed {row['awll needed']!r}, should be {sum(needs)}"
    if not ready:
        return
    if not is_strength(row["awll planned"], sum(have, Fraction(0))):
        yield f"AWLL planned {row['awll planned']!r}, should be {sum(have)}"
    margins = [h / n - 1 for h, n in zip(have, needs, strict=True)]
    shown = amount(row["margin"])
    if margins and (shown is None or abs(shown - min(margins)) > Fraction(1, 2000)):
        yield f"margin {row['margin']!r}, should be {float(min(margins))}"


def _is_time(day: Day, cell: Cell, exact: int) -> bool:
    if isinstance(cell, str) and " (" in cell:
        return True  # another day, in words
    return seconds(cell, day.midnight, -1) == exact


def _pick_list(day: Day, results: Results) -> Iterator[str]:
    wanted: Counter[tuple[str, str]] = Counter()
    for one in results.tie_downs:
        for piece, count in one.pieces.items():
            wanted[one.load, piece] += count
    given: Counter[tuple[str, str]] = Counter()
    for row in results.pick_list:
        place = key(row["load"]), key(row["gear"])
        if place in given:
            yield f"Pick list: {place} twice"
        if place[0] not in day.loads or place[1] not in day.gear:
            yield f"Pick list: {place} unknown"
            continue
        given[place] += int(amount(row["pieces"]) or 0)
        load, gear = day.loads[place[0]], day.gear[place[1]]
        if key(row["from"]) != ("kit" if gear.kept_on else "cage"):
            yield f"Pick list: {place} from {row['from']!r}"
        if not _is_time(day, row["out"], load.out) or not _is_time(day, row["back"], load.back):
            yield f"Pick list: {place} {row['out']!r} to {row['back']!r}"
    if given != wanted:
        yield f"Pick list: too much {given - wanted}, missing {wanted - given}"


def _gear_use(day: Day, results: Results) -> Iterator[str]:
    if list(results.gear_use) != list(day.gear):
        yield "Gear use does not list the gear of the day"
        return
    taken: dict[str, Counter[str]] = {name: Counter() for name in day.loads}
    for one in results.tie_downs:
        taken[one.load].update(one.pieces)
    for fixed in day.fixed:
        if fixed.load not in results.ready:
            taken[fixed.load].update(fixed.pieces)
    for piece, gear in day.gear.items():
        row = results.gear_use[piece]
        out = {
            moment: sum(
                taken[name][piece]
                for name, load in day.loads.items()
                if load.out <= moment < day.until(load, gear)
            )
            for moment in sorted({load.out for load in day.loads.values()})
        }
        most = max(out.values(), default=0)
        shown = [amount(row[c]) for c in ("owned", "usable", "most out at once", "left then")]
        unrated = gear.wll is None and gear.kind != "edge protector"
        usable = 0 if unrated and shown[1] == 0 else gear.usable
        right = [gear.owned, usable, most, usable - most]
        if shown != right:
            yield f"Gear use {gear.id}: {shown}, should be {right}"
        if key(row["kind"]) != gear.kind:
            yield f"Gear use {gear.id}: kind {row['kind']!r}"
        first = min((moment for moment, n in out.items() if n == most), default=0)
        if most and not _is_time(day, row["when"], first):
            yield f"Gear use {gear.id}: most out at {row['when']!r}, should be {first} s"


def _checks(day: Day, results: Results, by_article: ByArticle) -> Iterator[str]:
    """No ready load has a line that is not met, and each article shows its count and aggregate."""
    lines: dict[tuple[str, str], list[Record]] = {}
    for row in results.checks:
        lines.setdefault((key(row["load"]), key(row["article"])), []).append(row)
        verdict = key(row["verdict"])
        if verdict not in ("met", "not met", "advice"):
            yield f"Checks: verdict {row['verdict']!r}"
        if verdict == "not met" and key(row["load"]) in results.ready:
            yield f"Checks: {row['load']} {row['article']} {row['check']} not met on a ready load"
    for name in results.ready:
        load = day.loads[name]
        for article in load.articles:
            mine = lines.get((name, article.id.casefold()), [])
            wants = need(article, load, day)
            have = credited(day, load, article, by_article)
            parts = {part.casefold() for part in article.accessories}
            main = sum(t.position not in parts for t, _ in by_article[article.id.casefold()])
            if not any(
                is_need(r["need"], wants.strength) and is_strength(r["have"], have) for r in mine
            ):
                yield f"Checks: {article.id} has no line {wants.strength} against {have}"
            counts = [r for r in mine if amount(r["need"]) == wants.count]
            if wants.count > 1 and not any(amount(r["have"]) == main for r in counts):
                yield f"Checks: {article.id} has no line {wants.count} tie-downs against {main}"
