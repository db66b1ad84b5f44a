"""Loads and trailers of a generated day: overlapping trips between 05:30 and 19:00."""

from __future__ import annotations

import datetime
from random import Random

from tests.bench.options import Options

Row = dict[str, object]
FIRST, LAST = 5 * 60 + 30, 19 * 60
PLACES = ("upper lodge", "east lift", "quarry road", "dam site", "village", "north ridge", "depot")
DRIVERS = ("Ames", "Bell", "Cole", "Dorn", "Ekman", "Fitch", "Grau", "Holt")


def trips(options: Options, random: Random) -> tuple[list[Row], list[Row]]:
    """The rows of ``Loads`` and ``Trailers``; a trailer never makes two trips at once."""
    spans = []
    for _ in range(options.loads):
        hours = random.uniform(2, 6)
        out = random.randrange(FIRST, int(LAST - 60 * hours), 5)
        spans.append((out, min(LAST, out + int(12 * hours) * 5)))
    free: list[tuple[int, int]] = []
    loads: list[Row] = []
    trailers = 0
    for number, (out, back) in sorted(enumerate(spans, 1), key=lambda item: item[1]):
        waiting = [(ready, trailer) for ready, trailer in free if ready <= out]
        if waiting and random.random() < 0.7:
            chosen = random.choice(waiting)
            free.remove(chosen)
            trailer = chosen[1]
        else:
            trailers += 1
            trailer = trailers
        free.append((back, trailer))
        loads.append(
            {
                "Load": f"L{number:03d}",
                "Trailer": f"T{trailer:02d}",
                "Out": clock(out),
                "Back": clock(back),
                "Priority": random.choice((1, 1, 2, 2, 3)),
                "Driver": random.choice(DRIVERS),
                "Destination": random.choice(PLACES),
            }
        )
    loads.sort(key=lambda row: str(row["Load"]))
    return loads, [_trailer(number, options, random) for number in range(1, trailers + 1)]


def clock(minutes: int) -> datetime.time:
    """Minutes from midnight as a time of day."""
    return datetime.time(minutes // 60, minutes % 60)


def minutes(moment: object) -> int:
    """The inverse of :func:`clock`."""
    assert isinstance(moment, datetime.time)
    return moment.hour * 60 + moment.minute


def _trailer(number: int, options: Options, random: Random) -> Row:
    anchors = random.choice((14, 16, 18, 20, 24, 24))
    rating = random.choice((8000, 10000, 12000, 15000, 20000))
    flatbed = random.random() < 0.5
    return {
        "Trailer": f"T{number:02d}",
        f"Deck length [{options.length}]": options.distance(random.choice((24, 30, 40, 48, 53))),
        f"Deck width [{options.length}]": options.distance(8.5),
        f"Deck height [{options.length}]": options.distance(random.choice((2.0, 2.8, 3.3, 4.8))),
        f"Payload [{options.mass}]": options.weight(random.choice((24000, 35000, 48000, 80000))),
        "Anchors": anchors if random.random() < 0.75 else None,
        f"Anchor WLL [{options.mass}]": options.weight(rating) if random.random() < 0.7 else None,
        "Winches": random.choice((4, 6, 8)) if flatbed else None,
        "Front structure": random.choice(("yes", "no")),
    }
