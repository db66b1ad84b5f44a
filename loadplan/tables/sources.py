"""``Sources``: every rule and table used, with the edition read and how sure we are."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.rules.canada import in_rules
from loadplan.rules.catalogue import sources_of
from loadplan.rules.profile import EDITIONS
from loadplan.rules.requirement import Demand, Requirement
from loadplan.source import Certainty, Source
from loadplan.tables.facts import DayFacts, LoadFacts
from loadplan.tables.table import Table


def sources(facts: DayFacts) -> Table:
    """The rule set with its edition, then a row for each source, in the order of the catalogue.

    The day's own figures stand last.
    """
    edition = EDITIONS[facts.plan.day.rules]
    rule_set = (edition.document, "rule set", edition.read, Certainty.READ.value, edition.note)
    return Table(
        headings=("Rule or table", "Section", "Edition", "Certainty", "Says"),
        rows=(
            rule_set,
            *(
                (one.document, one.section, one.edition, one.certainty.value, one.says)
                for one in used(facts)
            ),
        ),
    )


def used(facts: DayFacts) -> tuple[Source, ...]:
    """Every source that a demand, a rating or a check of this plan rests on."""
    known = sources_of(facts.plan.day.rules)
    cited = {check.source for check in facts.plan.judgement.checks}
    found = {source for source in known if source.cite() in cited}
    ratings = facts.ratings.values()
    found.update(in_rules(facts.plan.day, rating.source) for rating in ratings)
    for load in facts.loads:
        found.update(_of_load(load))
    order = {source: place for place, source in enumerate(known)}
    last = len(known)
    return tuple(
        sorted(
            found,
            key=lambda one: (
                one.certainty is Certainty.INPUT,
                order.get(one, last),
                one.document,
                one.section,
            ),
        )
    )


def _of_load(load: LoadFacts) -> Iterator[Source]:
    shared: list[Requirement] = [load.demand.winches, *load.demand.looks]
    if load.demand.anchors is not None:
        shared.append(load.demand.anchors)
    for one in shared:
        yield from _of(one)
    for facts in load.articles:
        for one in _requirements(facts.demand):
            yield from _of(one)


def _requirements(demand: Demand) -> Iterator[Requirement]:
    yield from demand.counts
    yield from demand.strengths
    yield from demand.properties
    yield from demand.accessories
    yield from demand.obstacles
    yield from demand.looks


def _of(one: Requirement) -> Iterator[Source]:
    yield one.source
    for step in one.steps:
        yield step.source
