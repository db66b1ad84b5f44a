"""The pieces of one tie-down: known, good, rated, at hand, and fitting together."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.gear import Condition, Kind
from loadplan.day.house import HouseRules, UnmarkedHardware, UnratedPoints
from loadplan.day.trailer import Trailer
from tests.judge.build import (
    CAGE,
    broken,
    crate,
    day,
    exact,
    four,
    gear,
    machine,
    over,
    tied,
    trailer,
    with_gear,
)

FRONT_LEFT = "Load L-1, article M-1, front left, number 1: "


def with_first(**changed):
    """Four chains at the corners, the one at the front left changed."""
    first, *others = four()
    return [replace(first, **changed), *others]


def test_the_plain_plan_is_not_disagreed_with():
    assert broken(day(), four()) == []


def test_unknown_ids():
    plan = with_first(member="NO-1", tensioner="NO-2", shackle="NO-3", protectors=(("NO-4", 1),))
    assert broken(day(), plan) == [
        FRONT_LEFT + "NO-1 is not gear of this day.",
        FRONT_LEFT + "NO-2 is not gear of this day.",
        FRONT_LEFT + "NO-4 is not gear of this day.",
        FRONT_LEFT + "NO-3 is not gear of this day.",
        FRONT_LEFT + "it names shackle NO-3 and takes 0 of it.",
        # 3 x 1/2 x 5,400 = 8,100
        "Load L-1, article M-1: aggregate WLL needs 10,000 lb, and the plan has 8,100 lb "
        "(49 CFR 393.106(d)).",
    ]


def test_an_unknown_shackle():
    cargo = machine(shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    assert broken(day(cargo), plan) == []
    plan[0] = replace(plan[0], shackle="NO-3")
    assert broken(day(cargo), plan)[0] == FRONT_LEFT + "NO-3 is not gear of this day."


@pytest.mark.parametrize("condition", [Condition.HOLD, Condition.SCRAP])
@pytest.mark.parametrize(("name", "kind"), [("C-38", "chain"), ("B-38", "lever binder")])
def test_gear_that_is_not_good(condition, name, kind):
    cage = (*CAGE, replace(next(one for one in CAGE if one.id == name), id="BAD"))
    cage = with_gear(cage, "BAD", condition=condition)
    plan = with_first(**{"member" if kind == "chain" else "tensioner": "BAD"})
    assert broken(day(cage=cage), plan) == [
        FRONT_LEFT + f"{kind} BAD is marked {condition.value}; only good gear is planned.",
        "Gear BAD: 1 piece out at 00:00 (load L-1), and 0 can be used.",
    ]


def test_the_kit_of_another_trailer():
    cage = with_gear(CAGE, "C-516", kept_on="T-2")
    plan = with_first(member="C-516")
    # 1/2 x 4,700 + 3 x 1/2 x 5,400 = 10,450
    assert broken(day(cage=cage), plan) == [
        FRONT_LEFT + "chain C-516 is kept on trailer T-2, which is not the load's."
    ]


def test_the_kit_of_the_loads_own_trailer():
    assert (
        broken(day(cage=with_gear(CAGE, "C-516", kept_on="T-1")), with_first(member="C-516")) == []
    )


def test_a_kit_on_a_load_without_trailer():
    whole = day(cage=with_gear(CAGE, "C-516", kept_on="T-1"))
    whole = replace(whole, loads=(replace(whole.loads[0], trailer=None),))
    assert broken(whole, with_first(member="C-516")) == [
        FRONT_LEFT + "chain C-516 is kept on trailer T-1, which is not the load's."
    ]


def test_a_retractable_strap_of_no_trailer():
    strap = gear("R-2", "retractable strap", wll=5000)
    plan = with_first(member="R-2", tensioner=None)
    assert broken(day(cage=(*CAGE, replace(strap, kept_on="T-1"))), plan) == []
    assert broken(day(cage=(*CAGE, strap)), plan) == [
        FRONT_LEFT + "retractable strap R-2 is fixed to a trailer, and the day does not say which."
    ]


@pytest.mark.parametrize(
    ("piece", "changed", "sentence"),
    [
        (
            gear("X", "chain", size="3/8", grade="40"),
            {"member": "X"},
            "chain X has no known WLL: chain with the mark 40, which is no grade of the table, "
            "and no WLL or breaking strength is given.",
        ),
        (
            gear("X", "ratchet binder", fits="3/8"),
            {"tensioner": "X"},
            "ratchet binder X has no known WLL: no table covers a ratchet binder, "
            "and no WLL or breaking strength is given.",
        ),
    ],
)
def test_pieces_without_a_rating(piece, changed, sentence):
    cargo = machine(weight=16000)  # 3 x 1/2 x 5,400 = 8,100 still holds it
    assert broken(day(cargo, cage=(*CAGE, piece)), with_first(**changed)) == [FRONT_LEFT + sentence]


def test_gear_is_rated_under_the_rule_set_of_the_day():
    """Unmarked 3/8 in chain is grade 30 in the US, 2,650 lb, and counts for nothing in Canada."""
    cargo = machine(weight=8000)
    plan = with_first(member="C-PLAIN")
    assert broken(day(cargo), plan) == []
    found = broken(day(cargo, rules=RuleSet.CANADA), plan)
    assert (
        FRONT_LEFT
        + (
            "chain C-PLAIN has no known WLL: not marked with a WLL by its maker, "
            "and in Canada such gear counts for nothing."
        )
        in found
    )


def test_gear_is_rated_under_the_readings_of_the_house():
    bare = gear("B-BARE", "lever binder", size="3/8", fits="3/8")
    plan = with_first(tensioner="B-BARE")
    cargo = machine(weight=16000)
    cage = (*CAGE, bare)
    lowest = HouseRules(unmarked_hardware=UnmarkedHardware.LOWEST_GRADE)
    assert broken(day(cargo, cage=cage, house=lowest), plan) == []
    assert broken(day(cargo, cage=cage), plan) == [
        FRONT_LEFT + "lever binder B-BARE has no known WLL: no table covers a lever binder, "
        "and no WLL or breaking strength is given."
    ]


def test_a_shackle_without_a_rating():
    cargo = machine(weight=16000, shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    plan[0] = replace(plan[0], shackle="X")
    assert broken(day(cargo, cage=(*CAGE, gear("X", "shackle"))), plan) == [
        FRONT_LEFT + "shackle X has no known WLL: no table covers a shackle, "
        "and no WLL or breaking strength is given."
    ]


@pytest.mark.parametrize("name", ["B-38", "SH-1", "EP-1", "T-58"])
def test_what_is_no_tension_member(name):
    kind = next(one.kind.value for one in CAGE if one.id == name)
    # 3 x 1/2 x 5,400 = 8,100 holds 16,000 lb
    plan = with_first(member=name)
    assert broken(day(machine(weight=16000)), plan) == [
        FRONT_LEFT + f"{kind} {name} is no tension member."
    ]


def test_an_unknown_tensioner():
    assert broken(day(machine(weight=16000)), with_first(tensioner="NO-2")) == [
        FRONT_LEFT + "NO-2 is not gear of this day."
    ]


def test_an_accessory_of_unknown_gear():
    cargo = machine(accessories=(Accessory(name="boom"),))
    boom = tied("boom", accessory=True, member="NO-1")
    assert broken(day(cargo), [*four(), boom]) == [
        "Load L-1, article M-1, boom, number 1: NO-1 is not gear of this day."
    ]


@pytest.mark.parametrize(("member", "kind"), [("C-38", "chain"), ("W-38", "wire rope")])
def test_no_tensioner(member, kind):
    # 3,000 lb wire rope: 1/2 x 3,000 + 3 x 1/2 x 5,400 = 9,600 holds 19,000 lb
    plan = with_first(member=member, tensioner=None)
    assert broken(day(machine(weight=19000)), plan) == [
        FRONT_LEFT + f"{kind} {member} has no tensioner."
    ]


def test_rope_needs_a_turnbuckle():
    cage = (*CAGE, gear("R-1", "rope", wll=3000))
    cargo = machine(weight=19000)
    with_turnbuckle = with_first(member="R-1", tensioner="T-58")
    assert broken(day(cargo, cage=cage), with_turnbuckle) == []
    assert broken(day(cargo, cage=cage), with_first(member="R-1", tensioner="B-38")) == [
        FRONT_LEFT + "rope R-1 needs a turnbuckle, and has lever binder B-38."
    ]
    assert broken(day(cargo, cage=cage), with_first(member="R-1", tensioner=None)) == [
        FRONT_LEFT + "rope R-1 has no tensioner."
    ]


def test_chain_needs_a_binder():
    assert broken(day(), with_first(tensioner="T-58")) == [
        FRONT_LEFT + "chain C-38 needs a lever or ratchet binder, and has turnbuckle T-58."
    ]


def test_a_binder_that_does_not_fit():
    assert broken(day(), with_first(tensioner="RB-12")) == [
        FRONT_LEFT + "ratchet binder RB-12 does not fit chain C-38: "
        "it takes 1/2 in, and the chain is 3/8 in."
    ]


def test_a_binder_without_fits():
    cage = (*CAGE, gear("X", "lever binder", wll=6000))
    assert broken(day(cage=cage), with_first(tensioner="X")) == [
        FRONT_LEFT + "lever binder X does not fit chain C-38: "
        "it takes no stated size, and the chain is 3/8 in."
    ]


def test_a_chain_of_unknown_size():
    cage = (*CAGE, gear("X", "chain", wll=6600))
    assert broken(day(cage=cage), with_first(member="X")) == [
        FRONT_LEFT + "chain X is of unknown size, so no binder is known to fit it."
    ]


@pytest.mark.parametrize(
    ("member", "kind"), [("S-2", "ratchet strap"), ("ST-1", "steel strapping")]
)
def test_what_takes_no_tensioner(member, kind):
    cargo = machine(weight=16000)
    assert broken(day(cargo), with_first(member=member, tensioner=None)) == []
    assert broken(day(cargo), with_first(member=member)) == [
        FRONT_LEFT + f"{kind} {member} takes no tensioner of its own, and has lever binder B-38."
    ]


def test_a_winch_strap_runs_over_on_a_winch():
    whole = day(crate(), on=trailer(winches=2))
    plan = [over(1, member="S-4"), over(2, member="S-4")]
    assert broken(whole, plan) == []
    assert broken(whole, [plan[0], replace(plan[1], tensioner="T-58")]) == [
        "Load L-1, article G-1, over 2, number 1: "
        "winch strap S-4 takes no tensioner of its own, and has turnbuckle T-58."
    ]


def test_a_winch_strap_not_over():
    whole = day(on=trailer(winches=4))
    assert broken(whole, with_first(member="S-4", tensioner=None)) == [
        FRONT_LEFT + "winch strap S-4 runs direct; a winch strap runs over."
    ]


def test_a_winch_strap_on_an_accessory():
    cargo = machine(accessories=(Accessory(name="boom"),))
    boom = tied("boom", accessory=True, member="S-4", tensioner=None)
    assert broken(day(cargo, on=trailer(winches=4)), [*four(), boom]) == [
        "Load L-1, article M-1, boom, number 1: "
        "winch strap S-4 holds an accessory; a winch strap does not.",
        "Load L-1, article M-1, boom, number 1: winch strap S-4 runs direct; "
        "a winch strap runs over.",
    ]


def test_shackles_exactly_as_asked():
    cargo = machine(shackles=2)
    plan = [replace(one, shackle="SH-1", shackles=2) for one in four()]
    assert broken(day(cargo), plan) == []
    assert broken(day(cargo), [replace(plan[0], shackles=1), *plan[1:]]) == [
        FRONT_LEFT + "it has 1 shackle, and 2 are asked for.",
        "Load L-1, article M-1: shackles needs 2 shackles each, and the plan has "
        "1 to 2 shackles each (day workbook 'Cargo').",
    ]
    assert broken(day(), plan) == [
        f"Load L-1, article M-1, {corner}, number 1: it has 2 shackles, and 0 are asked for."
        for corner in ("front left", "front right", "rear left", "rear right")
    ]


def test_shackles_of_no_kind():
    cargo = machine(shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    plan[0] = replace(plan[0], shackle=None)
    assert broken(day(cargo), plan) == [
        FRONT_LEFT + "it has 1 shackle, and does not say of which kind.",
        "Load L-1, article M-1: shackles needs 1 shackles each, and the plan has "
        "0 to 1 shackles each (day workbook 'Cargo').",
    ]


def test_shackles_that_are_none():
    cargo = machine(shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    plan[0] = replace(plan[0], shackle="T-58")
    assert broken(day(cargo), plan) == [FRONT_LEFT + "turnbuckle T-58 is no shackle."]


def test_a_negative_number_of_pieces_hides_nothing():
    plan = with_first(shackle="SH-1", shackles=-1, protectors=(("EP-1", -1),))
    cage = with_gear(with_gear(CAGE, "SH-1", quantity=0), "EP-1", quantity=0)
    assert broken(day(cage=cage), plan) == [
        FRONT_LEFT + "it has -1 shackles, and 0 are asked for.",
        FRONT_LEFT + "it names shackle SH-1 and takes -1 of it.",
        FRONT_LEFT + "it takes -1 of edge protector EP-1.",
    ]


def test_an_accessory_takes_no_shackle():
    cargo = machine(accessories=(Accessory(name="boom"),), shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    boom = tied("boom", accessory=True)
    assert broken(day(cargo), [*plan, boom]) == []
    assert broken(day(cargo), [*plan, replace(boom, shackle="SH-1", shackles=1)]) == [
        "Load L-1, article M-1, boom, number 1: it has 1 shackle, and 0 are asked for."
    ]


def test_what_is_no_edge_protector():
    assert broken(day(), with_first(protectors=(("SH-1", 1),))) == [
        FRONT_LEFT + "shackle SH-1 is no edge protector."
    ]


def test_protectors_that_are_none():
    assert broken(day(), with_first(protectors=(("EP-1", 0),))) == [
        FRONT_LEFT + "it takes 0 of edge protector EP-1."
    ]


def test_routing_is_the_articles():
    assert broken(day(), with_first(routing=Routing.SAME_SIDE)) == [
        FRONT_LEFT + "it runs same side, and direct is asked for."
    ]


def test_an_accessory_is_always_tied_direct():
    cargo = machine(accessories=(Accessory(name="boom"),), routing=Routing.SAME_SIDE)
    plan = four(routing=Routing.SAME_SIDE)
    assert broken(day(cargo), [*plan, tied("boom", accessory=True)]) == []
    boom = tied("boom", accessory=True, routing=Routing.SAME_SIDE)
    assert broken(day(cargo), [*plan, boom]) == [
        "Load L-1, article M-1, boom, number 1: it runs same side, and direct is asked for."
    ]


HOLD = HouseRules(unrated_points=UnratedPoints.HOLD)


def test_unrated_points_are_held():
    rated = trailer(anchor_wll=7000)
    cargo = machine(weight=16000, tie_point_wll=6000)
    assert broken(day(cargo, on=rated, house=HOLD), four()) == []
    found = broken(day(machine(weight=16000), on=rated, house=HOLD), four())
    assert found == [
        *(
            f"Load L-1, article M-1, {corner}, number 1: "
            "its tie point is unrated, and the house holds unrated points."
            for corner in ("front left", "front right", "rear left", "rear right")
        ),
        "Load L-1, article M-1: The tie points of M-1 have no rating (Tie point WLL is blank) "
        "(house rule Unrated points).",
    ]


@pytest.mark.parametrize("named", [True, False])
def test_unrated_anchor_points_are_held(named):
    whole = day(machine(weight=16000, tie_point_wll=6000), house=HOLD)
    why = "The anchor points of trailer T-1 have no rating (Anchor WLL is blank)"
    if not named:
        whole = replace(whole, loads=(replace(whole.loads[0], trailer=None),))
        why = "The load names no trailer, so its anchor points have no rating"
    found = broken(whole, four())
    assert found[0] == (
        FRONT_LEFT + "its anchor point is unrated, and the house holds unrated points."
    )
    assert found[-1] == f"Load L-1, article M-1: {why} (house rule Unrated points)."
    assert len(found) == 5


def test_tie_points_matter_to_direct_main_tie_downs_only():
    rated = trailer(anchor_wll=7000)
    cargo = machine(routing=Routing.SAME_SIDE, accessories=(Accessory(name="boom"),))
    plan = [*four(routing=Routing.SAME_SIDE), tied("boom", accessory=True)]
    assert broken(day(cargo, on=rated, house=HOLD), plan) == []


def test_same_side_under_general_is_as_bound():
    cargo = crate(routing=Routing.DIRECT, secured_under=SecuredUnder.GENERAL)
    plan = [tied("front left", article="G-1"), tied("rear left", article="G-1")]
    assert broken(day(cargo), plan) == []
    assert cargo.cargo_class is CargoClass.GENERAL


def test_builders_are_exact():
    assert exact({"wll": "0.1", "quantity": 3}) == {"wll": Fraction(1, 10), "quantity": 3}
    assert Trailer(id="T-1") == trailer()
    assert gear("X", "chain").kind is Kind.CHAIN
