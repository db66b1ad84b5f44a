"""What a plan is written as beside the results workbook: CSV files, a PDF. All of it or nothing."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SaveFailed


@contextmanager
def csv_beside(plan: DayPlan, folder: Path) -> Iterator[None]:
    """Write the flat sheets of ``plan`` within ``folder``, and put them in place at the end.

    After an error inside, nothing of them is left. Raises
    :class:`~loadplan.problems.SaveFailed`.
    """
    from loadplan.tables.csv import save_csv

    new = not folder.exists()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(prefix=".loadplan-", dir=folder) as staged:
            made = save_csv(plan, Path(staged))
            yield
            for path in made:
                os.replace(path, folder / path.name)
    except OSError as error:
        raise _failed(folder, error) from error
    finally:
        if new:
            # Empty only if nothing came of it.
            with suppress(OSError):
                folder.rmdir()


@contextmanager
def pdf_beside(plan: DayPlan, path: Path) -> Iterator[None]:
    """Write the load sheets of ``plan`` as a PDF, and put it at ``path`` at the end.

    After an error inside, nothing of it is left. Raises :class:`~loadplan.problems.SaveFailed`.
    """
    from loadplan.results.pdf import save_pdf

    try:
        with tempfile.TemporaryDirectory(prefix=".loadplan-", dir=path.parent) as staged:
            made = Path(staged) / path.name
            save_pdf(plan, made)
            yield
            os.replace(made, path)
    except OSError as error:
        raise _failed(path, error) from error


def _failed(place: Path, error: OSError) -> SaveFailed:
    return SaveFailed(
        f"{place} could not be written: {error.strerror or error}. "
        "Check the folder and its free space."
    )
