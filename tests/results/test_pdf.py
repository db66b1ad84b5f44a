"""The load sheets as one PDF."""

from __future__ import annotations

import re
import stat
from dataclasses import replace

import pytest

from loadplan.problems import SaveFailed
from loadplan.results import pdf
from loadplan.results.pdf import save_pdf
from tests.results.build import DAY, plan_of
from tests.results.office import needs_office


def _pages(content):
    return len(re.findall(rb"/Type\s*/Page[^s]", content))


@needs_office
def test_each_load_sheet_is_one_page(tmp_path):
    path = tmp_path / "loads.pdf"
    save_pdf(plan_of(), path)
    assert path.read_bytes().startswith(b"%PDF")
    assert _pages(path.read_bytes()) == len(DAY.loads)
    assert [one.name for one in tmp_path.iterdir()] == ["loads.pdf"]


@needs_office
def test_a_metric_day_prints_on_a4(tmp_path):
    from loadplan.day.units import Units

    path = tmp_path / "loads.pdf"
    save_pdf(plan_of(replace(DAY, units=Units.METRIC, fixed=()), ready=(), tie_downs=()), path)
    (box,) = set(re.findall(rb"/MediaBox\s*\[\s*0 0 (\d+)[\d.]* (\d+)", path.read_bytes()))
    # A4 is 595 x 842 points.
    assert [int(side) for side in box] == pytest.approx([595, 842], abs=1)


def test_without_libreoffice_it_says_what_to_install(tmp_path, monkeypatch):
    monkeypatch.setattr(pdf, "find_office", lambda: None)
    with pytest.raises(SaveFailed) as caught:
        save_pdf(plan_of(), tmp_path / "loads.pdf")
    assert str(caught.value) == (
        "The PDF needs LibreOffice, and this machine has none. Install LibreOffice Calc "
        "(libreoffice.org, or the package libreoffice-calc), or leave --pdf out and print the "
        "load sheets from the results workbook."
    )
    assert list(tmp_path.iterdir()) == []


def test_an_existing_file_is_kept(tmp_path):
    path = tmp_path / "loads.pdf"
    path.write_bytes(b"old")
    with pytest.raises(SaveFailed, match="is there already and was left as it is"):
        save_pdf(plan_of(), path)
    assert path.read_bytes() == b"old"


def test_a_conversion_that_makes_nothing_is_told(tmp_path, monkeypatch):
    office = tmp_path / "soffice"
    office.write_text("#!/bin/sh\necho no display >&2\nexit 1\n")
    office.chmod(office.stat().st_mode | stat.S_IEXEC)
    monkeypatch.setattr(pdf, "find_office", lambda: str(office))
    with pytest.raises(SaveFailed) as caught:
        save_pdf(plan_of(), tmp_path / "loads.pdf")
    assert str(caught.value) == (
        f"LibreOffice ({office}) did not make the PDF: no display. Close its other windows and "
        "try again, or print the load sheets from the results workbook."
    )
