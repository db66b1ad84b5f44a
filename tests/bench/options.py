"""What a generated day may vary in."""

from __future__ import annotations

from dataclasses import dataclass, field

LB_TO_KG = 0.45359237
FT_TO_M = 0.3048


@dataclass(frozen=True, kw_only=True)
class Options:
    """Switches of the generator; every one off is the plain day.

    ``reach``, ``shackles``, ``chain_only`` and ``blocked`` turn the column on for some articles;
    ``fractional`` writes some cells with their own unit or a decimal; ``fixed`` is how many
    pieces are already on; ``house`` holds further house rules by name.
    """

    loads: int
    seed: int
    tight: bool = False
    reach: bool = False
    shackles: bool = False
    chain_only: bool = False
    blocked: bool = False
    metric: bool = False
    fractional: bool = False
    fixed: int = 0
    least_wll: int | None = None
    house: dict[str, object] = field(default_factory=dict)

    @property
    def mass(self) -> str:
        """The unit of weights and strengths in headings."""
        return "kg" if self.metric else "lb"

    @property
    def length(self) -> str:
        """The unit of lengths in headings."""
        return "m" if self.metric else "ft"

    def weight(self, pounds: float | None) -> int | None:
        """A weight or strength given in pounds as a whole number of the day's unit."""
        if pounds is None:
            return None
        return round(pounds * LB_TO_KG / 10) * 10 if self.metric else round(pounds)

    def distance(self, feet: float | None) -> float | None:
        """A length given in feet in the day's unit, to 5 cm or a tenth of a foot."""
        if feet is None:
            return None
        return round(round(feet * FT_TO_M / 0.05) * 0.05, 2) if self.metric else round(feet, 1)
