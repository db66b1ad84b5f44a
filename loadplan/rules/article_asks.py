"""What an article's own row asks of its tie-downs: chain only, reach, shackles, protectors."""

from __future__ import annotations

from loadplan.day.article import Article, Routing
from loadplan.day.gear import Kind
from loadplan.day.units import Units
from loadplan.rules.requirement import (
    MemberRequirement,
    ProtectorRequirement,
    ReachRequirement,
    ShackleRequirement,
    Step,
)
from loadplan.rules.sources import CARGO, USE
from loadplan.text import count, length
from loadplan.wll.assembly import protectors_needed

CHAIN_ONLY = MemberRequirement(
    name="chain only",
    source=CARGO,
    steps=(
        Step(words="Chain only: yes", numbers="chain", result="no strap or rope", source=CARGO),
    ),
    kinds=frozenset({Kind.CHAIN}),
)


def chain_only(article: Article) -> tuple[MemberRequirement, ...]:
    """Every main tie-down is chain, where the row says ``Chain only``."""
    return (CHAIN_ONLY,) if article.chain_only else ()


def reach(article: Article, units: Units) -> tuple[ReachRequirement, ...]:
    """Every tension member is known to be at least ``Reach`` long, where it is given."""
    if article.reach is None:
        return ()
    text = length(article.reach, units)
    step = Step(words="Each tension member is at least", numbers=text, result=text, source=CARGO)
    return (ReachRequirement(name="reach", source=CARGO, steps=(step,), at_least=article.reach),)


def shackles(article: Article) -> tuple[ShackleRequirement, ...]:
    """Every main tie-down has the row's ``Shackles``, where there are any."""
    if not article.shackles:
        return ()
    text = count(article.shackles, "shackle")
    step = Step(words="Each tie-down has", numbers=text, result=f"{text} each", source=CARGO)
    return (
        ShackleRequirement(name="shackles", source=CARGO, steps=(step,), number=article.shackles),
    )


def protectors(article: Article, runs: tuple[Routing, ...]) -> tuple[ProtectorRequirement, ...]:
    """Every strap at a sharp-edged article has its edge protectors (49 CFR 393.104(f)).

    Where the tie-downs run in several ways, each has as many as the one that bends most.
    """
    if not article.sharp_edges or not runs:
        return ()
    run = max(runs, key=protectors_needed)
    number = protectors_needed(run)
    text = count(number, "edge protector")
    step = Step(
        words=f"Sharp edges: each strap ({run.value}) has at least",
        numbers=text,
        result=f"{text} each",
        source=USE,
    )
    return (ProtectorRequirement(name="edge protectors", source=USE, steps=(step,), number=number),)
