"""Side by side: ``python -m tests.bench.peers --loads 14 --seeds 1 2 3 --tight --limit 60``.

The same days through the program, through the plain binary model on every solver that is
installed, through a model that counts alike tie-downs together, and by hand.
"""

from __future__ import annotations

import argparse
import statistics
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from tests.bench.backends import Backend, installed
from tests.bench.generate import generate, write_workbook
from tests.bench.hand import ORDERS, by_hand
from tests.bench.naive import build
from tests.oracle.day import Day, read_day
from tests.oracle.model import build as build_counted
from tests.oracle.optimum import Objective, objectives
from tests.oracle.program import Clock, Program


@dataclass(kw_only=True)
class Row:
    """What one peer made of one day; ``values`` are None from the first stage without a plan."""

    peer: str
    seconds: float
    proved: int
    values: list[Fraction | None]

    def order(self, priorities: int) -> list[Fraction]:
        """Smaller is better; a stage without a plan is worst of all."""
        worst = Fraction(10**12)
        signs = [-1] * priorities + [1] * (len(self.values) - priorities)
        return [worst if v is None else s * v for s, v in zip(signs, self.values, strict=True)]


def staged(name: str, day: Day, backend: Backend, limit: float, counted: bool) -> Row:
    """One peer: build, then stage after stage, each held for the next."""
    started, clock = time.monotonic(), Clock(limit)
    program: Program
    stages: list[Objective]
    if counted:
        model = build_counted(day)
        program, stages = model.program, objectives(model)
    else:
        naive = build(day)
        program, stages = naive.program, naive.objectives
    values: list[Fraction | None] = []
    proved = 0
    for _, sign, terms in stages:
        answer = None
        if clock.left > 0 and None not in values:
            answer = backend(program, {v: sign * c for v, c in terms.items()}, clock.left)
        if answer is None:
            values.append(None)
            continue
        value = sum((c * answer.values[v] for v, c in terms.items()), Fraction(0))
        values.append(value)
        proved += answer.proved and proved == len(values) - 1
        program.equal(terms, value)
    return Row(peer=name, seconds=time.monotonic() - started, proved=proved, values=values)


def ours(path: Path, day: Day, limit: float) -> Row:
    """The program itself: reading is not counted, judging is."""
    from loadplan.api import plan_day
    from loadplan.workbook.read import read_day as read

    read_in = read(path)
    started = time.monotonic()
    plan = plan_day(read_in, time_limit=limit)
    seconds = time.monotonic() - started
    pairs: dict[str, set[tuple[str, str | None]]] = defaultdict(set)
    issued = Fraction(0)
    for one in plan.tie_downs:
        if not one.accessory:
            pairs[one.article].add((one.member, one.tensioner))
        for piece, number in one.pieces().items():
            gear = day.gear[piece.casefold()]
            issued += number * (gear.wll or 0) if gear.kind != "edge protector" else 0
    going = [day.loads[name.casefold()].priority for name in plan.ready]
    priorities = sorted({load.priority for load in day.loads.values()})
    values = [Fraction(going.count(p)) for p in priorities]
    values += [
        Fraction(len(plan.tie_downs)),
        Fraction(sum(len(p) - 1 for p in pairs.values())),
        issued,
    ]
    proved = 0
    for stage in plan.stages[: len(values)]:
        if not stage.proved:
            break
        proved += 1
    return Row(peer="loadplan", seconds=seconds, proved=proved, values=[*values])


def peers(limit: float, only: list[str]) -> dict[str, Callable[[Path, Day], Row]]:
    """Every peer by name, as something that takes a day."""
    found: dict[str, Callable[[Path, Day], Row]] = {
        "loadplan": lambda path, day: ours(path, day, limit)
    }
    for name, backend in installed().items():
        found[f"plain binary, {name}"] = lambda path, day, n=name, b=backend: staged(
            f"plain binary, {n}", day, b, limit, counted=False
        )
        if name == "HiGHS":
            found["counted, HiGHS"] = lambda path, day, b=backend: staged(
                "counted, HiGHS", day, b, limit, counted=True
            )
    for rule, order in ORDERS.items():
        found[f"by hand, {rule}"] = lambda path, day, r=rule, o=order: hand_row(day, r, o)
    return {
        name: peer for name, peer in found.items() if not only or any(part in name for part in only)
    }


def hand_row(day: Day, rule: str, order: Callable[..., object]) -> Row:
    """One rule of thumb."""
    started = time.monotonic()
    values = by_hand(day, order)
    seconds = time.monotonic() - started
    return Row(peer=f"by hand, {rule}", seconds=seconds, proved=0, values=[*values])


def table(rows: list[Row], base: Row, priorities: int) -> list[str]:
    """One day's rows as text; the last column is the time against the first row's."""
    lines = []
    for row in rows:
        ready = row.values[:priorities]
        shown = ["-" if v is None else f"{float(v):,.0f}" for v in row.values[priorities:]]
        total = "-" if None in ready else f"{sum(map(int, ready))}"  # type: ignore[arg-type]
        mark = " BETTER" if row.order(priorities) < base.order(priorities) else ""
        lines.append(
            f"{row.peer:32}{row.seconds:9.2f} {row.proved}/{len(row.values)} {total:>6}"
            f"{shown[0]:>10}{shown[1]:>7}{shown[2]:>12} {row.seconds / base.seconds:8.1f}x{mark}"
        )
    return lines


def main() -> None:
    """Plans the days with every peer and prints one table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--loads", type=int, default=14)
    parser.add_argument("--seeds", type=int, nargs="+", default=[1])
    parser.add_argument("--tight", action="store_true")
    parser.add_argument("--limit", type=float, default=60)
    parser.add_argument("--only", nargs="*", default=[], help="parts of peers' names")
    given = parser.parse_args()
    head = f"{'peer':32}{'seconds':>9} prov  ready tie-downs  mixed    strength    ratio"
    ratios: dict[str, list[float]] = defaultdict(list)
    for seed in given.seeds:
        path = Path(tempfile.mkdtemp()) / "day.xlsx"
        write_workbook(generate(given.loads, seed, given.tight), path)
        day = read_day(path)
        print(f"\n{given.loads} loads, seed {seed}, {'tight' if given.tight else 'loose'}\n{head}")
        rows: list[Row] = []
        for peer in peers(given.limit, given.only).values():
            rows.append(peer(path, day))
            priorities = len({load.priority for load in day.loads.values()})
            print(table([rows[-1]], rows[0], priorities)[0], flush=True)
            ratios[rows[-1].peer].append(rows[-1].seconds / rows[0].seconds)
    print("\nmedian ratio of seconds to the first row's")
    for name, found in ratios.items():
        print(f"{name:32}{statistics.median(found):9.1f}x")


if __name__ == "__main__":
    main()
