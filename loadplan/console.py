"""What every command shares: printing, reading a day, the moving line, and ``--debug``."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from loadplan.day.day import Day
    from loadplan.outcome.progress import Progress

DAY_PATH = click.Path(path_type=Path, dir_okay=False)


def _debug(context: click.Context, _: click.Parameter, value: bool) -> None:
    context.find_root().obj = value or bool(context.find_root().obj)


debug_option = click.option(
    "--debug",
    is_flag=True,
    expose_value=False,
    callback=_debug,
    help="After a crash, print the whole trace.",
)


output_option = click.option(
    "-o",
    "--output",
    metavar="RESULTS.xlsx",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Where the results go; default: DAY.results.xlsx beside the day workbook.",
)
force_option = click.option("--force", is_flag=True, help="Replace results that are there already.")


def print_lines(lines: Iterable[str], err: bool = False) -> None:
    """Print ``lines``, nothing in them that can do harm to a terminal."""
    from loadplan.terminal import visible

    try:
        for line in lines:
            click.echo(visible(line), err=err)
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader of the pipe has gone; the work is done all the same and its code stands.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def read_and_warn(day_workbook: Path) -> Day:
    """The day in the workbook; its warnings on stderr, those of a rejected workbook too."""
    from loadplan.problems import WorkbookRejected
    from loadplan.workbook.read import read_day

    try:
        day = read_day(day_workbook)
    except WorkbookRejected as rejected:
        _warn(rejected.warnings)
        raise
    _warn(day.warnings)
    return day


def _warn(warnings: Iterable[str]) -> None:
    print_lines((f"Warning: {warning}" for warning in warnings), err=True)


def moving_line() -> tuple[Callable[[Progress], None] | None, Callable[[], None]]:
    """What shows progress and what clears it; nothing where nobody would see it."""
    if not sys.stderr.isatty():
        return None, lambda: None
    from loadplan.terminal import progress_line

    def show(progress: Progress) -> None:
        click.echo(f"\r\x1b[2K{progress_line(progress)}", err=True, nl=False)

    def clear() -> None:
        click.echo("\r\x1b[2K", err=True, nl=False)

    return show, clear
