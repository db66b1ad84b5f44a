"""The stages of the objective and what a unit of each trait costs in them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class StageCost:
    """One stage, always to be least: its name for people, and its cost per trait.

    ``priority`` is that of the loads whose readiness counts −1 each, 0 in every other stage;
    ``every`` is what each load that goes is worth, whatever its priority, or with ``rank`` so many
    times as much for each priority before the last.
    """

    name: str
    priority: int = 0
    every: float = 0.0
    rank: float = 1.0
    tie_downs: int = 0
    mixed: int = 0
    strength: int = 0


GOING = StageCost(name="loads that go", every=1.0)
TIE_DOWNS = StageCost(name="tie-downs", tie_downs=1)
MIXED_SETS = StageCost(name="mixed sets", mixed=1)
STRENGTH = StageCost(name="rated strength issued", strength=1)


def ready_stages(priorities: Iterable[int]) -> tuple[StageCost, ...]:
    """Stage 1, one part per priority, the first to go first."""
    return tuple(
        StageCost(name=f"loads ready at priority {priority}", priority=priority)
        for priority in sorted(set(priorities))
    )


def every_stage(priorities: Iterable[int]) -> tuple[StageCost, ...]:
    """Every stage that is proved, in order."""
    return (*ready_stages(priorities), TIE_DOWNS, MIXED_SETS, STRENGTH)
