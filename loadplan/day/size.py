"""Nominal sizes of gear: inches or millimetres, with the pairs the tables treat as one."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

# The tables print these pairs side by side as one nominal size.
_PAIRS = {
    Fraction(7): Fraction(1, 4),
    Fraction(8): Fraction(5, 16),
    Fraction(10): Fraction(3, 8),
    Fraction(11): Fraction(7, 16),
    Fraction(13): Fraction(1, 2),
    Fraction(16): Fraction(5, 8),
    Fraction(20): Fraction(3, 4),
    Fraction(22): Fraction(7, 8),
    Fraction(25): Fraction(1),
    Fraction(45): Fraction(7, 4),
    Fraction(50): Fraction(2),
    Fraction(75): Fraction(3),
    Fraction(100): Fraction(4),
}
_LARGEST_BARE_INCH = 5
_MM_PER_INCH = Fraction("25.4")
_NUMBER = r"(?:\d+\s*-\s*\d+/\d+|\d+\s+\d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)"
_UNIT = r"(?:mm|in\.?|inch(?:es)?|\"|”|″)"
_SIZE = re.compile(
    rf"\s*({_NUMBER})\s*({_UNIT})?\s*(?:[x×]\s*({_NUMBER})\s*({_UNIT})?\s*)?", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Size:
    """A nominal size.

    ``across`` is the width or diameter and ``thick`` the thickness of strapping; both in inches,
    or in millimetres where ``metric`` is true. Millimetre sizes that the published tables pair
    with an inch size are held as that inch size, so that ``10 mm`` equals ``3/8``.
    """

    across: Fraction
    thick: Fraction | None = None
    metric: bool = False

    @property
    def inches(self) -> Fraction:
        """The width or diameter in inches, for telling which of two sizes is larger."""
        return self.across / _MM_PER_INCH if self.metric else self.across

    def __str__(self) -> str:
        text = _spell(self.across)
        if self.thick is not None:
            text += f" x {float(self.thick):g}" if self.metric else f" x {float(self.thick):.3f}"
        return f"{text} {'mm' if self.metric else 'in'}"


def read_size(text: str) -> Size | None:
    """The size written in ``text`` (``3/8``, ``1-3/4 in``, ``10 mm``, ``2 x 0.044``), or None.

    A bare number up to 5 is inches and a larger one millimetres: no nominal size in the trade's
    tables can be read both ways.
    """
    match = _SIZE.fullmatch(text)
    if match is None:
        return None
    across, thick = _number(match[1]), _number(match[3]) if match[3] else None
    if across is None or across <= 0 or (match[3] and (thick is None or thick <= 0)):
        return None
    unit = (match[2] or match[4] or "").lower()
    metric = unit == "mm" or (not unit and across > _LARGEST_BARE_INCH)
    if metric and thick is None and across in _PAIRS:
        return Size(_PAIRS[across])
    return Size(across, thick, metric)


def read_fits(text: str) -> tuple[Size, ...] | None:
    """The sizes a tensioner takes, or None if any part cannot be read.

    ``5/16-3/8`` names those two sizes and nothing between them; a list is split at commas and
    semicolons. A unit behind the last size of a pair holds for both.
    """
    sizes: list[Size] = []
    for part in re.split(r"[,;]", text):
        found = _fits_part(part)
        if found is None:
            return None
        sizes += [size for size in found if size not in sizes]
    return tuple(sizes)


def _fits_part(part: str) -> list[Size] | None:
    ends = [end.strip() for end in re.split(r"[-–—]", part)]
    if len(ends) == 1:
        ends = [part.strip()]
    elif len(ends) != 2 or not all(ends):
        return None
    else:
        unit = re.search(rf"{_UNIT}$", ends[1], re.IGNORECASE)
        if unit and not re.search(rf"{_UNIT}$", ends[0], re.IGNORECASE):
            ends[0] += unit[0]
    sizes = [read_size(end) for end in ends]
    if len(sizes) == 2 and _mixed_number(ends):
        return None
    return None if None in sizes else [size for size in sizes if size is not None]


def _mixed_number(ends: list[str]) -> bool:
    """Whether ``1-1/4`` could be one size as well as two."""
    return ends[0].isdigit() and "/" in ends[1]


def _number(text: str) -> Fraction | None:
    whole, _, rest = text.strip().replace("-", " ").rpartition(" ")
    try:
        return (Fraction(whole.strip()) if whole.strip() else Fraction(0)) + Fraction(rest.strip())
    except (ValueError, ZeroDivisionError):
        return None


def _spell(value: Fraction) -> str:
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    if part.denominator <= 64:
        return f"{whole}-{part}" if whole else str(part)
    return f"{float(value):g}"
