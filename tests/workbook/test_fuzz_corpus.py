"""Workbooks that a coverage-guided fuzzer kept: each is a day or a rejection, never a crash."""

from pathlib import Path

import pytest

from tests.workbook.test_mangled import problems_of

CORPUS = sorted((Path(__file__).parents[1] / "data" / "fuzz").glob("*.xlsx"))


def test_there_is_a_corpus():
    assert len(CORPUS) >= 20


@pytest.mark.parametrize("path", CORPUS, ids=lambda path: path.stem)
def test_each_is_a_day_or_a_rejection(path):
    problems = problems_of(path)
    assert problems is None or all(one.found and one.remedy for one in problems)
