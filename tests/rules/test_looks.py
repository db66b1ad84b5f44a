"""Check-list lines: what is looked at, for which article, under which section."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.trailer import Trailer
from tests.rules.build import article, asked, asked_of_load


def lines(looks):
    return [(look.name, look.source.cite()) for look in looks]


BRAKE = (
    "parking brake",
    "49 CFR 393.130 (from the official handbook, not the regulation text read)",
)
CHOCKS = ("chocks", "49 CFR 393.106(c)(1)")
EDGES = ("edge protection", "49 CFR 393.104(f)")
ANGLE = ("angle", "49 CFR 393.106 (from the official handbook, not the regulation text read)")
UNRATED = ("unrated tie points", "49 CFR 393.108(a)")
ENDS = ("tie points", "49 CFR 393.130(c)(2)")


@pytest.mark.parametrize(
    ("kind", "expected"),
    [
        (CargoClass.TRACKED_MACHINE, [BRAKE, ENDS, EDGES, ANGLE, UNRATED]),
        (CargoClass.WHEELED_MACHINE, [BRAKE, CHOCKS, ENDS, EDGES, ANGLE, UNRATED]),
        (
            CargoClass.ARTICULATED_MACHINE,
            [
                ("articulation lock", "49 CFR 393.130(b)(2)"),
                BRAKE,
                CHOCKS,
                ENDS,
                EDGES,
                ANGLE,
                UNRATED,
            ],
        ),
        (
            CargoClass.LIGHT_VEHICLE,
            [BRAKE, CHOCKS, ("front and rear", "49 CFR 393.128"), EDGES, ANGLE, UNRATED],
        ),
        (CargoClass.GENERAL, [CHOCKS, EDGES, ("side by side", "49 CFR 393.106(c)(2)")]),
    ],
)
def test_what_to_look_at_on_each_class(kind, expected):
    assert lines(asked(article(kind, weight=4000)).looks) == expected


def test_a_rated_tie_point_is_not_called_unrated():
    assert lines(asked(article(tie_point_wll=5000)).looks) == [BRAKE, ENDS, EDGES, ANGLE]


def test_what_blocks_and_what_cuts_is_looked_at():
    cargo = article(
        CargoClass.GENERAL, routing=Routing.SAME_SIDE, blocked_forward=True, sharp_edges=True
    )
    assert [look.text for look in asked(cargo).looks] == [
        "If it can roll: chocks, wedges or a cradle that cannot come loose.",
        "What blocks it forward touches it and is high, wide and strong enough.",
        "Edge protectors lie under every strap at every edge; no other tie-down is cut or worn.",
    ]


ALWAYS = [
    "Every piece looked over: no crack, cut, stretch, gouge or worn part; none is used damaged.",
    "No knots; nothing can come loose or open on the way.",
    "Every binder handle locked or tied.",
    "Every tie-down but steel strapping can be tightened on the road.",
    "Deck, anchor points and front structure undamaged.",
]
ANCHORS = (
    "The trailer's anchor points are unrated and do not limit the figures here: look up what "
    "they bear."
)
WINCHES = (
    "The winches have no rating in the day workbook and do not limit the figures here: read "
    "their marking; a lower one limits its strap."
)
ROAD = [
    "Ramps, tailgate, spare wheel, tarps, dunnage and loose chains secured.",
    "Cargo spread properly; nothing blocks the driver's view, movement or way out.",
    "Before driving: check the cargo and every tie-down.",
    "Within the first 50 miles: check again; tighten or add tie-downs as needed.",
    "Then at a change of duty status, after 3 hours or after 150 miles, whichever comes first.",
]


@pytest.mark.parametrize(
    ("trailer", "more"),
    [
        (None, [ANCHORS]),
        (Trailer(id="T-1"), [ANCHORS]),
        (Trailer(id="T-1", winches=2), [ANCHORS, WINCHES]),
        (Trailer(id="T-1", anchor_wll=Fraction(5000)), []),
        (Trailer(id="T-1", anchor_wll=Fraction(5000), winches=1), [WINCHES]),
    ],
)
def test_what_to_look_at_on_each_load(trailer, more):
    found = asked_of_load(article(), trailer=trailer).looks
    assert [look.text for look in found] == [*ALWAYS, *more, *ROAD]


def test_the_stops_on_the_road_cite_the_inspection_rule():
    found = asked_of_load(article()).looks
    assert lines(found)[-3:] == [
        ("before driving", "49 CFR 392.9(b)"),
        ("first check", "49 CFR 392.9(b)"),
        ("further checks", "49 CFR 392.9(b)"),
    ]
