"""Problems as they are printed, and the catalogue of their codes."""

import re
from pathlib import Path

import pytest

import loadplan
from loadplan.problems import (
    Code,
    JudgementDisagrees,
    LoadplanError,
    NoSuchWorkbook,
    Place,
    Problem,
    SaveFailed,
    SolverFailed,
    WorkbookRejected,
)


def test_a_problem_is_printed_with_place_code_finding_and_remedy():
    problem = Problem(
        code=Code.OUT_OF_RANGE,
        place=Place(sheet="Gear", row=9, column="D"),
        found="Pieces is -2.",
        remedy="It must be a whole number, 0 or more.",
    )
    assert str(problem) == ("'Gear'!D9  V01  Pieces is -2. It must be a whole number, 0 or more.")


@pytest.mark.parametrize(
    ("place", "text"),
    [
        (Place(sheet="Added weight", row=2, column="AB"), "'Added weight'!AB2"),
        (Place(sheet="Bob's", row=1), "'Bob''s'!A1"),
        (Place(sheet="Cargo"), "'Cargo'"),
        (Place(), "Workbook"),
    ],
)
def test_places(place, text):
    assert str(place) == text


def test_a_code_stands_for_one_meaning():
    assert len({code.value for code in Code}) == len({code.meaning for code in Code}) == len(Code)
    assert all(re.fullmatch(r"[A-Z][0-9]{2}", code.value) for code in Code)
    assert all(code.meaning.endswith(".") for code in Code)


@pytest.mark.parametrize("code", Code, ids=lambda code: code.name)
def test_every_code_is_used(code):
    sources = Path(loadplan.__file__).parent.rglob("*.py")
    uses = sum(len(re.findall(rf"\bCode\.{code.name}\b", path.read_text())) for path in sources)
    assert uses


def test_errors_carry_their_exit_code():
    assert WorkbookRejected([]).exit_code == 3
    assert NoSuchWorkbook("x").exit_code == 2
    assert {error("x").exit_code for error in (SolverFailed, SaveFailed)} == {6}
    assert JudgementDisagrees(["x"]).exit_code == 6
    assert issubclass(NoSuchWorkbook, FileNotFoundError)
    assert issubclass(WorkbookRejected, LoadplanError)


def test_a_disagreement_tells_every_sentence():
    error = JudgementDisagrees(["L-1 is short.", "C38 is used twice."])
    assert str(error) == (
        "The plan did not pass the independent check.\nL-1 is short.\nC38 is used twice."
    )
