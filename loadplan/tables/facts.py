"""What every results page needs of one plan, worked out once: demands, ratings, sums."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from loadplan.day.article import Article, Routing
from loadplan.day.gear import Gear
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.demand import load_demand
from loadplan.rules.effects import Effect, effects
from loadplan.rules.requirement import Demand, LoadDemand, StrengthRequirement
from loadplan.wll.assembly import own_tensioner
from loadplan.wll.piece import Rating, rate_in
from loadplan.wll.tie_down import TieDownRating, rate_tie_down


@dataclass(frozen=True, slots=True, kw_only=True)
class RatedTieDown:
    """A tie-down with its pieces looked up and its WLL worked out.

    ``number`` counts through the whole load from 1. ``credit`` is the share of the WLL that
    counts in the aggregate of the article.
    """

    number: int
    tie_down: TieDown
    member: Gear
    tensioner: Gear | None
    rating: TieDownRating
    credit: Fraction

    @property
    def anchor_in_play(self) -> bool:
        """Whether it hooks to the trailer: one round the article only does not."""
        return self.tie_down.routing is not Routing.ROUND

    @property
    def tie_point_in_play(self) -> bool:
        """Whether it hooks to a rated or unrated point of the article: direct main ones do."""
        return self.tie_down.routing is Routing.DIRECT and not self.tie_down.accessory

    @property
    def credited(self) -> Fraction:
        """The WLL that counts in the aggregate, in the day's mass unit."""
        return self.credit * self.rating.wll

    @property
    def tensioner_text(self) -> str:
        """The tensioner's id, ``built in``, ``trailer winch``, or nothing."""
        return own_tensioner(self.member) if self.tensioner is None else self.tensioner.id

    @property
    def connectors_text(self) -> str:
        """Shackles and edge protectors, ``2 x SH-1; 1 x EP-1``."""
        tie_down = self.tie_down
        pieces = [*tie_down.protectors]
        if tie_down.shackle is not None and tie_down.shackles:
            pieces.insert(0, (tie_down.shackle, tie_down.shackles))
        return "; ".join(f"{count} x {gear}" for gear, count in pieces)


@dataclass(frozen=True, slots=True, kw_only=True)
class ArticleFacts:
    """One article, or group secured together, with what it demands and the tie-downs it has."""

    demand: Demand
    tie_downs: tuple[RatedTieDown, ...]

    @property
    def article(self) -> Article:
        """The article itself; for a group, what stands for the whole of it."""
        return self.demand.article

    @property
    def served(self) -> tuple[Article, ...]:
        """The articles of the workbook that it is: the one, or the members of the group."""
        return self.demand.served

    @property
    def aggregate(self) -> StrengthRequirement | None:
        """The aggregate WLL rule of this article: its first strength over all tie-downs."""
        whole = (one for one in self.demand.strengths if one.positions is None)
        return next(whole, None)

    @property
    def needed(self) -> Fraction:
        """AWLL needed, in the day's mass unit."""
        return Fraction(0) if self.aggregate is None else self.aggregate.need

    @property
    def planned(self) -> Fraction:
        """AWLL planned, in the day's mass unit."""
        return sum((one.credited for one in self.tie_downs), Fraction(0))

    @property
    def margin(self) -> Fraction | None:
        """Planned over needed, less one; None where nothing is needed."""
        return self.planned / self.needed - 1 if self.needed > 0 else None


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadFacts:
    """One load with its articles and groups, in workbook order."""

    load: Load
    trailer: Trailer | None
    ready: bool
    demand: LoadDemand
    articles: tuple[ArticleFacts, ...]

    @property
    def cargo(self) -> tuple[Article, ...]:
        """Every article on it, those of groups one by one."""
        return tuple(article for one in self.articles for article in one.served)

    @property
    def tie_downs(self) -> tuple[RatedTieDown, ...]:
        """Every tie-down of the load, in the order they are numbered."""
        return tuple(one for article in self.articles for one in article.tie_downs)

    @property
    def weight(self) -> Fraction:
        """The carried weight of all articles together."""
        return sum((one.article.carried_weight for one in self.articles), Fraction(0))

    @property
    def needed(self) -> Fraction:
        """AWLL needed, summed over the articles."""
        return sum((one.needed for one in self.articles), Fraction(0))

    @property
    def planned(self) -> Fraction:
        """AWLL planned, summed over the articles."""
        return sum((one.planned for one in self.articles), Fraction(0))

    @property
    def margin(self) -> Fraction | None:
        """The smallest margin of its articles; None for a held load and one without cargo."""
        margins = [one.margin for one in self.articles if one.margin is not None]
        return min(margins) if self.ready and margins else None


@dataclass(frozen=True)
class DayFacts:
    """Everything that the results pages of one plan have in common."""

    plan: DayPlan

    @cached_property
    def ratings(self) -> dict[str, Rating]:
        """The rating of each kind of gear, by id."""
        day = self.plan.day
        return {gear.id: rate_in(day, gear) for gear in day.gear}

    @cached_property
    def loads(self) -> tuple[LoadFacts, ...]:
        """Every load of the day, in workbook order."""
        return tuple(self._load(load) for load in self.plan.day.loads)

    @cached_property
    def effects(self) -> tuple[Effect, ...]:
        """What other readings of disputed points would change on this day."""
        return effects(self.plan.day)

    @cached_property
    def effects_by_article(self) -> dict[str, tuple[Effect, ...]]:
        """The same by the article's id; those of gear under ""."""
        found: dict[str, list[Effect]] = defaultdict(list)
        for one in self.effects:
            found[one.article].append(one)
        return {article: tuple(those) for article, those in found.items()}

    def _load(self, load: Load) -> LoadFacts:
        demand = load_demand(self.plan.day, load)
        articles: list[ArticleFacts] = []
        number = 0
        for asked in demand.articles:
            found = self.plan.tie_downs_by_article.get(asked.article.id, ())
            rated = tuple(
                self._rated(tie_down, asked, demand, number + place)
                for place, tie_down in enumerate(found, start=1)
            )
            number += len(rated)
            articles.append(ArticleFacts(demand=asked, tie_downs=rated))
        return LoadFacts(
            load=load,
            trailer=self.plan.day.trailer_of(load),
            ready=load.id in self._ready,
            demand=demand,
            articles=tuple(articles),
        )

    @cached_property
    def _ready(self) -> frozenset[str]:
        return frozenset(self.plan.ready)

    def _rated(
        self, tie_down: TieDown, demand: Demand, whole: LoadDemand, number: int
    ) -> RatedTieDown:
        gear = self.plan.day.gear_by_id
        tensioner = None if tie_down.tensioner is None else gear[tie_down.tensioner]
        rating = rate_tie_down(
            member=self._wll(tie_down.member) or Fraction(0),
            tensioner=self._wll(tie_down.tensioner),
            connector=self._wll(tie_down.shackle) if tie_down.shackles else None,
            anchor=None if tie_down.routing is Routing.ROUND else whole.anchor_wll,
            tie_point=_tie_point(tie_down, demand),
        )
        return RatedTieDown(
            number=number,
            tie_down=tie_down,
            member=gear[tie_down.member],
            tensioner=tensioner,
            rating=rating,
            credit=_credit(tie_down, demand),
        )

    def _wll(self, gear: str | None) -> Fraction | None:
        return None if gear is None else self.ratings[gear].wll


def _credit(tie_down: TieDown, demand: Demand) -> Fraction:
    """The share of its WLL that counts in the article's aggregate."""
    for asked in demand.strengths:
        if asked.positions is None:
            return credit_in(asked, tie_down)
    return Fraction(0)


def credit_in(asked: StrengthRequirement, tie_down: TieDown) -> Fraction:
    """The share of its WLL with which ``tie_down`` counts toward ``asked``."""
    if tie_down.accessory:
        return asked.accessory_credit
    if asked.positions is not None and tie_down.position not in asked.positions:
        return Fraction(0)
    return asked.credit_of(tie_down.routing)


def _tie_point(tie_down: TieDown, demand: Demand) -> Fraction | None:
    """The rating of the point on the article it hooks to; None if unrated or if to none."""
    if tie_down.accessory or tie_down.routing is not Routing.DIRECT:
        return None
    stands_in = demand.set_of(tie_down.position)
    return None if stands_in is None else stands_in.tie_point_wll
