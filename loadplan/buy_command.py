"""``loadplan buy``: the cheapest pieces that get more loads ready."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import click

from loadplan.console import (
    DAY_PATH,
    debug_option,
    force_option,
    moving_line,
    output_option,
    print_lines,
    read_and_warn,
)
from loadplan.exit_codes import HELD, NOT_PROVED, READY
from loadplan.targets import amount, output_of, seconds, spendable


@click.command("buy")
@click.argument("day_workbook", metavar="DAY.xlsx", type=DAY_PATH)
@output_option
@force_option
@click.option(
    "--budget",
    metavar="X",
    callback=amount,
    help="Get the most loads ready for this much money, and show what more would cost.",
)
@click.option(
    "--time-limit",
    metavar="S",
    callback=seconds,
    help="Seconds it may take in all; default: as the day workbook says, else 60.",
)
@debug_option
def buy(
    day_workbook: Path,
    output: Path | None,
    force: bool,
    budget: tuple[Fraction, str] | None,
    time_limit: Fraction | None,
) -> int:
    """Find the least-cost purchase from the sheet Prices that makes every load ready.

    Of equal cost the fewest pieces. The day is planned with the purchase and the results are
    written, with sheets for the purchase in front.
    """
    output = output_of(day_workbook, output, None, False, force)
    day = read_and_warn(day_workbook)
    from loadplan.buy import buy as buy_for
    from loadplan.buy import write_bought
    from loadplan.buy_lines import buy_lines

    most = None if budget is None else spendable(day, *budget)
    show, clear = moving_line()
    try:
        bought = buy_for(day, budget=most, time_limit=time_limit, progress=show)
    finally:
        clear()
    write_bought(bought, output, force=force)
    print_lines(buy_lines(bought))
    print_lines([f"Written: {output}"])
    if not bought.proved:
        return NOT_PROVED
    return HELD if bought.plan.held else READY
