"""The whole command against the floor: ``python -m tests.bench.floor --loads 14 --seed 1``.

The floor is a process that reads every cell of the same day workbook with openpyxl and writes
every cell of the same results with XlsxWriter, each under the format it has, and does nothing
else: no pictures, no charts, no links. Printed: the whole command, planning alone, the floor, and
(whole - planning) / floor.
"""

from __future__ import annotations

import argparse
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.bench.generate import generate, write_workbook


def copy(day: Path, cells: Path, target: Path) -> None:
    """What the floor process does; ``cells`` holds the results' cells, ready to be written."""
    import pickle

    import openpyxl
    import xlsxwriter

    book = openpyxl.load_workbook(day, read_only=True, data_only=True)
    for sheet in book.worksheets:
        for _ in sheet.iter_rows(values_only=True):
            pass
    sheets = pickle.loads(cells.read_bytes())
    with xlsxwriter.Workbook(target) as out:
        formats: dict[tuple[str, bool, str], object] = {}
        for name, rows in sheets:
            page = out.add_worksheet(name)
            for row, column, value, style in rows:
                if style not in formats:
                    number, bold, fill = style
                    made = {"num_format": number, "bold": bold}
                    formats[style] = out.add_format(made | ({"bg_color": fill} if fill else {}))
                page.write(row, column, value, formats[style])


def gather(results: Path, cells: Path) -> int:
    """Puts every written cell of ``results`` into ``cells``; answers how many."""
    import pickle

    import openpyxl

    sheets = []
    for sheet in openpyxl.load_workbook(results, data_only=True).worksheets:
        rows = []
        for row in sheet.iter_rows():
            for cell in row:
                if cell.value is None and not cell.has_style:
                    continue
                fill = cell.fill.fgColor.rgb if cell.fill.fill_type == "solid" else ""
                colour = f"#{fill[-6:]}" if isinstance(fill, str) and fill else ""
                style = (cell.number_format, bool(cell.font.b), colour)
                value = cell.value if isinstance(cell.value, (int, float, str)) else None
                rows.append((cell.row - 1, cell.column - 1, value, style))
        sheets.append((sheet.title, rows))
    cells.write_bytes(pickle.dumps(sheets))
    return sum(len(rows) for _, rows in sheets)


def timed(command: list[str]) -> float:
    """Seconds from process start to its end."""
    started = time.monotonic()
    subprocess.run([sys.executable, *command], check=False, capture_output=True)
    return time.monotonic() - started


def planning(day: Path) -> float:
    """Planning alone, in this process."""
    from loadplan.api import plan_day
    from loadplan.workbook.read import read_day

    read = read_day(day)
    started = time.monotonic()
    plan_day(read)
    return time.monotonic() - started


def main() -> None:
    """Measures one day, each part ``--repeat`` times, and prints the medians."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--copy", type=Path, nargs=3, help=argparse.SUPPRESS)
    parser.add_argument("--loads", type=int, default=14)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--tight", action="store_true")
    parser.add_argument("--repeat", type=int, default=5)
    given = parser.parse_args()
    if given.copy:
        copy(*given.copy)
        return
    folder = Path(tempfile.mkdtemp(prefix="floor"))
    day, results = folder / "day.xlsx", folder / "results.xlsx"
    cells, copied = folder / "cells", folder / "copied.xlsx"
    write_workbook(generate(given.loads, given.seed, given.tight), day)
    plan = ["-m", "loadplan", "plan", str(day), "-o", str(results), "--force"]
    whole = statistics.median(timed(plan) for _ in range(given.repeat))
    number = gather(results, cells)
    again = ["-m", "tests.bench.floor", "--copy", str(day), str(cells), str(copied)]
    floor = statistics.median(timed(again) for _ in range(given.repeat))
    solving = statistics.median(planning(day) for _ in range(given.repeat))
    print(
        f"{given.loads} loads, {number:,} cells: whole command {whole:.2f} s, "
        f"planning {solving:.2f} s, floor {floor:.2f} s, "
        f"(whole - planning) / floor {(whole - solving) / floor:.2f}"
    )


if __name__ == "__main__":
    main()
