"""Nominal sizes as people type them."""

from fractions import Fraction

import pytest

from loadplan.day.size import Size, read_fits, read_size

THREE_EIGHTHS = Size(Fraction(3, 8))


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("3/8", THREE_EIGHTHS),
        (' 3/8" ', THREE_EIGHTHS),
        ("3/8 in", THREE_EIGHTHS),
        ("0.375", THREE_EIGHTHS),
        # The tables print 10 mm and 3/8 in as one nominal size.
        ("10 mm", THREE_EIGHTHS),
        ("10", THREE_EIGHTHS),
        ("1-3/4 in", Size(Fraction(7, 4))),
        ("1 3/4", Size(Fraction(7, 4))),
        ("4", Size(Fraction(4))),
        ("100 mm", Size(Fraction(4))),
        ("6 mm", Size(Fraction(6), metric=True)),
        ("9.5 mm", Size(Fraction(19, 2), metric=True)),
        ("1-1/4 x 0.029", Size(Fraction(5, 4), Fraction(29, 1000))),
    ],
)
def test_sizes(text, size):
    assert read_size(text) == size


@pytest.mark.parametrize("text", ["", "x", "3/0", "0", "-3/8", "3/8 ft", "3/8 x", "1/2/3", "nan"])
def test_no_size(text):
    assert read_size(text) is None


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("3/8", ["3/8"]),
        ("5/16-3/8", ["5/16", "3/8"]),
        ("5/16 - 3/8 in", ["5/16", "3/8"]),
        ("3/8, 1/2", ["3/8", "1/2"]),
        ("3/8; 10 mm; 1/2", ["3/8", "1/2"]),
        ("8-10 mm", ["5/16", "3/8"]),
    ],
)
def test_fits(text, sizes):
    # A range names its two ends and nothing between them.
    assert read_fits(text) == tuple(read_size(size) for size in sizes)


@pytest.mark.parametrize("text", ["", "small", "3/8,", "3/8-", "1/4-3/8-1/2", "1-1/4"])
def test_fits_that_cannot_be_read(text):
    assert read_fits(text) is None


@pytest.mark.parametrize(
    ("size", "text"),
    [
        (THREE_EIGHTHS, "3/8 in"),
        (Size(Fraction(7, 4)), "1-3/4 in"),
        (Size(Fraction(6), metric=True), "6 mm"),
        (Size(Fraction(5, 4), Fraction(29, 1000)), "1-1/4 x 0.029 in"),
    ],
)
def test_sizes_in_print(size, text):
    assert str(size) == text
