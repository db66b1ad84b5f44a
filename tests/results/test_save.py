"""Saving the results workbook, and ids that are hostile to spreadsheets."""

from __future__ import annotations

import zipfile
from dataclasses import replace

import pytest

from loadplan.day.load import Load
from loadplan.problems import SaveFailed
from loadplan.results.save import save_results
from loadplan.results.workbook import results_bytes
from tests.results.build import DAY, EXCAVATOR, HOUR, plan_of
from tests.results.dump import opened

FLAT = ("Summary", "Shortfall", "Pick list", "Tie-downs", "Checks", "Gear use", "Sources")
HOSTILE = (
    *("=1+1", "007", "+A/B:[c]*?", "a'", "A'", "@cmd", "-5", "http://example.org/x"),
    *("x" * 60, "X" * 60, "Ω 中\x07\tz", "1E5", "TRUE", "&P"),
)


def test_the_workbook_is_written_and_nothing_else(tmp_path):
    path = tmp_path / "small.results.xlsx"
    save_results(plan_of(), path)
    assert [one.name for one in tmp_path.iterdir()] == ["small.results.xlsx"]
    assert zipfile.ZipFile(path).testzip() is None


def test_an_existing_file_needs_force(tmp_path):
    path = tmp_path / "r.xlsx"
    path.write_bytes(b"old")
    with pytest.raises(SaveFailed) as caught:
        save_results(plan_of(), path)
    assert str(caught.value) == (
        f"{path} is there already and was left as it is. "
        "Choose another name, or add --force to replace it."
    )
    assert path.read_bytes() == b"old"
    save_results(plan_of(), path, force=True)
    assert zipfile.is_zipfile(path)


def test_another_extension_is_refused(tmp_path):
    with pytest.raises(SaveFailed) as caught:
        save_results(plan_of(), tmp_path / "r.xls")
    assert str(caught.value) == (
        f"{tmp_path / 'r.xls'} does not end in .xlsx. Results are written as .xlsx only."
    )


def test_the_board_is_first_and_shown_first():
    book = opened(results_bytes(plan_of()))
    assert book.sheetnames[0] == "Board"
    assert book.active.title == "Board"
    assert book.properties.title == "Results of North yard 2026-07-14"


def test_flat_sheets_are_tables_without_merged_cells():
    book = opened(results_bytes(plan_of()))
    for name in FLAT:
        sheet = book[name]
        assert not sheet.merged_cells.ranges
        assert sheet.freeze_panes == "A2"
        (table,) = sheet.tables.values()
        assert table.ref == sheet.dimensions
        headings = [cell.value for cell in sheet[1]]
        assert len(set(headings)) == len(headings)
        assert all(headings)


def test_a_table_without_rows_has_its_headings():
    plan = plan_of(replace(DAY, fixed=()), ready=(), tie_downs=())
    sheet = opened(results_bytes(plan))["Tie-downs"]
    assert sheet.max_row == 1
    assert sheet["A1"].value == "Load"


def test_links_lead_from_summary_and_board_to_the_load_sheets_and_back():
    book = opened(results_bytes(plan_of()))
    places = [cell.hyperlink.location for cell in book["Summary"]["M"][1:]]
    assert places == ["'Load 1'!A1", "'Load 2'!A1", "'Load 3'!A1"]
    back = [cell.hyperlink.location for cell in _linked(book["Load 1"])]
    assert back == ["'Board'!A1", "'Summary'!A1"]
    board = {cell.hyperlink.location for cell in _linked(book["Board"])}
    assert board == {"'Load 1'!A1", "'Load 2'!A1", "'Load 3'!A1"}


def _linked(sheet):
    return [cell for row in sheet.iter_rows() for cell in row if cell.hyperlink is not None]


@pytest.fixture(scope="module")
def hostile():
    loads = tuple(
        Load(id=one, out=place * HOUR, back=(place + 1) * HOUR, driver="=cmd", destination="@x")
        for place, one in enumerate(HOSTILE)
    )
    articles = tuple(replace(EXCAVATOR, id=f"={one}", load=one) for one in HOSTILE)
    gear = (replace(DAY.gear[0], id="=GEAR()"), *DAY.gear[1:])
    day = replace(
        DAY, loads=loads, articles=articles, gear=gear, trailers=(), fixed=(), yard="=Yard & Co"
    )
    tie_downs = tuple(
        replace(
            one,
            load=load,
            article=f"={load}",
            member="=GEAR()" if one.member == "CH-1" else one.member,
        )
        for load in HOSTILE
        for one in plan_of().tie_downs[:6]
    )
    plan = plan_of(replace(day, turnaround=0), ready=HOSTILE, tie_downs=tie_downs, shortages=())
    return results_bytes(plan)


def test_hostile_ids_have_a_sheet_each(hostile):
    names = [name for name in opened(hostile).sheetnames if name.startswith("Load")]
    assert len({name.casefold() for name in names}) == len(HOSTILE)


def test_hostile_text_is_never_a_formula_or_an_outside_link(hostile):
    book = opened(hostile)
    for sheet in book:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    assert sheet.title.startswith("Load")
                    assert cell.value.startswith(("=MIN(", "=IF(", "=SUM(", "=J", "=E"))
                assert cell.hyperlink is None or cell.hyperlink.target is None
    with zipfile.ZipFile(_stream(hostile)) as archive:
        for name in archive.namelist():
            if name.endswith(".rels"):
                assert b"TargetMode" not in archive.read(name)


def test_hostile_ids_are_text_as_typed(hostile):
    column = opened(hostile)["Summary"]["A"][1:]
    found = [cell.value for cell in column]
    assert found == [one.replace("\x07\t", "\ufffd ") for one in HOSTILE]
    assert {cell.data_type for cell in column} == {"s"}


def test_every_part_of_the_file_is_well_formed(hostile):
    from xml.etree import ElementTree

    with zipfile.ZipFile(_stream(hostile)) as archive:
        for name in archive.namelist():
            if name.endswith((".xml", ".rels")):
                ElementTree.fromstring(archive.read(name))


def _stream(content):
    import io

    return io.BytesIO(content)
