"""Requirements on the tie-downs of one article: counts, strengths, and what each must have.

Every requirement is one linear statement over the tie-downs of one article: a count at some
positions, a credited strength, or a property that each tie-down must have.

``positions`` None always means every main tie-down, that is, all but the accessories'.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Routing
from loadplan.day.gear import Kind
from loadplan.day.size import Size
from loadplan.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One line of working: the formula in words, with numbers, its result and where it is from."""

    words: str
    numbers: str
    result: str
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Requirement:
    """What all requirements share: a name for people, the working, and the source."""

    name: str
    source: Source
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CountRequirement(Requirement):
    """At least ``at_least`` main tie-downs stand at ``positions``.

    A tie-down at one of the positions ``twice`` counts for two.
    """

    at_least: int
    positions: tuple[str, ...] | None = None
    twice: tuple[str, ...] = ()

    def worth(self, position: str) -> int:
        """How many a tie-down at ``position`` counts for: 0, 1 or 2."""
        if self.positions is not None and position not in self.positions:
            return 0
        return 2 if position in self.twice else 1


@dataclass(frozen=True, slots=True, kw_only=True)
class StrengthRequirement(Requirement):
    """The credited WLL of the tie-downs adds up to at least ``need`` (day's mass unit).

    ``credit`` is each main tie-down's share of its WLL, ``accessory_credit`` that of an accessory
    tie-down (0 where it does not count). Where the tie-downs of one article run in several ways,
    ``credits`` gives the share of each routing that differs from ``credit``.
    """

    need: Fraction
    credit: Fraction
    accessory_credit: Fraction = Fraction(0)
    positions: tuple[str, ...] | None = None
    credits: tuple[tuple[Routing, Fraction], ...] = ()

    def credit_of(self, routing: Routing) -> Fraction:
        """The share of its WLL with which a main tie-down so routed counts."""
        return dict(self.credits).get(routing, self.credit)


@dataclass(frozen=True, slots=True, kw_only=True)
class EachWLLRequirement(Requirement):
    """Each main tie-down at ``positions`` has a WLL (the lowest of its parts) of ``at_least``.

    ``share`` is the share of the weight that this is, None where it does not go by the weight.
    """

    at_least: Fraction
    positions: tuple[str, ...] | None = None
    share: Fraction | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberRequirement(Requirement):
    """The tension member of each main tie-down at ``positions`` is of one of ``kinds``.

    Where there is a ``least_size`` its nominal size is known and no smaller
    (:attr:`loadplan.day.size.Size.inches`).
    """

    kinds: frozenset[Kind]
    positions: tuple[str, ...] | None = None
    least_size: Size | None = None

    def allows(self, kind: Kind, size: Size | None) -> bool:
        """Whether a tension member of ``kind`` and ``size`` may be used."""
        if kind not in self.kinds:
            return False
        return self.least_size is None or (
            size is not None and size.inches >= self.least_size.inches
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReachRequirement(Requirement):
    """The tension member of each main tie-down is known to be at least ``at_least`` long."""

    at_least: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class ShackleRequirement(Requirement):
    """Each main tie-down has exactly ``number`` shackles, all of one kind of gear."""

    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ProtectorRequirement(Requirement):
    """Each main tie-down of webbing has at least ``number`` edge protectors, of any kinds."""

    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AccessoryRequirement(Requirement):
    """The accessory has exactly ``number`` tie-downs, direct, at the position of its name.

    They are of any WLL, or each of ``at_least`` where that is given.
    """

    accessory: str
    number: int = 1
    at_least: Fraction | None = None


Property = (
    EachWLLRequirement
    | MemberRequirement
    | ReachRequirement
    | ShackleRequirement
    | ProtectorRequirement
)
