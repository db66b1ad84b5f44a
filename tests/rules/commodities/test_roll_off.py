"""Roll-on/roll-off and hook-lift containers."""

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.house import HouseRules
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths


def box(details, **known):
    return article(
        CargoClass.ROLL_OFF_CONTAINER, details=details, **{"weight": 20000, "length": None, **known}
    )


@pytest.mark.parametrize(
    ("details", "lines"),
    [
        ("integral", ["integral system", "missing parts"]),
        ("rear hooks", ["front of the container", "hooks", "rear device", "missing parts"]),
    ],
)
def test_an_integral_system_and_hooks_need_no_tie_down(details, lines):
    found = asked(box(details))
    assert (found.positions, found.counts, found.strengths) == ((), (), ())
    assert look_names(found) == lines


def test_one_at_the_rear():
    """20,000 / 2 = 10,000 with half of each WLL."""
    found = asked(box("rear one", tie_point_wll=8000))
    assert sets(found) == [("rear", 1, "direct", 2, "")]
    assert needs(found) == [("tie-down at the rear", 1, None)]
    assert strengths(found) == [(10000, {Routing.DIRECT: 0.5})]
    assert found.tie_point_wll == 8000
    assert look_names(found)[:3] == ["front of the container", "rear device", "missing parts"]


def test_two_at_the_rear():
    found = asked(box("rear two"))
    assert sets(found) == [("rear left", 2, "direct", 2, "")]
    assert needs(found) == [
        ("tie-down at rear left", 1, "rear left"),
        ("tie-down at rear right", 1, "rear right"),
    ]
    assert "side rails" in look_names(found)


def test_the_house_may_leave_the_strength_to_the_lifting_device():
    found = asked(box("rear two"), house=HouseRules(roll_off_aggregate=False))
    assert found.strengths == ()
    assert len(found.counts) == 2


def test_what_a_row_lacks_or_contradicts():
    assert problems(box("")) == [
        (
            "Details",
            "Details lacks how the rear of the container is held, needed by 49 CFR 393.134. "
            "Write integral, rear one, rear two or rear hooks.",
        )
    ]
    assert problems(box("rear one; hooks")) == [
        (
            "Details",
            "Details says how the rear of the container is held twice, one and hooks. "
            "Write integral, rear one, rear two or rear hooks.",
        )
    ]
