"""Gear that is already on stays where it is."""

from dataclasses import replace

from loadplan.day.gear import FixedPiece
from tests.judge.build import CAGE, broken, day, four, gear, machine


def on(name, position="front left", number=1, load="L-1"):
    """One piece already on ``M-1``."""
    return FixedPiece(load=load, article="M-1", position=position, number=number, gear=name)


def test_fixed_pieces_in_the_plan():
    whole = day(fixed=(on("C-38"), on("B-38"), on("C-38", "rear left")))
    assert broken(whole, four()) == []


def test_a_fixed_piece_the_plan_swaps():
    assert broken(day(fixed=(on("C-516"),)), four()) == [
        "Load L-1, article M-1, front left, number 1: 1 x C-516 is fixed there, and the plan has 0."
    ]


def test_a_fixed_place_the_plan_leaves_out():
    found = broken(day(fixed=(on("C-38", "mid left"),)), four())
    assert found == [
        "Load L-1, article M-1, mid left, number 1: 1 x C-38 is fixed there, and the plan has 0."
    ]


def test_a_fixed_number_the_plan_changes():
    found = broken(day(fixed=(on("C-38", number=2),)), four())
    assert found == [
        "Load L-1, article M-1, front left, number 2: 1 x C-38 is fixed there, and the plan has 0."
    ]


def test_every_fixed_piece_is_there():
    cage = (*CAGE, gear("EP-2", "edge protector"))
    fixed = (on("SH-1"), on("SH-1"), on("EP-1"), on("EP-1"), on("EP-2"))
    whole = day(machine(shackles=2), cage=cage, fixed=fixed)
    plan = [replace(one, shackle="SH-1", shackles=2) for one in four()]
    plan[0] = replace(plan[0], protectors=(("EP-1", 1), ("EP-2", 1)))
    assert broken(whole, plan) == [
        "Load L-1, article M-1, front left, number 1: 2 x EP-1 is fixed there, and the plan has 1."
    ]
    plan[0] = replace(plan[0], protectors=(("EP-1", 2), ("EP-2", 1)))
    assert broken(whole, plan) == []


def test_fixed_gear_of_a_held_load_is_not_looked_for():
    assert broken(day(fixed=(on("C-516"),)), [], ready=()) == []
