"""Problems: what is wrong with a day workbook, each with its place, and the errors of a run.

A problem is data. Checks yield problems; the reader collects them and raises
:class:`WorkbookRejected` once, with all of them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Code(StrEnum):
    """The catalogue: every kind of problem by its code; ``meaning`` is one line for people."""

    meaning: str

    def __new__(cls, code: str, meaning: str) -> Code:
        member = str.__new__(cls, code)
        member._value_ = code
        member.meaning = meaning
        return member

    NOT_A_WORKBOOK = "W01", "The file is not a workbook that can be read."
    ENCRYPTED = "W02", "The workbook is protected with a password."
    WRONG_EXTENSION = "W03", "The file name does not end in .xlsx."
    MACROS = "W04", "The workbook holds macros."
    TOO_LARGE = "W05", "The workbook is larger than the reader accepts."
    MISSING_SHEET = "S01", "A required sheet is missing."
    MISSING_HEADING = "S02", "A required heading is missing."
    DUPLICATE_SHEET = "S03", "Two sheets have the same name."
    DUPLICATE_HEADING = "S04", "Two columns have the same heading."
    HEADING_UNIT = "S05", "The unit in a heading does not suit the column."
    NO_ROWS = "S06", "A required sheet has no rows."
    OUT_OF_RANGE = "V01", "A number is outside what the column takes."
    MISSING_VALUE = "V02", "A required cell is empty."
    NOT_A_NUMBER = "V03", "A cell should hold a number and does not."
    TWO_WAYS = "V04", "A number or unit can be read in more than one way."
    WRONG_UNIT = "V05", "A unit is unknown or of the wrong kind."
    NO_UNIT = "V06", "A number has no unit, neither in its cell nor in the heading."
    NOT_A_WORD = "V07", "A cell should hold one of a few words and does not."
    NO_STORED_VALUE = "V08", "A formula has no stored value."
    ERROR_CELL = "V09", "A cell holds a spreadsheet error."
    WRONG_TYPE = "V10", "A cell holds a date, a time or TRUE/FALSE where something else belongs."
    SIZE = "V11", "A size cannot be read."
    TOO_LONG = "V12", "A text is too long."
    ACCESSORIES = "V13", "A list of accessories cannot be used."
    DUPLICATE_ID = "R01", "An id is used twice."
    UNKNOWN_ID = "R02", "An id is used that is not defined."
    KIT = "R03", "A piece and the trailer it is kept on do not go together."
    TAKEN_WORD = "R04", "An id is a word that means something else in the results."
    TIME = "T01", "A time cannot be read."
    TIME_ORDER = "T02", "A load is back before it is out."
    OVERLAP = "T03", "One trailer is on two loads at once."
    DATE = "T04", "A date is missing, cannot be read, or is far from the day."
    SETTING = "H01", "A setting or house rule is not known."
    SETTING_TWICE = "H02", "A setting or house rule is given twice."
    LOOSER = "H03", "A house rule would go below the rule set."
    LENGTH_NEEDED = "K01", "A rule counts by length and the length is missing."
    ROUTING = "K02", "The routing is not open to an article secured like this."
    SECTION = "K03", "An article contradicts the section it is secured under."
    DETAILS = "K04", "Details lack what the section of a class needs, or cannot be read."
    GROUP = "K05", "The articles of a group cannot be secured together."
    FIXED_PLACE = "F01", "A fixed piece stands where the article has no such place."
    FIXED_PIECE = "F02", "A fixed piece may not be used, or not there."
    FIXED_SET = "F03", "The fixed pieces of one tie-down do not make one tie-down."
    FIXED_COUNT = "F04", "More pieces are fixed at once than are owned."
    PRICE = "P01", "A price cannot be used."


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where in a workbook: a sheet, and in it a row and a column, as far as they are known.

    ``sheet`` None means the file as a whole.
    """

    sheet: str | None = None
    row: int | None = None
    column: str = "A"

    def __str__(self) -> str:
        if self.sheet is None:
            return "Workbook"
        quoted = "'" + self.sheet.replace("'", "''") + "'"
        return quoted if self.row is None else f"{quoted}!{self.column}{self.row}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing wrong: ``found`` says what stands there, ``remedy`` what to write instead.

    Both are whole sentences.
    """

    code: Code
    place: Place
    found: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.place}  {self.code.value}  {self.found} {self.remedy}"


class LoadplanError(Exception):
    """What a run can end with for a known reason; ``exit_code`` is the command's."""

    exit_code = 1


class NoSuchWorkbook(LoadplanError, FileNotFoundError):  # noqa: N818
    """The day workbook named does not exist."""

    exit_code = 2


class WorkbookRejected(LoadplanError):  # noqa: N818
    """The day workbook has problems; ``problems`` holds all of them in workbook order.

    ``warnings`` are sentences on what was left out of the workbook without harm: such a line, a
    heading taken for none of the known ones for instance, is often why something else is missing.
    """

    exit_code = 3

    def __init__(self, problems: Iterable[Problem], warnings: Iterable[str] = ()) -> None:
        self.problems = tuple(problems)
        self.warnings = tuple(warnings)
        super().__init__(self.problems)

    def __str__(self) -> str:
        count = len(self.problems)
        last = f"{count} problem{'' if count == 1 else 's'}. Nothing was planned or written."
        return "\n".join([*map(str, self.problems), last])


PLAN_AGAIN = (
    "Nothing was written. Plan the day again; if that fails too, send the day workbook to whoever "
    "keeps this program for you."
)


class SolverFailed(LoadplanError):  # noqa: N818
    """The solver broke, or answered with something that is not a solution."""

    exit_code = 6


class JudgementDisagrees(LoadplanError):  # noqa: N818
    """The independent judgement found a plan to break a rule; ``disagreements`` are sentences."""

    exit_code = 6

    def __init__(self, disagreements: Iterable[str]) -> None:
        self.disagreements = tuple(disagreements)
        super().__init__(self.disagreements)

    def __str__(self) -> str:
        return "\n".join(["The plan did not pass the independent check.", *self.disagreements])


class SaveFailed(LoadplanError):  # noqa: N818
    """The results could not be written; the message says why and what to do."""

    exit_code = 6
