"""The table of commodity classes: what each row must say, and the section that asks."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from loadplan.day.article import Article, CargoClass, Routing
from loadplan.rules import commodity_sources as sources
from loadplan.rules.commodities import (
    boulders,
    coils,
    containers,
    flattened,
    logs,
    lumber,
    paper_rolls,
    pipe,
    roll_off,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details
from loadplan.rules.profile import Profile
from loadplan.rules.section import Asks, Subject
from loadplan.source import Source


def _never(details: Details) -> bool:
    return False


@dataclass(frozen=True, slots=True, kw_only=True)
class Commodity:
    """One commodity class.

    ``general_if``: when the general rules may be chosen instead, as a check line; "" where they
    may not. ``grouped``: whether several rows may be one group. ``by_length``: whether its own
    section counts tie-downs by length, so that a row must give it. ``routings`` are those that
    ``Routing`` may name under its own section.
    """

    title: str
    section: Source
    details: tuple[Detail, ...]
    asks: Callable[[Subject], Asks]
    contradictions: Callable[[Article, Details, Profile], Iterator[Contradiction]]
    general_if: str = ""
    grouped: bool = False
    by_length: Callable[[Details], bool] = _never
    routings: Callable[[Details], frozenset[Routing]]


def _over(details: Details) -> frozenset[Routing]:
    return frozenset({Routing.OVER})


def _direct(details: Details) -> frozenset[Routing]:
    return frozenset({Routing.DIRECT})


def _coil_routing(details: Details) -> frozenset[Routing]:
    sides = details.choice("eye") == "lengthwise" and details.choice("option") == "2"
    return frozenset({Routing.OVER, Routing.SAME_SIDE} if sides else {Routing.OVER})


def _container_routing(details: Details) -> frozenset[Routing]:
    if details.choice("place") == "deck" and details.choice("filling") == "empty":
        return frozenset({Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER})
    return frozenset({Routing.DIRECT})


def _boulder_routing(details: Details) -> frozenset[Routing]:
    unstable = details.choice("shape") == "unstable"
    return frozenset({Routing.DIRECT if unstable else Routing.OVER})


COMMODITIES: Mapping[CargoClass, Commodity] = {
    CargoClass.LOGS: Commodity(
        title="logs",
        section=sources.LOGS,
        details=logs.DETAILS,
        asks=logs.logs,
        contradictions=logs.contradictions,
        general_if="Logs by the general rules: unitised, or no more than four processed logs.",
        routings=_over,
    ),
    CargoClass.DRESSED_LUMBER: Commodity(
        title="dressed lumber and building products",
        section=sources.LUMBER,
        details=lumber.DETAILS,
        asks=lumber.lumber,
        contradictions=lumber.contradictions,
        general_if="Building products by the general rules: loose pieces, not bundles or packages.",
        grouped=True,
        by_length=lambda details: True,
        routings=_over,
    ),
    CargoClass.METAL_COIL: Commodity(
        title="metal coils",
        section=sources.COILS,
        details=coils.DETAILS,
        asks=coils.coil,
        contradictions=coils.contradictions,
        general_if="Coils by the general rules: all coils on the vehicle together weigh less than "
        "5,000 lb (2,268 kg).",
        grouped=True,
        routings=_coil_routing,
    ),
    CargoClass.PAPER_ROLLS: Commodity(
        title="paper rolls",
        section=sources.PAPER,
        details=paper_rolls.DETAILS,
        asks=paper_rolls.paper_rolls,
        contradictions=paper_rolls.contradictions,
        general_if="Paper rolls by the general rules: on pallets, or all rolls on the vehicle "
        "together weigh less than 5,000 lb (2,268 kg).",
        grouped=True,
        by_length=lambda details: True,
        routings=_over,
    ),
    CargoClass.CONCRETE_PIPE: Commodity(
        title="concrete pipe",
        section=sources.PIPE,
        details=pipe.DETAILS,
        asks=pipe.pipe,
        contradictions=pipe.contradictions,
        general_if="Pipe by the general rules: bundled into one rigid article, in a sided vehicle "
        "or container, or with eyes vertical or lengthwise.",
        grouped=True,
        by_length=lambda details: not pipe.is_large(details),
        routings=_over,
    ),
    CargoClass.INTERMODAL_CONTAINER: Commodity(
        title="intermodal containers",
        section=sources.CHASSIS,
        details=containers.DETAILS,
        asks=containers.container,
        contradictions=containers.contradictions,
        by_length=lambda details: (
            details.choice("filling") == "empty" and details.choice("place") == "deck"
        ),
        routings=_container_routing,
    ),
    CargoClass.FLATTENED_VEHICLES: Commodity(
        title="flattened or crushed vehicles",
        section=sources.FLATTENED,
        details=flattened.DETAILS,
        asks=flattened.flattened,
        contradictions=flattened.contradictions,
        routings=_over,
    ),
    CargoClass.ROLL_OFF_CONTAINER: Commodity(
        title="roll-on/roll-off and hook-lift containers",
        section=sources.ROLL_OFF,
        details=roll_off.DETAILS,
        asks=roll_off.roll_off,
        contradictions=roll_off.contradictions,
        routings=_direct,
    ),
    CargoClass.BOULDER: Commodity(
        title="large boulders",
        section=sources.BOULDERS,
        details=boulders.DETAILS,
        asks=boulders.boulder,
        contradictions=boulders.contradictions,
        general_if="The rock by the general rules: no more than 2 m3, or cut or formed with a "
        "stable base.",
        grouped=True,
        routings=_boulder_routing,
    ),
}
