"""A case: one article or one load with all that its judgement needs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from loadplan.day.article import Article, Routing
from loadplan.day.day import Day
from loadplan.day.gear import Gear, Kind
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.requirement import Demand, LoadDemand
from loadplan.wll.piece import Rating


@dataclass(frozen=True, kw_only=True)
class ArticleCase:
    """One article, or group secured together, with its demand and its tie-downs in the plan.

    ``ratings`` are those of every kind of gear of the day, by id.
    """

    day: Day
    load: Load
    trailer: Trailer | None
    demand: Demand
    ratings: Mapping[str, Rating]
    tie_downs: tuple[TieDown, ...]

    @property
    def article(self) -> Article:
        """The article itself; for a group, what stands for the whole of it."""
        return self.demand.article

    @cached_property
    def main(self) -> tuple[TieDown, ...]:
        """Its main tie-downs, as far as they stand at one of its main positions."""
        places = frozenset(self.demand.positions)
        return tuple(
            tie_down
            for tie_down in self.tie_downs
            if not tie_down.accessory and tie_down.position in places
        )

    def member(self, tie_down: TieDown) -> Gear | None:
        """The tension member of ``tie_down``; None if the day has no such gear."""
        return self.day.gear_by_id.get(tie_down.member)

    def wll(self, tie_down: TieDown) -> Fraction | None:
        """The lowest WLL of the parts of ``tie_down`` (49 CFR 393.108(a)), in the day's unit.

        None where a load-bearing piece is not known or has no rating. An unrated anchor or tie
        point does not cap; whether the article may go at all then is a demand of its own. A
        tie-down round the article only hooks to neither.
        """
        pieces = [tie_down.member]
        if tie_down.tensioner is not None:
            pieces.append(tie_down.tensioner)
        if tie_down.shackle is not None:
            pieces.append(tie_down.shackle)
        parts: list[Fraction] = []
        for piece in pieces:
            rating = self.ratings.get(piece)
            if rating is None or rating.wll is None:
                return None
            parts.append(rating.wll)
        points = (self.anchor_wll, self.tie_point_wll(tie_down))
        if tie_down.routing is not Routing.ROUND:
            parts += [wll for wll in points if wll is not None]
        return min(parts)

    @property
    def anchor_wll(self) -> Fraction | None:
        """The rating of the trailer's anchor points; None if unrated."""
        return None if self.trailer is None else self.trailer.anchor_wll

    def tie_point_wll(self, tie_down: TieDown) -> Fraction | None:
        """The rating of the point on the article that ``tie_down`` hooks to.

        None if it is unrated or hooks to none: only direct main tie-downs do, and the position of
        an accessory is in no set.
        """
        stands_in = self.demand.set_of(tie_down.position)
        if stands_in is None or tie_down.routing is not Routing.DIRECT:
            return None
        return stands_in.tie_point_wll


@dataclass(frozen=True, kw_only=True)
class LoadCase:
    """One load, its demand, and whether the plan says it is ready."""

    day: Day
    demand: LoadDemand
    ready: bool
    articles: tuple[ArticleCase, ...]

    @property
    def load(self) -> Load:
        """The load itself."""
        return self.demand.load

    @property
    def trailer(self) -> Trailer | None:
        """Its trailer, if it names one."""
        return self.day.trailer_of(self.load)

    @property
    def tie_downs(self) -> tuple[TieDown, ...]:
        """The tie-downs of all its articles."""
        return tuple(tie_down for case in self.articles for tie_down in case.tie_downs)

    @property
    def winch_straps(self) -> int:
        """How many of its tie-downs are tightened by a winch of the trailer."""
        members = (self.day.gear_by_id.get(tie_down.member) for tie_down in self.tie_downs)
        return sum(1 for gear in members if gear is not None and gear.kind is Kind.WINCH_STRAP)


def load_case(
    day: Day,
    demand: LoadDemand,
    *,
    ready: bool,
    ratings: Mapping[str, Rating],
    tie_downs: Mapping[str, tuple[TieDown, ...]],
) -> LoadCase:
    """The case of one load; ``tie_downs`` are those of the plan by article id.

    A held load is judged with none.
    """
    trailer = day.trailer_of(demand.load)
    articles = tuple(
        ArticleCase(
            day=day,
            load=demand.load,
            trailer=trailer,
            demand=asked,
            ratings=ratings,
            tie_downs=tie_downs.get(asked.article.id, ()) if ready else (),
        )
        for asked in demand.articles
    )
    return LoadCase(day=day, demand=demand, ready=ready, articles=articles)
