"""A stage of the objective and how far it is proved."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One stage: the plan's value, the bound no plan can pass, and the time it took.

    ``name`` is words ("loads ready at priority 1", "tie-downs", "mixed sets", "strength issued").
    ``greatest`` says whether more is better (only the ready-load stages). ``proved`` is true only
    when value and bound agree given that every stage before is proved.
    """

    name: str
    value: Fraction
    bound: Fraction
    proved: bool
    greatest: bool = False
    unit: str = ""
    seconds: float = 0.0
    remark: str = ""

    @property
    def gap(self) -> Fraction:
        """Distance from value to bound, never negative, in the stage's own unit."""
        return max(
            Fraction(0), self.bound - self.value if self.greatest else self.value - self.bound
        )
