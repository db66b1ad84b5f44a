"""Requirements: what rules ask of an article's tie-downs and of a load.

The planner and the judgement both read these and know nothing of regulations. Every requirement
is one linear statement over the tie-downs of one article (or of one load): a count at some
positions, a credited strength, or a property that each tie-down must have.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article, Routing
from loadplan.day.load import Load
from loadplan.rules.tie_down_requirement import (
    AccessoryRequirement,
    CountRequirement,
    EachWLLRequirement,
    MemberRequirement,
    Property,
    ProtectorRequirement,
    ReachRequirement,
    Requirement,
    ShackleRequirement,
    Step,
    StrengthRequirement,
)
from loadplan.source import Source

__all__ = [
    "AccessoryRequirement",
    "AnchorRequirement",
    "CannotPlan",
    "CountRequirement",
    "Demand",
    "EachWLLRequirement",
    "LoadDemand",
    "Look",
    "MemberRequirement",
    "PositionSet",
    "Property",
    "ProtectorRequirement",
    "ReachRequirement",
    "Requirement",
    "ShackleRequirement",
    "Step",
    "StrengthRequirement",
    "WinchRequirement",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotPlan(Requirement):
    """A fact of the article or its trailer that no gear can mend; the load is held.

    ``why`` is a sentence for people.
    """

    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Look(Requirement):
    """A matter of looking, not of counting: a check-list line on the load sheet."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionSet:
    """Main positions of one article whose tie-downs run in one way.

    ``positions`` stand in the order they are filled within one round, each taking up to
    ``most_at_each`` tie-downs. ``tie_point_wll`` caps direct ones; None: unrated or not in play.
    ``serves`` is the id of the one member of a group that they hold, "" where they hold all.
    """

    positions: tuple[str, ...]
    routing: Routing
    most_at_each: int = 1
    tie_point_wll: Fraction | None = None
    serves: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """All that is asked of one article, or of one group of articles secured together.

    ``positions`` are the main positions in the order they are filled within one round;
    ``most_per_position`` how many tie-downs each takes. ``tie_point_wll`` None: unrated or not
    in play (it caps direct main tie-downs only). Where the tie-downs of one article run in
    several ways, ``sets`` says so, ``positions`` are those of all sets together, and ``routing``
    and ``most_per_position`` are those of the first set.

    A demand may ask for no tie-down at all: ``strengths`` empty and no count above 0.

    ``members`` are the articles of a group, () for a single article; ``article`` then stands for
    the whole group: its id is the group's, its weight that of all members. ``section`` is the
    section that governs.
    """

    article: Article
    routing: Routing
    positions: tuple[str, ...]
    most_per_position: int
    counts: tuple[CountRequirement, ...]
    strengths: tuple[StrengthRequirement, ...]
    properties: tuple[Property, ...] = ()
    accessories: tuple[AccessoryRequirement, ...] = ()
    obstacles: tuple[CannotPlan, ...] = ()
    looks: tuple[Look, ...] = ()
    tie_point_wll: Fraction | None = None
    sets: tuple[PositionSet, ...] = ()
    members: tuple[Article, ...] = ()
    section: Source | None = None

    @property
    def position_sets(self) -> tuple[PositionSet, ...]:
        """The main positions with how tie-downs run there; one set unless ``sets`` says more."""
        if self.sets:
            return self.sets
        return (
            PositionSet(
                positions=self.positions,
                routing=self.routing,
                most_at_each=self.most_per_position,
                tie_point_wll=self.tie_point_wll,
            ),
        )

    @property
    def served(self) -> tuple[Article, ...]:
        """The articles in the workbook that this demand is for: the members, or the article."""
        return self.members or (self.article,)

    def served_at(self, position: str) -> tuple[Article, ...]:
        """The articles that a tie-down at ``position`` holds."""
        at = self.set_of(position)
        only = "" if at is None else at.serves
        return tuple(one for one in self.served if only in ("", one.id))

    def set_of(self, position: str) -> PositionSet | None:
        """The set that ``position`` belongs to; None where it is no main position."""
        return next((one for one in self.position_sets if position in one.positions), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class AnchorRequirement(Requirement):
    """All tie-downs of the load together use no more than ``at_most`` anchor points.

    ``per_tie_down`` says how many anchor points a tie-down of each routing takes: one that runs
    round the article only takes none.
    """

    at_most: int
    per_tie_down: dict[Routing, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class WinchRequirement(Requirement):
    """The load uses no more than ``at_most`` of its trailer's winches, one per winch strap."""

    at_most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadDemand:
    """All that is asked of one load: its articles' demands and what they share.

    ``anchor_wll`` None: unrated, does not cap.
    """

    load: Load
    articles: tuple[Demand, ...]
    winches: WinchRequirement
    anchors: AnchorRequirement | None = None
    anchor_wll: Fraction | None = None
    looks: tuple[Look, ...] = ()
