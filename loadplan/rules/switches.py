"""The disputed points as switches, each a line of ``House rules``.

Every number that people argue about stands here with its readings and what each rests on. A house
rule otherwise only tightens; these readings are the exceptions, for each has something to rest on.
"""

from __future__ import annotations

from loadplan.rules.count_switches import COUNT_SWITCHES
from loadplan.rules.machine_switches import MACHINE_SWITCHES
from loadplan.rules.rating_switches import RATING_SWITCHES
from loadplan.rules.strength_switches import STRENGTH_SWITCHES
from loadplan.rules.switch import Switch

SWITCHES = (*MACHINE_SWITCHES, *STRENGTH_SWITCHES, *COUNT_SWITCHES, *RATING_SWITCHES)


def switch_named(name: str) -> Switch | None:
    """The switch whose line of ``House rules`` is called ``name``; None where there is none."""
    return next((switch for switch in SWITCHES if switch.name == name), None)
