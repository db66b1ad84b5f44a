"""LibreOffice for tests: a workbook with its formulas worked out anew."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from loadplan.results.pdf import find_office
from tests.results.dump import opened

needs_office = pytest.mark.skipif(
    find_office() is None, reason="LibreOffice (soffice) is not installed on this machine"
)


def recalculated(workbook, folder: Path):
    """``workbook`` (of openpyxl, formulas without values) as LibreOffice calculates it."""
    source = folder / "asked.xlsx"
    workbook.save(source)
    return opened(saved_again(source, folder).read_bytes(), values=True)


def saved_again(source: Path, folder: Path) -> Path:
    """``source`` opened and saved by LibreOffice, in a folder of its own below ``folder``."""
    done = folder / "done"
    subprocess.run(
        [
            *(str(find_office()), f"-env:UserInstallation={(folder / 'profile').as_uri()}"),
            *("--headless", "--norestore", "--convert-to", "xlsx:Calc MS Excel 2007 XML"),
            *("--outdir", str(done), str(source)),
        ],
        check=True,
        capture_output=True,
        timeout=180,
    )
    return done / source.name
