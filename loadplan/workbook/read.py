"""Reading a day workbook: all of it or, with every problem at once, nothing."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from pathlib import Path
from typing import Any

from loadplan.day.day import Day, RuleSet
from loadplan.day.house import HouseRules
from loadplan.problems import Problem, WorkbookRejected
from loadplan.workbook.already_on import build_fixed
from loadplan.workbook.cargo import build_articles
from loadplan.workbook.checks.facts import article_problems, day_problems, house_problems
from loadplan.workbook.checks.fixed import fixed_problems
from loadplan.workbook.checks.overlap import overlap_problems
from loadplan.workbook.checks.pools import pool_problems
from loadplan.workbook.checks.unplanned import unplanned_warnings
from loadplan.workbook.columns import DAY, HOUSE_RULES, SHEETS
from loadplan.workbook.draft import Draft
from loadplan.workbook.grid import read_grids
from loadplan.workbook.names import fold_words
from loadplan.workbook.pieces import build_gear
from loadplan.workbook.prices import build_prices
from loadplan.workbook.settings import read_settings, read_units
from loadplan.workbook.sheets import Matched, match_sheets
from loadplan.workbook.stored import column_number
from loadplan.workbook.table import read_table
from loadplan.workbook.trips import build_loads, build_trailers

_ORDER = {fold_words(sheet.name): at for at, sheet in enumerate(SHEETS)}


def read_day(path: Path | str) -> Day:
    """The day in the workbook at ``path``.

    Raises :class:`~loadplan.problems.WorkbookRejected` with every problem found, in the order of
    sheets, rows and columns, and :class:`~loadplan.problems.NoSuchWorkbook` where there is no
    such file. What is left out without harm is told in ``Day.warnings``.
    """
    path = Path(path)
    matched = match_sheets(read_grids(path))
    problems, warnings = list(matched.problems), list(matched.warnings)
    draft = _settings(matched, problems, warnings)
    for sheet in SHEETS:
        grid = matched.grids.get(sheet.name)
        if not sheet.lines and grid is not None and len(grid.rows) > 1:
            draft.tables[sheet.name] = read_table(sheet, grid, draft.units)
    build_trailers(draft)
    build_loads(draft)
    build_gear(draft)
    build_articles(draft)
    build_prices(draft)
    problems += _fact_problems(draft, path.stem)
    day = _sound_day(draft, path.stem)
    day = replace(day, fixed=build_fixed(draft, day))
    for table in draft.tables.values():
        problems += table.problems
        warnings += table.warnings
    problems += overlap_problems(day)
    problems += fixed_problems(day)
    problems += pool_problems(day)
    if problems:
        raise WorkbookRejected(sorted(problems, key=_place), warnings)
    return replace(day, warnings=(*warnings, *unplanned_warnings(day)))


def _fact_problems(draft: Draft, name: str) -> list[Problem]:
    """Facts against the rules; the articles they stand in are left out of later checks."""
    rules = draft.settings.get("rules", RuleSet.US)
    problems = list(house_problems(draft.house, draft.units, rules))
    found = list(article_problems(draft.articles, draft.house, draft.units, rules))
    draft.in_error |= {article.id for article, _ in found}
    together = list(day_problems(_sound_day(draft, name)))
    draft.in_error |= {article.id for article, _ in together}
    return [*problems, *(problem for _, problem in (*found, *together))]


def _settings(matched: Matched, problems: list[Problem], warnings: list[str]) -> Draft:
    """The settings and house rules, as the start of a draft."""
    grid = matched.grids.get(DAY.name)
    units = read_units(DAY, grid)
    day = read_settings(DAY, grid, units)
    house = read_settings(HOUSE_RULES, matched.grids.get(HOUSE_RULES.name), units)
    for settings in (day, house):
        problems += settings.problems
        warnings += settings.warnings
    return Draft(
        units=units,
        settings=day.values,
        house=HouseRules(**house.values, stated=dict(house.stated)),
    )


def _sound_day(draft: Draft, name: str) -> Day:
    """The day of all that is sound and refers only to what is sound."""
    trailers = {None, *(trailer.id for trailer in draft.trailers)}
    loads = [load for load in draft.loads if load.trailer in trailers]
    load_ids = {load.id for load in loads}
    articles = [
        article
        for article in draft.articles
        if article.load in load_ids and article.id not in draft.in_error
    ]
    settings: dict[str, Any] = dict(draft.settings)
    if "turnaround" in settings:
        # Minutes in the workbook, whole seconds in the day: rounded to the careful side.
        settings["turnaround"] = ceil(settings["turnaround"] * 60)
    return Day(
        loads=tuple(loads),
        articles=tuple(articles),
        gear=tuple(draft.gear),
        trailers=tuple(draft.trailers),
        prices=tuple(draft.prices),
        house=draft.house,
        name=name,
        **settings,
    )


def _place(problem: Problem) -> tuple[int, int, int, str]:
    """Sort key: sheet in the order of the table of sheets, then row, then column."""
    place = problem.place
    sheet = -1 if place.sheet is None else _ORDER.get(fold_words(place.sheet), len(_ORDER))
    return sheet, place.row or 0, column_number(place.column), problem.code.value
