"""One published figure, and the comparison with ours.

Tiers: A government agency, official handbook or university extension; B practice question built
on a government handbook; C an official quoted second-hand; P common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """A printed value with what it is before rounding and how far the print may be from it."""

    document: str
    section: str
    tier: str
    what: str
    printed: Fraction | int
    unrounded: Fraction | int
    unit: str
    tolerance: Fraction = Fraction(0)

    def __str__(self) -> str:
        return f"{self.what} ({self.document} {self.section})"

    def check(self, ours: Fraction | int) -> None:
        """Ours is exactly the unrounded value, and within the tolerance of the print."""
        assert self.tier in ("A", "B", "C", "P")
        assert ours == self.unrounded
        assert abs(ours - self.printed) <= self.tolerance
