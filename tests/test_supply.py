"""The packages this one rests on: bounded on both sides, and pinned for installs that repeat."""

from __future__ import annotations

import re
import sys
import tomllib
from pathlib import Path

import pytest

from tests.test_structure import imports

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
NEEDED = PROJECT["dependencies"]
TESTED = PROJECT["optional-dependencies"]["test"]
BOUNDS = re.compile(r"([a-z][a-z0-9-]*)>=([0-9.]+)(?:,<([0-9.]+))?")


def pinned() -> dict[str, tuple[int, ...]]:
    """The version of each package in the constraints file."""
    lines = (ROOT / "tests" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    pairs = (line.split("==") for line in lines if not line.startswith("#"))
    return {name.lower().replace("_", "-"): version(number) for name, number in pairs}


def version(text: str) -> tuple[int, ...]:
    """``3.11.2`` as numbers."""
    return tuple(int(part) for part in text.split("."))


@pytest.mark.parametrize("needed", NEEDED)
def test_everything_needed_at_run_time_has_both_bounds(needed):
    assert BOUNDS.fullmatch(needed)[3]


@pytest.mark.parametrize("needed", [*NEEDED, *TESTED])
def test_the_pinned_version_is_within_the_bounds(needed):
    name, least, below = BOUNDS.fullmatch(needed).groups()
    assert pinned()[name] >= version(least)
    assert below is None or pinned()[name] < version(below)


def test_what_is_imported_is_named():
    named = {BOUNDS.fullmatch(needed)[1] for needed in NEEDED} | {"PIL"}
    found = {
        name.split(".")[0] for path in (ROOT / "loadplan").rglob("*.py") for name in imports(path)
    }
    outside = found - set(sys.stdlib_module_names) - {"loadplan"}
    assert outside <= named
