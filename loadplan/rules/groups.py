"""Groups: articles secured together, as 49 CFR 393.106(d) and (c)(2) allow.

A group is planned as one article that stands for all its members: its id is the group's, its
weight that of all of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction

from loadplan.day.article import Article, CargoClass, Routing, Stands, WeightFrom
from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.rules.canada import cite_in
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.profile import profile
from loadplan.rules.read_details import details_of
from loadplan.rules.sources import SIDE_BY_SIDE

_SURENESS = (WeightFrom.ESTIMATE, WeightFrom.PLATE, WeightFrom.SCALE)
Found = tuple[Article, Contradiction]


def units_of(day: Day, load: Load) -> tuple[Article, ...]:
    """What ``load`` carries, in workbook order: articles alone, and groups at their first member.

    A group is a made-up article that is not among the day's own.
    """
    found: dict[str, Article] = {}
    for article in day.articles_by_load[load.id]:
        if not article.group:
            found[article.id] = article
        elif article.group not in found:
            found[article.group] = group_article(members_of(day, article.group))
    return tuple(found.values())


def members_of(day: Day, group: str) -> tuple[Article, ...]:
    """The members of ``group`` in workbook order; () where no row names it."""
    return day.articles_by_group.get(group, ())


def article_named(day: Day, name: str) -> Article | None:
    """The article called ``name``, or the one made up for the group so called; None if neither."""
    if name in day.article_by_id:
        return day.article_by_id[name]
    members = members_of(day, name)
    return group_article(members) if members else None


def group_article(members: tuple[Article, ...]) -> Article:
    """One article that stands for all ``members``.

    Articles side by side or stacked are as long as the longest of them; in line, and pipe lying
    crosswise, as long as all together.
    """
    first = members[0]
    stands = stands_of(members)
    lines_up = stands is Stands.IN_LINE or (
        first.cargo_class is CargoClass.CONCRETE_PIPE and stands is not Stands.STACKED
    )
    return Article(
        id=first.group,
        load=first.load,
        cargo_class=first.cargo_class,
        weight=sum((one.carried_weight for one in members), Fraction(0)),
        description="group of " + ", ".join(one.id for one in members),
        weight_from=min((one.weight_from for one in members), key=_SURENESS.index),
        length=_size((one.length for one in members), sum if lines_up else max),
        width=_size((one.width for one in members), sum if stands is Stands.SIDE_BY_SIDE else max),
        height=_size((one.height for one in members), sum if stands is Stands.STACKED else max),
        secured_under=first.secured_under,
        blocked_forward=all(one.blocked_forward for one in members),
        routing=Routing.OVER,
        reach=max((one.reach for one in members if one.reach is not None), default=None),
        shackles=max(one.shackles for one in members),
        sharp_edges=any(one.sharp_edges for one in members),
        chain_only=any(one.chain_only for one in members),
        details=first.details,
        group=first.group,
        stands=stands,
        row=first.row,
    )


def stands_of(members: Iterable[Article]) -> Stands | None:
    """How the members stand to each other: what any of their rows says."""
    return next((one.stands for one in members if one.stands is not None), None)


def group_contradictions(day: Day) -> Iterator[Found]:
    """Everything about the day's groups that cannot be."""
    for name, members in day.articles_by_group.items():
        if name in day.article_by_id:
            yield _said(
                members[0],
                "Group",
                f"The group {name} has the name of an article.",
                "Give the group a name of its own.",
            )
        yield from _one_by_one(members, cite_in(profile(day), SIDE_BY_SIDE))
        yield from _together(members)


def _one_by_one(members: tuple[Article, ...], cite: str) -> Iterator[Found]:
    for one in members:
        kind = one.cargo_class
        grouped = COMMODITIES[kind].grouped if kind in COMMODITIES else kind is CargoClass.GENERAL
        if not grouped:
            yield _said(
                one,
                "Group",
                f"An article of class {kind.value} is secured alone.",
                "Leave Group blank.",
            )
        if one.accessories:
            yield _said(
                one,
                "Accessories",
                "A member of a group has no accessories.",
                "Leave Accessories blank, or leave Group blank.",
            )
        if one.routing not in (None, Routing.OVER):
            yield _said(
                one,
                "Routing",
                f"Routing is {one.routing}, and a group is held by tie-downs over it, by {cite}.",
                "Leave Routing blank, or leave Group blank.",
            )


def _together(members: tuple[Article, ...]) -> Iterator[Found]:
    first = members[0]
    if stands_of(members) is None:
        yield _said(
            first,
            "Group stands",
            f"No row says how the articles of the group {first.group} stand to each other.",
            "Write side by side, stacked or in line.",
        )
    for one in members[1:]:
        for column, same, what in (
            ("Load", one.load == first.load, "goes on the same load"),
            ("Class", one.cargo_class is first.cargo_class, "has the same class"),
            (
                "Secured under",
                one.secured_under is first.secured_under,
                "is secured under the same section",
            ),
            ("Group stands", one.stands in (None, stands_of(members)), "stands in the same way"),
            ("Details", details_of(one) == details_of(first), "has the same details"),
        ):
            if not same:
                yield _said(
                    one,
                    column,
                    f"Every article of the group {first.group} {what} as {first.id}.",
                    "Correct it, or give the article another group.",
                )


def _size(
    values: Iterable[Fraction | None], together: Callable[[list[Fraction]], Fraction | int]
) -> Fraction | None:
    """The size of all together; None where one of them is not known."""
    known: list[Fraction] = []
    for value in values:
        if value is None:
            return None
        known.append(value)
    return Fraction(together(known))


def _said(article: Article, column: str, found: str, remedy: str) -> Found:
    return article, Contradiction(column=column, text=f"{found} {remedy}")
