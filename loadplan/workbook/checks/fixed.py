"""Pieces already on: whether each may be there, and whether together they make a tie-down."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from loadplan.day.article import Routing
from loadplan.day.day import Day
from loadplan.day.gear import TENSION_MEMBERS, TENSIONERS, Condition, FixedPiece, Gear, Kind
from loadplan.problems import Code, Problem
from loadplan.rules.demand import demand_of
from loadplan.rules.requirement import AccessoryRequirement, Demand
from loadplan.text import count, length, names
from loadplan.wll.assembly import fits, needs_tensioner, runs
from loadplan.wll.piece import rate_in
from loadplan.workbook.table import row_problem

_SPOT = tuple[str, str, int]
_REMOVE = "Take the piece off, or correct the row."


def fixed_problems(day: Day) -> Iterator[Problem]:
    """Everything wrong with ``Fixed`` row by row and tie-down by tie-down.

    ``day`` holds only what is sound; a row whose article or gear is not has been left out.
    """
    sets: dict[_SPOT, list[FixedPiece]] = defaultdict(list)
    places: dict[str, Demand] = {}
    for piece in day.fixed:
        asked = places.get(piece.article) or demand_of(day, piece.article)
        if asked is None:
            continue
        places[piece.article] = asked
        wrong = list(_place_problems(piece, asked))
        if not wrong:
            sets[piece.article, piece.position, piece.number].append(piece)
            wrong = list(_piece_problems(day, piece, asked))
        yield from wrong
    for pieces in sets.values():
        yield from _set_problems(day, pieces, places[pieces[0].article])


def _accessory(asked: Demand, position: str) -> AccessoryRequirement | None:
    return next((one for one in asked.accessories if one.accessory == position), None)


def _place_problems(piece: FixedPiece, asked: Demand) -> Iterator[Problem]:
    article = asked.article
    if article.load != piece.load:
        yield row_problem(
            piece.row,
            Code.FIXED_PLACE,
            "Load",
            f"{article.id} is on load {article.load}, not on {piece.load}.",
            f"Write {article.load}, or correct the article.",
        )
        return
    if any(one.pinned and one.name == piece.position for one in article.accessories):
        yield row_problem(
            piece.row,
            Code.FIXED_PLACE,
            "Position",
            f"{piece.position} of {article.id} is pinned and takes no tie-down.",
            "Take (pinned) off in Cargo, or take the row out.",
        )
        return
    accessory, places = _accessory(asked, piece.position), asked.set_of(piece.position)
    if accessory is not None:
        most = accessory.number
    elif places is not None:
        most = places.most_at_each
    else:
        yield _no_such_place(piece, asked)
        return
    if piece.number > most:
        yield row_problem(
            piece.row,
            Code.FIXED_PLACE,
            "No",
            f"No is {piece.number}, and {piece.position} takes {most}.",
            f"It must be {most} or less." if most > 1 else "It must be 1.",
        )


def _no_such_place(piece: FixedPiece, asked: Demand) -> Problem:
    named = [word for one in asked.position_sets for word in _in_short(one.positions)]
    named += [one.accessory for one in asked.accessories]
    ways = list(dict.fromkeys(one.routing.value for one in asked.position_sets))
    return row_problem(
        piece.row,
        Code.FIXED_PLACE,
        "Position",
        f'Position is "{piece.position}", and {asked.article.id} is tied down {names(ways)}.',
        f"It must be one of: {', '.join(named)}.",
    )


def _in_short(positions: tuple[str, ...]) -> tuple[str, ...]:
    return positions if len(positions) <= 6 else (f"{positions[0]} to {positions[-1]}",)


def _piece_problems(day: Day, piece: FixedPiece, asked: Demand) -> Iterator[Problem]:
    gear = day.gear_by_id[piece.gear]
    why = (
        _not_usable(day, gear)
        or _other_kit(day, piece, gear)
        or _not_so_routed(gear, asked, piece.position)
        or _not_asked(day, gear, asked, piece.position)
    )
    if why:
        yield row_problem(piece.row, Code.FIXED_PIECE, "Gear", why, _REMOVE)


def _not_usable(day: Day, gear: Gear) -> str:
    if gear.condition is not Condition.GOOD:
        return f"{gear.id} is marked {gear.condition.value}, not good."
    rating = rate_in(day, gear)
    if not rating.usable:
        return f"The WLL of {gear.id} is unknown: {rating.reason}."
    if gear.kind is Kind.CHAIN and gear.size is None:
        return f"{gear.id} has no Size, so no binder is known to fit it."
    if gear.kind in (Kind.LEVER_BINDER, Kind.RATCHET_BINDER) and not gear.fits:
        return f"{gear.id} has no Fits, so no chain is known to fit it."
    return ""


def _other_kit(day: Day, piece: FixedPiece, gear: Gear) -> str:
    trailer = day.load_by_id[piece.load].trailer
    if gear.kept_on is None or gear.kept_on == trailer:
        return ""
    on = f"trailer {trailer}" if trailer else "no trailer"
    return f"{gear.id} is kept on trailer {gear.kept_on}, and load {piece.load} is on {on}."


def _not_so_routed(gear: Gear, asked: Demand, position: str) -> str:
    if gear.kind not in TENSION_MEMBERS:
        return ""
    accessory, places = _accessory(asked, position), asked.set_of(position)
    routing = Routing.DIRECT if accessory or places is None else places.routing
    if runs(gear, routing, accessory=accessory is not None):
        return ""
    where = "an accessory" if accessory else f"{routing.value} tie-downs"
    return f"{gear.id} is a winch strap, which goes over the cargo and not on {where}."


def _not_asked(day: Day, gear: Gear, asked: Demand, position: str) -> str:
    """What the article's own row asks of main tie-downs; accessories' are free of it."""
    if _accessory(asked, position):
        return ""
    article = asked.article
    member = gear.kind in TENSION_MEMBERS
    other_than_chain = (member and gear.kind is not Kind.CHAIN) or gear.kind is Kind.TURNBUCKLE
    if article.chain_only and other_than_chain:
        return f"{article.id} is chain only, and {gear.id} is a {gear.kind.value}."
    if member and article.reach is not None:
        if gear.length is None:
            return f"{article.id} has a Reach, and {gear.id} has no Length."
        if gear.length < article.reach:
            own, least = length(gear.length, day.units), length(article.reach, day.units)
            return f"{article.id} has a Reach of {least}, and {gear.id} is {own} long."
    return ""


def _set_problems(day: Day, pieces: list[FixedPiece], asked: Demand) -> Iterator[Problem]:
    accessory = _accessory(asked, pieces[0].position)
    shackles = 0 if accessory else asked.article.shackles
    first: dict[str, FixedPiece] = {}
    on = 0
    for piece in pieces:
        gear = day.gear_by_id[piece.gear]
        part = _part(gear)
        earlier = first.setdefault(part, piece)
        if part == "shackle":
            on += 1
            if on > shackles:
                most = count(shackles, "shackle")
                yield _set_problem(piece, f"A tie-down there has {most}, and this is one more.")
            elif earlier.gear != piece.gear:
                yield _set_problem(
                    piece, f"{earlier.gear} is on it, and all its shackles are of one kind."
                )
        elif part and earlier is not piece:
            yield _set_problem(piece, f"{earlier.gear} is its {part} already.")
    yield from _misfit(day, first)


def _part(gear: Gear) -> str:
    if gear.kind in TENSION_MEMBERS:
        return "tension member"
    if gear.kind in TENSIONERS:
        return "tensioner"
    return "shackle" if gear.kind is Kind.SHACKLE else ""


def _misfit(day: Day, first: dict[str, FixedPiece]) -> Iterator[Problem]:
    if "tension member" not in first or "tensioner" not in first:
        return
    piece = first["tensioner"]
    member = day.gear_by_id[first["tension member"].gear]
    tensioner = day.gear_by_id[piece.gear]
    if not fits(member, tensioner):
        takes = "takes no tensioner" if not needs_tensioner(member) else "is not one it fits"
        yield _set_problem(piece, f"{member.id} is on it, which {takes}.")


def _set_problem(piece: FixedPiece, found: str) -> Problem:
    return row_problem(piece.row, Code.FIXED_SET, "Gear", f"{piece.gear}: {found}", _REMOVE)
