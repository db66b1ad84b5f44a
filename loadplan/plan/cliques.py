"""The moments at which the cage is emptiest: maximal cliques of the trips."""

from __future__ import annotations

from collections.abc import Sequence


def cliques(trips: Sequence[tuple[int, int]]) -> tuple[list[int], list[tuple[int, int]]]:
    """Moments that matter, and for each trip the first and last of them it covers.

    Each trip is (out, free again) with out < free again; gear is out in [out, free again). Only a
    departure that is followed by a return before the next departure can be the worst moment for
    a pool, so one row there covers every other moment. A trip covers a run of these moments.
    """
    returning, departing = 0, 1  # at one moment gear comes back before it goes out again
    events = sorted(
        [(out, departing, trip) for trip, (out, _) in enumerate(trips)]
        + [(free, returning, trip) for trip, (_, free) in enumerate(trips)]
    )
    moments: list[int] = []
    first = [0] * len(trips)
    last = [0] * len(trips)
    latest_departure: int | None = None
    for moment, what, trip in events:
        if what == departing:
            first[trip] = len(moments)
            latest_departure = moment
            continue
        if latest_departure is not None:
            moments.append(latest_departure)
            latest_departure = None
        last[trip] = len(moments) - 1
    return moments, list(zip(first, last, strict=True))
