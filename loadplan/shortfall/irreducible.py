"""Irreducible sets: leave out what can be left out, until no member can."""

from __future__ import annotations

from collections.abc import Callable, Sequence

Fails = Callable[[Sequence[str]], bool | None]


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
