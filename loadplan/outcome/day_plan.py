"""The plan of a day: the whole outcome in one value."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from loadplan.day.day import Day
from loadplan.outcome.check import Judgement
from loadplan.outcome.held import Held
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.stage import Stage
from loadplan.outcome.tie_down import TieDown

if TYPE_CHECKING:
    import pandas


@dataclass(frozen=True, kw_only=True)
class DayPlan:
    """Which loads go, with which tie-downs, and how far the order of the stages is proved.

    ``ready`` are load ids in workbook order; every other load of the day is held. ``tie_downs``
    are those of ready loads, in workbook order of load and article, then position order.
    ``shortages`` and ``explained`` say what the held loads lack, why, and the ways out.
    ``remarks`` are sentences about the solve for people ("the time limit was reached ...").
    """

    day: Day
    ready: tuple[str, ...]
    tie_downs: tuple[TieDown, ...]
    stages: tuple[Stage, ...]
    shortages: tuple[Shortage, ...] = ()
    explained: tuple[Held, ...] = ()
    judgement: Judgement = field(default_factory=lambda: Judgement(checks=(), disagreements=()))
    remarks: tuple[str, ...] = ()

    @property
    def proved(self) -> bool:
        """Whether every stage is proved."""
        return all(stage.proved for stage in self.stages)

    @cached_property
    def held(self) -> tuple[str, ...]:
        """Ids of the loads that do not go, in workbook order."""
        going = set(self.ready)
        return tuple(load.id for load in self.day.loads if load.id not in going)

    @cached_property
    def tie_downs_by_article(self) -> dict[str, tuple[TieDown, ...]]:
        """The tie-downs of each article of the ready loads, by article id."""
        found: dict[str, list[TieDown]] = {}
        for tie_down in self.tie_downs:
            found.setdefault(tie_down.article, []).append(tie_down)
        return {article: tuple(tie_downs) for article, tie_downs in found.items()}

    def tables(self) -> Mapping[str, pandas.DataFrame]:
        """The flat sheets of the results workbook, by sheet name, as DataFrames."""
        from loadplan.tables.frames import frames

        return frames(self)
