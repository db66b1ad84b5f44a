"""Names of load sheets are fit for a spreadsheet and all different."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from loadplan.tables.sheet_names import load_sheet_names

_FORBIDDEN = re.compile(r"[\[\]:*?/\\]")


def _named(*loads):
    return list(load_sheet_names(loads).values())


def test_a_plain_id_is_kept():
    assert _named("7", "007", "North 3") == ["Load 7", "Load 007", "Load North 3"]


def test_forbidden_characters_become_underscores():
    assert _named("A/B:[c]*?\\d") == ["Load A_B__c____d"]


def test_ids_that_differ_only_in_case_get_numbers():
    assert _named("a", "A", "ß", "SS") == ["Load a", "Load A (2)", "Load ß", "Load SS (2)"]


def test_ids_alike_once_cut_get_numbers():
    # 31 characters: "Load " and 26 of the id, or 22 of it and " (2)".
    assert _named("x" * 40, "X" * 41, "x" * 42) == [
        "Load " + "x" * 26,
        "Load " + "X" * 22 + " (2)",
        "Load " + "x" * 22 + " (3)",
    ]


def test_ids_alike_once_cleaned_get_numbers():
    assert _named("a/b", "a:b") == ["Load a_b", "Load a_b (2)"]


def test_a_name_does_not_end_with_an_apostrophe():
    assert _named("driver's'") == ["Load driver's_"]


def test_long_names_are_counted_as_spreadsheets_count():
    # A truck sign outside the basic plane counts twice: (31 - 5) / 2 = 13 of them fit.
    assert _named("🚚" * 20) == ["Load " + "🚚" * 13]


@given(st.lists(st.text(min_size=1), unique=True, max_size=30))
def test_any_ids_get_names_that_are_fit_and_different(loads):
    names = _named(*loads)
    assert len({name.casefold() for name in names}) == len(loads)
    for name in names:
        assert name.startswith("Load")
        assert len(name.encode("utf-16-le")) <= 62
        assert not _FORBIDDEN.search(name)
        assert not name.endswith("'")
