"""What the README shows is what the program does."""

import re
import shlex
from pathlib import Path

import pytest

from loadplan.exit_codes import EXIT_CODES
from loadplan.workbook.reference import sheets_table
from tests.cli_runs import Command

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```\w*\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)


def block(start):
    (found,) = [at for at, text in enumerate(BLOCKS) if start in text]
    return found


def test_the_table_of_sheets_is_up_to_date():
    assert f"\n{sheets_table()}\n" in README


def test_the_exit_codes_are_the_programs():
    rows = [f"| {code} | {text} |" for code, text in EXIT_CODES.items()]
    assert "\n".join(["| code | meaning |", "|---|---|", *rows]) in README


def test_the_first_command_prints_what_is_shown(monkeypatch, capsys, tmp_path):
    at = block("loadplan plan sample_jobs")
    _, _, command = BLOCKS[at].strip().partition(".venv/bin/loadplan ")
    arguments = shlex.split(command)
    arguments[1] = str(ROOT / arguments[1])
    monkeypatch.chdir(tmp_path)
    ran = Command(capsys)(*arguments)
    assert (ran.code, ran.err) == (0, [])
    assert ran.out == BLOCKS[at + 1].splitlines()
    assert (tmp_path / arguments[-1]).is_file()


def test_the_example_runs(monkeypatch, capsys, tmp_path):
    source = BLOCKS[block("from loadplan import")]
    assert len(source.splitlines()) <= 12
    (tmp_path / "sample_jobs").mkdir()
    day = ROOT / "sample_jobs" / "small_day.xlsx"
    (tmp_path / "sample_jobs" / day.name).write_bytes(day.read_bytes())
    monkeypatch.chdir(tmp_path)
    exec(compile(source, "README.md", "exec"), {})
    printed = capsys.readouterr().out.splitlines()
    assert printed[0] == "('1', '2', '3') () True"
    assert "rated strength issued 104131 104131" in printed
    assert (tmp_path / "small_day.results.xlsx").is_file()


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md", "sample_jobs/README.md"])
def test_files_that_pages_name_are_there(page):
    text = (ROOT / page).read_text(encoding="utf-8")
    named = re.findall(r"\]\(([^)]+)\)", text)
    named += re.findall(r"`((?:loadplan|tests|workbooks|sample_jobs)/[^` ]*)`", text)
    assert [name for name in named if not (ROOT / name).exists()] == []
