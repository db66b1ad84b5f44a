"""A solver that crashes, hangs, answers nonsense or proves what is not so.

Whatever it does, a run ends with exit code 6 and writes nothing, or with a plan that stands and
claims no more than is so.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from types import SimpleNamespace

import highspy
import pytest

from loadplan.plan import run, solver
from tests.cli_runs import Command
from tests.workbook.build import GEAR, save

AGAIN = (
    "Nothing was written. Plan the day again; if that fails too, send the day workbook to whoever "
    "keeps this program for you."
)
# Two machines out at once. One takes six tie-downs of 5,400 lb, credited half (16,200 lb for
# 30,000 lb), the other four; there are ten of each piece. The third would need six more.
TWO = {
    "Cargo": [
        ("Article", "Load", "Class", "Weight [lb]", "Length [ft]"),
        ("EX-1", "L-1", "tracked machine", 30000, 24),
        ("EX-2", "L-2", "tracked machine", 12000, 18),
    ],
    "Gear": [
        GEAR[0],
        ("CH-1", "chain", "3/8", "70", 20, 6600, None, 10),
        ("LB-1", "lever binder", None, None, None, 5400, "5/16-3/8", 10),
    ],
}
THREE = {**TWO, "Cargo": [*TWO["Cargo"], ("EX-3", "L-3", "tracked machine", 30000, 24)]}
VECTOR = ["Tie-downs: 10, proved least", "Rated strength issued: 120,000 lb, proved least"]


class Faulty(highspy.Highs):
    """HiGHS with one fault, from its ``start``-th run on."""

    start = 0
    runs = 0
    on_run: Callable[[], highspy.HighsStatus] | None = None
    status: highspy.HighsModelStatus | None = None
    values: Callable[[list[float]], list[float]] | None = None
    bound = 0.0
    objective = 0.0

    @property
    def whole(self) -> bool:
        """Whether the model at hand has whole-number columns."""
        return len(self.getLp().integrality_) > 0

    def run(self) -> highspy.HighsStatus:
        """Run, or what stands in its place."""
        Faulty.runs += 1
        if Faulty.on_run is not None and Faulty.runs > Faulty.start:
            return Faulty.on_run()
        return super().run()

    def getModelStatus(self) -> highspy.HighsModelStatus:  # noqa: N802
        """The status, or the false one."""
        if Faulty.status is not None and Faulty.runs > Faulty.start:
            return Faulty.status
        return super().getModelStatus()

    def getSolution(self) -> highspy.HighsSolution:  # noqa: N802
        """The solution, spoiled."""
        solution = super().getSolution()
        if Faulty.values is not None and Faulty.runs > Faulty.start:
            solution.col_value = Faulty.values(list(solution.col_value))
        return solution

    def getInfo(self) -> highspy.HighsInfo:  # noqa: N802
        """The info with a shifted bound."""
        info = super().getInfo()
        if Faulty.runs > Faulty.start:
            info.mip_dual_bound += Faulty.bound
            info.objective_function_value += Faulty.objective
        return info


@pytest.fixture
def faulty(monkeypatch):
    """Puts :class:`Faulty` in the place of the solver, with the fault given."""

    def put(**fault):
        for name, value in {"runs": 0, "start": 0, **fault}.items():
            monkeypatch.setattr(Faulty, name, value)
        monkeypatch.setattr(highspy, "Highs", Faulty)

    return put


def planned(capsys, tmp_path, sheets=TWO):
    """What planning prints; an exit code other than 0, 4 and 5 leaves nothing behind."""
    day = save(tmp_path / "day.xlsx", sheets)
    ran = Command(capsys)("plan", day, "--time-limit", "3", "--force")
    there = sorted(path.name for path in tmp_path.iterdir())
    assert there == (["day.xlsx"] if ran.code == 6 else ["day.results.xlsx", "day.xlsx"])
    return ran


def broken():
    """Stands in for a run that crashes."""
    raise RuntimeError("out of cheese")


def slow():
    """Stands in for a run that goes on and on."""
    time.sleep(2)
    return highspy.HighsStatus.kOk


def test_the_day_by_hand(capsys, tmp_path):
    ran = planned(capsys, tmp_path)
    assert ran.code == 0
    assert [line for line in ran.out if line in VECTOR] == VECTOR


@pytest.mark.parametrize("start", range(4))
def test_a_crash(faulty, capsys, tmp_path, start):
    faulty(start=start, on_run=broken)
    ran = planned(capsys, tmp_path)
    assert (ran.code, ran.err) == (
        6,
        [f"The solver stopped with an error: out of cheese. {AGAIN}"],
    )


def test_an_error(faulty, capsys, tmp_path):
    faulty(on_run=lambda: highspy.HighsStatus.kError)
    ran = planned(capsys, tmp_path)
    assert (ran.code, ran.err) == (
        6,
        [f"The solver stopped with an error: it reported an error. {AGAIN}"],
    )


def test_a_run_that_hangs_past_its_limit(faulty, capsys, tmp_path, monkeypatch):
    monkeypatch.setattr(run, "GRACE", -2.9)
    faulty(on_run=slow)
    ran = planned(capsys, tmp_path)
    assert (ran.code, ran.err) == (6, [f"The solver did not stop at its time limit. {AGAIN}"])


@pytest.mark.parametrize(
    ("spoil", "why"),
    [
        (lambda values: [math.nan for _ in values], "its solution is not made of numbers"),
        (lambda values: values[:-1], "its solution is not made of numbers"),
        (lambda values: [value + 0.3 for value in values], "its solution is not in whole numbers"),
        (lambda values: [value - 1 for value in values], "its solution is outside the bounds"),
        (lambda values: [value * 1e6 for value in values], "its solution is outside the bounds"),
    ],
    ids=["no numbers", "too few", "fractions", "below", "far above"],
)
def test_values_that_are_no_solution(faulty, monkeypatch, capsys, tmp_path, spoil, why):
    # Linear solves keep their values: those are never taken for a plan.
    relax = solver.Solver.relax

    def honest(self, seconds):
        kept, Faulty.values = Faulty.values, None
        try:
            return relax(self, seconds)
        finally:
            Faulty.values = kept

    monkeypatch.setattr(solver.Solver, "relax", honest)
    faulty(values=spoil)
    ran = planned(capsys, tmp_path)
    assert (ran.code, ran.err) == (6, [f"The solver cannot be trusted: {why}. {AGAIN}"])


def test_a_linear_solve_without_numbers(faulty, capsys, tmp_path):
    faulty(values=lambda values: [math.nan for _ in values])
    ran = planned(capsys, tmp_path)
    assert ran.code == 6
    assert ran.err[0].startswith("The solver cannot be trusted: ")


def test_a_bound_beyond_its_own_solution(faulty, capsys, tmp_path):
    faulty(bound=7.0)
    ran = planned(capsys, tmp_path)
    assert (ran.code, ran.err) == (
        6,
        [f"The solver cannot be trusted: its bound contradicts its own solution. {AGAIN}"],
    )


@pytest.mark.parametrize("start", [0, 5])
@pytest.mark.parametrize("sheets", [TWO, THREE], ids=["enough", "short"])
@pytest.mark.parametrize(
    "fault",
    [
        {"status": highspy.HighsModelStatus.kInfeasible},
        {"status": highspy.HighsModelStatus.kTimeLimit},
        {"status": highspy.HighsModelStatus.kUnknown},
        {"values": lambda values: values[::-1]},
        {"values": lambda values: [float(value > 0) for value in values]},
        {"values": lambda values: [0.0 for _ in values]},
        {"bound": -3.0},
        {"objective": 4.0},
        {"objective": -4.0},
    ],
    ids=[
        *("infeasible", "time limit", "unknown", "turned", "ones", "noughts"),
        *("low bound", "high cost", "low cost"),
    ],
)
def test_never_a_false_word(faulty, capsys, tmp_path, fault, start, sheets):
    faulty(start=start, **fault)
    ran = planned(capsys, tmp_path, sheets)
    assert ran.code in (0, 4, 5, 6), ran.err
    if ran.code == 0:
        assert sheets is TWO
        assert [line for line in ran.out if line in VECTOR] == VECTOR
    if ran.code == 4:
        assert sheets is THREE
        assert ran.out[0] == "3 loads: 2 ready, 1 held."


def test_a_run_that_ends_lost_is_made_again_from_the_start():
    kinds, done = highspy.HighsModelStatus, []
    ends = [kinds.kUnknown, kinds.kOptimal, kinds.kOptimal]

    def ran():
        done.append("run")
        return highspy.HighsStatus.kOk

    model = SimpleNamespace(
        run=ran,
        getRunTime=lambda: 0.0,
        getModelStatus=lambda: ends[done.count("run") - 1],
        setOptionValue=lambda name, value: done.append((name, value)),
        clearSolver=lambda: done.append("cleared"),
    )
    run.run(model, 1.0)
    otherwise = [("simplex_strategy", run.DUAL), ("presolve", "off")]
    assert done[1:] == ["run", "cleared", *otherwise, "run"]
    run.run(model, 1.0)
    assert done[-1] == "run"
    assert done.count("run") == 3
