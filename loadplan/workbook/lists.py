"""Cells with a grammar of their own: lists of accessories, and prices."""

from __future__ import annotations

import re
from fractions import Fraction

from loadplan.day.article import Accessory
from loadplan.problems import Code
from loadplan.rules.positions import NAMED
from loadplan.units import Dimension, Misread, read_number, read_quantity
from loadplan.workbook.limits import MOST_ID
from loadplan.workbook.names import fold_words

_SPLIT = re.compile(r"[;,\n](?![^()]*\))")
_BRACKETS = re.compile(r"(.*?)\s*\(([^()]*)\)", re.DOTALL)
_PLACE = re.compile(r"(?:front|rear|mid|middle) (?:left|right)|over [0-9]+")
_CURRENCY = r"[$€£¥]|[A-Za-z]{1,3}\$|[A-Za-z]{3}"
_MONEY = re.compile(rf"({_CURRENCY})?\s*([^A-Za-z$€£¥]*?)\s*({_CURRENCY})?")


def read_accessories(text: str, mass: str) -> tuple[Accessory, ...]:
    """The accessories listed in ``text``: ``boom; bucket (900 lb); blade (pinned)``.

    They are split at semicolons, commas and line breaks outside brackets. In brackets behind a
    name may stand that it is pinned, and its weight, converted to the unit ``mass``; other
    brackets without digits are part of the name. Raises :class:`~loadplan.units.Misread`.
    """
    found: list[Accessory] = []
    names: set[str] = set()
    for part in _SPLIT.split(text):
        if part.strip():
            accessory = _read_accessory(part.strip(), mass)
            key = fold_words(accessory.name)
            _check_name(accessory.name, key, names)
            names.add(key)
            found.append(accessory)
    return tuple(found)


def _read_accessory(text: str, mass: str) -> Accessory:
    pinned, weight = False, None
    while match := _BRACKETS.fullmatch(text):
        inside = match[2].strip()
        if fold_words(inside) == "pinned":
            pinned = True
        elif re.search("[0-9]", inside):
            weight = read_quantity(inside, Dimension.MASS, mass, None)
            if weight <= 0:
                raise Misread(Code.OUT_OF_RANGE, f"The weight of {match[1]} must be more than 0.")
        else:
            break
        text = match[1].strip()
    return Accessory(name=text, pinned=pinned, weight=weight)


def _check_name(name: str, key: str, names: set[str]) -> None:
    if not name:
        raise Misread(Code.ACCESSORIES, "Write what is pinned, such as blade (pinned).")
    if key in NAMED or _PLACE.fullmatch(key):
        raise Misread(
            Code.ACCESSORIES,
            f"Call the accessory something else than {name}, which is a position.",
        )
    if key in names:
        raise Misread(
            Code.ACCESSORIES,
            f"Name {name} once, or tell them apart, such as {name} 1; {name} 2.",
        )
    if len(name) > MOST_ID:
        raise Misread(Code.TOO_LONG, f"Keep each name within {MOST_ID} characters.")


def read_money(text: str) -> tuple[Fraction, str]:
    """The price in ``text`` and its currency mark or code, "" where there is none."""
    match = _MONEY.fullmatch(text.strip())
    if match is None:
        raise Misread(Code.NOT_A_NUMBER, "Write a price such as 45.00 or 45.00 USD.")
    before, number, behind = match[1] or "", match[2], match[3] or ""
    if before and behind and before.upper() != behind.upper():
        raise Misread(Code.PRICE, "Write one currency.", ", in two currencies")
    return read_number(number), (before or behind).upper()
