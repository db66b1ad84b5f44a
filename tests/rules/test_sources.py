"""The catalogue of sources: nothing cited is missing, nothing is called surer than it is."""

import pkgutil
from importlib import import_module

import pytest

import loadplan.rules
import loadplan.wll
from loadplan.day.day import RuleSet
from loadplan.rules.canada import canadian
from loadplan.rules.catalogue import sources_of
from loadplan.rules.sources import catalogue
from loadplan.source import Certainty, Source
from loadplan.wll.tables import rows


@pytest.mark.parametrize("rules", RuleSet)
def test_no_source_stands_twice_and_each_says_something(rules):
    found = sources_of(rules)
    assert len(set(found)) == len(found)
    assert all(source.says for source in found if "table" not in source.section)


def test_the_us_rule_set_has_every_row_of_every_table():
    assert {row.source for row in rows()} <= set(catalogue()) <= set(sources_of(RuleSet.US))


def named_in(package):
    return {
        value
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
        for value in vars(import_module(module.name)).values()
        if isinstance(value, Source) and value.certainty is not Certainty.INPUT
    }


def test_every_source_named_in_the_rules_and_ratings_is_in_the_catalogue():
    named = named_in(loadplan.rules) | named_in(loadplan.wll)
    assert len(named) > 80
    assert named <= set(sources_of(RuleSet.US)) | set(sources_of(RuleSet.CANADA))


def test_canada_cites_nothing_of_the_us_rule():
    assert all(source.document != "49 CFR" for source in sources_of(RuleSet.CANADA))
    assert all(canadian(canadian(source)) == canadian(source) for source in catalogue())


def test_canada_is_called_read_only_where_provinces_quote_it():
    read = {
        source.section
        for source in sources_of(RuleSet.CANADA)
        if source.document == "NSC Standard 10" and source.certainty is Certainty.READ
    }
    assert read == {
        "s. 10",
        "s. 11(1)",
        "s. 11(3)",
        "s. 11(4)",
        "s. 12(9)",
        "s. 20",
        "s. 22",
        "s. 88",
        "s. 89(1)",
        "rub rails",
        "Part 2, metal coils",
        "Part 2, logs",
    }


@pytest.mark.parametrize("rules", RuleSet)
def test_editions_say_what_was_read(rules):
    for source in sources_of(rules):
        if source.certainty is Certainty.READ:
            assert source.edition.endswith("read 2026-11, stored copy")
        if source.certainty is Certainty.HANDBOOK:
            assert source.edition == "federal driver's handbook, 2003 era"
        if source.certainty is Certainty.MEMORY:
            assert source.edition in ("not read", "from memory 2026-11, not read")
        if source.certainty is Certainty.PRACTICE:
            assert source.edition == ""
