"""Which module may import which, and where each library lives."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "loadplan"
MODULES = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts): path for path in PACKAGE.rglob("*.py")
}
HEAVY = ("pandas", "pint", "openpyxl", "xlsxwriter", "pulp", "highspy", "numpy", "PIL")
TOP_LEVEL = {
    ".ci",
    ".gitignore",
    "DEVELOPERS.md",
    "README.md",
    "loadplan",
    "pyproject.toml",
    "sample_jobs",
    "tests",
    "workbooks",
}


def imports(path: Path) -> Iterator[str]:
    """Every module a file imports, at any depth; imports for type checking only are included."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path} has a relative import"
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def at_home(module: str, homes: tuple[str, ...]) -> bool:
    return any(module == home or module.startswith(f"{home}.") for home in homes)


def users(library: str) -> set[str]:
    return {
        module
        for module, path in MODULES.items()
        if any(at_home(name, (library,)) for name in imports(path))
    }


@pytest.mark.parametrize(
    ("library", "homes"),
    [
        ("pint", ("loadplan.units",)),
        ("openpyxl", ("loadplan.workbook",)),
        ("xlsxwriter", ("loadplan.results",)),
        ("pulp", ("loadplan.plan",)),
        ("highspy", ("loadplan.plan",)),
        (
            "click",
            (
                "loadplan.buy_command",
                "loadplan.cli",
                "loadplan.console",
                "loadplan.rules_command",
                "loadplan.targets",
            ),
        ),
    ],
)
def test_each_library_has_one_home(library, homes):
    found = users(library)
    assert found
    assert {module for module in found if not at_home(module, homes)} == set()


@pytest.mark.parametrize(
    ("part", "allowed"),
    [
        ("day", ("day", "source")),
        ("wll", ("wll", "day", "source", "text", "numerals")),
    ],
)
def test_the_nouns_import_nothing_of_what_uses_them(part, allowed):
    homes = tuple(f"loadplan.{name}" for name in allowed)
    for module, path in MODULES.items():
        if at_home(module, (f"loadplan.{part}",)):
            own = {name for name in imports(path) if at_home(name, ("loadplan",))}
            assert {name for name in own if not at_home(name, homes)} <= {"loadplan"}, module


@pytest.mark.parametrize(
    ("part", "barred"),
    [
        ("judge", ("plan", "results", "workbook", "cli", "api")),
        ("rules", ("plan", "judge", "results", "workbook", "outcome", "cli", "api")),
        ("plan", ("judge", "results", "workbook", "tables", "cli", "api")),
        ("plan", ("purchase",)),
        ("judge", ("purchase",)),
        ("purchase", ("judge", "results", "workbook", "tables", "cli", "api")),
        ("shortfall", ("results", "workbook.read", "workbook.table", "tables", "cli", "api")),
        ("outcome", ("plan", "judge", "results", "workbook", "cli", "api")),
        ("workbook", ("plan", "judge", "results", "outcome", "cli", "api")),
        # The results print the house rules in the order of the day workbook's own table of lines.
        ("results", ("plan", "workbook.read", "workbook.table", "cli", "api")),
        ("tables", ("plan", "results", "workbook", "cli", "api")),
    ],
)
def test_imports_run_one_way(part, barred):
    homes = tuple(f"loadplan.{name}" for name in barred)
    members = [module for module in MODULES if at_home(module, (f"loadplan.{part}",))]
    assert members
    for module in members:
        wrong = {name for name in imports(MODULES[module]) if at_home(name, homes)}
        assert wrong == set(), module


def test_the_judgement_never_sees_the_solver():
    for module, path in MODULES.items():
        if at_home(module, ("loadplan.judge",)):
            names = set(imports(path))
            assert not [n for n in names if at_home(n, ("loadplan.plan", "pulp", "highspy"))]


def test_the_package_never_imports_its_tests():
    assert users("tests") == set()


def test_top_level_names():
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    if listed.returncode:
        pytest.skip("not a git work tree")
    assert {line.split("/")[0] for line in listed.stdout.splitlines()} <= TOP_LEVEL


def test_help_imports_nothing_heavy():
    code = (
        "import sys; from loadplan.cli import run; code = run(['--help']); "
        f"print([name for name in {HEAVY!r} if name in sys.modules]); sys.exit(code)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.splitlines()[-1] == "[]"
