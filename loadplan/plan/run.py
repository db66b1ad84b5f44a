"""One run of the solver, in a thread of its own, so that an interrupt is heard at once."""

from __future__ import annotations

import threading
import time

import highspy

from loadplan.plan.solved import Status
from loadplan.problems import PLAN_AGAIN, SolverFailed

# Seconds that a run may go on past its limit: the solver looks at the clock only now and then.
GRACE = 60.0
DUAL = 1  # HiGHS's number for its dual simplex


def run(model: highspy.Highs, seconds: float) -> Status:
    """Run ``model`` for ``seconds`` at the most; answers with how that ended.

    Raises ``SolverFailed`` where it ends with an error, twice, or does not end ``GRACE`` seconds
    after its time. After an exception the run may still go on: leave the model to it.
    """
    model.setOptionValue("time_limit", model.getRunTime() + max(0.01, seconds))
    failure: list[Exception] = []
    thread = threading.Thread(target=_guarded, args=(model, failure), daemon=True)
    thread.start()
    end = now() + seconds + GRACE
    while thread.is_alive():
        thread.join(0.1)
        if now() > end:
            raise SolverFailed(f"The solver did not stop at its time limit. {PLAN_AGAIN}")
    if failure:
        raise SolverFailed(f"The solver stopped with an error: {failure[0]}. {PLAN_AGAIN}")
    return _status(model.getModelStatus())


def now() -> float:
    """Seconds on a clock that only goes forward."""
    return time.monotonic()


def _guarded(model: highspy.Highs, failure: list[Exception]) -> None:
    try:
        failed = model.run() == highspy.HighsStatus.kError
        # Now and then a linear solve that goes on from an earlier one ends without knowing where.
        lost = model.getModelStatus() == highspy.HighsModelStatus.kUnknown
        if (failed or lost) and _again_fails(model):
            failure.append(RuntimeError("it reported an error"))
    except Exception as error:
        failure.append(error)


def _again_fails(model: highspy.Highs) -> bool:
    """Run once more from the start, otherwise and without presolve; whether that fails too."""
    model.clearSolver()
    # The primal simplex may end without knowing where on the smallest of problems.
    model.setOptionValue("simplex_strategy", DUAL)
    model.setOptionValue("presolve", "off")
    return bool(model.run() == highspy.HighsStatus.kError)


def _status(status: highspy.HighsModelStatus) -> Status:
    kinds = highspy.HighsModelStatus
    if status in (kinds.kOptimal, kinds.kModelEmpty, kinds.kObjectiveTarget):
        return Status.OPTIMAL
    if status in (kinds.kInfeasible, kinds.kUnboundedOrInfeasible):
        return Status.INFEASIBLE
    if status in (kinds.kTimeLimit, kinds.kSolutionLimit, kinds.kInterrupt, kinds.kIterationLimit):
        return Status.LIMIT
    raise SolverFailed(f"The solver ended with the status {status}. {PLAN_AGAIN}")
