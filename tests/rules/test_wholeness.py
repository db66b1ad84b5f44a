"""What holds for every demand: positions that exist, one set each, numbers that make sense."""

from fractions import Fraction
from itertools import product

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, SecuredUnder, Stands
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.demand import demand, load_demand
from loadplan.rules.facts import contradictions
from loadplan.rules.requirement import Demand
from loadplan.rules.switches import SWITCHES
from tests.rules.build import article, day

C = CargoClass
DETAILS = {
    C.LOGS: [
        "lengthwise; shortwood",
        "lengthwise; shortwood; under 10 ft; blocked both ends",
        "lengthwise; longwood; large logs on top",
        "lengthwise; longwood; bunks 3",
        "crosswise",
        "crosswise; stacks 2",
    ],
    C.DRESSED_LUMBER: [
        "",
        "tiers 3; stakes",
        "tiers 3; belly; top bundles 2",
        "tiers 4; every tier",
    ],
    C.METAL_COIL: [
        "eye vertical",
        "eye crosswise",
        "eye lengthwise",
        "eye lengthwise; option 1",
        "eye lengthwise; option 2",
    ],
    C.PAPER_ROLLS: ["on end", "on side; layers 2"],
    C.CONCRETE_PIPE: ["diameter 36 in", "diameter 60 in; pipes 4"],
    C.INTERMODAL_CONTAINER: [
        "chassis",
        "chassis; locks missing 1",
        "deck loaded",
        "deck empty",
        "deck loaded; integral devices",
    ],
    C.FLATTENED_VEHICLES: ["walls 0; stacks 2", "walls 2", "walls 3", "walls 4"],
    C.ROLL_OFF_CONTAINER: ["integral", "rear one", "rear two", "rear hooks"],
    C.BOULDER: ["cubic", "stable base", "unstable base"],
}
ARTICLES = [
    *(
        article(kind, details=text, weight=9000)
        for kind, texts in DETAILS.items()
        for text in texts
    ),
    *(
        article(kind, weight=9000, routing=run, secured_under=section)
        for kind in C
        if not kind.is_commodity
        for run, section in product(
            (Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER),
            (None, SecuredUnder.GENERAL, SecuredUnder.LIGHT_VEHICLE),
        )
    ),
    article(accessories=(Accessory(name="boom", weight=Fraction(900)),), sharp_edges=True),
    article(C.BOULDER, weight=9000, secured_under=SecuredUnder.GENERAL, length=6),
]
HOUSES = [
    HouseRules(),
    *(
        switch.read_as(HouseRules(), reading)
        for switch in SWITCHES
        for reading in switch.readings
        if switch.us != reading.word
    ),
]
RULES = [
    (RuleSet.US, Units.US),
    (RuleSet.US, Units.METRIC),
    (RuleSet.CANADA, Units.US),
    (RuleSet.CANADA, Units.METRIC),
]


def demands(rules, units):
    for cargo, house in product(ARTICLES, HOUSES):
        if not any(contradictions(cargo, house, units, rules)):
            yield demand(day(cargo, house=house, units=units, rules=rules), cargo)


def check(found: Demand) -> None:
    sets = found.position_sets
    everywhere = [position for one in sets for position in one.positions]
    assert everywhere == list(found.positions)
    assert len(set(everywhere)) == len(everywhere)
    assert (found.routing, found.most_per_position) == (sets[0].routing, sets[0].most_at_each)
    assert found.section is not None
    for one in (*found.counts, *found.strengths, *found.properties):
        asked_at = getattr(one, "positions", None)
        if asked_at is not None:
            assert asked_at
            assert set(asked_at) <= set(everywhere)
        assert one.steps
        assert all(step.words and step.numbers and step.result for step in one.steps)
    for one in found.counts:
        assert set(one.twice) <= set(one.positions or everywhere)
        assert one.at_least <= 13
    for one in found.strengths:
        assert one.need > 0
        assert any(one.credit_of(at.routing) for at in sets)
    for at in sets:
        assert (at.tie_point_wll is None) or at.routing is Routing.DIRECT
        assert at.most_at_each >= 1
    if not found.positions:
        assert (found.counts, found.strengths, found.properties) == ((), (), ())


@pytest.mark.parametrize(("rules", "units"), RULES)
def test_every_demand_is_whole(rules, units):
    number = 0
    for found in demands(rules, units):
        check(found)
        number += 1
    assert number > 1000


@pytest.mark.parametrize(("rules", "units"), RULES)
def test_a_mixed_load_is_asked_for_in_one(rules, units):
    """Several classes, and a group of pipe, on one trailer."""
    cargo = [
        article(kind, id=f"{kind.value} {number}", details=text, weight=9000)
        for kind, texts in DETAILS.items()
        for number, text in enumerate(texts)
    ]
    pipes = [
        article(
            C.CONCRETE_PIPE,
            id=f"P-{number}",
            details="diameter 36 in",
            group="PIPE",
            stands=Stands.STACKED,
        )
        for number in (1, 2)
    ]
    whole = day(*cargo, *pipes, units=units, rules=rules)
    found = load_demand(whole, whole.loads[0])
    assert [one.article.id for one in found.articles] == [*(one.id for one in cargo), "PIPE"]
    for one in found.articles:
        check(one)
