"""What goes together into one tie-down."""

import pytest

from loadplan.day.article import Routing
from loadplan.day.gear import BINDERS, TENSION_MEMBERS, TENSIONERS, Gear, Kind
from loadplan.day.size import read_fits, read_size
from loadplan.wll.assembly import (
    fits,
    is_webbing,
    needs_tensioner,
    needs_winch,
    own_tensioner,
    protectors_needed,
    runs,
)

STRAPS = {Kind.WINCH_STRAP, Kind.RATCHET_STRAP, Kind.RETRACTABLE_STRAP}


def piece(kind, size="", takes=""):
    return Gear(
        id=kind.value, kind=kind, size=read_size(size), fits=read_fits(takes) if takes else ()
    )


@pytest.mark.parametrize("kind", sorted(TENSION_MEMBERS))
def test_each_tension_member_has_its_tensioner(kind):
    """Kind, tensioners it needs, what tightens it otherwise, whether it takes a winch."""
    expected = {
        Kind.CHAIN: (BINDERS, "", False),
        Kind.WIRE_ROPE: ({Kind.TURNBUCKLE}, "", False),
        Kind.ROPE: ({Kind.TURNBUCKLE}, "", False),
        Kind.STEEL_STRAPPING: (set(), "", False),
        Kind.RATCHET_STRAP: (set(), "built in", False),
        Kind.RETRACTABLE_STRAP: (set(), "built in", False),
        Kind.WINCH_STRAP: (set(), "trailer winch", True),
    }[kind]
    member = piece(kind)
    assert (needs_tensioner(member), own_tensioner(member), needs_winch(member)) == expected


@pytest.mark.parametrize(
    ("size", "takes", "answer"),
    [
        ("3/8", "5/16-3/8", True),
        ("5/16", "5/16-3/8", True),
        ("10 mm", "5/16-3/8", True),
        ("1/2", "5/16-3/8", False),
        ("1/4", "5/16-3/8", False),
        ("7/16", "3/8-1/2", False),
        ("3/8", "3/8, 1/2", True),
        ("3/8", "", False),
        ("", "5/16-3/8", False),
    ],
)
def test_a_binder_takes_the_sizes_it_says_and_nothing_between(size, takes, answer):
    for kind in BINDERS:
        assert fits(piece(Kind.CHAIN, size), piece(kind, takes=takes)) is answer


@pytest.mark.parametrize("member", sorted(TENSION_MEMBERS))
@pytest.mark.parametrize("tensioner", sorted(TENSIONERS))
def test_no_tensioner_fits_a_member_that_does_not_need_it(member, tensioner):
    pairs = {(Kind.CHAIN, binder) for binder in BINDERS}
    pairs |= {(Kind.WIRE_ROPE, Kind.TURNBUCKLE), (Kind.ROPE, Kind.TURNBUCKLE)}
    found = fits(piece(member, "3/8"), piece(tensioner, takes="3/8"))
    assert found is ((member, tensioner) in pairs)


def test_a_turnbuckle_needs_no_fits():
    assert fits(piece(Kind.WIRE_ROPE), piece(Kind.TURNBUCKLE))


@pytest.mark.parametrize("kind", sorted(TENSION_MEMBERS))
@pytest.mark.parametrize("routing", Routing)
def test_a_winch_strap_runs_over_only_and_holds_no_accessory(kind, routing):
    winch = kind is Kind.WINCH_STRAP
    assert runs(piece(kind), routing) is (not winch or routing is Routing.OVER)
    assert runs(piece(kind), routing, accessory=True) is (not winch)


def test_edge_protectors_by_the_bends_of_each_routing():
    assert [protectors_needed(routing) for routing in Routing] == [1, 2, 2, 2]
    assert {kind for kind in Kind if is_webbing(piece(kind))} == STRAPS
