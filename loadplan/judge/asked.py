"""What is asked of one article, requirement by requirement, held against its tie-downs."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from loadplan.day.gear import WEBBING, Kind
from loadplan.day.size import Size
from loadplan.judge.case import ArticleCase
from loadplan.judge.finding import Finding
from loadplan.judge.strength import strength
from loadplan.judge.wording import NOTHING, need_and_have
from loadplan.outcome.tie_down import TieDown
from loadplan.rules.requirement import (
    AccessoryRequirement,
    CannotPlan,
    CountRequirement,
    EachWLLRequirement,
    MemberRequirement,
    ProtectorRequirement,
    ReachRequirement,
    Requirement,
    ShackleRequirement,
)
from loadplan.text import count, mass_up, names

Property = (
    EachWLLRequirement
    | MemberRequirement
    | ReachRequirement
    | ShackleRequirement
    | ProtectorRequirement
)
_LENGTH_PLACES = 2


def findings(case: ArticleCase) -> Iterator[Finding]:
    """Every requirement on the article of ``case``, in the order of its demand."""
    for obstacle in case.demand.obstacles:
        yield _obstacle(obstacle)
    for asked in case.demand.counts:
        yield _count(case, asked)
    for need in case.demand.strengths:
        yield strength(case, need)
    for held_to in case.demand.properties:
        yield _property(case, held_to)
    for accessory in case.demand.accessories:
        yield _accessory(case, accessory)


def at(case: ArticleCase, positions: tuple[str, ...] | None) -> tuple[TieDown, ...]:
    """The main tie-downs of ``case`` at ``positions``; None means all of them."""
    if positions is None:
        return case.main
    return tuple(tie_down for tie_down in case.main if tie_down.position in positions)


def _obstacle(obstacle: CannotPlan) -> Finding:
    return Finding(
        requirement=obstacle,
        need=NOTHING,
        have=NOTHING,
        met=False,
        planned=obstacle.why,
        broken=obstacle.why.removesuffix("."),
    )


def _count(case: ArticleCase, asked: CountRequirement) -> Finding:
    have = sum(asked.worth(tie_down.position) for tie_down in case.main)
    return Finding(
        requirement=asked,
        need=f"{asked.at_least:,}",
        have=f"{have:,}",
        unit="tie-downs",
        met=have >= asked.at_least,
        broken=_too_few(asked, asked.at_least, have),
    )


def _accessory(case: ArticleCase, asked: AccessoryRequirement) -> Finding:
    tie_downs = [
        tied for tied in case.tie_downs if tied.accessory and tied.position == asked.accessory
    ]
    have = len(tie_downs)
    least = asked.at_least or Fraction(0)
    weak = [tied for tied in tie_downs if (case.wll(tied) or Fraction(0)) < least]
    broken = _too_few(asked, asked.number, have)
    if have == asked.number:
        broken = f"{asked.name} is weaker than {mass_up(least, case.day.units)}"
    return Finding(
        requirement=asked,
        need=f"{asked.number:,}",
        have=f"{have - len(weak):,}",
        unit="tie-downs",
        met=have == asked.number and not weak,
        broken=broken,
    )


def _too_few(asked: Requirement, need: int, have: int) -> str:
    return f"{asked.name} needs {count(need, 'tie-down')}, and the plan has {have:,}"


def _property(case: ArticleCase, asked: Property) -> Finding:
    match asked:
        case EachWLLRequirement():
            return _each_wll(case, asked)
        case MemberRequirement():
            return _member(case, asked)
        case ReachRequirement():
            return _reach(case, asked)
        case ShackleRequirement():
            return _shackles(case, asked)
        case _:
            return _protectors(case, asked)


def _each_wll(case: ArticleCase, asked: EachWLLRequirement) -> Finding:
    return _lowest(
        asked,
        at(case, asked.positions),
        lambda tie_down: case.wll(tie_down) or Fraction(0),
        asked.at_least,
        case.day.units.mass,
        0,
    )


def _reach(case: ArticleCase, asked: ReachRequirement) -> Finding:
    def long(tie_down: TieDown) -> Fraction:
        """The known length of the tension member; an unknown one reaches nowhere."""
        member = case.member(tie_down)
        return Fraction(0) if member is None or member.length is None else member.length

    return _lowest(asked, case.main, long, asked.at_least, case.day.units.length, _LENGTH_PLACES)


def _lowest(
    asked: EachWLLRequirement | ReachRequirement,
    tie_downs: tuple[TieDown, ...],
    measure: Callable[[TieDown], Fraction],
    need: Fraction,
    unit: str,
    places: int,
) -> Finding:
    """The lowest measure of all ``tie_downs`` against ``need``; without any, nothing is broken."""
    lowest = min((measure(tie_down) for tie_down in tie_downs), default=None)
    text, have = need_and_have(need, need if lowest is None else lowest, places)
    return Finding(
        requirement=asked,
        need=text,
        have=NOTHING if lowest is None else have,
        unit=unit,
        met=lowest is None or lowest >= need,
    )


def _member(case: ArticleCase, asked: MemberRequirement) -> Finding:
    members = [case.member(tie_down) for tie_down in at(case, asked.positions)]
    known = [member for member in members if member is not None]
    unknown = len(known) < len(members)
    have = {_kind_and_size(member.kind, member.size, asked) for member in known}
    size = "" if asked.least_size is None else f", {asked.least_size} or more"
    return Finding(
        requirement=asked,
        need=names(sorted(kind.value for kind in asked.kinds), "or") + size,
        have=names([*sorted(have), *["unknown gear"] * unknown]) or NOTHING,
        met=not unknown and all(asked.allows(member.kind, member.size) for member in known),
    )


def _kind_and_size(kind: Kind, size: Size | None, asked: MemberRequirement) -> str:
    """``chain``, or ``chain 3/8 in`` where the size matters."""
    if asked.least_size is None:
        return kind.value
    return f"{kind.value} of unknown size" if size is None else f"{kind.value} {size}"


def _shackles(case: ArticleCase, asked: ShackleRequirement) -> Finding:
    have = [tie_down.shackles for tie_down in case.main if tie_down.shackle is not None]
    have += [0 for tie_down in case.main if tie_down.shackle is None]
    return Finding(
        requirement=asked,
        need=f"{asked.number}",
        have=_range(have),
        unit="shackles each",
        met=all(number == asked.number for number in have),
    )


def _protectors(case: ArticleCase, asked: ProtectorRequirement) -> Finding:
    have = []
    for tie_down in case.main:
        member = case.member(tie_down)
        if member is None or member.kind in WEBBING:
            have.append(sum(pieces for _, pieces in tie_down.protectors))
    return Finding(
        requirement=asked,
        need=f"{asked.number}",
        have=_range(have) if have or not case.main else "no straps",
        unit="edge protectors each",
        met=all(number >= asked.number for number in have),
    )


def _range(numbers: list[int]) -> str:
    """``2``, ``1 to 2``, or a dash where there are none."""
    if not numbers:
        return NOTHING
    low, high = min(numbers), max(numbers)
    return f"{low}" if low == high else f"{low} to {high}"
