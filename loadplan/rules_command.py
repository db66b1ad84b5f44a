"""``loadplan rules``: the rules, their disputed points and sources, and what they do to a day."""

from __future__ import annotations

import shutil
from pathlib import Path

import click

from loadplan.console import DAY_PATH, debug_option, print_lines, read_and_warn
from loadplan.exit_codes import READY

_LEAST_WIDE, _WIDEST = 80, 160


@click.command("rules")
@click.option(
    "--day",
    "day_workbook",
    metavar="DAY.xlsx",
    type=DAY_PATH,
    help="Show what applies to this day, and what every other reading would change.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["table", "csv", "json"], case_sensitive=False),
    default="table",
    show_default=True,
    help="table: to read. csv: one table. json: a list for each part.",
)
@debug_option
def rules(day_workbook: Path | None, form: str) -> int:
    """Print rule sets, sections, disputed points with their defaults, and sources."""
    from loadplan.tables import rules as of_rules
    from loadplan.tables.printed import as_csv, as_json, as_text

    if day_workbook is None:
        tables = of_rules.catalogue_tables()
    else:
        tables = of_rules.day_tables(read_and_warn(day_workbook))
    if form == "csv":
        print_lines(as_csv(tables))
    elif form == "json":
        print_lines(as_json(tables))
    else:
        wide = shutil.get_terminal_size((110, 24)).columns
        print_lines(as_text(tables, max(_LEAST_WIDE, min(wide, _WIDEST))))
    return READY
