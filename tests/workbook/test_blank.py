"""The empty day workbook: filled in and read back, and blocking what would be refused."""

import openpyxl
import pytest

from loadplan.day.article import CargoClass
from loadplan.day.units import Units
from loadplan.problems import SaveFailed
from loadplan.workbook.blank import blank_book, write_blank
from loadplan.workbook.columns import SHEETS
from loadplan.workbook.read import read_day
from tests.workbook.build import rejected_file


@pytest.fixture(scope="module", params=list(Units), ids=lambda units: units.value)
def book(request):
    return blank_book(request.param), request.param


def fill(sheet, at, **values):
    headings = {str(cell.value).split(" [")[0]: cell.column for cell in sheet[1]}
    for name, value in values.items():
        sheet.cell(row=at, column=headings[name.replace("_", " ")]).value = value


def test_sheets_in_order_with_every_heading(book):
    made, units = book
    assert made.sheetnames == ["Read me", *(sheet.name for sheet in SHEETS)]
    for sheet in SHEETS:
        headings = [cell.value for cell in made[sheet.name][1]]
        assert headings == [column.heading(units) for column in sheet.columns]
        if sheet.lines:
            names = [cell.value for cell in made[sheet.name]["A"]][1:]
            assert names == [line.heading(units) for line in sheet.lines]


@pytest.mark.parametrize("units", Units)
def test_empty_it_lacks_only_cargo_and_gear(tmp_path, units):
    write_blank(tmp_path / "day.xlsx", units)
    assert rejected_file(tmp_path / "day.xlsx") == [
        "'Cargo'  S06  The sheet has no rows. "
        "Fill it in: one row per article: a machine or a piece of cargo.",
        "'Gear'  S06  The sheet has no rows. "
        "Fill it in: one row per kind of piece, in the cage or kept on a trailer.",
    ]


@pytest.mark.parametrize("units", Units)
def test_filled_in_it_is_a_day_without_warnings(tmp_path, units):
    made = blank_book(units)
    fill(made["Cargo"], 2, Article="007", Load="L-1", Class="general", Weight=500, Length=1)
    fill(made["Gear"], 2, Gear="S", Kind="ratchet strap", Size="2", WLL=3000, Quantity=4)
    made.save(tmp_path / "day.xlsx")
    day = read_day(tmp_path / "day.xlsx")
    assert (day.units, day.articles[0].id, day.articles[0].weight) == (units, "007", 500)
    assert day.warnings == ()


def test_drop_downs_block_and_list_the_words_of_the_reader(book):
    made, _ = book
    cargo = made["Cargo"]
    rules = {str(rule.sqref): rule for rule in cargo.data_validations.dataValidation}
    rule = rules["C2:C5000"]
    assert (rule.type, rule.showErrorMessage, rule.errorStyle) == ("list", True, "stop")
    sheet, cells = rule.formula1.split("!")
    assert sheet == "'Read me'"
    words = [row[0].value for row in made["Read me"][cells.replace("$", "")]]
    assert words == list(CargoClass)


def test_every_rule_blocks(book):
    made, _ = book
    rules = [rule for sheet in made for rule in sheet.data_validations.dataValidation]
    assert len(rules) > 20
    assert all(rule.showErrorMessage and rule.errorStyle == "stop" for rule in rules)


def test_whole_numbers_have_the_bounds_of_the_reader(book):
    made, _ = book
    rules = [
        (str(rule.sqref)[0], rule.formula1, rule.formula2)
        for rule in made["Cargo"].data_validations.dataValidation
        if rule.type == "whole"
    ]
    assert rules == [("P", "0", "2")]


def test_ids_and_sizes_are_formatted_as_text_far_down(book):
    made, _ = book
    gear = made["Gear"]
    for letter in ("A", "C", "D"):
        assert gear[f"{letter}2"].number_format == "@"
        assert gear.column_dimensions[letter].number_format == "@"
    assert gear["F2"].number_format == "General"


def test_every_heading_has_a_note(book):
    made, _ = book
    for sheet in SHEETS:
        assert all(cell.comment and cell.comment.text for cell in made[sheet.name][1])


def test_it_prints_on_the_paper_of_its_units(book):
    made, units = book
    paper = {Units.US: 1, Units.METRIC: 9}[units]
    assert {sheet.page_setup.paperSize for sheet in made} == {paper}
    assert made["Cargo"].freeze_panes == "A2"
    assert made["Cargo"].print_title_rows == "$1:$1"


def test_the_read_me_has_a_glossary_and_an_example_without_merged_cells(book):
    made, units = book
    page = made["Read me"]
    texts = [cell.value for row in page.iter_rows() for cell in row if cell.value is not None]
    for sheet in SHEETS:
        for column in sheet.lines or sheet.columns:
            assert column.heading(units) in texts
            assert column.help in texts
    assert "EX-7" in texts
    assert not page.merged_cells.ranges


def test_no_place_to_write(tmp_path):
    path = tmp_path / "gone" / "day.xlsx"
    with pytest.raises(SaveFailed) as caught:
        write_blank(path, Units.US)
    assert str(caught.value) == (
        f"There is no folder {path.parent}. Make it, or name another place."
    )


def test_a_file_that_is_there_is_replaced_only_when_told_to(tmp_path):
    path = tmp_path / "day.xlsx"
    path.write_text("mine")
    with pytest.raises(SaveFailed) as caught:
        write_blank(path, Units.US)
    assert str(caught.value) == (
        f"{path} is there already and was left as it is. "
        "Choose another name, or add --force to replace it."
    )
    assert path.read_text() == "mine"
    write_blank(path, Units.US, force=True)
    assert openpyxl.load_workbook(path)


def test_nothing_is_left_beside_it(tmp_path):
    write_blank(tmp_path / "day.xlsx", Units.US)
    assert [one.name for one in tmp_path.iterdir()] == ["day.xlsx"]
    assert openpyxl.load_workbook(tmp_path / "day.xlsx").properties.title == "Day workbook (US)"
