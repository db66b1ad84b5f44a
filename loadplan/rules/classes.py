"""Class words: every way in which people write the class of an article."""

from __future__ import annotations

from collections.abc import Mapping

from loadplan.day.article import CargoClass

ALIASES: Mapping[CargoClass, tuple[str, ...]] = {
    CargoClass.LOGS: ("log", "timber logs"),
    CargoClass.DRESSED_LUMBER: (
        "lumber",
        "building products",
        "dressed lumber and building products",
        "dressed lumber and similar building products",
        "lumber and building products",
    ),
    CargoClass.METAL_COIL: ("metal coils", "coil", "coils", "steel coil", "steel coils"),
    CargoClass.PAPER_ROLLS: ("paper roll", "roll of paper", "rolls of paper"),
    CargoClass.CONCRETE_PIPE: ("concrete pipes", "pipe", "pipes"),
    CargoClass.INTERMODAL_CONTAINER: (
        "intermodal containers",
        "container",
        "containers",
        "shipping container",
        "shipping containers",
    ),
    CargoClass.FLATTENED_VEHICLES: (
        "flattened vehicle",
        "flattened cars",
        "flattened car",
        "crushed vehicles",
        "crushed vehicle",
        "crushed cars",
        "crushed car",
        "flattened or crushed vehicles",
        "flattened/crushed vehicles",
    ),
    CargoClass.ROLL_OFF_CONTAINER: (
        "roll-off containers",
        "roll-off",
        "roll off",
        "roll-off bin",
        "roll-on/roll-off",
        "roll-on/roll-off container",
        "roll-on/roll-off containers",
        "hook-lift",
        "hook-lift container",
        "hook-lift containers",
        "roll-on/roll-off and hook-lift container",
        "roll-on/roll-off and hook-lift containers",
        "roll-on/roll-off or hook-lift container",
    ),
    CargoClass.BOULDER: ("boulders", "large boulder", "large boulders", "rock"),
    CargoClass.LIGHT_VEHICLE: ("light vehicles",),
    CargoClass.GENERAL: ("general cargo",),
}


def class_named(text: str) -> CargoClass | None:
    """The class that ``text`` names, in its own words or in any of the aliases; None if none.

    Case, runs of spaces and hyphens do not matter.
    """
    return _BY_WORD.get(_fold(text))


def _fold(text: str) -> str:
    return " ".join(text.casefold().replace("-", " ").split())


_BY_WORD = {_fold(kind.value): kind for kind in CargoClass} | {
    _fold(alias): kind for kind, aliases in ALIASES.items() for alias in aliases
}
