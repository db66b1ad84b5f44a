"""Irreducible sets: leave out what can be left out, until no member can."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence

Fails = Callable[[Sequence[str]], bool | None]
Reason = Callable[[Sequence[str]], Sequence[str] | None]


def irreducible(members: Sequence[str], fails: Fails) -> tuple[list[str], bool]:
    """Members that fail together and would not without any one of them.

    All ``members`` together are known to fail; what fails still fails with more. Halves are left
    out before single members, so the questions are few. Early members are rather kept than late
    ones. The second value is False where a question was not settled: then one member or another
    might still be left out.
    """
    sure = True

    def reduced(kept: list[str], part: Sequence[str], ask: bool) -> list[str]:
        nonlocal sure
        if ask:
            answer = fails(kept)
            if answer:
                return []
            sure = sure and answer is not None
        if len(part) == 1:
            return list(part)
        early, late = part[: len(part) // 2], part[len(part) // 2 :]
        second = reduced([*kept, *early], late, True)
        first = reduced([*kept, *second], early, bool(second))
        return [*first, *second]

    return (reduced([], members, True) if members else []), sure


def narrowed(members: Sequence[str], reason: Reason) -> list[str]:
    """Members that fail together for a reason, and without any one of them for none that is seen.

    ``reason`` answers with those of the members that matter to why they fail, or with None.
    """
    kept = list(members)
    for member in reversed(members):
        if member in kept:
            matters = reason([one for one in kept if one != member])
            if matters is not None:
                kept = [one for one in kept if one in matters]
    return kept


def confirmed(members: Sequence[str], fails: Fails, seconds: float) -> tuple[list[str], bool]:
    """As :func:`irreducible` for few members of whom hardly one can be left out.

    Asks member by member, late ones first, and ends where it is plain that ``seconds`` will not do
    for them all.
    """
    kept, started = list(members), time.monotonic()
    for number, member in enumerate(reversed(members), 1):
        rest = [one for one in kept if one != member]
        answer = fails(rest)
        if answer:
            kept = rest
        spent = time.monotonic() - started
        if answer is None or spent * len(members) > seconds * number:
            return kept, answer is not None and number == len(members)
    return kept, True
