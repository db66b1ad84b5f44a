"""Whether the pieces of one tie-down may be used, and make one tie-down."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Routing
from loadplan.day.gear import (
    BINDERS,
    SELF_TENSIONED,
    TENSION_MEMBERS,
    Condition,
    Gear,
    Kind,
)
from loadplan.day.house import UnratedPoints
from loadplan.judge.case import ArticleCase
from loadplan.judge.wording import of_tie_down
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.requirement import ShackleRequirement
from loadplan.text import count


def made_wrong(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    """A sentence for everything wrong with the pieces of ``tie_down`` and how they go together."""
    where = of_tie_down(tie_down)
    for what in (
        *_pieces(case, tie_down),
        *_member(case, tie_down),
        *_tensioner(case, tie_down),
        *_shackles(case, tie_down),
        *_protectors(case, tie_down),
        *_routing(case, tie_down),
        *_points(case, tie_down),
    ):
        yield f"{where}: {what}."


def _pieces(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    """Each piece: known, good, of the cage or the load's own trailer, and rated."""
    shackle = () if tie_down.shackle is None else (tie_down.shackle,)
    for piece in dict.fromkeys((*tie_down.pieces(), *shackle)):
        gear = case.day.gear_by_id.get(piece)
        if gear is None:
            yield f"{piece} is not gear of this day"
            continue
        if gear.condition is not Condition.GOOD:
            yield f"{_named(gear)} is marked {gear.condition.value}; only good gear is planned"
        if gear.kept_on is not None and gear.kept_on != case.load.trailer:
            yield f"{_named(gear)} is kept on trailer {gear.kept_on}, which is not the load's"
        if gear.kind is Kind.RETRACTABLE_STRAP and gear.kept_on is None:
            yield f"{_named(gear)} is fixed to a trailer, and the day does not say which"
        if not case.ratings[piece].usable:
            yield f"{_named(gear)} has no known WLL: {case.ratings[piece].reason}"


def _member(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    member = case.member(tie_down)
    if member is None:
        return
    if member.kind not in TENSION_MEMBERS:
        yield f"{_named(member)} is no tension member"
    if member.kind is Kind.WINCH_STRAP:
        if tie_down.accessory:
            yield f"{_named(member)} holds an accessory; a winch strap does not"
        if tie_down.routing is not Routing.OVER:
            yield f"{_named(member)} runs {tie_down.routing.value}; a winch strap runs over"


def _tensioner(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    member = case.member(tie_down)
    if member is None:
        return
    if tie_down.tensioner is None:
        if member.kind in (Kind.CHAIN, Kind.WIRE_ROPE, Kind.ROPE):
            yield f"{_named(member)} has no tensioner"
        return
    tensioner = case.day.gear_by_id.get(tie_down.tensioner)
    if tensioner is None:
        return
    if member.kind in SELF_TENSIONED or member.kind is Kind.WINCH_STRAP:
        yield f"{_named(member)} takes no tensioner of its own, and has {_named(tensioner)}"
    elif member.kind is Kind.CHAIN:
        yield from _binder(member, tensioner)
    elif member.kind in (Kind.WIRE_ROPE, Kind.ROPE) and tensioner.kind is not Kind.TURNBUCKLE:
        yield f"{_named(member)} needs a turnbuckle, and has {_named(tensioner)}"


def _binder(chain: Gear, binder: Gear) -> Iterator[str]:
    if binder.kind not in BINDERS:
        yield f"{_named(chain)} needs a lever or ratchet binder, and has {_named(binder)}"
    elif chain.size is None:
        yield f"{_named(chain)} is of unknown size, so no binder is known to fit it"
    elif chain.size not in binder.fits:
        takes = ", ".join(str(size) for size in binder.fits) or "no stated size"
        yield (
            f"{_named(binder)} does not fit {_named(chain)}: "
            f"it takes {takes}, and the chain is {chain.size}"
        )


def _shackles(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    """Exactly as many as the article asks, of one kind; an accessory's tie-down has none."""
    asked = 0 if tie_down.accessory else _shackles_asked(case)
    have = tie_down.shackles
    if have != asked:
        yield f"it has {count(have, 'shackle')}, and {asked} are asked for"
    if tie_down.shackle is None:
        if have:
            yield f"it has {count(have, 'shackle')}, and does not say of which kind"
        return
    if have < 1:
        yield f"it names shackle {tie_down.shackle} and takes {have} of it"
    gear = case.day.gear_by_id.get(tie_down.shackle)
    if gear is not None and gear.kind is not Kind.SHACKLE:
        yield f"{_named(gear)} is no shackle"


def _shackles_asked(case: ArticleCase) -> int:
    numbers = (
        asked.number for asked in case.demand.properties if isinstance(asked, ShackleRequirement)
    )
    return next(numbers, 0)


def _protectors(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    for piece, pieces in tie_down.protectors:
        gear = case.day.gear_by_id.get(piece)
        if gear is not None and gear.kind is not Kind.EDGE_PROTECTOR:
            yield f"{_named(gear)} is no edge protector"
        if pieces < 1:
            yield f"it takes {pieces} of edge protector {piece}"


def _routing(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    """Main tie-downs run as asked at their position, accessories' always direct."""
    stands_in = case.demand.set_of(tie_down.position)
    asked = case.demand.routing if stands_in is None else stands_in.routing
    if tie_down.accessory:
        asked = Routing.DIRECT
    if tie_down.routing is not asked:
        yield f"it runs {tie_down.routing.value}, and {asked.value} is asked for"


def _points(case: ArticleCase, tie_down: TieDown) -> Iterator[str]:
    """Where the house holds unrated points, the points a tie-down hooks to are rated.

    Whether a tie-down of a commodity holds a point of the article, its demand alone says.
    """
    if case.day.house.unrated_points is not UnratedPoints.HOLD:
        return
    if case.anchor_wll is None and tie_down.routing is not Routing.ROUND:
        yield "its anchor point is unrated, and the house holds unrated points"
    own_points = not tie_down.accessory and not case.article.cargo_class.is_commodity
    if own_points and tie_down.routing is Routing.DIRECT and case.tie_point_wll(tie_down) is None:
        yield "its tie point is unrated, and the house holds unrated points"


def _named(gear: Gear) -> str:
    """``chain C-38``: the kind and the id as typed."""
    return f"{gear.kind.value} {gear.id}"
