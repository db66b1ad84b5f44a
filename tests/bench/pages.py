"""How big the results of a large day are, and how long LibreOffice takes to open them.

``python -m tests.bench.pages --loads 200 --seed 1`` plans a generated day and prints the size of
the results workbook, the time to write it and the time in which LibreOffice opens it, each beside
the same cells written plainly: no pictures, no charts, no styles, no links. Opening is measured as
a conversion of the first sheet to CSV, less what an empty workbook takes.
"""

from __future__ import annotations

import argparse
import shutil
import subprocess
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import openpyxl
import xlsxwriter

from loadplan.api import plan_day
from loadplan.results.pdf import find_office
from loadplan.results.workbook import results_bytes
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook

Cells = list[tuple[str, list[tuple[int, int, object]]]]


def cells_of(results: Path) -> Cells:
    """Every value and formula of ``results``, sheet by sheet."""
    return [
        (
            sheet.title,
            [
                (cell.row - 1, cell.column - 1, cell.value)
                for row in sheet.iter_rows()
                for cell in row
                if isinstance(cell.value, int | float | str)
            ],
        )
        for sheet in openpyxl.load_workbook(results).worksheets
    ]


def write_plainly(cells: Cells, target: Path) -> None:
    """The same cells and nothing else."""
    with xlsxwriter.Workbook(target) as book:
        for name, values in cells:
            page = book.add_worksheet(name)
            for row, column, value in values:
                page.write(row, column, value)


def seconds(work: Callable[[], object]) -> float:
    """How long ``work`` takes."""
    started = time.monotonic()
    work()
    return time.monotonic() - started


def opening(workbook: Path, folder: Path) -> float:
    """Seconds in which LibreOffice opens ``workbook`` and writes its first sheet as CSV."""
    office = find_office()
    if office is None:
        return float("nan")
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    what = ["--headless", "--norestore", "--convert-to", "csv", "--outdir", str(folder)]
    command = [str(office), profile, *what, str(workbook)]
    return seconds(lambda: subprocess.run(command, check=True, capture_output=True))


def main() -> None:
    """Measures one day and prints what it found."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--loads", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--time-limit", type=int, default=60)
    given = parser.parse_args()
    folder = Path(tempfile.mkdtemp(prefix="pages"))
    day, results, plain, empty = (
        folder / f"{name}.xlsx" for name in ("day", "results", "plain", "empty")
    )
    write_workbook(generate(given.loads, given.seed), day)
    plan = plan_day(read_day(day), time_limit=given.time_limit)
    writing = seconds(lambda: results.write_bytes(results_bytes(plan)))
    cells = cells_of(results)
    plainly = seconds(lambda: write_plainly(cells, plain))
    write_plainly([("Sheet1", [])], empty)
    opening(empty, folder)
    start, open_results, open_plain = (opening(one, folder) for one in (empty, results, plain))
    size, plain_size = results.stat().st_size / 1e6, plain.stat().st_size / 1e6
    count = sum(len(values) for _, values in cells)
    shutil.rmtree(folder)
    print(f"{given.loads} loads, {count:,} cells, {len(plan.ready)} ready")
    print(f"size: {size:.1f} MB, plain {plain_size:.1f} MB")
    print(f"writing: {writing:.1f} s, plain {plainly:.1f} s, ratio {writing / plainly:.1f}")
    ours, theirs = open_results - start, open_plain - start
    print(f"opening: {ours:.1f} s, plain {theirs:.1f} s, ratio {ours / theirs:.1f}")


if __name__ == "__main__":
    main()
