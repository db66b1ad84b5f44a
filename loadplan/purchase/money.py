"""Amounts of money as people write them."""

from __future__ import annotations

from fractions import Fraction

from loadplan.text import plain

_IN_FRONT = "$£¥"


def money(amount: Fraction, currency: str) -> str:
    """``$1,250``, ``45.20 EUR``, ``45.20 €``; whole, with cents, or as exact as four decimals."""
    if amount.denominator == 1:
        text = plain(amount)
    elif 100 % amount.denominator == 0:
        whole, cents = divmod(int(amount * 100), 100)
        text = f"{whole:,}.{cents:02d}"
    else:
        text = plain(amount, 4)
    if currency and currency in _IN_FRONT:
        return f"{currency}{text}"
    return f"{text} {currency}".strip()
