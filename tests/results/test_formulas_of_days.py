"""The live arithmetic of whole days: every formula worked out anew equals what was planned."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from loadplan.api import plan_day
from loadplan.results.words import CHANGED
from loadplan.results.workbook import results_bytes
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.results.dump import opened
from tests.results.office import needs_office, recalculated
from tests.results.test_formulas import ERRORS, _formulas

SAMPLES = sorted((Path(__file__).parents[2] / "sample_jobs").glob("*.xlsx"))


def _check(day: Path, folder: Path) -> None:
    content = results_bytes(plan_day(read_day(day), time_limit=20), pictures=False)
    stored = opened(content, values=True)
    again = recalculated(opened(content), folder)
    places = _formulas(opened(content))
    for sheet, cell in places:
        found, kept = again[sheet][cell].value, stored[sheet][cell].value
        if isinstance(kept, str):
            assert found == kept, (sheet, cell)
        else:
            assert found == pytest.approx(kept, rel=1e-12, abs=1e-9), (sheet, cell)
    texts = (
        c.value for s in again for row in s.iter_rows() for c in row if isinstance(c.value, str)
    )
    assert not [text for text in texts if re.match("|".join(map(re.escape, ERRORS)), text)]


@needs_office
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_samples(sample: Path, tmp_path: Path) -> None:
    _check(sample, tmp_path)


@needs_office
@pytest.mark.parametrize("seed", range(12))
def test_generated_days(seed: int, tmp_path: Path) -> None:
    day = tmp_path / "day.xlsx"
    write_workbook(generate(loads=2, seed=seed), day)
    _check(day, tmp_path)


@needs_office
def test_a_heavier_boulder_asks_more_of_its_ring(tmp_path: Path) -> None:
    """8,000 lb: half is 4,000 lb for the ring. 12,000 lb: 6,000 lb, and its chain bears 5,400."""
    day = next(path for path in SAMPLES if path.stem == "mixed_cargo")
    book = opened(results_bytes(plan_day(read_day(day), time_limit=20), pictures=False))
    sheet = book["Load 2"]
    ring = next(cell.row for cell in sheet["C"] if cell.value == "ring")
    rows = (cell.row for cell in sheet["C"] if cell.value == "weight, estimate")
    weight = next(row for row in rows if row > ring)
    assert sheet[f"E{weight}"].value == 8000
    sheet[f"E{weight}"] = 12000
    found = recalculated(book, tmp_path)["Load 2"]
    row = next(cell.row for cell in found["F"] if cell.value == "WLL of ring: each at least")
    assert (found[f"J{row}"].value, found[f"M{row}"].value) == (6000, "not met")
    assert found["A1"].value == CHANGED
