"""The plainest integer program that says what a day wants.

Variables, all whole numbers: ``ready[load]``; for every way of tying an article down one that says
the way is taken, and how many of each assembly it takes; how a tie-down that is already begun is
completed; how many edge protectors of a kind a load takes. The places of an article are all alike
but for the demand that some of them are not left empty, so the program counts tie-downs per
article and never says where they stand.

The ways of an article: ``n`` tie-downs all of one pair of tension member and tensioner, for every
pair and every ``n`` that could be right; and one way that mixes two pairs or more.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from fractions import Fraction

from tests.oracle.assembly import Assembly, candidates, completes, protectors
from tests.oracle.day import Article, Day, Fixed, Load
from tests.oracle.program import Program
from tests.oracle.rules import ANCHORS, Need, need


@dataclass
class Choice:
    """One variable that stands for tie-downs of one assembly on one article."""

    variable: int
    load: str
    article: Article
    assembly: Assembly
    accessory: bool
    begun: Fixed | None = None


@dataclass
class Model:
    """The program of one day and what its variables stand for."""

    day: Day
    program: Program = field(default_factory=Program)
    ready: dict[str, int] = field(default_factory=dict)
    choices: list[Choice] = field(default_factory=list)
    guards: dict[tuple[str, str], int] = field(default_factory=dict)
    mixed: dict[int, Fraction | int] = field(default_factory=dict)


def build(day: Day) -> Model:
    """The program without an objective."""
    model = Model(day)
    for name, load in day.loads.items():
        model.ready[name] = model.program.variable(1)
        for article in load.articles:
            _article(model, name, load, article)
        _load(model, name, load)
    _pool(model)
    return model


def _article(model: Model, name: str, load: Load, article: Article) -> None:
    day, program, ready = model.day, model.program, model.ready[name]
    wants = need(article, load, day)
    if wants.obstacle:
        program.at_most({ready: 1}, 0)
    begun = [f for f in day.fixed if f.article == article.id.casefold()]
    main = [f for f in begun if f.position in wants.positions]
    options = candidates(day, load, article, accessory=False)
    room = len(wants.positions) * wants.most - len(main)
    empty = sum(not any(f.position in group for f in main) for group in wants.groups)
    parts = _accessories(model, name, load, article, begun)
    one = _Article(
        model=model,
        name=name,
        article=article,
        wants=wants,
        room=room,
        fewest=max(wants.count, empty),
        extra={c.variable: wants.accessory_credit * c.assembly.wll for c in parts},
        most_extra=len(article.accessories)
        * max((wants.accessory_credit * c.assembly.wll for c in parts), default=Fraction(0)),
    )
    if not main:
        for chosen in _pairs(options):
            _one_pair(one, chosen)
    _several_pairs(one, options, main, empty)
    program.equal(one.ways | {ready: -1}, 0)


@dataclass(kw_only=True)
class _Article:
    """What the ways of one article share; ``extra`` is what its accessories add."""

    model: Model
    name: str
    article: Article
    wants: Need
    room: int
    fewest: int
    extra: dict[int, Fraction]
    most_extra: Fraction
    ways: dict[int, Fraction | int] = field(default_factory=dict)

    def way(self) -> int:
        """A new variable that says one way is taken."""
        variable = self.model.program.variable(1)
        self.ways[variable] = 1
        return variable

    def choose(self, options: list[Assembly], most: int) -> list[Choice]:
        """New variables: how many of each assembly."""
        program = self.model.program
        made = [Choice(program.variable(most), self.name, self.article, a, False) for a in options]
        self.model.choices += made
        return made

    def credited(self, fresh: list[Choice]) -> dict[int, Fraction | int]:
        """The credited strength of some choices."""
        return {c.variable: self.wants.credit * c.assembly.wll for c in fresh}


def _one_pair(one: _Article, chosen: list[Assembly]) -> None:
    """A whole number of tie-downs, all of one pair, for each number that could be right."""
    program, wanted = one.model.program, one.wants.strength
    credited = [one.wants.credit * a.wll for a in chosen]
    for number in range(one.fewest, one.room + 1):
        if number * max(credited) + one.most_extra >= wanted:
            way, fresh = one.way(), one.choose(chosen, number)
            program.equal({c.variable: 1 for c in fresh} | {way: -number}, 0)
            program.at_least(one.credited(fresh) | one.extra | {way: -wanted}, 0)
        if number * min(credited) >= wanted:
            break  # one more would only be one too many


def _several_pairs(one: _Article, options: list[Assembly], main: list[Fixed], empty: int) -> None:
    """Tie-downs of at least two pairs; with some begun already, of any pairs."""
    program, wanted = one.model.program, one.wants.strength
    way, fresh = one.way(), one.choose(options, one.room)
    unbegun = {c.variable: 1 for c in fresh}
    program.at_most(unbegun | {way: -one.room}, 0)
    program.at_least(unbegun | {way: -empty}, 0)
    for fixed in main:
        fresh += _complete(one.model, one.name, one.article, options, fixed, way, False)
    program.at_least({c.variable: 1 for c in fresh} | {way: -one.wants.count}, 0)
    program.at_least(one.credited(fresh) | one.extra | {way: -wanted}, 0)
    if one.most_extra:
        program.at_least(one.credited(fresh) | {way: one.most_extra - wanted}, 0)
    _mixed(one, fresh, way, 1 if main else 2)


def _pairs(options: list[Assembly]) -> list[list[Assembly]]:
    """The assemblies of each pair: more than one where there is a choice of shackle."""
    pairs: dict[object, list[Assembly]] = {}
    for one in options:
        pairs.setdefault(one.pair, []).append(one)
    return list(pairs.values())


def _complete(
    model: Model,
    name: str,
    article: Article,
    options: list[Assembly],
    fixed: Fixed,
    goes: int,
    accessory: bool,
) -> list[Choice]:
    """A tie-down already begun is completed in exactly one way if its load goes."""
    made = [
        Choice(model.program.variable(1), name, article, a, accessory, fixed)
        for a in options
        if completes(model.day, a, fixed)
    ]
    model.program.equal({c.variable: 1 for c in made} | {goes: -1}, 0)
    model.choices += made
    return made


def _accessories(
    model: Model, name: str, load: Load, article: Article, begun: list[Fixed]
) -> list[Choice]:
    """Each accessory gets exactly one tie-down if its load goes."""
    options = candidates(model.day, load, article, accessory=True) if article.accessories else []
    found: list[Choice] = []
    for part in article.accessories:
        fixed = [f for f in begun if f.position == part.casefold()]
        if fixed:
            found += _complete(
                model, name, article, options, fixed[0], model.ready[name], accessory=True
            )
            continue
        made = [Choice(model.program.variable(1), name, article, a, True) for a in options]
        model.program.equal({c.variable: 1 for c in made} | {model.ready[name]: -1}, 0)
        model.choices += made
        found += made
    return found


def _mixed(one: _Article, fresh: list[Choice], way: int, fewest: int) -> None:
    """A pair is used where any of its tie-downs is."""
    program = one.model.program
    used: dict[int, Fraction | int] = {}
    for pair in dict.fromkeys(c.assembly.pair for c in fresh):
        of_pair = {c.variable: 1 for c in fresh if c.assembly.pair == pair}
        variable = program.variable(1)
        program.at_most(of_pair | {variable: -len(one.wants.positions) * one.wants.most}, 0)
        program.at_least(of_pair | {variable: -1}, 0)
        used[variable] = 1
    program.at_least(used | {way: -fewest}, 0)
    one.model.mixed |= used | {way: -1}


def _load(model: Model, name: str, load: Load) -> None:
    """Anchor points, winches and edge protectors of one load."""
    day, program = model.day, model.program
    trailer = day.trailer(load)
    mine = [c for c in model.choices if c.load == name]
    if trailer.anchors is not None:
        points = {c.variable: 1 if c.accessory else ANCHORS[c.article.routing] for c in mine}
        program.at_most(points, trailer.anchors)
    program.at_most({c.variable: 1 for c in mine if c.assembly.winch}, trailer.winches)
    wanted: dict[int, int] = {}
    for choice in mine:
        already = sum(day.gear[p].kind == "edge protector" for p in _pieces(choice.begun))
        asked = protectors(choice.article, choice.assembly, choice.accessory)
        wanted[choice.variable] = -max(0, asked - already)
    if any(wanted.values()):
        for id_, gear in day.gear.items():
            if gear.kind == "edge protector" and gear.kept_on in (None, load.trailer):
                model.guards[name, id_] = program.variable(gear.usable)
        guards = {v: 1 for (owner, _), v in model.guards.items() if owner == name}
        program.equal(guards | wanted, 0)


def _pool(model: Model) -> None:
    """At every departure no more pieces are out than are usable."""
    day = model.day
    takes: dict[str, dict[str, Counter[int]]] = defaultdict(lambda: defaultdict(Counter))
    for choice in model.choices:
        already = Counter(_pieces(choice.begun))
        for piece, number in (choice.assembly.pieces - already).items():
            takes[piece][choice.load][choice.variable] += number
    for (name, piece), variable in model.guards.items():
        takes[piece][name][variable] += 1
    for piece, by_load in takes.items():
        gear = day.gear[piece]
        for moment in sorted({load.out for load in day.loads.values()}):
            out = [n for n, one in day.loads.items() if one.out <= moment < day.until(one, gear)]
            on = sum(f.pieces.count(piece) for f in day.fixed if f.load in out)
            row = {v: c for name in out for v, c in by_load[name].items()}
            model.program.at_most(row, gear.usable - on)


def _pieces(begun: Fixed | None) -> list[str]:
    return begun.pieces if begun else []
