"""The best plan of a day, stage by stage, each proved before the next."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tests.oracle.day import Day
from tests.oracle.model import Choice, Model, build
from tests.oracle.program import Answer, Clock
from tests.oracle.rules import need

# Its name, -1 where more is better, and its terms.
Objective = tuple[str, int, dict[int, Fraction | int]]


@dataclass(kw_only=True)
class Stage:
    """One stage: its exact value, the solver's bound on it and whether it is proved."""

    name: str
    value: Fraction
    bound: float
    proved: bool


@dataclass(kw_only=True)
class Optimum:
    """The whole vector, stage by stage; fewer stages where the time ran out."""

    stages: list[Stage]
    ready: list[str]
    chosen: list[tuple[Choice, int]]
    guards: dict[tuple[str, str], int]

    @property
    def values(self) -> list[Fraction]:
        """Ready loads at each priority, tie-downs, mixed sets, strength issued."""
        return [stage.value for stage in self.stages]

    @property
    def proved(self) -> bool:
        """Whether every stage is proved."""
        return all(stage.proved for stage in self.stages)


def optimum(day: Day, time_limit: float) -> Optimum:
    """The stages one after the other, each held at its value for the next."""
    model, clock = build(day), Clock(time_limit)
    result = Optimum(stages=[], ready=[], chosen=[], guards={})
    for name, sign, terms in objectives(model):
        answer = model.program.least({v: sign * c for v, c in terms.items()}, clock.left)
        if answer is None:
            break
        check(model, answer)
        value = sum(c * answer.values[v] for v, c in terms.items())
        result.stages.append(
            Stage(
                name=name,
                value=Fraction(value),
                bound=sign * answer.bound,
                proved=answer.proved,
            )
        )
        result.ready = [n for n, v in model.ready.items() if answer.values[v]]
        result.chosen = [(c, answer.values[c.variable]) for c in model.choices]
        result.guards = {place: answer.values[v] for place, v in model.guards.items()}
        model.program.equal(terms, value)
    return result


def objectives(model: Model) -> list[Objective]:
    """What is wanted in turn."""
    loads = model.day.loads
    stages: list[Objective] = [
        (
            f"ready at priority {priority}",
            -1,
            {v: 1 for n, v in model.ready.items() if loads[n].priority == priority},
        )
        for priority in sorted({load.priority for load in loads.values()})
    ]
    stages.append(("tie-downs", 1, {c.variable: 1 for c in model.choices}))
    stages.append(("mixed sets", 1, model.mixed))
    stages.append(("strength", 1, {c.variable: c.assembly.issued for c in model.choices}))
    return stages


def check(model: Model, answer: Answer) -> None:
    """Every row once more in exact arithmetic where rounding could matter: the aggregates."""
    for name, load in model.day.loads.items():
        if not answer.values[model.ready[name]]:
            continue
        for article in load.articles:
            wants = need(article, load, model.day)
            have = sum(
                answer.values[c.variable]
                * (wants.accessory_credit if c.accessory else wants.credit)
                * c.assembly.wll
                for c in model.choices
                if c.article is article
            )
            if have < wants.strength:
                raise ArithmeticError(f"{article.id}: {have} < {wants.strength} within tolerance")
    for low, row, high in model.program.rows:
        value = sum(c * answer.values[v] for v, c in row.items())
        if not low - 1e-4 <= value <= high + 1e-4:
            raise ArithmeticError(f"row broken: {low} <= {value} <= {high}")
