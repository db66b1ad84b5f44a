"""Cells: exact quantities, times, sizes and yes/no, for workbooks that are known to be right."""

from __future__ import annotations

import datetime
import math
import re
from fractions import Fraction

Cell = object
MASS = {
    "lb": Fraction(45359237, 100000000),
    "lbs": Fraction(45359237, 100000000),
    "kg": Fraction(1),
    "t": Fraction(1000),
}
LENGTH = {
    "ft": Fraction(3048, 10000),
    "'": Fraction(3048, 10000),
    "in": Fraction(254, 10000),
    '"': Fraction(254, 10000),
    "m": Fraction(1),
    "cm": Fraction(1, 100),
    "mm": Fraction(1, 1000),
}
UNITS = MASS | LENGTH
PAIRS = dict(
    zip(
        ["7", "8", "10", "11", "13", "16", "20", "22", "25", "45", "50", "75", "100"],
        ["1/4", "5/16", "3/8", "7/16", "1/2", "5/8", "3/4", "7/8", "1", "7/4", "2", "3", "4"],
        strict=True,
    )
)


def text(cell: Cell) -> str:
    """The cell as trimmed text; 7 and 7.0 are "7"."""
    if cell is None:
        return ""
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()


def key(cell: Cell) -> str:
    """How ids and words are compared."""
    return text(cell).casefold()


def yes(cell: Cell, default: bool = False) -> bool:
    """A yes/no cell."""
    return key(cell) in ("yes", "y", "true", "1") if text(cell) else default


def number(cell: Cell) -> Fraction:
    """A bare number, exactly as it is shown: 0.1 is 1/10."""
    if isinstance(cell, (int, float)):
        return Fraction(repr(cell))
    return Fraction(text(cell).replace(",", ""))


def quantity(cell: Cell, unit: str, wanted: str) -> Fraction | None:
    """``cell``, in ``unit`` unless it names its own, in the unit ``wanted``; None where blank."""
    if not text(cell):
        return None
    if isinstance(cell, (int, float)):
        return number(cell) * UNITS[unit] / UNITS[wanted]
    parts = re.findall(r"([\d.,]+(?:e[-+]?\d+)?)\s*([a-z'\"]*)", text(cell).casefold())
    total = sum(number(value) * UNITS[own or unit] for value, own in parts)
    return Fraction(total) / UNITS[wanted]


def seconds(cell: Cell, midnight: datetime.datetime | None, default: int) -> int:
    """A time of day or a date-time as whole seconds from the day's midnight."""
    if isinstance(cell, str):
        cell = _written_time(cell.strip()) if cell.strip() else None
    if cell is None:
        return default
    if isinstance(cell, datetime.timedelta):
        return round(cell.total_seconds())
    if isinstance(cell, datetime.time):
        return 3600 * cell.hour + 60 * cell.minute + round(cell.second + cell.microsecond / 1e6)
    assert isinstance(cell, datetime.datetime)
    assert midnight is not None
    return round((cell - midnight).total_seconds())


def _written_time(written: str) -> datetime.datetime | datetime.timedelta:
    try:
        return datetime.datetime.fromisoformat(written) if "-" in written else _clock(written)
    except ValueError:
        return _clock(written)


def _clock(written: str) -> datetime.timedelta:
    match = re.fullmatch(r"(\d+):(\d+)(?::(\d+))?\s*([ap]m)?", written.casefold())
    assert match is not None, written
    hours = int(match[1])
    if match[4]:
        hours = hours % 12 + (12 if match[4] == "pm" else 0)
    return datetime.timedelta(hours=hours, minutes=int(match[2]), seconds=int(match[3] or 0))


Size = tuple[str, Fraction, Fraction | None]


def size(cell: Cell) -> Size | None:
    """A nominal size as (unit, across, thickness); millimetre sizes of the tables as inches."""
    written = key(cell).replace("inches", "in").replace("inch", "in").replace('"', "in")
    match = re.fullmatch(
        r"([\d./ -]+?)\s*(mm|in\.?)?\s*(?:[x×]\s*([\d.]+)\s*(mm|in\.?)?)?", written
    )
    if match is None:
        return None
    try:
        across = sum(map(Fraction, re.split(r"[- ]+", match[1].strip())), Fraction(0))
    except (ValueError, ZeroDivisionError):
        return None
    unit = match[2] or match[4] or ("in" if across <= 5 else "mm")
    thick = Fraction(match[3]) if match[3] else None
    if unit == "mm" and thick is None and str(across) in PAIRS:
        return "in", Fraction(PAIRS[str(across)]), None
    return unit.rstrip("."), across, thick


def fits(cell: Cell) -> frozenset[Size]:
    """The sizes a binder takes: the two ends of a pair, or a list."""
    found = set()
    for part in re.split("[,;]", text(cell)):
        ends = re.split(r"\s*[-–]\s*", part.strip())
        if len(ends) == 2 and ends[1].casefold().endswith("mm"):
            ends[0] = ends[0].casefold().removesuffix("mm") + "mm"
        found |= {size(end) for end in ends}
    return frozenset(s for s in found if s is not None)


def round_up(value: Fraction) -> int:
    """Needs are printed rounded up."""
    return math.ceil(value)


def round_down(value: Fraction) -> int:
    """Strengths are printed rounded down."""
    return math.floor(value)
