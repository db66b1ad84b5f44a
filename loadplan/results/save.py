"""Saving the results workbook."""

from __future__ import annotations

from pathlib import Path

from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SaveFailed
from loadplan.purchase.bought import Bought
from loadplan.results.workbook import results_bytes
from loadplan.tables.place_file import place_file, refuse_existing


def save_results(
    plan: DayPlan, path: Path, force: bool = False, bought: Bought | None = None
) -> None:
    """Write the results workbook of ``plan`` to ``path``, whole or not at all.

    ``bought`` is the purchase the plan is made with, if any. An existing file is replaced only
    with ``force``. Raises ``SaveFailed`` with a remedy; the target folder holds no stray file then.
    """
    if path.suffix.casefold() != ".xlsx":
        raise SaveFailed(f"{path} does not end in .xlsx. Results are written as .xlsx only.")
    refuse_existing(path, force=force)
    place_file(path, results_bytes(plan, bought=bought), force=force)
