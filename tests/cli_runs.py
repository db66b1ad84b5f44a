"""Running the command in this process, with planning replaced where a test says so."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from loadplan.cli import run
from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.stage import Stage
from tests.workbook.build import SMALLEST, save


@dataclass
class Ran:
    """How a command ended and what it printed."""

    code: int
    out: list[str]
    err: list[str]


class Command:
    """Runs ``loadplan`` with arguments and catches what it prints."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self._capsys = capsys

    def __call__(self, *arguments: object) -> Ran:
        """One run."""
        self._capsys.readouterr()
        code = run([str(argument) for argument in arguments])
        printed = self._capsys.readouterr()
        return Ran(code, printed.out.splitlines(), printed.err.splitlines())


def day_file(folder: Path, name: str = "day.xlsx") -> Path:
    """The smallest day in ``folder``."""
    return save(folder / name, SMALLEST)


def stage(name: str, value: int, bound: int | None = None, **more: Any) -> Stage:
    """A stage, proved where no other bound is given."""
    proved = bound is None
    return Stage(
        name=name,
        value=Fraction(value),
        bound=Fraction(value if bound is None else bound),
        proved=proved,
        **more,
    )


def a_plan(day: Day, *, ready: bool = True, proved: bool = True) -> DayPlan:
    """An outcome as planning might give it; nothing in it was planned."""
    loads = tuple(load.id for load in day.loads)
    short = Shortage(
        load=loads[0],
        article="EX-1",
        short_of="lever binder for 3/8 in chain, 5,400 lb or more",
        why="they are out on other loads",
        pieces=2,
    )
    return DayPlan(
        day=day,
        ready=loads if ready else (),
        tie_downs=(),
        stages=(
            stage("loads ready at priority 1", len(loads) if ready else 0, greatest=True),
            stage("tie-downs", 6),
            stage("mixed sets", 0),
            stage("strength issued", 72000, None if proved else 70000, unit="lb"),
        ),
        shortages=() if ready else (short,),
        remarks=() if proved else ("The time limit of 60 s was reached.",),
    )


def planned(monkeypatch: pytest.MonkeyPatch, **how: bool) -> list[dict[str, Any]]:
    """Let planning answer with :func:`a_plan` and writing write a mark; the calls of planning."""
    calls: list[dict[str, Any]] = []

    def plan_day(day: Day, **options: Any) -> DayPlan:
        calls.append(options)
        return a_plan(day, **how)

    def write_results(plan: DayPlan, path: Path, *, force: bool) -> None:
        path.write_text("results")

    monkeypatch.setattr("loadplan.api.plan_day", plan_day)
    monkeypatch.setattr("loadplan.api.write_results", write_results)
    return calls


def failing(monkeypatch: pytest.MonkeyPatch, error: BaseException) -> None:
    """Let planning raise ``error``."""

    def plan_day(day: Day, **options: Any) -> DayPlan:
        raise error

    monkeypatch.setattr("loadplan.api.plan_day", plan_day)


def a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let stderr look like a terminal."""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
