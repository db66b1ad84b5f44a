"""loadplan: which tie-down gear goes on which load of a hauling day.

``read_day``, ``plan_day`` and ``write_results`` do the whole job from Python::

    from loadplan import plan_day, read_day, write_results

    plan = plan_day(read_day("day.xlsx"))
    write_results(plan, "day.results.xlsx")

Nothing heavy is imported until one of them is used.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from loadplan.api import plan_day, write_results
    from loadplan.day.day import Day
    from loadplan.outcome.day_plan import DayPlan
    from loadplan.workbook.read import read_day

__version__ = "0.1.0"
__all__ = ["Day", "DayPlan", "__version__", "plan_day", "read_day", "write_results"]

_HOMES = {
    "Day": "loadplan.day.day",
    "DayPlan": "loadplan.outcome.day_plan",
    "plan_day": "loadplan.api",
    "read_day": "loadplan.workbook.read",
    "write_results": "loadplan.api",
}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(importlib.import_module(_HOMES[name]), name)


def __dir__() -> list[str]:
    return sorted(__all__)
