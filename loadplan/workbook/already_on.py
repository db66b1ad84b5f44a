"""Fixed pieces, with their places spelled as the rules have them."""

from __future__ import annotations

from loadplan.day.day import Day
from loadplan.day.gear import FixedPiece
from loadplan.problems import Code
from loadplan.rules.demand import demand_of
from loadplan.workbook.draft import Draft, refer
from loadplan.workbook.names import fold_words
from loadplan.workbook.table import Record, Table
from loadplan.workbook.trips import known_loads


def build_fixed(draft: Draft, day: Day) -> tuple[FixedPiece, ...]:
    """The pieces already on, on what is sound of ``day``.

    A row that names a load, an article, a group or gear that is nowhere is a problem; one that
    names something in error elsewhere is left out.
    """
    table = draft.table("Fixed")
    cargo = draft.table("Cargo")
    known = {
        "load": ("Load", known_loads(draft), "Loads" if draft.has("Loads") else "Cargo"),
        "article": ("Article", {**cargo.ids("group"), **cargo.ids()}, "Cargo"),
        "gear": ("Gear", draft.table("Gear").ids(), "Gear"),
    }
    for record in table.records:
        for name, (column, ids, where) in known.items():
            if name in record.fields:
                refer(table, record, name, column, ids, where)
    whole = _whole_groups(cargo, day)
    spellings: dict[str, dict[str, str]] = {}
    found = []
    for record in table.sound():
        if record.fields["load"] in day.load_by_id and record.fields["gear"] in day.gear_by_id:
            piece = _piece(table, record, day, whole, spellings)
            found += [piece] if piece else []
    return tuple(found)


def _whole_groups(cargo: Table, day: Day) -> frozenset[str]:
    """The groups of which every member is sound."""
    members: dict[str, int] = {}
    for record in cargo.records:
        if "group" in record.fields:
            group = record.fields["group"]
            members[group] = members.get(group, 0) + 1
    return frozenset(
        group
        for group, number in members.items()
        if len(day.articles_by_group.get(group, ())) == number
    )


def _piece(
    table: Table,
    record: Record,
    day: Day,
    whole: frozenset[str],
    spellings: dict[str, dict[str, str]],
) -> FixedPiece | None:
    name = record.fields["article"]
    article = day.article_by_id.get(name)
    if article is not None and article.group:
        table.reject(
            record,
            Code.FIXED_PLACE,
            "Article",
            f"{name} is secured in the group {article.group}.",
            f"Write {article.group}.",
        )
        return None
    if article is None and name not in whole:
        return None
    if name not in spellings:
        spellings[name] = _places(day, name)
    typed = record.fields["position"]
    position = spellings[name].get(fold_words(typed), fold_words(typed))
    return FixedPiece(**{**record.fields, "position": position}, row=record.row)


def _places(day: Day, name: str) -> dict[str, str]:
    """The places of an article or group as the rules spell them, by their folded form."""
    asked = demand_of(day, name)
    if asked is None:
        return {}
    places = [place for one in asked.position_sets for place in one.positions]
    places += [accessory.name for accessory in asked.article.accessories]
    return {fold_words(place): place for place in places}
