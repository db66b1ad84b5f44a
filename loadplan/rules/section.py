"""What a section is asked about, and what it asks."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.details import Details
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import (
    CountRequirement,
    EachWLLRequirement,
    Look,
    MemberRequirement,
    PositionSet,
    StrengthRequirement,
)
from loadplan.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """One article, or one group of ``members`` with ``article`` standing for all of it."""

    article: Article
    profile: Profile
    details: Details
    members: tuple[Article, ...] = ()

    @property
    def house(self) -> HouseRules:
        """The day's house rules."""
        return self.profile.house

    @property
    def units(self) -> Units:
        """The day's units."""
        return self.profile.units

    @property
    def weight(self) -> Fraction:
        """The weight with everything on it, of all members together."""
        return self.article.carried_weight

    @property
    def most_at_each(self) -> int:
        """How many tie-downs one named position takes."""
        return self.house.most_per_position


@dataclass(frozen=True, slots=True, kw_only=True)
class Asks:
    """All that one section asks of a subject.

    ``tie_points``: whether direct tie-downs hold points of the article itself. ``counted``:
    whether the count by length (393.110) is among the counts.
    """

    section: Source
    sets: tuple[PositionSet, ...] = ()
    counts: tuple[CountRequirement, ...] = ()
    strengths: tuple[StrengthRequirement, ...] = ()
    properties: tuple[EachWLLRequirement | MemberRequirement, ...] = ()
    looks: tuple[Look, ...] = ()
    tie_points: bool = False
    counted: bool = False
