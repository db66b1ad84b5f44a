"""The time limit holds inside every loop that can run long."""

from __future__ import annotations

import pytest

from loadplan.plan.clock import Clock, OutOfTimeError


def test_a_clock_whose_time_is_up_ends_a_loop() -> None:
    with pytest.raises(OutOfTimeError):
        Clock(0.0).tick()


def test_a_clock_with_time_left_lets_it_go_on() -> None:
    Clock(60.0).tick()


def test_a_share_of_the_time_left_ends_sooner_and_is_given_back() -> None:
    clock = Clock(60.0)
    with clock.at_most(0.0), pytest.raises(OutOfTimeError):
        clock.tick()
    clock.tick()
