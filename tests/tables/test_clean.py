"""Text made fit for a cell."""

from __future__ import annotations

from loadplan.tables.clean import LONGEST, clean


def test_plain_text_is_kept():
    assert clean("=1+1 007 é 中") == "=1+1 007 é 中"


def test_line_breaks_and_tabs_become_one_space():
    assert clean("a\r\n\tb") == "a b"


def test_control_characters_and_lone_surrogates_are_replaced():
    assert clean("a\x00b\x07c\ud800d\ufffe") == "a\ufffdb\ufffdc\ufffdd\ufffd"


def test_text_is_cut_at_what_a_cell_holds():
    assert clean("é" * 40_000) == "é" * (LONGEST - 1) + "…"
    assert len(clean("x" * 40_000)) == LONGEST
