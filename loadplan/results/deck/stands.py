"""What takes one place along the deck: an article alone, or those that share it in a group."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loadplan.day.article import Article, CargoClass, Stands
from loadplan.rules.groups import stands_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """``articles`` beside each other, the first at the right, or ``stacked``, the first below."""

    articles: tuple[Article, ...]
    stacked: bool = False


def stood(articles: Sequence[Article]) -> list[Stand]:
    """The places along the deck, front first: a group's at its first article."""
    found: list[Stand] = []
    seen: set[str] = set()
    for article in articles:
        if not article.group:
            found.append(Stand(articles=(article,)))
        elif article.group not in seen:
            seen.add(article.group)
            found += _of_group(tuple(one for one in articles if one.group == article.group))
    return found


def _of_group(members: tuple[Article, ...]) -> list[Stand]:
    """A group in one place; in line, or pipe lying crosswise, each article in its own."""
    stands = stands_of(members)
    crosswise = members[0].cargo_class is CargoClass.CONCRETE_PIPE
    if stands is Stands.STACKED:
        return [Stand(articles=members, stacked=True)]
    if stands is Stands.IN_LINE or crosswise:
        return [Stand(articles=(member,)) for member in members]
    return [Stand(articles=members)]
