"""The catalogue of sources: nothing cited is missing, nothing is called surer than it is."""

import pkgutil
from importlib import import_module

import loadplan.rules
from loadplan.rules.sources import catalogue
from loadplan.source import Certainty, Source
from loadplan.wll.tables import rows


def test_no_source_stands_twice_and_each_says_something():
    found = catalogue()
    assert len(set(found)) == len(found)
    tables = {row.source for row in rows()}
    assert tables <= set(found)
    assert all(source.says for source in found if source not in tables)


def test_every_source_named_in_the_rules_is_in_the_catalogue():
    named = {
        value
        for module in pkgutil.iter_modules(loadplan.rules.__path__)
        for value in vars(import_module(f"loadplan.rules.{module.name}")).values()
        if isinstance(value, Source) and value.certainty is not Certainty.INPUT
    }
    assert named <= set(catalogue())


def test_editions_say_what_was_read():
    for source in catalogue():
        if source.certainty is Certainty.READ:
            assert source.edition.endswith("read 2026-11, stored copy")
        if source.certainty is Certainty.MEMORY:
            assert source.edition in ("not read", "from memory 2026-11, not read")
        if source.certainty is Certainty.PRACTICE:
            assert source.edition == ""
