"""Explaining a plan: why each held load stays, what it is short of, and the ways out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.held import Conflict, Held
from loadplan.outcome.shortage import Shortage
from loadplan.plan.clock import Clock
from loadplan.plan.sets import LoadSets, Sets, sets_of
from loadplan.problems import PLAN_AGAIN, SolverFailed
from loadplan.shortfall.as_planned import lacking_beside
from loadplan.shortfall.conflicts import conflicts_of
from loadplan.shortfall.impossible import impossible, trailer_short
from loadplan.shortfall.planned import Planner
from loadplan.shortfall.servable import Servable
from loadplan.shortfall.ways import Ways
from loadplan.shortfall.words import conflict_words, not_sure, piece_words

_SHARE = 0.3  # of the time left, for what a load is short of
_BESIDE_SHARE = 0.4  # of the time, for what held loads lack beside the plan
_OPEN = "Not every question about it was settled in the time; a way out may be missing."
_NONE = "No way out was found: no piece on hold, delay, price, house rule or swap does it alone."
_LATER = (
    "It could go together with every load that is ready; the time limit came before a plan with "
    "it was found. Plan again with a longer time limit."
)
_NOT_TOLD = "gear that other loads have (which of it was not settled in the time)"
_BESIDE = (
    "It lacks these pieces beside what this plan gives the ready loads. Whether another plan would "
    "do without them was not settled in the time."
)
_UNSETTLED = "The time came before its reason was found. Plan again with a longer time limit."

_WRONG = (
    "The solver cannot be trusted: it had proved that a load must stay, and then found that it can "
    f"go with the others. {PLAN_AGAIN}"
)


def explain(plan: DayPlan, seconds: float) -> DayPlan:
    """``plan`` with what every held load is short of, why, and the ways out.

    Held loads share ``seconds``: each may take an equal part of what is left.
    """
    if not plan.held:
        return plan
    clock = Clock(seconds)
    sets = sets_of(plan.day)
    # First, as the reasons of many held loads take all the time there is.
    with clock.at_most(_BESIDE_SHARE):
        beside = lacking_beside(plan, sets, clock)
    questions = _Questions(plan, sets, clock, beside)
    held: list[Held] = []
    shortages: list[Shortage] = []
    for number, load in enumerate(plan.held):
        with clock.at_most(1 / (len(plan.held) - number)):
            one = _Explaining(plan, sets, questions, load)
            explained, missing = one.run(Clock(clock.left()))
        held.append(explained)
        shortages += missing
    return replace(plan, shortages=tuple(shortages), explained=tuple(held))


@dataclass(frozen=True)
class _Questions:
    """What can be asked of the day: of the held loads alone, and of every load.

    The second is built when first asked for: on a large day it takes seconds, and a load that
    cannot even go alone has no need of it. ``beside`` are the pieces that held loads lack beside
    the plan, where known.
    """

    plan: DayPlan
    sets: Sets
    clock: Clock
    beside: dict[str, dict[str, int]]

    @cached_property
    def alone(self) -> Servable:
        return Servable.of(self.plan.day, self.sets, self.clock, self.plan.held)

    @cached_property
    def of_all(self) -> Servable:
        loads = [load.id for load in self.plan.day.loads]
        return Servable.of(self.plan.day, self.sets, self.clock, loads)


@dataclass(frozen=True)
class _Explaining:
    """Explains one held load of ``plan``."""

    plan: DayPlan
    sets: Sets
    questions: _Questions
    load: str

    @property
    def ask(self) -> Servable:
        return self.questions.of_all

    def run(self, clock: Clock) -> tuple[Held, list[Shortage]]:
        one = next(one for one in self.sets.loads if one.load.id == self.load)
        never = self._never(one)
        found: list[Conflict] = []
        can: bool | None = None
        if not never:
            found, can = conflicts_of(self.day, self.ask, self.plan.ready, self.load)
        if can and not found and self.plan.proved:
            raise SolverFailed(_WRONG)
        later = bool(can) and not found
        why = self._why(never, found, later)
        # A load that could go with the others in another plan lacks nothing but time.
        told = never or found or later
        beside = {} if told else self.questions.beside.get(self.load, {})
        # Before the ways out, which take all the time there is.
        with self.questions.clock.at_most(_SHARE):
            shortages = never or [*self._lacking(found, beside, why)]
        planner = Planner(clock, [] if never else [self.ask])
        ways = Ways(self.day, self.load, self.plan.ready, self.plan.held, found, planner)
        ways_out = () if later else ways.find()
        open_ = planner.open or not (never or can)
        remarks = [_BESIDE] if beside else []
        remarks += [words for words in map(not_sure, found) if words]
        remarks += [_OPEN] if open_ else []
        remarks += [_NONE] if not (ways_out or open_ or later) else []
        explained = Held(
            load=self.load,
            why=why,
            conflicts=tuple(found),
            ways=ways_out,
            remarks=tuple(dict.fromkeys(remarks)),
            open=open_ or later,
        )
        best = f"{ways_out[0].text} ({ways_out[0].price})" if ways_out else ""
        return explained, [replace(one, way_out=best) for one in shortages]

    @property
    def day(self) -> Day:
        return self.plan.day

    def _never(self, one: LoadSets) -> list[Shortage]:
        """What no gear in the cage could do for this load, empty where it could go alone."""
        found = [*impossible(self.sets, one)]
        ask = self.questions.alone
        if found or ask.can([self.load], ask.kinds) is not False:
            return found
        return [trailer_short(one)]

    def _why(self, never: Sequence[Shortage], found: Sequence[Conflict], later: bool) -> str:
        if never:
            return "No gear in the cage could ever do it. " + " ".join(
                f"{one.article}: {one.why}" if one.article else one.why for one in never
            )
        if later:
            return _LATER
        if not found:
            return _UNSETTLED
        return "Its gear is out elsewhere. " * _elsewhere(found) + " ".join(
            conflict_words(self.day, one) for one in found
        )

    def _lacking(
        self, found: Sequence[Conflict], beside: Mapping[str, int], why: str
    ) -> Iterator[Shortage]:
        """The fewest pieces with which this load could go beside those that are ready."""
        if beside:
            for kind, pieces in beside.items():
                yield self._pieces(kind, pieces, _BESIDE)
            return
        if not found:
            settled = all(stage.proved for stage in self.plan.stages if stage.greatest)
            short_of = _NOT_TOLD if settled else "time to plan it"
            yield Shortage(load=self.load, short_of=short_of, why=why)
            return
        answer = self.ask.extra([*self.plan.ready, self.load], (), self.ask.kinds)
        if answer.least and answer.extra:
            extra = answer.extra
        else:
            # What was found in the time may be any number; each conflict tells of itself.
            extra = dict(pair for one in found if one.least for pair in one.lacking)
        for kind in self.ask.kinds:
            if kind not in extra:
                continue
            mine = [one for one in found if kind in one.gear] or found
            words = " ".join(conflict_words(self.day, one) for one in mine)
            yield self._pieces(kind, extra[kind], words)
        if not extra:
            yield Shortage(load=self.load, short_of="gear", why=why)

    def _pieces(self, kind: str, pieces: int, why: str) -> Shortage:
        return Shortage(
            load=self.load,
            article=self._article(kind),
            short_of=piece_words(self.day, self.day.gear_by_id[kind]),
            pieces=pieces,
            why=why,
        )

    def _article(self, kind: str) -> str | None:
        """The only article of the load that could use a piece of ``kind``; None where several."""
        one = next(one for one in self.sets.loads if one.load.id == self.load)
        users = [
            article.demand.article.id
            for article in one.articles
            if any(kind == gear for a in article.assemblies() for gear, _ in a.uses)
        ]
        return users[0] if len(users) == 1 else None


def _elsewhere(found: Sequence[Conflict]) -> bool:
    return any(len(one.loads) > 1 for one in found)
