"""An interrupt while the solver runs: nothing that is undone afterwards touches its model."""

from __future__ import annotations

import threading

import highspy
import numpy as np
import pytest

from loadplan.plan.matrix import Matrix
from loadplan.plan.solver import Solver


def test_what_is_undone_after_an_interrupt_leaves_the_running_model_alone(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    released = threading.Event()
    seen: list[int] = []

    class Slow(highspy.Highs):
        def run(self) -> highspy.HighsStatus:
            released.wait(10)
            seen.append(self.getNumCol())
            return highspy.HighsStatus.kOk

    monkeypatch.setattr(highspy, "Highs", Slow)
    ones = np.ones(3)
    whole = np.zeros(3, dtype=bool)
    rows = np.array([0, 3], dtype=np.int32)
    columns = np.arange(3, dtype=np.int32)
    matrix = Matrix(0 * ones, ones, whole, ones[:1], ones[:1], rows, columns, ones)
    solver = Solver(matrix)
    thread_join = threading.Thread.join

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(threading.Thread, "join", interrupted)
    with pytest.raises(KeyboardInterrupt):
        solver.solve(10.0, 1.0)
    monkeypatch.setattr(threading.Thread, "join", thread_join)
    solver.bound_columns(columns, ones, ones)
    solver.bound_row(0, 0.0, 0.0)
    assert solver.columns == 0, "another model, which nothing runs"
    released.set()
    for thread in threading.enumerate():
        if thread.daemon and thread is not threading.current_thread():
            thread.join(10)
    assert seen == [3], "the model that ran had all of its columns"
