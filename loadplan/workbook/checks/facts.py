"""What articles and house rules say against what the rule set allows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from loadplan.day.article import Article
from loadplan.day.day import Day, RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.row import Row
from loadplan.day.units import Units
from loadplan.problems import Code, Problem
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.day_facts import day_contradictions, house_contradictions
from loadplan.rules.facts import contradictions
from loadplan.workbook.table import row_problem

_CODES = {
    "Length": Code.LENGTH_NEEDED,
    "Routing": Code.ROUTING,
    "Details": Code.DETAILS,
    "Group": Code.GROUP,
    "Group stands": Code.GROUP,
}
Found = tuple[Article, Problem]


def article_problems(
    articles: Iterable[Article], house: HouseRules, units: Units, rules: RuleSet
) -> Iterator[Found]:
    """Facts of an article that contradict its section, or that a rule cannot do without."""
    for article in articles:
        for one in contradictions(article, house, units, rules):
            yield article, _problem(article.row, one, one.column)


def day_problems(day: Day) -> Iterator[Found]:
    """Facts that contradict only together: of groups, and of what rides on one load."""
    for article, one in day_contradictions(day):
        yield article, _problem(article.row, one, one.column)


def house_problems(house: HouseRules, units: Units, rules: RuleSet) -> Iterator[Problem]:
    """House rules only ever tighten: lines that would go below the rule set."""
    for one in house_contradictions(house, units, rules):
        yield _problem(house.stated.get(one.column), one, "Value", Code.LOOSER)


def _problem(row: Row | None, one: Contradiction, column: str, code: Code | None = None) -> Problem:
    """The finding and, as its last sentence, the remedy."""
    found, _, remedy = one.text.rpartition(". ")
    code = code or _CODES.get(one.column, Code.SECTION)
    return row_problem(row, code, column, f"{found}.", remedy)
