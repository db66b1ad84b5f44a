"""Numbers as people type them, exactly: a strict grammar that refuses to guess.

A comma is a thousands comma in groups of three or nothing. Digits are the ten plain ones.
"""

from __future__ import annotations

import re
from fractions import Fraction

from loadplan.problems import Code

# Signs that keyboards, phones and spreadsheets put in place of the plain ones.
_PLAIN = str.maketrans(
    {
        "−": "-",
        "–": "-",
        "’": "'",
        "‘": "'",
        "′": "'",
        "”": '"',
        "“": '"',
        "″": '"',
        "\u00a0": " ",
        "\u2009": " ",
        "\u202f": " ",
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
        "⅛": " 1/8",
        "⅜": " 3/8",
        "⅝": " 5/8",
        "⅞": " 7/8",
        "⁄": "/",
    }
)
_DIGITS = r"(?:[0-9]{1,3}(?:,[0-9]{3})+|[0-9]{1,30})"
NUMBER = (
    rf"(?:{_DIGITS}\.[0-9]{{0,30}}|\.[0-9]{{1,30}}"
    r"|(?:[0-9]{1,9}(?: +|-))?[0-9]{1,9}/[0-9]{1,9}"
    rf"|{_DIGITS})"
)
_SIGNED = re.compile(rf"([+-]?) *({NUMBER})")
_COMMAS = re.compile(r"[+-]?[0-9]*(?:[.,'][0-9]+)*,[0-9]+(?:[.,][0-9]+)*(?![0-9/])")
ZERO_GROUP = re.compile(r"[+-]?0[0-9]*,")
_NOT_FINITE = frozenset({"nan", "inf", "infinity", "-inf", "+inf", "-infinity", "+infinity"})


class Misread(Exception):  # noqa: N818
    """Text that is not a number or quantity.

    ``why`` continues the sentence "Weight is ... " and is "" where the remedy says it all.
    """

    def __init__(self, code: Code, remedy: str, why: str = "") -> None:
        super().__init__(code, remedy, why)
        self.code, self.remedy, self.why = code, remedy, why


def read_number(text: str) -> Fraction:
    """The plain number in ``text``; raises :class:`Misread`."""
    text = plain(text)
    match = _SIGNED.fullmatch(text)
    if match is None or ZERO_GROUP.match(text):
        raise not_a_number(text)
    return value_of(match[1], match[2])


def read_share(text: str) -> Fraction:
    """A plain number or a percentage (``0.1``, ``10 %``); raises :class:`Misread`."""
    text = plain(text)
    if text.endswith("%"):
        return read_number(text[:-1]) / 100
    return read_number(text)


def value_of(sign: str, number: str) -> Fraction:
    """The value of text that matches :data:`NUMBER`, with its sign."""
    number = number.replace(",", "")
    whole, _, part = number.replace("-", " ").rpartition(" ")
    if part.endswith("."):
        part = part[:-1]
    try:
        value = Fraction(part) + (Fraction(whole.strip()) if whole.strip() else 0)
    except ZeroDivisionError:
        raise not_a_number(number) from None
    return -value if sign == "-" else value


def not_a_number(text: str) -> Misread:
    """Why ``text`` is no number: not finite, a comma that can be read in two ways, or neither."""
    if text.lower() in _NOT_FINITE:
        return Misread(Code.NOT_A_NUMBER, "Write a finite number.", ", which is no number")
    if _COMMAS.match(text) or ZERO_GROUP.match(text):
        return Misread(
            Code.TWO_WAYS,
            "Write a decimal point (5.4), and commas only between groups of three digits (5,400).",
            ": its comma can be read in two ways",
        )
    return Misread(Code.NOT_A_NUMBER, "Write a number.")


def plain(text: str) -> str:
    """``text`` trimmed, with plain signs, quotes and spaces in place of typographic ones."""
    return text.translate(_PLAIN).replace("''", '"').strip()
