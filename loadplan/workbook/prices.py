"""What can be had, from the sheet ``Prices``: more of a kind there is, or something new."""

from __future__ import annotations

import dataclasses
from typing import Any

from loadplan.day.gear import Condition, Gear, Kind, Price
from loadplan.problems import Code
from loadplan.text import names
from loadplan.wll.piece import chain_grade
from loadplan.workbook.draft import Draft
from loadplan.workbook.names import did_you_mean, fold
from loadplan.workbook.pieces import refuse_taken_word, split_size
from loadplan.workbook.table import Record, Table

_SPECIFICATION = ("kind", "size", "grade", "length", "wll", "breaking_strength", "fits")


def build_prices(draft: Draft) -> None:
    """What can be had, each row with a specification of its own."""
    table = draft.table("Prices")
    owned = {fold(gear.id): gear for gear in draft.gear}
    known = draft.table("Gear").ids()
    for record in table.records:
        split_size(table, record)
        refuse_taken_word(table, record)
    _one_currency(table)
    new: dict[str, Gear] = {}
    for record in table.sound():
        price = _price(table, record, owned, known)
        if price is not None and _one_id_one_kind(table, record, price, new):
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
    if key in owned:
        specification = _more_of(table, record, fields, owned[key])
    elif "kind" not in fields:
        _no_kind(table, record, fields, owned)
        return None
    else:
        specification = _described(table, record, fields, owned)
    if specification is None:
        return None
    return Price(
        specification=specification, price=amount, currency=currency, most=most, row=record.row
    )


def _no_kind(table: Table, record: Record, fields: dict[str, Any], owned: dict[str, Gear]) -> None:
    typed = fields.get("id")
    if typed is None:
        remedy = "Write it, or in Gear the id of a piece on Gear."
        table.reject(record, Code.MISSING_VALUE, "Kind", "Kind is blank.", remedy)
        return
    table.reject(
        record,
        Code.UNKNOWN_ID,
        "Gear",
        f"Gear {typed} is not on Gear, and Kind is blank.",
        f"{did_you_mean(typed, [gear.id for gear in owned.values()])}Correct it here, or write "
        "Kind to price something new.",
    )


def _one_id_one_kind(table: Table, record: Record, price: Price, new: dict[str, Gear]) -> bool:
    """Whether no earlier row means another specification by the same id."""
    one = price.specification
    earlier = new.setdefault(fold(one.id), one) if one.id else one
    if dataclasses.replace(one, id=earlier.id) == earlier:
        return True
    row = earlier.row.number if earlier.row else "?"
    table.reject(
        record,
        Code.PRICE,
        "Gear",
        f"{one.id} is something else in row {row}.",
        "Describe it alike in both rows, or give each kind an id of its own.",
    )
    return False


def _more_of(table: Table, record: Record, fields: dict[str, Any], owned: Gear) -> Gear | None:
    """A kind that is owned; what else the row says must be as on its own row."""
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


def _described(
    table: Table, record: Record, fields: dict[str, Any], owned: dict[str, Gear]
) -> Gear | None:
    """A row that names no kind there is: one that it describes in full, or something new."""
    one = Gear(**{"id": "", **fields}, row=record.row)
    if "id" not in fields:
        alike = [gear for gear in owned.values() if _could_be(one, gear, fields)]
        same = [gear for gear in alike if _could_be(one, gear, _SPECIFICATION)]
        if len(same) == 1:
            return dataclasses.replace(same[0], row=record.row)
        if alike:
            _which(table, record, same or alike)
            return None
    if one.kind is Kind.RETRACTABLE_STRAP:
        table.reject(
            record,
            Code.KIT,
            "Kind",
            "A retractable strap is fixed to one trailer, and a price of a new one names none.",
            "Write in Gear the id of one on Gear to price more of it.",
        )
        return None
    return one


def _could_be(one: Gear, gear: Gear, fields: Any) -> bool:
    """Whether the row agrees with good cage gear in each of ``fields`` of a specification."""
    if gear.condition is not Condition.GOOD or gear.kept_on is not None:
        return False
    return all(_trait(one, name) == _trait(gear, name) for name in _SPECIFICATION if name in fields)


def _trait(gear: Gear, name: str) -> object:
    if name == "size":
        return gear.size or fold(gear.size_text)
    if name == "grade":
        mark = fold(gear.grade)
        return (chain_grade(mark) or mark) if mark and gear.kind is Kind.CHAIN else mark
    return getattr(gear, name)


def _which(table: Table, record: Record, alike: list[Gear]) -> None:
    rows = [f"{gear.id} in row {gear.row.number if gear.row else '?'}" for gear in alike]
    if len(rows) == 1:
        found = f"The row could mean {rows[0]} of Gear, or something new that is like it."
        remedy = f"Write {alike[0].id} in Gear to price more of it"
    else:
        found = f"The row could mean {names(rows, 'or')} of Gear."
        remedy = "Write in Gear the id of the one that is meant"
    table.reject(
        record, Code.PRICE, "Kind", found, f"{remedy}, or a new id to price something new."
    )


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
