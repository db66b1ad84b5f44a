"""The day as the plainest binary program: one yes or no for every place and every assembly."""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from fractions import Fraction

from tests.oracle.assembly import Assembly, candidates, protectors
from tests.oracle.day import Article, Day, Load
from tests.oracle.optimum import Objective
from tests.oracle.program import Program
from tests.oracle.rules import ANCHORS, need


@dataclass
class Naive:
    """The program, and what is wanted of it in turn: (name, sign, terms), -1 for the most."""

    day: Day
    program: Program = field(default_factory=Program)
    ready: dict[str, int] = field(default_factory=dict)
    tie_downs: dict[int, Fraction | int] = field(default_factory=dict)
    mixed: dict[int, Fraction | int] = field(default_factory=dict)
    issued: dict[int, Fraction | int] = field(default_factory=dict)
    takes: dict[str, dict[str, Counter[int]]] = field(
        default_factory=lambda: defaultdict(lambda: defaultdict(Counter))
    )

    @property
    def objectives(self) -> list[Objective]:
        """Ready loads at each priority, tie-downs, mixed sets, strength issued."""
        loads = self.day.loads
        stages: list[Objective] = [
            (
                f"ready at priority {priority}",
                -1,
                {v: 1 for n, v in self.ready.items() if loads[n].priority == priority},
            )
            for priority in sorted({load.priority for load in loads.values()})
        ]
        return [
            *stages,
            ("tie-downs", 1, self.tie_downs),
            ("mixed sets", 1, self.mixed),
            ("strength", 1, self.issued),
        ]


def build(day: Day) -> Naive:
    """The whole day; days with gear already on are not built."""
    assert not day.fixed
    model = Naive(day)
    for name, load in day.loads.items():
        model.ready[name] = model.program.variable(1)
        points: dict[int, Fraction | int] = {}
        winches: dict[int, Fraction | int] = {}
        guarded: dict[int, Fraction | int] = {}
        for article in load.articles:
            _article(model, name, load, article, (points, winches, guarded))
        trailer = day.trailer(load)
        if trailer.anchors is not None:
            model.program.at_most(points, trailer.anchors)
        model.program.at_most(winches, trailer.winches)
        _guards(model, name, load, guarded)
    _pool(model)
    return model


Shared = tuple[dict[int, Fraction | int], dict[int, Fraction | int], dict[int, Fraction | int]]


def _article(model: Naive, name: str, load: Load, article: Article, shared: Shared) -> None:
    day, program, ready = model.day, model.program, model.ready[name]
    wants = need(article, load, day)
    if wants.obstacle:
        program.equal({ready: 1}, 0)
    options = candidates(day, load, article, accessory=False)
    at: dict[str, list[int]] = defaultdict(list)
    strength: dict[int, Fraction | int] = {ready: -wants.strength}
    of_pair: dict[object, list[int]] = defaultdict(list)
    for position in wants.positions:
        for _ in range(wants.most):
            place = [_put(model, name, article, a, False, shared) for a in options]
            program.at_most(dict.fromkeys(place, 1) | {ready: -1}, 0)
            at[position] += place
            for variable, assembly in zip(place, options, strict=True):
                strength[variable] = wants.credit * assembly.wll
                of_pair[assembly.pair].append(variable)
    everything = [v for places in at.values() for v in places]
    program.at_least(dict.fromkeys(everything, 1) | {ready: -wants.count}, 0)
    for group in wants.groups:
        there = [v for position in group for v in at[position]]
        program.at_least(dict.fromkeys(there, 1) | {ready: -1}, 0)
    parts = candidates(day, load, article, accessory=True) if article.accessories else []
    for _ in article.accessories:
        place = [_put(model, name, article, a, True, shared) for a in parts]
        program.equal(dict.fromkeys(place, 1) | {ready: -1}, 0)
        for variable, assembly in zip(place, parts, strict=True):
            strength[variable] = wants.accessory_credit * assembly.wll
    program.at_least(strength, 0)
    for variables in of_pair.values():
        used = program.variable(1)
        model.mixed[used] = 1
        program.at_most(dict.fromkeys(variables, 1) | {used: -len(wants.positions) * wants.most}, 0)
    model.mixed[ready] = model.mixed.get(ready, 0) - 1


def _put(
    model: Naive, name: str, article: Article, assembly: Assembly, accessory: bool, shared: Shared
) -> int:
    points, winches, guarded = shared
    variable = model.program.variable(1)
    model.tie_downs[variable] = 1
    model.issued[variable] = assembly.issued
    for piece, number in assembly.pieces.items():
        model.takes[piece][name][variable] += number
    points[variable] = 1 if accessory else ANCHORS[article.routing]
    if assembly.winch:
        winches[variable] = 1
    guards = protectors(article, assembly, accessory)
    if guards:
        guarded[variable] = -guards
    return variable


def _guards(model: Naive, name: str, load: Load, guarded: dict[int, Fraction | int]) -> None:
    if not guarded:
        return
    kinds: dict[int, Fraction | int] = {}
    for piece, gear in model.day.gear.items():
        if gear.kind == "edge protector" and gear.kept_on in (None, load.trailer):
            variable = model.program.variable(gear.usable)
            kinds[variable] = 1
            model.takes[piece][name][variable] += 1
    model.program.equal(kinds | guarded, 0)


def _pool(model: Naive) -> None:
    day = model.day
    for piece, by_load in model.takes.items():
        gear = day.gear[piece]
        for moment in sorted({load.out for load in day.loads.values()}):
            row: dict[int, Fraction | int] = {}
            for name, load in day.loads.items():
                if load.out <= moment < day.until(load, gear):
                    row |= by_load[name]
            model.program.at_most(row, gear.usable)
