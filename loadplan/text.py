"""Numbers as people read them: exact values rounded the careful way, with thousands commas.

Needs are rounded up and strengths down, to the whole unit, so that no printed pair of numbers
looks better than the exact comparison behind it.
"""

from __future__ import annotations

from fractions import Fraction

from loadplan.day.units import Units


def up(value: Fraction | int) -> str:
    """``value`` rounded up to a whole number: ``Fraction(42500, 6)`` is ``7,084``."""
    return f"{-(-value.numerator // value.denominator):,}"


def down(value: Fraction | int) -> str:
    """``value`` rounded down to a whole number: ``Fraction(5000, 3)`` is ``1,666``."""
    return f"{value.numerator // value.denominator:,}"


def plain(value: Fraction | int, places: int = 2) -> str:
    """``value`` to the nearest ``places`` decimals, without trailing noughts: ``12.5``, ``1,200``.

    A half goes to the even neighbour.
    """
    if value.denominator == 1:
        return f"{value.numerator:,}"
    scale = 10**places
    whole, part = divmod(round(abs(value) * scale), scale)
    digits = f"{part:0{places}d}".rstrip("0") if places else ""
    sign = "-" if value < 0 and (whole or part) else ""
    return f"{sign}{whole:,}" + (f".{digits}" if digits else "")


def mass_up(value: Fraction | int, units: Units) -> str:
    """A needed strength: rounded up, with the day's unit."""
    return f"{up(value)} {units.mass}"


def mass_down(value: Fraction | int, units: Units) -> str:
    """A strength there is: rounded down, with the day's unit."""
    return f"{down(value)} {units.mass}"


def mass(value: Fraction | int, units: Units) -> str:
    """A weight as it is, to two decimals, with the day's unit."""
    return f"{plain(value)} {units.mass}"


def length(value: Fraction | int, units: Units) -> str:
    """A length as it is, to three decimals, with the day's unit."""
    return f"{plain(value, 3)} {units.length}"


def count(number: int, noun: str, plural: str = "") -> str:
    """``1 tie-down``, ``2 tie-downs``."""
    return f"{number:,} {noun if number == 1 else plural or noun + 's'}"


def names(words: tuple[str, ...] | list[str], last: str = "and") -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"
