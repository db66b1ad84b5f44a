"""How many pieces are out at every moment."""

from dataclasses import replace

from loadplan.day.gear import Condition, FixedPiece
from loadplan.day.load import Load
from loadplan.judge.pool import GearUse, most_out
from tests.judge.build import CAGE, broken, day, four, gear, machine, tied, trailer, with_gear

HOUR = 3600
CHAINS = with_gear(CAGE, "C-38", quantity=4)


def loads(*times):
    """Loads ``L-1``, ``L-2`` ... on trailers ``T-1``, ``T-2`` ..., out and back at whole hours."""
    return tuple(
        Load(id=f"L-{number}", trailer=f"T-{number}", out=out * HOUR, back=back * HOUR)
        for number, (out, back) in enumerate(times, 1)
    )


def busy(*times, cage=CHAINS, **known):
    """A day on which each load carries one machine that takes four chains."""
    going = loads(*times)
    cargo = [machine(id=f"M-{number}", load=load.id) for number, load in enumerate(going, 1)]
    trailers = tuple(trailer(load.trailer) for load in going)
    return day(*cargo, cage=cage, loads=going, trailers=trailers, **known)


def plan(*numbers):
    """Four tie-downs on each of the machines."""
    return [
        tie_down
        for number in numbers
        for tie_down in four(load=f"L-{number}", article=f"M-{number}")
    ]


def test_gear_is_free_exactly_at_back():
    whole = busy((6, 12), (12, 18))
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == []


def test_gear_is_out_until_back():
    whole = busy((6, 12), (11, 18))
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == [
        "Gear C-38: 8 pieces out at 11:00 (loads L-1 and L-2), and 4 can be used."
    ]
    assert broken(whole, plan(2), ready=("L-2",)) == []


def test_turnaround():
    whole = busy((6, 12), (12, 18), turnaround=1)
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == [
        "Gear C-38: 8 pieces out at 12:00 (loads L-1 and L-2), and 4 can be used."
    ]
    whole = busy((6, 12), (13, 18), turnaround=HOUR)
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == []


def test_a_kit_needs_no_turnaround():
    cage = with_gear(CHAINS, "C-38", kept_on="T-1")
    whole = busy((6, 12), (12, 18), turnaround=HOUR, cage=cage)
    whole = replace(whole, loads=tuple(replace(load, trailer="T-1") for load in whole.loads))
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == []
    early = replace(whole.loads[1], out=12 * HOUR - 1)
    whole = replace(whole, loads=(whole.loads[0], early))
    assert broken(whole, plan(1, 2), ready=("L-1", "L-2")) == [
        "Gear C-38: 8 pieces out at 11:59:59 (loads L-1 and L-2), and 4 can be used."
    ]


def test_every_departure_is_counted():
    whole = busy((6, 20), (7, 9), (8, 10), (10, 12))
    assert broken(whole, plan(1, 2, 3, 4), ready=("L-1", "L-2", "L-3", "L-4")) == [
        "Gear C-38: 8 pieces out at 07:00 (loads L-1 and L-2), and 4 can be used.",
        "Gear C-38: 12 pieces out at 08:00 (loads L-1, L-2 and L-3), and 4 can be used.",
    ]
    assert most_out(whole, plan(1, 2, 3, 4), ("L-1", "L-2", "L-3", "L-4"))["C-38"] == GearUse(
        gear="C-38",
        usable=4,
        most=12,
        when=8 * HOUR,
        left=-8,
        timeline=(
            (6 * HOUR, 4),
            (7 * HOUR, 8),
            (8 * HOUR, 12),
            (9 * HOUR, 8),
            # 10:00: L-3 back, L-4 out
            (12 * HOUR, 4),
            (20 * HOUR, 0),
        ),
    )


def test_gear_on_a_held_load_is_out():
    on = tuple(
        FixedPiece(load="L-1", article="M-1", position=position, gear="C-38")
        for position in ("front left", "front right")
    )
    whole = busy((6, 12), (8, 18), fixed=on)
    assert broken(whole, plan(2), ready=("L-2",)) == [
        "Gear C-38: 6 pieces out at 08:00 (loads L-1 and L-2), and 4 can be used."
    ]
    cage = with_gear(CAGE, "C-38", quantity=6)
    whole = replace(whole, gear=cage)
    assert broken(whole, plan(2), ready=("L-2",)) == []
    use = most_out(whole, plan(2), ("L-2",))["C-38"]
    assert (use.most, use.when, use.left) == (6, 8 * HOUR, 0)


def test_fixed_gear_of_a_ready_load_is_counted_once():
    on = FixedPiece(load="L-1", article="M-1", position="front left", gear="C-38")
    assert broken(busy((6, 12), fixed=(on,)), plan(1)) == []


def test_every_kind_of_piece_is_counted():
    cage = with_gear(CAGE, "SH-1", quantity=7)
    cage = with_gear(cage, "EP-1", quantity=3)
    cage = with_gear(cage, "B-38", quantity=3)
    whole = day(machine(shackles=2, weight=16000), cage=cage)
    tie_downs = [
        replace(one, shackle="SH-1", shackles=2, protectors=(("EP-1", 1),)) for one in four()
    ]
    assert broken(whole, tie_downs) == [
        "Gear B-38: 4 pieces out at 00:00 (load L-1), and 3 can be used.",
        "Gear SH-1: 8 pieces out at 00:00 (load L-1), and 7 can be used.",
        "Gear EP-1: 4 pieces out at 00:00 (load L-1), and 3 can be used.",
    ]


def test_the_use_of_gear():
    cage = (*CHAINS, gear("OLD", "chain", wll=1000, condition=Condition.SCRAP))
    whole = busy((6, 12), (12, 18), cage=cage)
    found = most_out(whole, plan(1, 2), ("L-1", "L-2"))
    assert list(found) == [one.id for one in cage]
    assert found["C-38"] == GearUse(
        gear="C-38",
        usable=4,
        most=4,
        when=6 * HOUR,
        left=0,
        timeline=((6 * HOUR, 4), (18 * HOUR, 0)),
    )
    assert found["SH-1"] == GearUse(gear="SH-1", usable=12, most=0, when=None, left=12, timeline=())
    assert (found["OLD"].usable, found["OLD"].left) == (0, 0)


def test_the_first_of_equal_peaks_is_named():
    whole = busy((6, 9), (10, 12))
    use = most_out(whole, plan(1, 2), ("L-1", "L-2"))["C-38"]
    assert (use.most, use.when) == (4, 6 * HOUR)
    assert use.timeline == ((6 * HOUR, 4), (9 * HOUR, 0), (10 * HOUR, 4), (12 * HOUR, 0))


def test_only_loads_that_have_pieces_out_are_named():
    whole = busy((6, 8), (8, 12), (8, 12), (7, 12))
    tie_downs = [
        *plan(1, 2, 3),
        *four(load="L-4", article="M-4", member="C-12", tensioner="RB-12"),
    ]
    whole = replace(whole, gear=(*CHAINS, gear("C-12", "chain", size="1/2", grade="70")))
    assert broken(whole, tie_downs, ready=("L-1", "L-2", "L-3", "L-4")) == [
        "Gear C-38: 8 pieces out at 08:00 (loads L-2 and L-3), and 4 can be used."
    ]


def test_a_negative_number_of_pieces_frees_none():
    two, minus = (
        tied("front left", number, shackle="SH-1", shackles=shackles)
        for number, shackles in ((1, 2), (2, -1))
    )
    assert most_out(day(), [two, minus], ("L-1",))["SH-1"].most == 2


def test_tie_downs_of_held_or_unknown_loads_and_unknown_gear_are_not_counted():
    whole = busy((6, 12), (12, 18))
    stray = [*plan(1, 2), tied("front left", load="NO-1"), tied("front left", member="NO-2")]
    found = most_out(whole, stray, ("L-1", "NO-1"))
    assert found["C-38"].timeline == ((6 * HOUR, 4), (12 * HOUR, 0))
    assert "NO-2" not in found
