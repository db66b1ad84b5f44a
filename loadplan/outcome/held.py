"""A held load explained: why it stays, and the ways out."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Way(StrEnum):
    """The kinds of way out, in the order in which they are looked for: no money first."""

    REPAIR = "repair"
    DELAY = "delay"
    PURCHASE = "purchase"
    POLICY = "policy"
    SWAP = "swap"


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Loads and kinds of gear that cannot all be served together.

    ``usable`` is what there is of ``gear``, ``lacking`` the fewest pieces beyond that, by kind,
    with which they could be; ``first`` and ``last`` the seconds between which the loads are out.
    ``irreducible``: proved that without any one load, or with any one kind in plenty, the rest can
    be served. ``least``: proved that fewer pieces than ``need`` do not do.
    """

    loads: tuple[str, ...]
    gear: tuple[str, ...]
    first: int
    last: int
    usable: int
    lacking: tuple[tuple[str, int], ...]
    irreducible: bool
    least: bool

    @property
    def need(self) -> int:
        """The least number of pieces of ``gear`` with which the loads could be served together."""
        return self.usable + sum(pieces for _, pieces in self.lacking)


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """One way out, planned and judged: what to do, its price in words, what else it changes."""

    way: Way
    text: str
    price: str
    elsewhere: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """One held load: the reason in one sentence, its conflicts, and up to three ways out.

    ``remarks`` are sentences on what was not proved or not looked into. ``open``: the time came
    before everything was looked into, so a way out may be missing.
    """

    load: str
    why: str
    conflicts: tuple[Conflict, ...] = ()
    ways: tuple[WayOut, ...] = ()
    remarks: tuple[str, ...] = ()
    open: bool = False
