"""Plans a generated day through the command line and works the answer out again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from loadplan.cli import run
from tests.bench.sheet import Rows, write_workbook
from tests.oracle.brute import TooBigError, brute
from tests.oracle.day import Day, read_day
from tests.oracle.optimum import optimum
from tests.oracle.recheck import recheck, vector
from tests.oracle.results import Results, read_results

ALL_READY, SOME_HELD, NOT_PROVED = 0, 4, 5


@dataclass(frozen=True, kw_only=True)
class Planned:
    """One day, its results, and how the command ended."""

    code: int
    path: Path
    results_path: Path

    @property
    def day(self) -> Day:
        """The day as the second opinion reads it."""
        return read_day(self.path)

    @property
    def results(self) -> Results:
        """The flat sheets as the second opinion reads them."""
        return read_results(self.results_path, self.day)

    @property
    def vector(self) -> list[Fraction]:
        """Ready loads at each priority, tie-downs, mixed sets, strength issued."""
        return vector(self.day, self.results)


def plan(rows: Rows, folder: Path, name: str = "day", *options: str) -> Planned:
    """Writes ``rows`` as a day workbook and plans it."""
    path, results_path = folder / f"{name}.xlsx", folder / f"{name}.results.xlsx"
    write_workbook(rows, path)
    code = run(["plan", str(path), "-o", str(results_path), "--force", *options])
    return Planned(code=code, path=path, results_path=results_path)


def disagreements(
    planned: Planned,
    seconds: float = 60,
    tell: Callable[[str], None] = lambda text: None,
    every_plan: bool = True,
) -> list[str]:
    """Everything the second opinion holds against a planned day.

    The optimum gets ``seconds``; ``every_plan`` also looks at all plans where they are few enough.
    """
    if planned.code not in (ALL_READY, SOME_HELD):
        return [f"exit code {planned.code}"]
    wrong = recheck(planned.path, planned.results_path)
    day = planned.day
    held = len(planned.results.ready) < len(day.loads)
    if held != (planned.code == SOME_HELD):
        wrong.append(f"exit code {planned.code}, although {'some' if held else 'no'} load is held")
    best = optimum(day, seconds)
    if not best.proved:
        tell("the optimum is not proved in the time given")
    elif planned.vector != best.values:
        wrong.append(f"plan is worth {_show(planned.vector)}, optimum {_show(best.values)}")
    if every_plan:
        wrong += _against_every_plan(planned, day, tell)
    return wrong


def _against_every_plan(planned: Planned, day: Day, tell: Callable[[str], None]) -> list[str]:
    try:
        least = brute(day)
    except TooBigError:
        tell("too big to look at every plan")
        return []
    if least == planned.vector:
        return []
    return [f"plan is worth {_show(planned.vector)}, best of all {_show(least)}"]


def _show(values: list[Fraction]) -> str:
    return ", ".join(str(value) for value in values)
