"""How long planning takes and how it grows: ``python -m tests.bench.speed --sizes 14 50 200``.

Each day is planned in a process of its own. Printed for each size, loose and tight: the median and
the 90th percentile of the planning seconds (the workbook read, nothing written), the whole command
from process start to file, the most memory, how many days were proved stage by stage, and last the
exponent of growth in loads over the sizes from 50 up.
"""

from __future__ import annotations

import argparse
import json
import math
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from tests.bench.generate import generate, write_workbook


@dataclass(kw_only=True)
class Measured:
    """One day."""

    seconds: float
    whole: float
    megabytes: float
    proved: list[bool]
    gaps: list[float]
    held: int


def worker(path: Path, limit: float) -> None:
    """Plans one day and prints what was measured."""
    from loadplan.api import plan_day
    from loadplan.workbook.read import read_day

    day = read_day(path)
    started = time.monotonic()
    plan = plan_day(day, time_limit=limit)
    seconds = time.monotonic() - started
    print(
        json.dumps(
            {
                "seconds": seconds,
                "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
                "proved": [stage.proved for stage in plan.stages],
                "gaps": [float(stage.gap) / max(1.0, float(stage.value)) for stage in plan.stages],
                "held": len(plan.held),
            }
        )
    )


def measure(loads: int, seed: int, tight: bool, limit: float, whole: bool) -> Measured:
    """Plans one generated day in a fresh process, and once more as a whole command."""
    folder = Path(tempfile.mkdtemp(prefix="speed"))
    path = folder / "day.xlsx"
    write_workbook(generate(loads, seed, tight), path)
    me = [sys.executable, "-m", "tests.bench.speed", "--worker", str(path), "--limit", str(limit)]
    found = json.loads(subprocess.run(me, check=True, capture_output=True, text=True).stdout)
    started = time.monotonic()
    if whole:
        command = [sys.executable, "-m", "loadplan", "plan", str(path), "--time-limit", str(limit)]
        subprocess.run(command, check=False, capture_output=True)
    return Measured(whole=time.monotonic() - started, **found)


def exponent(sizes: list[int], medians: list[float]) -> float:
    """The slope of log seconds over log loads."""
    xs, ys = [math.log(size) for size in sizes], [math.log(seconds) for seconds in medians]
    return statistics.linear_regression(xs, ys).slope


def line(loads: int, tight: bool, found: list[Measured]) -> str:
    """One row of the table."""
    seconds = sorted(one.seconds for one in found)
    ninetieth = seconds[min(len(seconds) - 1, math.ceil(0.9 * len(seconds)) - 1)]
    proved = sum(all(one.proved) for one in found)
    gap = max(max(one.gaps) for one in found)
    held = statistics.median(one.held for one in found)
    return (
        f"{loads:6} {'tight' if tight else 'loose'} {statistics.median(seconds):9.2f}"
        f"{ninetieth:9.2f}{statistics.median(one.whole for one in found):9.2f}"
        f"{max(one.megabytes for one in found):8.0f} {proved:>4}/{len(found)}"
        f"{100 * gap:9.3f} %{held:7.0f}"
    )


def main() -> None:
    """Measures every size and prints the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--worker", type=Path, help=argparse.SUPPRESS)
    parser.add_argument("--sizes", type=int, nargs="+", default=[14, 50, 200, 1000])
    parser.add_argument("--seeds", type=int, default=5, help="days of each size")
    parser.add_argument("--first", type=int, default=1, help="the first seed")
    parser.add_argument("--limit", type=float, default=300)
    parser.add_argument("--kind", choices=("loose", "tight", "both"), default="both")
    parser.add_argument("--whole", action="store_true", help="time the whole command too")
    given = parser.parse_args()
    if given.worker:
        worker(given.worker, given.limit)
        return
    print(" loads          median     90th    whole      MB proved  widest gap   held")
    for tight in (False, True):
        if given.kind == ("loose" if tight else "tight"):
            continue
        medians = []
        for loads in given.sizes:
            seeds = range(given.first, given.first + given.seeds)
            found = [measure(loads, seed, tight, given.limit, given.whole) for seed in seeds]
            print(line(loads, tight, found), flush=True)
            medians.append(statistics.median(one.seconds for one in found))
        large = [(s, m) for s, m in zip(given.sizes, medians, strict=True) if s >= 50]
        if len(large) > 1:
            print(f"growth: loads^{exponent(*map(list, zip(*large, strict=True))):.2f}")


if __name__ == "__main__":
    main()
