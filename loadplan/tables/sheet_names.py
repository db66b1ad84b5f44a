"""Names of the load sheets: fit for a spreadsheet and all different."""

from __future__ import annotations

import re
from collections.abc import Sequence

LONGEST = 31
# What spreadsheets forbid in a sheet name, and what cannot stand in a file at all.
_FORBIDDEN = re.compile(r"[\[\]:*?/\\\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufffe\uffff]")


def load_sheet_names(loads: Sequence[str]) -> dict[str, str]:
    """A sheet name for each load id: ``Load <id>``, at most 31 characters.

    Forbidden characters become ``_``. Names that would be alike without regard to case, as they
    stand or once shortened, get a number at the end.
    """
    found: dict[str, str] = {}
    taken: set[str] = set()
    for load in loads:
        name = _free(f"Load {_FORBIDDEN.sub('_', load)}", taken)
        taken.add(name.casefold())
        found[load] = name
    return found


def _free(wanted: str, taken: set[str]) -> str:
    """``wanted``, shortened, with the lowest number from 2 that makes it new."""
    name, number = _cut(wanted, LONGEST), 1
    while name.casefold() in taken:
        number += 1
        end = f" ({number})"
        name = _cut(wanted, LONGEST - len(end)) + end
    return name


def _cut(name: str, longest: int) -> str:
    """``name`` cut to ``longest`` UTF-16 units, as spreadsheets count; no apostrophe at the end."""
    while len(name.encode("utf-16-le")) > 2 * longest:
        name = name[:-1]
    return re.sub(r"['\s]+$", "_", name)
