"""Files that are no day workbook: each with its own message."""

import zipfile

import pytest

from loadplan.problems import NoSuchWorkbook
from loadplan.workbook import limits
from loadplan.workbook.read import read_day
from tests.workbook.build import FIRST_SHEET, SMALLEST, rejected_file, save, with_parts

MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
FEWER = "Delete what is not needed, blank formatted rows and columns too, and save again."
SAVE_AGAIN = "Open it in a spreadsheet program, save it as .xlsx and plan that file."


def file(tmp_path, name, content):
    path = tmp_path / name
    path.write_bytes(content)
    return path


def with_sheet(tmp_path, xml):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    return with_parts(path, lambda parts: parts.update({FIRST_SHEET: xml.encode()}))


def sheet_of(rows):
    return f"<worksheet {MAIN}><sheetData>{rows}</sheetData></worksheet>"


def test_no_such_file(tmp_path):
    path = tmp_path / "day.xlsx"
    with pytest.raises(NoSuchWorkbook) as caught:
        read_day(path)
    assert str(caught.value) == f"There is no file {path}. Check the name and the folder."


def test_a_folder(tmp_path):
    with pytest.raises(NoSuchWorkbook) as caught:
        read_day(tmp_path)
    assert str(caught.value) == f"{tmp_path} is a folder. Name the day workbook in it."


@pytest.mark.parametrize(
    "content", [b"", b"Article,Load\n", b"PK\x03\x04 but no more", b"<html></html>"]
)
def test_not_a_workbook(tmp_path, content):
    assert rejected_file(file(tmp_path, "day.xlsx", content)) == [
        "Workbook  W01  The file cannot be read as a workbook (it is not an .xlsx archive, or "
        f"damaged). {SAVE_AGAIN}"
    ]


def test_an_archive_that_is_no_workbook(tmp_path):
    path = tmp_path / "day.xlsx"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("notes.txt", "nothing to plan")
    assert rejected_file(path) == [
        "Workbook  W01  The file cannot be read as a workbook (it is not an .xlsx archive). "
        f"{SAVE_AGAIN}"
    ]


def test_a_damaged_workbook(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    with_parts(path, lambda parts: parts.update({"xl/workbook.xml": b"<workbook"}))
    assert rejected_file(path) == [
        f"Workbook  W01  The file cannot be read as a workbook (it is damaged). {SAVE_AGAIN}"
    ]


def test_protected_with_a_password(tmp_path):
    # What a spreadsheet program writes then is an OLE container, which starts so.
    content = bytes.fromhex("D0CF11E0A1B11AE1") + bytes(504)
    assert rejected_file(file(tmp_path, "day.xlsx", content)) == [
        "Workbook  W02  The workbook is protected with a password, or in the old binary format. "
        "Save it as .xlsx without a password."
    ]


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("day.xls", ".xls (the old binary format)"),
        ("day.xlsm", ".xlsm (the format with macros)"),
        ("day.csv", ".csv (plain text)"),
        ("day.ods", ".ods (another program's format)"),
        ("day.pdf", ".pdf"),
        ("day", "nothing"),
    ],
)
def test_the_wrong_extension(tmp_path, name, found):
    assert rejected_file(file(tmp_path, name, b"x" * 600)) == [
        f"Workbook  W03  The name of the file ends in {found}, not in .xlsx. "
        "Save the workbook as .xlsx and plan that file."
    ]


def test_capitals_in_the_extension_do_not_matter(tmp_path):
    assert read_day(save(tmp_path / "DAY.XLSX", SMALLEST)).name == "DAY"


def test_macros(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    with_parts(path, lambda parts: parts.update({"xl/vbaProject.bin": b"code"}))
    assert rejected_file(path) == [
        "Workbook  W04  The workbook holds macros. Save the workbook as .xlsx and plan that file."
    ]


@pytest.mark.parametrize(
    "kind", ["sheet.macroEnabled.main+xml", "vbaProject", "template.macroEnabledTemplate.main+xml"]
)
def test_macros_are_known_by_their_type_whatever_the_file_is_called(tmp_path, kind):
    path = save(tmp_path / "day.xlsx", SMALLEST)

    def retype(parts):
        types = parts["[Content_Types].xml"]
        parts["[Content_Types].xml"] = types.replace(b"sheet.main+xml", kind.encode())

    with_parts(path, retype)
    assert rejected_file(path) == [
        "Workbook  W04  The workbook holds macros. Save the workbook as .xlsx and plan that file."
    ]


def test_macro_sheets(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    with_parts(path, lambda parts: parts.update({"xl/macrosheets/sheet1.xml": b"<macrosheet/>"}))
    assert rejected_file(path) == [
        "Workbook  W04  The workbook holds macros. Save the workbook as .xlsx and plan that file."
    ]


@pytest.mark.filterwarnings("ignore:Duplicate name")
@pytest.mark.parametrize("name", [FIRST_SHEET, FIRST_SHEET.upper()])
def test_two_parts_of_one_name(tmp_path, name):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    with zipfile.ZipFile(path, "a") as archive:
        archive.writestr(name, sheet_of("<row/>"))
    assert rejected_file(path) == [
        "Workbook  W01  The file cannot be read as a workbook (two of its parts have the same "
        f"name). {SAVE_AGAIN}"
    ]


def test_half_an_archive(tmp_path):
    content = save(tmp_path / "whole.xlsx", SMALLEST).read_bytes()
    assert rejected_file(file(tmp_path, "day.xlsx", content[: len(content) // 2])) == [
        "Workbook  W01  The file cannot be read as a workbook (it is not an .xlsx archive, or "
        f"damaged). {SAVE_AGAIN}"
    ]


@pytest.mark.parametrize("declared", ["SYSTEM 'file:///etc/hostname'", "SYSTEM 'http://[::1]/x'"])
def test_entities_from_elsewhere(tmp_path, declared):
    content = f"<!DOCTYPE x [<!ENTITY a {declared}>]>" + sheet_of("<row><c><v>&a;</v></c></row>")
    assert rejected_file(with_sheet(tmp_path, content)) == [
        "Workbook  W01  The file cannot be read as a workbook (it defines a document type). "
        f"{SAVE_AGAIN}"
    ]


def test_links_to_other_files_are_not_followed(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)

    def link(parts):
        parts["xl/externalLinks/externalLink1.xml"] = f"<externalLink {MAIN}/>".encode()
        cell = b"<c><f>[1]Sheet1!A1</f><v>20</v></c>"
        parts[FIRST_SHEET] = parts[FIRST_SHEET].replace(
            b"</row></sheetData>", cell + b"</row></sheetData>"
        )

    assert len(read_day(with_parts(path, link)).articles) == 1


def test_entities(tmp_path):
    bomb = '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>' + sheet_of("<row/>")
    assert rejected_file(with_sheet(tmp_path, bomb)) == [
        "Workbook  W01  The file cannot be read as a workbook (it defines a document type). "
        f"{SAVE_AGAIN}"
    ]


def test_the_library_for_hostile_xml_is_in_force():
    import openpyxl
    import openpyxl.xml.functions as used

    assert openpyxl.DEFUSEDXML
    assert used.iterparse.__module__.startswith("defusedxml")


@pytest.mark.parametrize(
    "encoding", ["utf-16", "cp037"], ids=["two bytes a letter", "letters elsewhere"]
)
def test_another_encoding(tmp_path, encoding):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    xml = f'<?xml version="1.0" encoding="{encoding}"?>'
    rest = sheet_of("<row/>")
    content = (xml + rest).encode(encoding) if encoding == "utf-16" else (xml + rest).encode()
    with_parts(path, lambda parts: parts.update({FIRST_SHEET: content}))
    assert rejected_file(path) == [
        "Workbook  W01  The file cannot be read as a workbook (it is not written in UTF-8). "
        f"{SAVE_AGAIN}"
    ]


def test_a_decompression_bomb(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)
    size = limits.MOST_UNPACKED_BYTES
    with_parts(path, lambda parts: parts.update({"xl/media/image1.png": bytes(size)}))
    assert path.stat().st_size < size / 500
    (line,) = rejected_file(path)
    assert line.startswith("Workbook  W05  The file unpacks to 134,2")
    assert line.endswith(f" bytes; 134,217,728 is the most. {FEWER}")


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        (
            "".join(f'<row r="{row}">{"<c/>" * 5}</row>' for row in range(1, 80_002)),
            "The workbook has over 400,000 cells, blank formatted ones counted.",
        ),
        ("<row/>" * 200_001, "The workbook has over 200,000 rows, blank formatted ones counted."),
        (
            "<row/>" + "<x/>" * 100_001,
            "The workbook has over 100,000 styles, rules and other elements.",
        ),
        (
            "<row><c>" + "<v/>" * 100_100 + "</c></row>",
            "The cells of the workbook hold more than one value each.",
        ),
        ("<row " + "a" * 300_000 + "/>", "A tag or text in the workbook is far too long."),
        (
            '<row r="999999999"><c><v>1</v></c></row>',
            "Sheet Cargo reaches beyond row 200,000.",
        ),
        (
            '<row r="1"><c r="ZZZ1"><v>1</v></c></row>',
            "Sheet Cargo has cells beyond column 1,000.",
        ),
        (
            "".join(f'<row r="{row}"><c r="ZZZ{row}"/></row>' for row in range(1, 100)),
            "Sheet Cargo reaches so far to the right that its rows have over 400,000 cells.",
        ),
    ],
    ids=["cells", "rows", "elements", "values", "long tag", "far down", "far right", "wide"],
)
def test_absurd_dimensions(tmp_path, rows, found):
    path = with_sheet(tmp_path, sheet_of(rows))
    assert rejected_file(path) == [f"Workbook  W05  {found} {FEWER}"]


def test_too_many_sheets(tmp_path):
    sheets = {f"S{number}": [] for number in range(201)}
    assert rejected_file(save(tmp_path / "day.xlsx", {**SMALLEST, **sheets})) == [
        f"Workbook  W05  The workbook has 203 sheets; 200 is the most. {FEWER}"
    ]


def test_blank_formatted_rows_within_the_limits_are_passed_over(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)

    def add(parts):
        blank = "".join(f'<row r="{row}"><c r="A{row}" s="0"/></row>' for row in range(3, 5000))
        parts[FIRST_SHEET] = parts[FIRST_SHEET].replace(
            b"</sheetData>", blank.encode() + b"</sheetData>"
        )

    assert len(read_day(with_parts(path, add)).articles) == 1


def test_a_wide_row_of_blank_formatted_cells_is_passed_over(tmp_path):
    path = save(tmp_path / "day.xlsx", SMALLEST)

    def add(parts):
        parts[FIRST_SHEET] = parts[FIRST_SHEET].replace(
            b"</row></sheetData>", b'<c r="XFD2" s="0"/></row></sheetData>'
        )

    assert len(read_day(with_parts(path, add)).articles) == 1
