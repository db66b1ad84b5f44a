"""The kinds of piece there are, from their sheet."""

from __future__ import annotations

from loadplan.day.gear import Gear, Kind
from loadplan.problems import Code
from loadplan.wll.assembly import BUILT_IN, TRAILER_WINCH
from loadplan.workbook.draft import Draft, refer
from loadplan.workbook.names import fold, fold_words, shown
from loadplan.workbook.table import Record, Table
from loadplan.workbook.trips import known_trailers

_CHAIN_SIZE = "Write the size of the chain, such as 3/8 or 10 mm."


def build_gear(draft: Draft) -> None:
    """The kinds of piece there are."""
    table = draft.table("Gear")
    trailers = known_trailers(draft)
    for record in table.records:
        fields = record.fields
        split_size(table, record)
        refuse_taken_word(table, record)
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


def refuse_taken_word(table: Table, record: Record) -> None:
    """No kind of gear is named like what the results call a tightener that is no piece."""
    name = record.fields.get("id")
    if name is not None and fold_words(name) in (BUILT_IN, TRAILER_WINCH):
        found = f"Gear is {shown(name)}, which the results write for something else."
        table.reject(record, Code.TAKEN_WORD, "Gear", found, "Give it another id.")


def split_size(table: Table, record: Record) -> None:
    """Take the cell of ``Size`` apart; a chain's must be readable."""
    fields = record.fields
    if "size" not in fields:
        return
    fields["size"], fields["size_text"] = fields["size"]
    if fields["size"] is None and fields.get("kind") is Kind.CHAIN:
        found = f'Size is "{fields["size_text"]}".'
        table.reject(record, Code.SIZE, "Size", found, _CHAIN_SIZE)
