"""The load sheets as one PDF, printed by LibreOffice."""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SaveFailed
from loadplan.results.workbook import load_sheets_bytes
from loadplan.tables.place_file import place_file, refuse_existing

_NAMES = ("soffice", "libreoffice")
_USUAL = (
    "/Applications/LibreOffice.app/Contents/MacOS/soffice",
    r"C:\Program Files\LibreOffice\program\soffice.exe",
)
_SECONDS = 300


def find_office() -> str | None:
    """The LibreOffice program of this machine, or None."""
    found = (shutil.which(name) for name in (*_NAMES, *_USUAL))
    return next((name for name in found if name), None)


def save_pdf(plan: DayPlan, path: Path, force: bool = False) -> None:
    """Write the load sheets of ``plan`` to ``path`` as one PDF, whole or not at all.

    Raises ``SaveFailed`` where LibreOffice is not there, does not manage, or the file cannot be
    written.
    """
    refuse_existing(path, force=force)
    office = find_office()
    if office is None:
        raise SaveFailed(
            "The PDF needs LibreOffice, and this machine has none. Install LibreOffice Calc "
            "(libreoffice.org, or the package libreoffice-calc), or leave --pdf out and print the "
            "load sheets from the results workbook."
        )
    place_file(path, _converted(office, load_sheets_bytes(plan)), force=force)


def _converted(office: str, workbook: bytes) -> bytes:
    with tempfile.TemporaryDirectory(prefix="loadplan-") as name:
        folder = Path(name)
        source = folder / "loads.xlsx"
        source.write_bytes(workbook)
        command = [
            office,
            f"-env:UserInstallation={(folder / 'profile').as_uri()}",
            *("--headless", "--norestore", "--convert-to", "pdf"),
            *("--outdir", str(folder), str(source)),
        ]
        problem = _run(command)
        made = folder / "loads.pdf"
        if not made.is_file():
            raise SaveFailed(
                f"LibreOffice ({office}) did not make the PDF: {problem or 'no reason given'}. "
                "Close its other windows and try again, or print the load sheets from the results "
                "workbook."
            )
        return made.read_bytes()


def _run(command: list[str]) -> str:
    """Run the conversion; what went wrong in words, or nothing."""
    try:
        done = subprocess.run(
            command,
            capture_output=True,
            check=False,
            timeout=_SECONDS,
            env={**os.environ, "SAL_USE_VCLPLUGIN": "svp"},
        )
    except subprocess.TimeoutExpired:
        return f"it took longer than {_SECONDS} seconds"
    except OSError as error:
        return error.strerror or str(error)
    return done.stderr.decode("utf-8", "replace").strip()
