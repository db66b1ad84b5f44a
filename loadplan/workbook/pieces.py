"""Gear, prices and fixed pieces from their sheets."""

from __future__ import annotations

import dataclasses
from typing import Any

from loadplan.day.gear import Gear, Kind, Price
from loadplan.problems import Code
from loadplan.workbook.draft import Draft, refer
from loadplan.workbook.names import fold
from loadplan.workbook.table import Record, Table
from loadplan.workbook.trips import known_trailers

_CHAIN_SIZE = "Write the size of the chain, such as 3/8 or 10 mm."


def build_gear(draft: Draft) -> None:
    """The kinds of piece there are."""
    table = draft.table("Gear")
    trailers = known_trailers(draft)
    for record in table.records:
        fields = record.fields
        _split_size(table, record)
        if "kept_on" in fields:
            # Without the sheet Trailers nothing can be wrong with a trailer no load names: its
            # kit is never planned, and a warning says so.
            if draft.has("Trailers"):
                refer(table, record, "kept_on", "Kept on", trailers, "Trailers")
            else:
                fields["kept_on"] = trailers.get(fold(fields["kept_on"]), fields["kept_on"])
        elif record.sound and fields["kind"] is Kind.RETRACTABLE_STRAP:
            table.reject(
                record,
                Code.KIT,
                "Kept on",
                "Kept on is blank, and a retractable strap is fixed to one trailer.",
                "Write the trailer it is on.",
            )
    draft.gear = [Gear(**record.fields, row=record.row) for record in table.sound()]


def _split_size(table: Table, record: Record) -> None:
    """Take the cell of ``Size`` apart; a chain's must be readable."""
    fields = record.fields
    if "size" not in fields:
        return
    fields["size"], fields["size_text"] = fields["size"]
    if fields["size"] is None and fields.get("kind") is Kind.CHAIN:
        found = f'Size is "{fields["size_text"]}".'
        table.reject(record, Code.SIZE, "Size", found, _CHAIN_SIZE)


def build_prices(draft: Draft) -> None:
    """What can be had, each row with a specification of its own."""
    table = draft.table("Prices")
    owned = {fold(gear.id): gear for gear in draft.gear}
    known = draft.table("Gear").ids()
    for record in table.records:
        _split_size(table, record)
    _one_currency(table)
    for record in table.sound():
        price = _price(table, record, owned, known)
        if price is not None:
            draft.prices.append(price)
    _name_new(draft)


def _one_currency(table: Table) -> None:
    first: tuple[str, str] | None = None
    for record in table.records:
        currency = record.fields.get("price", (0, ""))[1]
        if not currency:
            continue
        if first is None:
            first = currency, record.row.cell("Price")
        elif currency != first[0]:
            table.reject(
                record,
                Code.PRICE,
                "Price",
                f"Price is in {currency}, and the one in {first[1]} in {first[0]}.",
                "Write all prices in one currency, with one mark or code for it.",
            )


def _price(
    table: Table, record: Record, owned: dict[str, Gear], known: dict[str, str]
) -> Price | None:
    fields = dict(record.fields)
    amount, currency = fields.pop("price")
    most = fields.pop("most", None)
    key = fold(fields.get("id", ""))
    if key in known and key not in owned:
        return None
    specification = _specification(table, record, fields, owned.get(key))
    if specification is None:
        return None
    return Price(
        specification=specification, price=amount, currency=currency, most=most, row=record.row
    )


def _specification(
    table: Table, record: Record, fields: dict[str, Any], owned: Gear | None
) -> Gear | None:
    if owned is None:
        if "kind" not in fields:
            table.reject(
                record,
                Code.MISSING_VALUE,
                "Kind",
                "Kind is blank.",
                "Write it, or in Gear the id of a piece on Gear.",
            )
            return None
        return Gear(**{"id": "", **fields}, row=record.row)
    for column in table.sheet.columns:
        name = column.field
        if name in fields and name != "id" and fields[name] != getattr(owned, name, None):
            row = owned.row.number if owned.row else "?"
            table.reject(
                record,
                Code.PRICE,
                column.name,
                f"{column.name} is not the same as that of {owned.id} in row {row} of Gear.",
                "Leave the cell blank, or leave Gear blank to price something new.",
            )
            return None
    return dataclasses.replace(owned, row=record.row)


def _name_new(draft: Draft) -> None:
    """Name each specification that has no id by what it is, apart from every other id."""
    taken = set(draft.table("Gear").ids())
    taken |= {fold(price.specification.id) for price in draft.prices}
    numbers: dict[str, int] = {}
    for at, price in enumerate(draft.prices):
        specification = price.specification
        if specification.id:
            continue
        grade = f"grade {specification.grade}" if specification.grade else ""
        words = ("new", specification.size_text, grade, specification.kind.value)
        base = name = " ".join(word for word in words if word)
        while fold(name) in taken:
            numbers[base] = numbers.get(base, 1) + 1
            name = f"{base} {numbers[base]}"
        taken.add(fold(name))
        named = dataclasses.replace(specification, id=name)
        draft.prices[at] = dataclasses.replace(price, specification=named)
