"""Progress: how far a running stage is."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """One report from a running stage; ``best`` and ``bound`` are None until there is one."""

    stage: str
    best: float | None
    bound: float | None
    seconds: float
