"""The command line: the only place that prints and exits."""

from __future__ import annotations

import io
import os
import sys
import traceback
from contextlib import ExitStack
from fractions import Fraction
from pathlib import Path

import click

from loadplan import __version__
from loadplan.buy_command import buy
from loadplan.console import (
    DAY_PATH,
    debug_option,
    force_option,
    moving_line,
    output_option,
    print_lines,
    read_and_warn,
)
from loadplan.exit_codes import (
    CRASHED,
    EXIT_CODES,
    FAILED,
    HELD,
    INTERRUPTED,
    NOT_PROVED,
    READY,
    USAGE,
)
from loadplan.memory import give_back_large_blocks
from loadplan.rules_command import rules
from loadplan.targets import must_be_new, must_be_xlsx, output_of, seconds

_EXITS = "\b\nExit codes:\n" + "\n".join(f"  {code:<4}{text}" for code, text in EXIT_CODES.items())


@click.group(epilog=_EXITS, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="loadplan", message="%(prog)s %(version)s")
@debug_option
def cli() -> None:
    """Plan which tie-down gear goes on which load of a hauling day.

    Every load is checked against the rules listed on the results. Check current federal, state
    and local rules; the driver and the carrier remain responsible.
    """


@cli.command()
@click.argument("day_workbook", metavar="DAY.xlsx", type=DAY_PATH)
@output_option
@force_option
@click.option(
    "--time-limit",
    metavar="S",
    callback=seconds,
    help="Seconds the planning may take; default: as the day workbook says, else 60.",
)
@click.option(
    "--csv",
    "csv_folder",
    metavar="DIR",
    type=click.Path(path_type=Path, file_okay=False),
    help="Write the flat sheets as CSV files to this folder too.",
)
@click.option(
    "--pdf", is_flag=True, help="Write the load sheets as one PDF beside the results too."
)
@click.option("--verbose", is_flag=True, help="Print each stage with its value, bound and gap.")
@debug_option
def plan(
    day_workbook: Path,
    output: Path | None,
    force: bool,
    time_limit: Fraction | None,
    csv_folder: Path | None,
    pdf: bool,
    verbose: bool,
) -> int:
    """Plan the day in DAY.xlsx and write the results workbook."""
    output = output_of(day_workbook, output, csv_folder, pdf, force)
    day = read_and_warn(day_workbook)
    from loadplan.api import plan_day, write_results
    from loadplan.extras import csv_beside, pdf_beside
    from loadplan.terminal import stage_line, summary

    show, clear = moving_line()
    try:
        found = plan_day(day, time_limit=time_limit, progress=show)
    finally:
        clear()
    with ExitStack() as stack:
        if csv_folder is not None:
            stack.enter_context(csv_beside(found, csv_folder))
        if pdf:
            stack.enter_context(pdf_beside(found, output.with_suffix(".pdf")))
        write_results(found, output, force=force)
    if verbose:
        print_lines(stage_line(stage) for stage in found.stages)
    print_lines(summary(found))
    written = [output, output.with_suffix(".pdf") if pdf else None, csv_folder]
    print_lines(f"Written: {path}" for path in written if path is not None)
    if not found.proved:
        return NOT_PROVED
    return HELD if found.held else READY


@cli.command()
@click.argument("day_workbook", metavar="DAY.xlsx", type=DAY_PATH)
@debug_option
def check(day_workbook: Path) -> int:
    """Read and judge the day workbook without planning anything."""
    day = read_and_warn(day_workbook)
    from loadplan.text import count

    articles, loads = count(len(day.articles), "article"), count(len(day.loads), "load")
    pieces = count(sum(gear.quantity for gear in day.gear), "piece")
    kinds = count(len(day.gear), "kind")
    warned = count(len(day.warnings), "warning")
    print_lines([f"{loads}, {articles}, {pieces} of gear of {kinds}. No problems, {warned}."])
    return READY


@cli.command()
@click.argument("new_workbook", metavar="NEW.xlsx", type=DAY_PATH)
@click.option(
    "--units",
    type=click.Choice(["US", "metric"], case_sensitive=False),
    default="US",
    show_default=True,
    help="US: lb and ft. metric: kg and m.",
)
@click.option("--force", is_flag=True, help="Replace a file that is there already.")
@debug_option
def blank(new_workbook: Path, units: str, force: bool) -> int:
    """Write an empty day workbook to fill in, with drop-downs and notes."""
    must_be_xlsx(new_workbook)
    must_be_new(new_workbook, force)
    from loadplan.day.units import Units
    from loadplan.workbook.blank import write_blank

    write_blank(new_workbook, Units(units), force=force)
    print_lines([f"Written: {new_workbook}"])
    return READY


cli.add_command(buy)
cli.add_command(rules)


def main() -> None:
    """Run the command line and exit with its code."""
    give_back_large_blocks()
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # An id that the terminal cannot show must not stop a plan.
            stream.reconfigure(errors="backslashreplace")
    code = run(sys.argv[1:])
    print_lines([])
    if code in (INTERRUPTED, FAILED):
        # The solver may still be running in its thread; an ordinary exit would wait or abort.
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)
    sys.exit(code)


def run(arguments: list[str]) -> int:
    """Run one command and return its exit code; no exception leaves."""
    from loadplan.problems import LoadplanError

    context: list[click.Context] = []
    try:
        with cli.make_context("loadplan", arguments) as root:
            context.append(root)
            code = cli.invoke(root)
        return code if isinstance(code, int) else READY
    except click.exceptions.Exit as done:
        return done.exit_code
    except click.ClickException as wrong:
        told = io.StringIO()
        wrong.show(told)
        print_lines(told.getvalue().splitlines(), err=True)
        return USAGE
    except LoadplanError as error:
        print_lines(str(error).splitlines(), err=True)
        return error.exit_code
    except (KeyboardInterrupt, click.Abort):
        print_lines(["Interrupted. Nothing was written."], err=True)
        return INTERRUPTED
    except Exception as crash:
        _report(crash, debug=bool(context and context[0].obj))
        return CRASHED


def _report(crash: Exception, debug: bool) -> None:
    what = " ".join(f"{type(crash).__name__}: {crash}".split())
    how = "Send this" if debug else "Run the command again with --debug and send what it prints"
    keeper = "with the day workbook, to whoever keeps this program for you."
    print_lines([f"loadplan {__version__} crashed ({what}). {how}, {keeper}"], err=True)
    if debug:
        print_lines(traceback.format_exception(crash), err=True)
