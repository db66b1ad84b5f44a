"""``Tie-downs``: one row for each tie-down of a ready load."""

from __future__ import annotations

from fractions import Fraction

from loadplan.tables.facts import ArticleFacts, DayFacts, RatedTieDown
from loadplan.tables.table import Cell, Table

UNRATED = "unrated"


def tie_downs(facts: DayFacts) -> Table:
    """Every tie-down with the WLL of each part, the weakest named, and what of it counts.

    Where the day has groups, ``Serves`` names the articles of the group that a tie-down holds.
    """
    unit = facts.plan.day.units.mass
    grouped = any(article.group for article in facts.plan.day.articles)
    return Table(
        headings=(
            "Load",
            "Article",
            "Position",
            "No",
            "Routing",
            "Tension member",
            "Tensioner",
            "Connectors",
            f"Member WLL [{unit}]",
            f"Tensioner WLL [{unit}]",
            f"Connector WLL [{unit}]",
            f"Anchor WLL [{unit}]",
            f"Tie point WLL [{unit}]",
            f"Tie-down WLL [{unit}]",
            "Weakest part",
            "Credit",
            f"Credited WLL [{unit}]",
            "Counts in aggregate",
            *(("Serves",) if grouped else ()),
        ),
        rows=tuple(
            (*_row(one), *((_serves(article, one),) if grouped else ()))
            for load in facts.loads
            for article in load.articles
            for one in article.tie_downs
        ),
    )


def _serves(article: ArticleFacts, one: RatedTieDown) -> str:
    """The members of a group that it holds; nothing where the article is secured alone."""
    if not article.demand.members:
        return ""
    return "; ".join(member.id for member in article.demand.served_at(one.tie_down.position))


def _row(one: RatedTieDown) -> tuple[Cell, ...]:
    tie_down, rating = one.tie_down, one.rating
    return (
        tie_down.load,
        tie_down.article,
        tie_down.position,
        tie_down.number,
        tie_down.routing.value,
        tie_down.member,
        one.tensioner_text,
        one.connectors_text,
        rating.member,
        rating.tensioner,
        rating.connector,
        _point(rating.anchor, in_play=one.anchor_in_play),
        _point(rating.tie_point, in_play=one.tie_point_in_play),
        rating.wll,
        rating.weakest.value,
        one.credit,
        one.credited,
        "yes" if one.credit else "no",
    )


def _point(wll: Fraction | None, *, in_play: bool) -> Cell:
    """The WLL of an anchor or tie point, ``unrated``, or empty where it plays no part."""
    if not in_play:
        return None
    return UNRATED if wll is None else wll
