"""What the command line names: files to write and a time limit, judged before any work."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import click

from loadplan.units import Dimension, Misread, read_quantity

if TYPE_CHECKING:
    from loadplan.day.day import Day

_LONGEST = 24 * 3600


def seconds(_: click.Context, __: click.Parameter, text: str | None) -> Fraction | None:
    """The time limit in seconds, exact; it may carry its unit (``2 min``)."""
    if text is None:
        return None
    try:
        limit = read_quantity(text, Dimension.TIME, "s", "s")
    except Misread:
        raise click.BadParameter(f"{text} is not a number of seconds.") from None
    if not 0 < limit <= _LONGEST:
        raise click.BadParameter(f"It must be more than 0 and {_LONGEST:,} s or less.")
    return limit


def amount(_: click.Context, __: click.Parameter, text: str | None) -> tuple[Fraction, str] | None:
    """An amount of money and its currency, "" where none is typed."""
    if text is None:
        return None
    from loadplan.workbook.lists import read_money

    try:
        found, currency = read_money(text)
    except Misread:
        raise click.BadParameter(f"{text} is not an amount such as 250 or 250.00 USD.") from None
    if found <= 0:
        raise click.BadParameter("It must be more than 0.")
    return found, currency


def spendable(day: Day, budget: Fraction, currency: str) -> Fraction:
    """``budget``; a usage error where it is in another currency or buys nothing at all."""
    typed = day.currency
    if currency and currency != typed:
        known = f"in {typed}" if typed else "without a currency"
        raise click.UsageError(f"The budget is in {currency}, and the prices are {known}.")
    prices = [price.price for price in day.prices if price.most != 0]
    if prices and budget < min(prices):
        from loadplan.purchase.money import money

        raise click.UsageError(
            f"A budget of {money(budget, typed)} buys nothing: the cheapest piece on Prices costs "
            f"{money(min(prices), typed)}. Give that much or more."
        )
    return budget


def output_of(
    day_workbook: Path, output: Path | None, csv_folder: Path | None, pdf: bool, force: bool
) -> Path:
    """Where the results go; a wrong or taken place is told before anything is planned."""
    if output is None:
        output = day_workbook.with_name(f"{day_workbook.stem}.results.xlsx")
    must_be_xlsx(output)
    if _same(output, day_workbook):
        raise click.UsageError(
            "The results would replace the day workbook. Give another name with -o."
        )
    must_be_new(output, force)
    if pdf:
        must_be_new(output.with_suffix(".pdf"), force)
        _must_have_office()
    if csv_folder is not None and not force and any(csv_folder.glob("*.csv")):
        raise click.UsageError(
            f"There are CSV files in {csv_folder} already. Add --force to replace them, or give "
            "another folder."
        )
    return output


def _must_have_office() -> None:
    """A usage error where the program that makes the PDF is not installed."""
    from loadplan.results.pdf import find_office

    if find_office() is None:
        raise click.UsageError(
            "--pdf needs LibreOffice, which is not installed here. Install LibreOffice Calc "
            "(libreoffice.org, or the package libreoffice-calc), or leave --pdf out and print the "
            "load sheets from the results workbook."
        )


def must_be_xlsx(path: Path) -> None:
    """A usage error unless ``path`` names an .xlsx file in a folder that exists."""
    if path.suffix.lower() != ".xlsx":
        raise click.UsageError(f"{path} does not end in .xlsx. Give it a name that does.")
    if not path.absolute().parent.is_dir():
        raise click.UsageError(f"There is no folder {path.parent}. Make it first.")


def must_be_new(path: Path, force: bool) -> None:
    """A usage error where ``path`` exists and ``force`` is not given."""
    if path.exists() and not force:
        raise click.UsageError(
            f"{path} is there already. Add --force to replace it, or give another name."
        )


def _same(one: Path, other: Path) -> bool:
    if one.exists() and other.exists():
        return one.samefile(other)
    return one.resolve() == other.resolve()
