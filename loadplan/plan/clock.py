"""The time a plan may take, and word of how far it is."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

from loadplan.outcome.progress import Progress

_EVERY = 64  # steps between two looks at the clock


class OutOfTimeError(Exception):
    """The time limit came before the work was done."""


class TooManyStepsError(Exception):
    """A search took more steps than it is worth."""


@dataclass(slots=True)
class Clock:
    """Counts down from ``seconds``; ``tell`` hears of progress now and then."""

    seconds: float
    tell: Callable[[Progress], None] | None = None
    stage: str = ""
    begun: float = field(default_factory=time.monotonic)

    def spent(self) -> float:
        """Seconds since the start."""
        return time.monotonic() - self.begun

    def left(self) -> float:
        """Seconds that are left, never below nought."""
        return max(0.0, self.seconds - self.spent())

    @contextmanager
    def at_most(self, share: float) -> Iterator[None]:
        """Let what is inside take no more than a share of the time that is left."""
        whole = self.seconds
        self.seconds = self.spent() + share * self.left()
        try:
            yield
        finally:
            self.seconds = whole

    def over(self) -> bool:
        """Whether the time is up."""
        return self.left() <= 0.0

    def tick(self) -> None:
        """Raise :class:`OutOfTimeError` once the time is up; for loops that can run long."""
        if self.over():
            raise OutOfTimeError

    def report(self, best: float | None, bound: float | None) -> None:
        """Pass on how far the running stage is."""
        if self.tell is not None:
            self.tell(Progress(stage=self.stage, best=best, bound=bound, seconds=self.spent()))


@dataclass(slots=True)
class Steps:
    """Ends a search after so many steps, or when the clock's time is up."""

    left: int
    clock: Clock | None = None

    def tick(self) -> None:
        """Count a step; raise ``TooManyStepsError`` when they are used up."""
        self.left -= 1
        if self.left < 0:
            raise TooManyStepsError
        if self.clock is not None and self.left % _EVERY == 0:
            self.clock.tick()
