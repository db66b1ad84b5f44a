"""The day: everything in one workbook."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from functools import cached_property

from loadplan.day.article import Article
from loadplan.day.gear import FixedPiece, Gear, Price
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units


class RuleSet(StrEnum):
    """The rule set a day is planned under."""

    US = "US"
    CANADA = "Canada"


@dataclass(frozen=True, kw_only=True)
class Day:
    """One whole input, resolved: every reference is the id as typed where it is defined.

    ``turnaround`` is whole seconds. ``trailers`` holds every trailer on its sheet, or those
    named on ``Loads`` where there is no such sheet. ``height_limit`` and ``width_limit`` are
    advice limits in the day's length unit. ``warnings`` are finished sentences, each with its
    sheet and cell, that do not stop the plan.
    """

    loads: tuple[Load, ...]
    articles: tuple[Article, ...]
    gear: tuple[Gear, ...]
    trailers: tuple[Trailer, ...] = ()
    fixed: tuple[FixedPiece, ...] = ()
    prices: tuple[Price, ...] = ()
    house: HouseRules = field(default_factory=HouseRules)
    units: Units = Units.US
    rules: RuleSet = RuleSet.US
    yard: str = ""
    date: datetime.date | None = None
    turnaround: int = 0
    time_limit: Fraction = Fraction(60)
    height_limit: Fraction | None = None
    width_limit: Fraction | None = None
    warnings: tuple[str, ...] = ()
    name: str = "day"

    @cached_property
    def load_by_id(self) -> dict[str, Load]:
        """Each load by its id as typed."""
        return {load.id: load for load in self.loads}

    @cached_property
    def article_by_id(self) -> dict[str, Article]:
        """Each article by its id as typed."""
        return {article.id: article for article in self.articles}

    @cached_property
    def gear_by_id(self) -> dict[str, Gear]:
        """Each kind of piece by its id as typed."""
        return {gear.id: gear for gear in self.gear}

    @cached_property
    def trailer_by_id(self) -> dict[str, Trailer]:
        """Each trailer by its id as typed."""
        return {trailer.id: trailer for trailer in self.trailers}

    @cached_property
    def currency(self) -> str:
        """The currency of the prices as typed, "" where none is."""
        return next((price.currency for price in self.prices if price.currency), "")

    @cached_property
    def articles_by_load(self) -> dict[str, tuple[Article, ...]]:
        """The articles of each load, in workbook order; loads without cargo have none."""
        found: dict[str, list[Article]] = {load.id: [] for load in self.loads}
        for article in self.articles:
            found[article.load].append(article)
        return {load: tuple(articles) for load, articles in found.items()}

    @cached_property
    def articles_by_group(self) -> dict[str, tuple[Article, ...]]:
        """The articles of each group, in workbook order; those secured alone are in none."""
        found: dict[str, list[Article]] = {}
        for article in self.articles:
            if article.group:
                found.setdefault(article.group, []).append(article)
        return {group: tuple(articles) for group, articles in found.items()}

    def trailer_of(self, load: Load) -> Trailer | None:
        """The trailer of ``load``; None where the load names none."""
        return None if load.trailer is None else self.trailer_by_id[load.trailer]

    def free_again(self, load: Load, gear: Gear) -> int:
        """The second at which ``gear`` sent out on ``load`` can be used again.

        Cage gear needs the turnaround after the load is back; a trailer's kit does not.
        """
        return load.back + (self.turnaround if gear.kept_on is None else 0)

    def clock(self, moment: int) -> str:
        """``moment`` (seconds from the day's midnight) as ``06:30``, with the date if another."""
        days, seconds = divmod(moment, 24 * 3600)
        if days == 1 and seconds == 0:
            return "24:00"
        text = f"{seconds // 3600:02d}:{seconds % 3600 // 60:02d}"
        if seconds % 60:
            text += f":{seconds % 60:02d}"
        if days == 0:
            return text
        if self.date is None:
            return f"{text} ({days:+d} d)"
        return f"{(self.date + datetime.timedelta(days=days)).isoformat()} {text}"
