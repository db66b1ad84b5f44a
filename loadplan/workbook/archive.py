"""The file before any spreadsheet library sees it: is it a workbook, and is it of bearable size?"""

from __future__ import annotations

import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path

from loadplan.problems import Code, NoSuchWorkbook, Place, Problem, WorkbookRejected
from loadplan.workbook import limits
from loadplan.workbook.weigh import Unfit, weigh

_OLE = bytes.fromhex("D0CF11E0A1B11AE1")
_CONTENT_TYPES = "[content_types].xml"
_MACRO_TYPES = (b"macroenabled", b"vbaproject", b"macrosheet")
_OTHERS = {
    ".xls": "the old binary format",
    ".xlsb": "the binary format",
    ".xlsm": "the format with macros",
    ".xltx": "a template",
    ".xltm": "a template with macros",
    ".ods": "another program's format",
    ".csv": "plain text",
    ".txt": "plain text",
}
_SAVE_AS = "Save the workbook as .xlsx and plan that file."
_FEWER = "Delete what is not needed, blank formatted rows and columns too, and save again."


def check_file(path: Path) -> None:
    """Raise unless ``path`` is an .xlsx archive within the limits.

    :class:`NoSuchWorkbook` where there is no such file, :class:`WorkbookRejected` otherwise.
    """
    if not path.exists():
        raise NoSuchWorkbook(f"There is no file {path}. Check the name and the folder.")
    if path.is_dir():
        raise NoSuchWorkbook(f"{path} is a folder. Name the day workbook in it.")
    problem = next(_problems(path), None)
    if problem is not None:
        raise WorkbookRejected([problem])


def file_problem(code: Code, found: str, remedy: str) -> Problem:
    """A problem of the file as a whole."""
    return Problem(code=code, place=Place(), found=found, remedy=remedy)


def unreadable(why: str) -> Problem:
    """The file is not a workbook, or a damaged one."""
    return file_problem(
        Code.NOT_A_WORKBOOK,
        f"The file cannot be read as a workbook ({why}).",
        "Open it in a spreadsheet program, save it as .xlsx and plan that file.",
    )


def too_large(found: str) -> Problem:
    """The file is beyond one of the limits."""
    return file_problem(Code.TOO_LARGE, found, _FEWER)


def _problems(path: Path) -> Iterator[Problem]:
    try:
        with path.open("rb") as file:
            start = file.read(len(_OLE))
            size = file.seek(0, 2)
    except OSError as error:
        yield unreadable(error.strerror or "it cannot be opened")
        return
    suffix = path.suffix.lower()
    if start == _OLE and suffix != ".xls":
        yield file_problem(
            Code.ENCRYPTED,
            "The workbook is protected with a password, or in the old binary format.",
            "Save it as .xlsx without a password.",
        )
    if suffix != ".xlsx":
        what = f" ({_OTHERS[suffix]})" if suffix in _OTHERS else ""
        found = f"The name of the file ends in {suffix or 'nothing'}{what}, not in .xlsx."
        yield file_problem(Code.WRONG_EXTENSION, found, _SAVE_AS)
    if size > limits.MOST_FILE_BYTES:
        yield too_large(f"The file has {size:,} bytes; {limits.MOST_FILE_BYTES:,} is the most.")
    try:
        with zipfile.ZipFile(path) as archive:
            yield from _archive_problems(archive)
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, OSError):
        yield unreadable("it is not an .xlsx archive, or damaged")
    except (RuntimeError, ValueError, UnicodeError):
        yield unreadable("its archive is damaged or encrypted")


def _archive_problems(archive: zipfile.ZipFile) -> Iterator[Problem]:
    parts = archive.infolist()
    unpacked = sum(part.file_size for part in parts)
    if len(parts) > limits.MOST_PARTS:
        yield too_large(f"The file has {len(parts):,} parts; {limits.MOST_PARTS:,} is the most.")
    if unpacked > limits.MOST_UNPACKED_BYTES:
        most = limits.MOST_UNPACKED_BYTES
        yield too_large(f"The file unpacks to {unpacked:,} bytes; {most:,} is the most.")
    names = {part.filename.lower(): part for part in parts}
    if any(name.endswith("vbaproject.bin") or "macrosheets/" in name for name in names):
        yield _macros()
    if _CONTENT_TYPES not in names:
        yield unreadable("it is not an .xlsx archive")
        return
    if len(names) < len(parts):
        # Which of them counts differs from program to program.
        yield unreadable("two of its parts have the same name")
    try:
        excess = weigh(archive)
    except Unfit as unfit:
        yield unreadable(str(unfit))
        return
    if excess:
        yield too_large(excess)
    types = archive.read(names[_CONTENT_TYPES]).lower()
    if any(word in types for word in _MACRO_TYPES):
        yield _macros()


def _macros() -> Problem:
    return file_problem(Code.MACROS, "The workbook holds macros.", _SAVE_AS)
