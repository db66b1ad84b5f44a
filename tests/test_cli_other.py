"""The other commands, the help, and what importing costs."""

import os
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

import loadplan as package
from loadplan.exit_codes import EXIT_CODES
from tests.cli_runs import Command, day_file
from tests.workbook.build import cargo_with, gear_with, save

HEAVY = ("pandas", "pint", "openpyxl", "xlsxwriter", "pulp", "highspy", "numpy", "matplotlib")


@pytest.fixture
def loadplan(capsys):
    return Command(capsys)


def python(*arguments, **more):
    return subprocess.run(
        [sys.executable, *arguments], capture_output=True, text=True, check=False, **more
    )


def test_check(tmp_path, loadplan):
    ran = loadplan("check", day_file(tmp_path))
    assert (ran.code, ran.err) == (0, [])
    assert ran.out == ["1 load, 1 article, 16 pieces of gear of 2 kinds. No problems, 0 warnings."]
    assert [path.name for path in tmp_path.iterdir()] == ["day.xlsx"]


def test_check_with_a_warning(tmp_path, loadplan):
    ran = loadplan("check", save(tmp_path / "day.xlsx", cargo_with("Colour", "red")))
    assert ran.code == 0
    assert ran.out[0].endswith("No problems, 1 warning.")
    assert ran.err == ["Warning: 'Cargo'!F1  The column \"Colour\" is not known and was left out."]


def test_check_with_problems(tmp_path, loadplan):
    ran = loadplan("check", save(tmp_path / "day.xlsx", gear_with("Quantity", -2)))
    assert (ran.code, ran.out) == (3, [])
    assert len(ran.err) == 2


def test_a_rejected_workbook_still_tells_its_warnings(tmp_path, loadplan):
    """A heading that is not known is often why a required cell is missing."""
    sheets = {**cargo_with("Wheight", 36000), "Gear": gear_with("Quantity", -2)["Gear"]}
    ran = loadplan("check", save(tmp_path / "day.xlsx", sheets))
    assert ran.code == 3
    assert ran.err[0].startswith("Warning: 'Cargo'!F1  The column \"Wheight\" is not known")
    assert ran.err[1].startswith("'Gear'!H2  V01")
    assert ran.err[2:] == ["1 problem. Nothing was planned or written."]


@pytest.mark.parametrize(("units", "heading"), [("US", "Weight [lb]"), ("METRIC", "Weight [kg]")])
def test_blank(tmp_path, loadplan, units, heading):
    path = tmp_path / "new.xlsx"
    ran = loadplan("blank", path, "--units", units)
    assert (ran.code, ran.out, ran.err) == (0, [f"Written: {path}"], [])
    headings = [cell.value for cell in openpyxl.load_workbook(path)["Cargo"][1]]
    assert heading in headings


def test_blank_keeps_a_file_that_is_there(tmp_path, loadplan):
    path = tmp_path / "new.xlsx"
    path.write_text("mine")
    ran = loadplan("blank", path)
    assert ran.code == 2
    assert ran.err[-1] == (
        f"Error: {path} is there already. Add --force to replace it, or give another name."
    )
    assert path.read_text() == "mine"
    assert loadplan("blank", path, "--force").code == 0
    assert openpyxl.load_workbook(path)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("plan",), "Error: Missing argument 'DAY.xlsx'."),
        (("plan", "x.xlsx", "--fast"), "Error: No such option"),
        (("blank", "x.xlsx", "--units", "stone"), None),
        (("plann", "x.xlsx"), None),
    ],
)
def test_a_wrong_command_line(loadplan, arguments, message):
    ran = loadplan(*arguments)
    assert ran.code == 2
    assert ran.err[-1].startswith("Error: ")
    if message:
        assert ran.err[-1].startswith(message[:-1])


def test_no_command_shows_the_help(loadplan):
    ran = loadplan()
    assert ran.code == 2
    assert any("Usage: loadplan" in line for line in [*ran.out, *ran.err])


def test_version(loadplan):
    ran = loadplan("--version")
    assert (ran.code, ran.out) == (0, [f"loadplan {package.__version__}"])
    project = (Path(__file__).parents[1] / "pyproject.toml").read_text()
    assert f'version = "{package.__version__}"' in project


@pytest.mark.parametrize("command", [(), ("plan",), ("check",), ("blank",), ("rules",)])
def test_help(loadplan, command):
    ran = loadplan(*command, "--help")
    assert (ran.code, ran.err) == (0, [])
    assert ran.out[0].startswith(f"Usage: loadplan {' '.join(command)}".strip())


def test_the_help_tells_every_exit_code(loadplan):
    text = "\n".join(loadplan("--help").out)
    for code, meaning in EXIT_CODES.items():
        assert f"{code:<4}{meaning}" in text


def test_the_help_imports_nothing_heavy():
    code = (
        "import sys; from loadplan.cli import run; run(['--help']); "
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    assert python("-c", code).stdout.splitlines()[-1] == "[]"


def test_importing_the_package_imports_nothing_heavy_until_it_is_used():
    code = (
        "import sys, loadplan; print(sorted(n for n in sys.modules if n.startswith('loadplan'))); "
        "print(sorted(dir(loadplan))); print(loadplan.read_day.__name__)"
    )
    assert python("-c", code).stdout.splitlines() == [
        "['loadplan']",
        "['Day', 'DayPlan', '__version__', 'plan_day', 'read_day', 'write_results']",
        "read_day",
    ]


def test_the_package_has_no_other_names():
    with pytest.raises(AttributeError) as caught:
        package.plan_week  # noqa: B018
    assert str(caught.value) == "module 'loadplan' has no attribute 'plan_week'"


def test_run_as_a_module(tmp_path):
    day = save(tmp_path / "day.xlsx", gear_with("Quantity", -2))
    ran = python("-m", "loadplan", "check", str(day))
    assert (ran.returncode, ran.stdout) == (3, "")
    assert ran.stderr == (
        "'Gear'!H2  V01  Quantity is -2. It must be a whole number, 0 or more.\n"
        "1 problem. Nothing was planned or written.\n"
    )


def test_a_terminal_that_cannot_show_an_id(tmp_path):
    day = save(tmp_path / "day.xlsx", gear_with("Kind", "Kett\u2192"))
    narrow = {**os.environ, "PYTHONIOENCODING": "latin-1", "PYTHONUTF8": "0"}
    ran = python("-m", "loadplan", "check", str(day), env=narrow)
    assert ran.returncode == 3
    assert 'Kind is "Kett\\u2192"' in ran.stderr


def test_a_reader_of_the_pipe_that_has_gone(tmp_path):
    day = day_file(tmp_path)
    command = f'"{sys.executable}" -m loadplan check "{day}"'
    shell = f"set -o pipefail; {command} | true"
    ran = subprocess.run(["bash", "-c", shell], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")
