"""What to look at before moving and on the road, each line with a box to tick."""

from __future__ import annotations

from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines
from loadplan.results.words import look_line, marked_cite
from loadplan.rules.requirement import Look
from loadplan.tables.facts import LoadFacts

_STOPS = frozenset({"before driving", "first check", "further checks"})


def look_rows(flow: Flow, load: LoadFacts) -> None:
    """The lines of the articles (those alike as one), then those of the load, two to a row."""
    _heading(flow, "Look at this before driving, and tick it off")
    flow.pairs([(line, "small wrap") for line in look_lines(load)], at.SPLIT)


def look_lines(load: LoadFacts) -> list[str]:
    """Every line but those of the road."""
    shared: dict[tuple[str, str], tuple[Look, list[str]]] = {}
    for facts in load.articles:
        for look in facts.demand.looks:
            shared.setdefault((look.name, look.text), (look, []))[1].append(facts.article.id)
    lines_ = [look_line(articles, look) for look, articles in shared.values()]
    return lines_ + [look_line((), look) for look in load.demand.looks if not _on_road(look)]


def road_rows(flow: Flow, load: LoadFacts) -> None:
    """The stops of the inspection rule, with room for time and place."""
    stops = [look for look in load.demand.looks if _on_road(look)]
    if not stops:
        return
    _heading(flow, f"On the road ({marked_cite(stops[0].source)})")
    for look in stops:
        text = f"□ {look.text}"
        count = lines(text, flow.width(0, at.TIE_POINT), 9)
        row = flow.next(max(15, height(count, 9)))
        flow.sheet.across(row, 0, at.TIE_POINT, text, "wrap mid")
        flow.sheet.text(row, at.WLL, "time, place", "muted low")
        flow.sheet.blank(row, range(at.WEAKEST, at.LAST + 1), "rule")


def _on_road(look: Look) -> bool:
    return look.name in _STOPS


def _heading(flow: Flow, words: str) -> None:
    row = flow.next(15)
    flow.sheet.across(row, 0, at.LAST, words, "heading")
