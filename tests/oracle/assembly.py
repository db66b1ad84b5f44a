"""Complete tie-downs: which pieces go together, and what the result is good for."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction

from tests.oracle.day import Article, Day, Fixed, Gear, Load

WEBBING = ("winch strap", "ratchet strap", "retractable strap")
ALONE = ("ratchet strap", "retractable strap", "steel strapping")
MEMBERS = (*WEBBING, "steel strapping", "chain", "wire rope", "rope")
BINDERS = ("lever binder", "ratchet binder")
PARTS = ("tension member", "tensioner", "connector", "anchor point", "tie point")


@dataclass(frozen=True, kw_only=True)
class Assembly:
    """One tension member with what belongs to it, by case-folded gear ids."""

    member: str
    tensioner: str | None
    shackle: str | None
    shackles: int
    parts: tuple[Fraction | None, ...]
    webbing: bool
    winch: bool
    issued: Fraction

    @property
    def wll(self) -> Fraction:
        """The lowest of all parts that have a rating."""
        return min(part for part in self.parts if part is not None)

    @property
    def weakest(self) -> str:
        """The first part that is as low as the lowest."""
        return PARTS[self.parts.index(self.wll)]

    @property
    def pair(self) -> tuple[str, str | None]:
        """What counts as one set."""
        return self.member, self.tensioner

    @property
    def pieces(self) -> Counter[str]:
        """Load-bearing pieces taken."""
        found = Counter([self.member])
        if self.tensioner:
            found[self.tensioner] += 1
        if self.shackle:
            found[self.shackle] += self.shackles
        return found


def assemble(
    day: Day,
    load: Load,
    article: Article,
    accessory: bool,
    member: Gear,
    tensioner: Gear | None,
    shackle: Gear | None,
    shackles: int,
) -> Assembly:
    """The tie-down of these pieces on this article of this load."""
    trailer = day.trailer(load)
    capped = article.routing == "direct" and not accessory
    bearing = [
        member,
        *([tensioner] if tensioner else []),
        *([shackle] * shackles if shackle else []),
    ]
    return Assembly(
        member=_key(member),
        tensioner=_key(tensioner) if tensioner else None,
        shackle=_key(shackle) if shackle and shackles else None,
        shackles=shackles if shackle else 0,
        parts=(
            member.wll,
            tensioner.wll if tensioner else None,
            shackle.wll if shackle and shackles else None,
            trailer.anchor_wll,
            article.tie_point if capped else None,
        ),
        webbing=member.kind in WEBBING,
        winch=member.kind == "winch strap",
        issued=sum((piece.wll or Fraction(0) for piece in bearing), Fraction(0)),
    )


def takes(tensioner: Gear, member: Gear) -> bool:
    """Whether a tensioner belongs on a tension member."""
    if member.kind == "chain":
        return (
            tensioner.kind in BINDERS and member.size is not None and member.size in tensioner.fits
        )
    return member.kind in ("wire rope", "rope") and tensioner.kind == "turnbuckle"


def candidates(day: Day, load: Load, article: Article, accessory: bool) -> list[Assembly]:
    """Every complete tie-down that may be used on the article (or on one of its accessories)."""
    gear = [
        g
        for g in day.gear.values()
        if g.usable and g.wll is not None and g.kept_on in (None, load.trailer)
    ]
    shackles = 0 if accessory else article.shackles
    linked: list[Gear | None] = [g for g in gear if g.kind == "shackle"] if shackles else [None]
    found = []
    for member in gear:
        if not allowed(day, load, article, accessory, member):
            continue
        alone = member.kind in ALONE or member.kind == "winch strap"
        tighten: list[Gear | None] = [None] if alone else [g for g in gear if takes(g, member)]
        for tensioner in tighten:
            for shackle in linked:
                one = assemble(day, load, article, accessory, member, tensioner, shackle, shackles)
                if accessory or one.wll >= day.rule_weight("least wll each"):
                    found.append(one)
    return found


def allowed(day: Day, load: Load, article: Article, accessory: bool, member: Gear) -> bool:
    """Whether this tension member may be used there at all."""
    if member.kind not in MEMBERS:
        return False
    if member.kind == "winch strap" and (
        accessory or article.routing != "over" or not day.trailer(load).winches
    ):
        return False
    if accessory:
        return True
    if article.chain_only and member.kind != "chain":
        return False
    if article.machine and member.kind in WEBBING and not day.rule("straps on machines", True):
        return False
    return article.reach is None or (member.length is not None and member.length >= article.reach)


def protectors(article: Article, assembly: Assembly, accessory: bool) -> int:
    """Edge protectors one such tie-down needs."""
    if accessory or not article.sharp or not assembly.webbing:
        return 0
    return 1 if article.routing == "direct" else 2


def completes(day: Day, assembly: Assembly, fixed: Fixed) -> bool:
    """Whether ``assembly`` holds every load-bearing piece that is already on."""
    bearing = Counter(p for p in fixed.pieces if day.gear[p].kind != "edge protector")
    return not bearing - assembly.pieces


def _key(gear: Gear) -> str:
    return gear.id.casefold()
