"""The same day gives the same tables wherever it is planned; nothing is asked of a network."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path
from random import Random

import pytest

from loadplan import plan_day, read_day
from tests.fuzz.small_book import sheets_in
from tests.workbook.build import save

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_jobs" / "short_cage.xlsx"
NETWORK = 99
# Any use of a socket ends the run at once with a code of its own.
GUARDED = f"""
import os, sys
def guard(event, arguments):
    if event.startswith("socket."):
        os.write(2, event.encode())
        os._exit({NETWORK})
sys.addaudithook(guard)
from loadplan.cli import main
main()
"""
ELSEWHERE = {
    "PYTHONHASHSEED": "4711",
    "TZ": "Asia/Kathmandu",
    "LC_ALL": "tr_TR.UTF-8",
    "LANG": "tr_TR.UTF-8",
    "PYTHONUTF8": "0",
    "COLUMNS": "40",
}


def tables(
    folder: Path, day: Path, code: int, cores: str = "", **environment: str
) -> dict[str, bytes]:
    """The CSV files of ``day``, planned in ``folder``."""
    command = [sys.executable, "-c", GUARDED, "plan", str(day), "-o", "r.xlsx", "--csv", "csv"]
    if cores and shutil.which("taskset"):
        command = ["taskset", "-c", cores, *command]
    known = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": "0", **environment}
    ran = subprocess.run(
        command, cwd=folder, env=known, capture_output=True, text=True, check=False
    )
    assert ran.returncode == code, ran.stderr
    return {path.name: path.read_bytes() for path in (folder / "csv").iterdir()}


def test_on_one_core_and_two_and_anywhere(tmp_path):
    here, there = tmp_path / "here", tmp_path / "dört köşe"
    here.mkdir()
    there.mkdir()
    assert tables(here, SAMPLE, code=4) == tables(there, SAMPLE, code=4, cores="0", **ELSEWHERE)


@pytest.mark.parametrize("use", ["socket.socket()", "socket.getaddrinfo('localhost', 80)"])
def test_a_use_of_the_network_would_be_noticed(use):
    code = GUARDED.replace("from loadplan.cli import main\nmain()", f"import socket\n{use}")
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False)
    assert ran.returncode == NETWORK


def flat(path: Path) -> dict[str, list[tuple[str, ...]]]:
    """The tables of a planned day, rows and lists of names sorted; no words made from row order."""
    found = {}
    for name, table in plan_day(read_day(path)).tables().items():
        kept = table[[one for one in table.columns if one not in ("Working", "Notes")]]
        rows = (
            tuple("; ".join(sorted(str(cell).split("; "))) for cell in row) for row in kept.values
        )
        found[name] = sorted(rows)
    return found


@pytest.mark.parametrize("sample", ["mixed_cargo", "short_cage"])
def test_in_any_order_of_rows(tmp_path, sample):
    given = sheets_in(ROOT / "sample_jobs" / f"{sample}.xlsx")
    mixed = {
        name: [rows[0], *Random(name).sample(rows[1:], len(rows) - 1)]
        for name, rows in given.items()
        if name in ("Cargo", "Gear", "Trailers", "Loads")
    }
    one = flat(save(tmp_path / "given.xlsx", given))
    assert one == flat(save(tmp_path / "mixed.xlsx", {**given, **mixed}))
