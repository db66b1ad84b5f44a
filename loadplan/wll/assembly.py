"""Which pieces go together into one tie-down."""

from __future__ import annotations

from loadplan.day.article import Routing
from loadplan.day.gear import BINDERS, WEBBING, Gear, Kind

_NOTHING: frozenset[Kind] = frozenset()
_TURNBUCKLE = frozenset({Kind.TURNBUCKLE})
BUILT_IN = "built in"
TRAILER_WINCH = "trailer winch"


def needs_tensioner(member: Gear) -> frozenset[Kind]:
    """The kinds of tensioner of which ``member`` needs exactly one; none if it needs no other.

    Chain needs a lever or ratchet binder, wire rope and rope a turnbuckle. Straps bring their
    ratchet or use a winch of the trailer, and steel strapping is not retightened.
    """
    if member.kind is Kind.CHAIN:
        return BINDERS
    if member.kind in (Kind.WIRE_ROPE, Kind.ROPE):
        return _TURNBUCKLE
    return _NOTHING


def fits(member: Gear, tensioner: Gear) -> bool:
    """Whether ``tensioner`` tightens ``member``.

    A binder takes chain of the sizes in its ``Fits`` and of no other; without ``Fits``, or with a
    chain of unknown size, it does not. A turnbuckle takes any wire rope or rope.
    """
    if tensioner.kind not in needs_tensioner(member):
        return False
    return member.kind is not Kind.CHAIN or (
        member.size is not None and member.size in tensioner.fits
    )


def own_tensioner(member: Gear) -> str:
    """What tightens ``member`` where it needs no tensioner of its own.

    ``built in``, ``trailer winch``, or "" where nothing does or a tensioner is needed.
    """
    if member.kind is Kind.WINCH_STRAP:
        return TRAILER_WINCH
    return BUILT_IN if member.kind in WEBBING else ""


def runs(member: Gear, routing: Routing, *, accessory: bool = False) -> bool:
    """Whether ``member`` can be routed so.

    A winch strap runs over the cargo from a winch of the trailer and never holds an accessory.
    """
    return member.kind is not Kind.WINCH_STRAP or (routing is Routing.OVER and not accessory)


def needs_winch(member: Gear) -> bool:
    """Whether ``member`` takes one of the trailer's winches for the whole trip."""
    return member.kind is Kind.WINCH_STRAP


def protectors_needed(routing: Routing) -> int:
    """Edge protectors that a webbing tie-down takes at a sharp-edged article: its bends."""
    return 1 if routing is Routing.DIRECT else 2


def is_webbing(gear: Gear) -> bool:
    """Whether ``gear`` is a strap of synthetic webbing."""
    return gear.kind in WEBBING
