"""Every check of a load with its section; what is not met or advised comes first."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loadplan.day.day import RuleSet
from loadplan.outcome.check import Check, Verdict
from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.rules.requirement import EachWLLRequirement
from loadplan.tables.facts import LoadFacts

_NOTHING = "-"
_PRACTICE = re.compile(r"^.*\((common practice, no source)\)$")
_ORDER = (Verdict.NOT_MET, Verdict.ADVICE, Verdict.MET)
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
    sections = " (numbers in brackets are sections of 49 CFR)" if rules is RuleSet.US else ""
    row = flow.next(15)
    flow.sheet.across(row, 0, at.LAST, f"{words}{sections}", "heading")
    for verdict in _ORDER:
        alike = [check_line(check) for check in shown if check.verdict is verdict]
        flow.pairs([(line, _STYLES[verdict]) for line in alike], at.SPLIT)


def check_line(check: Check) -> str:
    """``met - EX-12: four tie-downs: need 4, have 6 tie-downs (393.130(c)(1))``.

    Advice says its working too, and a held load only what is needed.
    """
    whose = f"{check.article}: " if check.article else ""
    unit = f" {check.unit}" if check.unit else ""
    figures = ""
    if _NOTHING not in (check.need, check.have):
        figures = f": need {check.need}, have {check.have}{unit}"
    elif check.verdict is Verdict.NOT_MET and check.need != _NOTHING:
        figures = f": need {check.need}{unit}"
    working = f". {check.working.rstrip('.')}" if check.verdict is Verdict.ADVICE else ""
    cite = _PRACTICE.sub(r"\1", check.source.removeprefix("49 CFR "))
    return f"{check.verdict.value} - {whose}{check.name}{figures}{working} ({cite})"


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
