"""Widths and wrapping by the published advance widths of the pages' font."""

from __future__ import annotations

import pytest

from loadplan.results.measure import fitted, height, lines, pixels


def test_width_of_a_word():
    # W 944, L 556, L 556 thousandths of 9 points, 4/3 pixels each: 2.056 x 12 = 24.672.
    assert pixels("WLL", 9) == pytest.approx(24.672)


def test_bold_is_wider():
    assert pixels("WLL", 9, True) > pixels("WLL", 9)


def test_words_wrap_and_long_words_break():
    assert lines("one two three", 400, 9) == 1
    assert lines("one two three", 46, 9) == 3
    # x is 500 thousandths: 60 x 0.5 x 12 = 360 pixels, in lines of 0.98 x (100 - 6) = 92.
    assert lines("x" * 60, 100, 9) == 4


def test_height_grows_by_the_line():
    # 2 x 9 x 1.17 + 1.8 = 22.86, to a tenth.
    assert height(2, 9) == 22.9


def test_fitted_cuts_at_the_end():
    assert fitted("short", 100, 9) == "short"
    assert fitted("one, two, three, four", 60, 9) == "one, two ..."
