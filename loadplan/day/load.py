"""A load: one trip of one trailer."""

from __future__ import annotations

from dataclasses import dataclass, field

from loadplan.day.row import Row

DAY_END = 24 * 3600


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """One row of ``Loads``.

    ``out`` and ``back`` are whole seconds from 00:00 of the day's date (they may lie on other
    dates); the trailer is away in [``out``, ``back``).
    """

    id: str
    trailer: str | None = None
    out: int = 0
    back: int = DAY_END
    priority: int = 1
    driver: str = ""
    destination: str = ""
    notes: str = ""
    row: Row | None = field(default=None, compare=False, repr=False)
