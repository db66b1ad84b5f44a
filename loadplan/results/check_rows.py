"""Every check of a load with its section; what is not met or advised comes first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from loadplan.day.day import RuleSet
from loadplan.outcome.check import Check, Verdict
from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.results.words import shortened
from loadplan.rules.requirement import EachWLLRequirement
from loadplan.tables.facts import LoadFacts

_NOTHING = "-"
_AT = "tie-down at "
_ORDER = (Verdict.NOT_MET, Verdict.ADVICE, Verdict.MET)
_HANDBOOK = "handbook: from the official handbook, the regulation's own text was not read."
_DOCUMENTS = {
    RuleSet.US: f"Numbers in brackets are sections of 49 CFR; {_HANDBOOK}",
    RuleSet.CANADA: f"NSC 10 is National Safety Code Standard 10; {_HANDBOOK}",
}
_STYLES = {
    Verdict.NOT_MET: "not met wrap",
    Verdict.ADVICE: "advice wrap",
    Verdict.MET: "small wrap",
}


def check_rows(flow: Flow, load: LoadFacts, checks: Sequence[Check], rules: RuleSet) -> None:
    """The checks of ``load`` two to a row, without those that stand as live sums above."""
    live = _live(load) if load.tie_downs else set()
    shown = [check for check in checks if (check.article, check.name) not in live]
    if not shown:
        return
    words = "Also checked" if live else "Checked" if load.ready else "What the rules ask of it"
    row = flow.next(15)
    flow.sheet.across(row, 0, at.LAST, words, "heading")
    flow.paragraph(_DOCUMENTS[rules], "muted small", size=7.5)
    for verdict in _ORDER:
        alike = check_lines(check for check in shown if check.verdict is verdict)
        flow.pairs([(line, _STYLES[verdict]) for line in alike], at.SPLIT)


def check_line(check: Check) -> str:
    """``met - EX-12: four tie-downs: need 4, have 6 tie-downs (393.130(c)(1))``.

    Advice says its working too, and a held load only what is needed.
    """
    return _line(check.verdict, [check.article], _said(check))


def check_lines(checks: Iterable[Check]) -> list[str]:
    """A line for each check.

    Counts of one article that are met alike, place by place, share a line, and so do articles of
    which the same is said.
    """
    alike: dict[tuple[object, ...], list[Check]] = {}
    for number, check in enumerate(checks):
        counted = check.verdict is Verdict.MET and check.unit == "tie-downs"
        key = (check.article, check.need, check.source) if counted else (number,)
        alike.setdefault(key, []).append(check)
    said: dict[tuple[Verdict, str], list[str]] = {}
    for same in alike.values():
        words = _said(same[0]) if len(same) == 1 else _together(same)
        said.setdefault((same[0].verdict, words), []).append(same[0].article)
    return [_line(verdict, articles, words) for (verdict, words), articles in said.items()]


def _line(verdict: Verdict, articles: Iterable[str], words: str) -> str:
    whose = ", ".join(filter(None, articles))
    return f"{verdict.value} - {whose}: {words}" if whose else f"{verdict.value} - {words}"


def _said(check: Check) -> str:
    """What a check says, whatever article it is of."""
    figures = ""
    if _NOTHING not in (check.need, check.have):
        figures = f": need {check.need}, have {check.have}{_unit(check, check.have)}"
    elif check.verdict is Verdict.NOT_MET and check.need != _NOTHING:
        figures = f": need {check.need}{_unit(check, check.need)}"
    working = f". {check.working.rstrip('.')}" if check.verdict is Verdict.ADVICE else ""
    return f"{check.name}{figures}{working} ({shortened(check.source)})"


def _unit(check: Check, figure: str) -> str:
    """The unit behind a figure: ``1 tie-down``, ``2 tie-downs``."""
    unit = check.unit.removesuffix("s") if figure == "1" else check.unit
    return f" {unit}" if unit else ""


def _together(same: Sequence[Check]) -> str:
    """``tie-down at front left, front right: need 1 each, have 1 each (393.130(c)(2))``."""
    first, places = same[0], list(dict.fromkeys(check.name for check in same))
    starts = places[0].startswith(_AT)
    words = [place.removeprefix(_AT) if starts and at else place for at, place in enumerate(places)]
    have = [check.have for check in same]
    shown = f"{have[0]} each" if len(set(have)) == 1 else ", ".join(have)
    return f"{', '.join(words)}: need {first.need} each, have {shown} ({shortened(first.source)})"


def _live(load: LoadFacts) -> set[tuple[str, str]]:
    """(article, check name) of what is worked out live above."""
    found = set()
    for facts in load.articles:
        found |= {(facts.article.id, asked.name) for asked in facts.demand.strengths}
        found |= {
            (facts.article.id, asked.name)
            for asked in facts.demand.properties
            if isinstance(asked, EachWLLRequirement)
        }
    return found
