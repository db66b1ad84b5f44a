"""The judgement: a plan held against every rule and every pool limit, from the pieces alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from loadplan.day.day import Day
from loadplan.judge.asked import findings
from loadplan.judge.case import ArticleCase, LoadCase, load_case
from loadplan.judge.finding import Finding
from loadplan.judge.fixed import FixedGear
from loadplan.judge.make_up import made_wrong
from loadplan.judge.places import misplaced
from loadplan.judge.pool import overdrawn
from loadplan.judge.rating_advice import article_advice, load_advice
from loadplan.judge.shared import offered, shared
from loadplan.judge.size_advice import size_advice
from loadplan.judge.wording import of_article, of_load, of_tie_down
from loadplan.outcome.check import Check, Judgement, Verdict
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.demand import load_demand
from loadplan.wll.piece import rate_in

_Found = Sequence[tuple[ArticleCase, Sequence[Finding]]]


def judge(day: Day, ready: Sequence[str], tie_downs: Sequence[TieDown]) -> Judgement:
    """Judge the plan that sends the loads ``ready`` (by id) with ``tie_downs``.

    Nothing of how the plan was made is used: ratings, demands and pieces out are worked out again
    from ``day``. The plan stands only if the judgement has no disagreement. Checks are in workbook
    order of load and article; those of held loads are never ``met``.
    """
    ratings = {gear.id: rate_in(day, gear) for gear in day.gear}
    demands = [load_demand(day, load) for load in day.loads]
    loads = {one.article.id: whole.load.id for whole in demands for one in whole.articles}
    by_article = _by_article(loads, tie_downs)
    fixed = FixedGear(day)
    going = set(ready)
    checks: list[Check] = []
    disagreements = [*_unknown_loads(day, ready), *_strays(day, loads, going, tie_downs)]
    for demand in demands:
        case = load_case(
            day,
            demand,
            ready=demand.load.id in going,
            ratings=ratings,
            tie_downs=by_article,
        )
        found = [(article, tuple(findings(article))) for article in case.articles]
        checks += _checks(case, found)
        if case.ready:
            disagreements += _disagreements(case, found, fixed)
    disagreements += fixed.moved(ready, tie_downs)
    disagreements += overdrawn(day, tie_downs, ready)
    return Judgement(checks=tuple(checks), disagreements=tuple(disagreements))


def _by_article(
    loads: Mapping[str, str], tie_downs: Sequence[TieDown]
) -> dict[str, tuple[TieDown, ...]]:
    """The tie-downs of each article, as far as they name it together with its own load.

    ``loads`` is the load of each article, or group of articles, that is secured by itself.
    """
    found: dict[str, list[TieDown]] = {}
    for tie_down in tie_downs:
        if loads.get(tie_down.article) == tie_down.load:
            found.setdefault(tie_down.article, []).append(tie_down)
    return {article: tuple(those) for article, those in found.items()}


def _unknown_loads(day: Day, ready: Sequence[str]) -> Iterator[str]:
    """Ready loads that the day does not have, or that are named more than once."""
    for load, times in Counter(ready).items():
        if load not in day.load_by_id:
            yield f"{of_load(load)}: the plan says it is ready, and the day has no such load."
        if times > 1:
            yield f"{of_load(load)}: the plan says {times} times that it is ready."


def _strays(
    day: Day, loads: Mapping[str, str], going: set[str], tie_downs: Sequence[TieDown]
) -> Iterator[str]:
    """Tie-downs that are of no load or article of the day, or of a held load."""
    for tie_down in tie_downs:
        load = loads.get(tie_down.article)
        where = of_tie_down(tie_down)
        if tie_down.load not in day.load_by_id:
            yield f"{where}: the day has no such load."
        elif load is None and tie_down.article in day.article_by_id:
            yield f"{where}: the article is secured with its group, not by itself."
        elif load is None:
            yield f"{where}: the day has no such article."
        elif load != tie_down.load:
            yield f"{where}: the article is on load {load}."
        elif tie_down.load not in going:
            yield f"{where}: the load is held, and a held load gets no tie-downs."


def _disagreements(case: LoadCase, found: _Found, fixed: FixedGear) -> Iterator[str]:
    """Every rule that a ready load breaks."""
    for article, asked in found:
        for tie_down in article.tie_downs:
            yield from made_wrong(article, tie_down)
        yield from misplaced(article, fixed)
        where = of_article(case.load.id, article.article.id)
        yield from (finding.disagreement(where) for finding in asked if not finding.met)
    where = of_load(case.load.id)
    yield from (finding.disagreement(where) for finding in shared(case) if not finding.met)


def _checks(case: LoadCase, found: _Found) -> Iterator[Check]:
    """The checks of one load: its articles', then its own."""
    for article, asked in found:
        for finding in asked:
            shown = finding if case.ready else finding.held()
            yield shown.check(case.load.id, article.article.id)
        yield from _open(case, article_advice(article))
    if not case.articles:
        return
    if case.ready:
        yield from (finding.check(case.load.id, "") for finding in shared(case))
    else:
        yield from offered(case)
    yield from _open(case, load_advice(case))
    yield from _open(case, size_advice(case))


def _open(case: LoadCase, advice: Iterable[Check]) -> Iterator[Check]:
    """All ``advice`` on a ready load; on a held one only what is not met."""
    return (check for check in advice if case.ready or check.verdict is not Verdict.MET)
