"""Which sheet of a workbook is which."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from loadplan.problems import Code, Place, Problem
from loadplan.workbook.columns import README_SHEET, SHEETS
from loadplan.workbook.grid import Grid
from loadplan.workbook.names import did_you_mean, fold_words, shown, suggest


@dataclass(slots=True, kw_only=True)
class Matched:
    """The known sheets by their own name; those without rows are there too."""

    grids: dict[str, Grid] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)


def match_sheets(grids: Iterable[Grid]) -> Matched:
    """Match sheets by name, without regard to case or extra spaces."""
    matched = Matched()
    known = {fold_words(sheet.name): sheet.name for sheet in SHEETS}
    unknown: list[Grid] = []
    for grid in grids:
        name = known.get(fold_words(grid.name))
        if name is None:
            unknown.append(grid)
        elif name in matched.grids:
            matched.problems.append(_twice(grid, matched.grids[name]))
        else:
            matched.grids[name] = grid
    free = [sheet.name for sheet in SHEETS if sheet.name not in matched.grids]
    for grid in unknown:
        if fold_words(grid.name) != fold_words(README_SHEET):
            hint = did_you_mean(grid.name, free).strip()
            sentence = f"{Place(sheet=grid.name)}  The sheet is not known and was left out."
            matched.warnings.append(f"{sentence} {hint}".strip())
    matched.problems += _missing(matched, [grid.name for grid in unknown])
    return matched


def _twice(grid: Grid, first: Grid) -> Problem:
    return Problem(
        code=Code.DUPLICATE_SHEET,
        place=Place(sheet=grid.name),
        found=f"The sheets {shown(first.name)} and {shown(grid.name)} have the same name.",
        remedy="Keep one of the two, or rename one.",
    )


def _missing(matched: Matched, unknown: list[str]) -> Iterable[Problem]:
    for sheet in SHEETS:
        grid = matched.grids.get(sheet.name)
        if not sheet.required or (grid is not None and len(grid.rows) > 1):
            continue
        if grid is not None:
            yield Problem(
                code=Code.NO_ROWS,
                place=Place(sheet=grid.name),
                found="The sheet has no rows.",
                remedy=f"Fill it in: {_first_lower(sheet.help)}",
            )
            continue
        near = suggest(sheet.name, unknown)
        hint = f"Is it meant by {shown(near)}? " if near else ""
        yield Problem(
            code=Code.MISSING_SHEET,
            place=Place(sheet=sheet.name),
            found="The sheet is missing.",
            remedy=f"{hint}Add it: {_first_lower(sheet.help)}",
        )


def _first_lower(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]
