"""The two unit systems a day can be in."""

from __future__ import annotations

from enum import StrEnum


class Units(StrEnum):
    """Every quantity of a :class:`~loadplan.day.day.Day` is in the units of its system."""

    US = "US"
    METRIC = "metric"

    @property
    def mass(self) -> str:
        """The unit of weights and strengths."""
        return "lb" if self is Units.US else "kg"

    @property
    def length(self) -> str:
        """The unit of lengths."""
        return "ft" if self is Units.US else "m"
