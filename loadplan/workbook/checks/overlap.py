"""One trailer on two loads at once."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.problems import Code, Problem
from loadplan.workbook.table import row_problem


def overlap_problems(day: Day) -> Iterator[Problem]:
    """Loads that need a trailer before it is back; it can go again at the very second."""
    by_trailer: dict[str, list[Load]] = defaultdict(list)
    for load in day.loads:
        if load.trailer is not None:
            by_trailer[load.trailer].append(load)
    for trailer, loads in by_trailer.items():
        loads.sort(key=lambda load: (load.out, load.back))
        away = loads[0]
        for load in loads[1:]:
            if load.out < away.back:
                yield row_problem(
                    load.row,
                    Code.OVERLAP,
                    "Trailer",
                    f"Trailer {trailer} is on load {away.id} from {day.clock(away.out)} to "
                    f"{day.clock(away.back)}, and this load leaves at {day.clock(load.out)}.",
                    "Change the trailer or the times.",
                )
            if load.back > away.back:
                away = load
