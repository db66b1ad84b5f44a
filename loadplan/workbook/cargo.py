"""Articles from ``Cargo`` and ``Added weight``."""

from __future__ import annotations

from collections import defaultdict

from loadplan.day.article import AddedWeight, Article
from loadplan.workbook.draft import Draft, refer
from loadplan.workbook.names import fold
from loadplan.workbook.trips import known_loads


def build_articles(draft: Draft) -> None:
    """The articles with what rides on them."""
    table = draft.table("Cargo")
    loads = known_loads(draft)
    added = _added_weight(draft)
    for record in table.records:
        if "load" in record.fields:
            refer(table, record, "load", "Load", loads, "Loads")
    _name_groups(draft)
    for record in table.sound():
        riding = tuple(added.get(fold(record.fields["id"]), ()))
        draft.articles.append(Article(**record.fields, added=riding, row=record.row))


def _name_groups(draft: Draft) -> None:
    """Spell each group as its first row does; one named like an article, as that article."""
    spelled = draft.table("Cargo").ids()
    for record in draft.table("Cargo").records:
        group = record.fields.get("group")
        if group is not None:
            record.fields["group"] = spelled.setdefault(fold(group), group)


def _added_weight(draft: Draft) -> dict[str, list[AddedWeight]]:
    """What rides on each article, by the folded form of its id.

    An article with a row of ``Added weight`` in error is left out of later checks.
    """
    table = draft.table("Added weight")
    cargo = draft.table("Cargo")
    known = cargo.ids()
    found: dict[str, list[AddedWeight]] = defaultdict(list)
    spoiled: set[str] = set()
    for record in table.records:
        article = record.fields.get("article")
        if article is None or not refer(table, record, "article", "Article", known, "Cargo"):
            continue
        key = fold(article)
        if record.sound:
            fields = record.fields
            riding = AddedWeight(
                what=fields.get("what", ""), weight=fields["weight"], row=record.row
            )
            found[key].append(riding)
        else:
            spoiled.add(key)
    for record in cargo.records:
        if fold(record.fields.get("id", "")) in spoiled:
            record.sound = False
    return found
