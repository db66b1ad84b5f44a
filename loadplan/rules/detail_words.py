"""The words of ``Details``: text cut into phrases and tokens, lengths made exact inches."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

_MM = Fraction(10, 254)
_UNITS = {
    **dict.fromkeys(("in", "inch", "inches", '"'), Fraction(1)),
    **dict.fromkeys(("ft", "foot", "feet", "'"), Fraction(12)),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), _MM),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), 10 * _MM),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1000 * _MM),
}
_SPELLED = {
    word: str(number)
    for number, word in enumerate(
        ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
    )
} | {"none": "0", "zero": "0", "without": "0"}
_IDLE = frozenset({"a", "an", "are", "its", "is", "of", "the", "with"})
_QUOTES = str.maketrans({"”": '"', "“": '"', "″": '"', "’": "'", "‘": "'", "′": "'", "−": "-"})
_PHRASE = re.compile(r"[;\n]")
_TOKEN = re.compile(
    r"\d+/\d+|-?(?:\d{1,3}(?:,\d{3})+(?!\d)|\d+)(?:\.\d+)?(?:[\s-]+\d+/\d+)?|[^\W\d_]+|\S",
)
_SIGNS = frozenset("-:=.,")


def phrases(text: str) -> list[str]:
    """``text`` cut at semicolons and new lines; commas part words too, but not ``1,143``."""
    return [part.strip() for part in _PHRASE.split(text) if part.strip()]


def tokens(text: str) -> list[str]:
    """The tokens of one phrase: numbers, folded words, foot and inch marks.

    Number words become digits, ``tie-down`` one token, and words that say nothing are left out.
    """
    text = re.sub(r"\btie[\s-]*downs?\b", "tiedown", text.casefold().translate(_QUOTES))
    found = (token for token in _TOKEN.findall(text) if token not in _IDLE | _SIGNS)
    return [_SPELLED.get(token, token) for token in found]


def number(token: str) -> Fraction | None:
    """The exact number ``token`` is; None where it is none."""
    whole, _, rest = token.replace(",", "").replace("-", " ").strip().rpartition(" ")
    if token.startswith("-"):
        return None
    try:
        return (Fraction(whole.strip()) if whole.strip() else Fraction(0)) + Fraction(rest)
    except (ValueError, ZeroDivisionError):
        return None


def whole(token: str) -> int | None:
    """The whole number ``token`` is; None where it is none."""
    value = number(token)
    return int(value) if value is not None and value.denominator == 1 else None


def measure(found: Sequence[str]) -> tuple[Fraction | None, list[str]] | None:
    """The one length in ``found`` in inches, and the other tokens; None where there is not one.

    The length is None where a number stands there without a unit. ``4 ft 6 in`` is one length.
    """
    at = [place for place, token in enumerate(found) if number(token) is not None]
    if not at or len(at) > 2:
        return None
    start, end = at[0], at[0]
    total: Fraction | None = Fraction(0)
    units = []
    for place in at:
        if place != end:
            return None
        factor = _UNITS.get(found[place + 1]) if place + 1 < len(found) else None
        units.append(factor)
        total = None if factor is None or total is None else total + _times(found[place], factor)
        end = place + (1 if factor is None else 2)
    if len(units) == 2 and units != [_UNITS["ft"], _UNITS["in"]]:
        return None
    return total, [*found[:start], *found[end:]]


def _times(token: str, factor: Fraction) -> Fraction:
    return (number(token) or Fraction(0)) * factor
