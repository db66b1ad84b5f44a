"""``Purchase`` and ``Curve``: what is bought, and what each better set of ready loads costs."""

from __future__ import annotations

from loadplan.day.gear import Gear, Kind, Price
from loadplan.day.units import Units
from loadplan.purchase.bought import Bought
from loadplan.purchase.owned import gear_ids
from loadplan.purchase.point import Point
from loadplan.purchase.purchase import Purchase
from loadplan.tables.table import Cell, Table
from loadplan.text import length, mass, names


def purchase_tables(bought: Bought) -> dict[str, Table]:
    """The flat sheets of a purchase, by name; ``Curve`` only where there is a budget."""
    found = {"Purchase": purchase(bought)}
    if bought.curve is not None:
        found["Curve"] = curve(bought)
    return found


def purchase(bought: Bought) -> Table:
    """One row for each kind of piece bought and its price."""
    units, money = bought.day.units, _in_currency(bought)
    owned = bought.day.gear_by_id
    return Table(
        headings=(
            *("Gear", "Kind", "Size", "Grade", f"Length [{units.length}]"),
            *(f"WLL [{units.mass}]", f"Breaking strength [{units.mass}]", "Fits"),
            *("In the cage already", "Pieces", f"Price{money}", f"Cost{money}"),
        ),
        rows=tuple(
            (
                name,
                *_specification(offer.specification),
                "yes" if name in owned else "no",
                pieces,
                offer.price,
                offer.price * pieces,
            )
            for name, offer, pieces in named_lines(bought, bought.purchase)
        ),
    )


def curve(bought: Bought) -> Table:
    """One row for each point of the curve, from nothing bought on."""
    found = bought.curve
    assert found is not None
    several = found.priorities if len(found.priorities) > 1 else ()
    return Table(
        headings=(
            *(f"Cost{_in_currency(bought)}", "Loads ready", "Loads held"),
            *(f"Ready at priority {priority}" for priority in several),
            *("Pieces", "Proved", "Within budget", "Chosen", "Buy", "Held"),
        ),
        rows=tuple(_point(bought, point, bool(several)) for point in found.points),
    )


def _point(bought: Bought, point: Point, several: bool) -> tuple[Cell, ...]:
    budget = bought.budget
    return (
        point.purchase.cost,
        point.loads,
        len(bought.day.loads) - point.loads,
        *(point.ready if several else ()),
        point.purchase.pieces,
        _yes(point.proved),
        _yes(budget is None or point.purchase.cost <= budget),
        _yes(point.purchase.cost == bought.purchase.cost),
        shopping_words(bought, point.purchase),
        ", ".join(point.held),
    )


def named_lines(bought: Bought, purchase: Purchase) -> list[tuple[str, Price, int]]:
    """(id once it is owned, offer, pieces) for each line of a purchase."""
    names = gear_ids(bought.day, [offer for offer, _ in purchase.lines])
    return [
        (name, offer, pieces) for name, (offer, pieces) in zip(names, purchase.lines, strict=True)
    ]


def shopping_words(bought: Bought, purchase: Purchase) -> str:
    """``2 x B38; 1 x C38``, or ``nothing``."""
    lines = (f"{pieces:,} x {name}" for name, _, pieces in named_lines(bought, purchase))
    return "; ".join(lines) or "nothing"


def specification_words(gear: Gear, units: Units) -> str:
    """What to ask for in the shop: ``chain 3/8, grade 70, 20 ft, WLL 6,600 lb``."""
    words = [f"{gear.kind.value} {gear.size_text}".strip()]
    if gear.grade:
        words.append(f"grade {gear.grade}" if gear.kind is Kind.CHAIN else gear.grade)
    if gear.length is not None:
        words.append(length(gear.length, units))
    if gear.wll is not None:
        words.append(f"WLL {mass(gear.wll, units)}")
    elif gear.breaking_strength is not None:
        words.append(f"breaking strength {mass(gear.breaking_strength, units)}")
    if gear.fits:
        words.append(f"for chain of {names([f'{size}' for size in gear.fits])}")
    return ", ".join(words)


def _specification(gear: Gear) -> tuple[Cell, ...]:
    return (
        gear.kind.value,
        gear.size_text,
        gear.grade,
        gear.length,
        gear.wll,
        gear.breaking_strength,
        ", ".join(str(size) for size in gear.fits),
    )


def _in_currency(bought: Bought) -> str:
    return f" [{bought.currency}]" if bought.currency else ""


def _yes(what: bool) -> str:
    return "yes" if what else "no"
