"""Ctrl-C while the solver runs: exit code 130, nothing written."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.bench.generate import generate, write_workbook


@pytest.mark.skipif(sys.platform == "win32", reason="SIGINT cannot be sent to a child there")
def test_ctrl_c_during_a_long_solve_writes_nothing_and_exits_130(tmp_path: Path) -> None:
    day, results = tmp_path / "day.xlsx", tmp_path / "results.xlsx"
    write_workbook(generate(loads=50, seed=2, tight=True), day)
    command = [sys.executable, "-m", "loadplan", "plan", str(day), "-o", str(results)]
    # Where the tests themselves run in the background, SIGINT is ignored from birth.
    with subprocess.Popen(
        command,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    ) as run:
        time.sleep(12)
        run.send_signal(signal.SIGINT)
        _, errors = run.communicate(timeout=30)
    assert run.returncode == 130
    assert errors.splitlines()[-1] == "Interrupted. Nothing was written."
    assert sorted(path.name for path in tmp_path.iterdir()) == ["day.xlsx"]
