"""The whole picture of one load as a PNG, with the words for those who cannot see it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.day import Day
from loadplan.day.gear import WEBBING, Kind
from loadplan.results.deck.above import Above, Area
from loadplan.results.deck.inks import INK, PAPER, Inks, fitted, text_width
from loadplan.results.deck.placing import GAP, Placing, place
from loadplan.results.deck.side import Side
from loadplan.rules.limits import LIMITS
from loadplan.tables.facts import LoadFacts
from loadplan.text import count, length, mass

WIDTH, HEIGHT = 1600, 424
_ABOVE = Area(left=72, top=30, right=1030, bottom=HEIGHT - 2)
_SIDE = Area(left=1120, top=52, right=1580, bottom=226)
_KEY = (1104, 250)
_LINE = 22
_WIDE = WIDTH - _KEY[0] - 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A PNG and its alternative text."""

    png: bytes
    words: str


def deck_picture(day: Day, facts: LoadFacts) -> Picture:
    """The picture of one load; a held load is drawn without tie-downs."""
    placing = place(facts.cargo, facts.trailer, day.units)
    inks = Inks(WIDTH, HEIGHT)
    above = Above(inks, _ABOVE, placing, day.units)
    front = facts.trailer is not None and facts.trailer.front_structure
    named = above.draw(facts.articles, front_structure=front)
    _title(inks, placing)
    side = Side(inks, _SIDE, placing, facts.trailer, height_limit(day), day.units)
    side.draw()
    limit = length(side.limit, day.units)
    inks.text((_KEY[0], 16), f"From the side (dashed: height limit {limit})", size=20, bold=True)
    notes = [*placing.notes, *_height_notes(side)]
    notes += _pinned(facts)
    if not named:
        notes.append("Too many tie-downs to name their gear here: see the table by number.")
    _key(inks, facts, day, notes)
    return Picture(png=inks.png(), words=_words(day, facts, notes))


def height_limit(day: Day) -> Fraction:
    """The overall height that is pointed out, in the day's unit."""
    return LIMITS[day.units].height if day.height_limit is None else day.height_limit


def _title(inks: Inks, placing: Placing) -> None:
    known = placing.deck_length_known and placing.deck_width_known
    scaled = known and all(block.to_scale for block in placing.blocks)
    kind = "to scale" if scaled else "not to scale where dashed"
    words = f"From above, {kind}; the arrow is the direction of travel"
    inks.text((12, 16), words, size=20, bold=True)
    inks.line([(1076, 10), (1076, HEIGHT - 10)], width=1)


def _height_notes(side: Side) -> list[str]:
    if side.deck_height is None:
        return ["Deck height not given: overall height not known."]
    unknown = [b.article.id for b in side.placing.blocks if b.article.height is None]
    return [f"Height not given: {', '.join(unknown)}."] if unknown else []


def _pinned(facts: LoadFacts) -> list[str]:
    pinned = [
        f"{article.id} {accessory.name}"
        for article in facts.cargo
        for accessory in article.accessories
        if accessory.pinned
    ]
    return [f"Pinned, no tie-down (open diamond): {', '.join(pinned)}."] if pinned else []


def _key(inks: Inks, facts: LoadFacts, day: Day, notes: list[str]) -> None:
    """What the signs mean, then what is not known."""
    y = _KEY[1]
    kinds = {one.member.kind for one in facts.tie_downs}
    if kinds:
        _sign(inks, _KEY[0], y, kinds)
        y += _LINE
    gap = length(GAP[day.units], day.units)
    order = f"Drawn front first in workbook order, {gap} apart; not a loading position."
    lines = [
        (line, note.startswith("DOES NOT FIT"))
        for note in (order, *notes)
        for line in _wrapped(note)
    ]
    room = int((HEIGHT - 10 - y) // (_LINE - 2)) + 1
    for at, (line, bold) in enumerate(lines[:room]):
        cut = at + 1 == room < len(lines)
        text = fitted(f"{line} and more", 17, _WIDE) if cut else line
        inks.text((_KEY[0], y), text, size=17, bold=bold)
        y += _LINE - 2


def _sign(inks: Inks, x: float, y: float, kinds: set[Kind]) -> None:
    """One line of signs with their names."""
    signs = (
        ("chain", {Kind.CHAIN}),
        ("strap", WEBBING | {Kind.STEEL_STRAPPING}),
        ("rope", {Kind.WIRE_ROPE, Kind.ROPE}),
    )
    for name, group in signs:
        if not kinds & group:
            continue
        ends = [(x, y), (x + 34, y)]
        if name == "rope":
            inks.dashed(ends[0], ends[1], width=5, dash=9)
        else:
            inks.line(ends, width=5 if name == "chain" else 9)
        if name == "strap":
            inks.line(ends, width=3, ink=PAPER)
        inks.text((x + 42, y), name, size=17)
        x += 58 + text_width(name, 17)
    inks.disc((x + 4, y), 6)
    inks.text((x + 14, y), "tie point", size=17)
    x += 26 + text_width("tie point", 17)
    inks.box(x - 2, y - 6, x + 10, y + 6, fill=PAPER, width=3)
    inks.text((x + 18, y), "anchor", size=17)
    x += 30 + text_width("anchor", 17)
    inks.shape([(x - 2, y), (x + 7, y - 9), (x + 16, y), (x + 7, y + 9)], fill=INK)
    inks.text((x + 22, y), "accessory", size=17)


def _wrapped(text: str) -> list[str]:
    """``text`` in lines that fit the key."""
    lines, line = [], ""
    for word in text.split(" "):
        longer = f"{line} {word}".strip()
        if line and text_width(longer, 17) > _WIDE:
            lines.append(line)
            longer = word
        line = longer
    return [*lines, line]


def _words(day: Day, facts: LoadFacts, notes: list[str]) -> str:
    """The alternative text: what is on the deck from front to rear."""
    parts = [f"Deck of load {facts.load.id}, front to rear:"]
    for one in facts.articles:
        ties = count(len(one.tie_downs), "tie-down")
        parts.append(f"{one.article.id}, {mass(one.article.carried_weight, day.units)}, {ties};")
    if not facts.articles:
        parts.append("no cargo.")
    return " ".join([*parts, *notes])
