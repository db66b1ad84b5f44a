"""What a building yard sends out: invented but realistic machines and cargo.

Weights, sizes and attachments are round figures of machine sizes common in the trade (common
practice, no source); they describe no maker's model.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Pattern:
    """One kind of article: weights in pounds and sizes in feet, each as (least, most)."""

    name: str
    cargo_class: str
    weight: tuple[int, int]
    length: tuple[float, float]
    width: float
    height: float
    accessories: tuple[str, ...] = ()
    pinned: tuple[str, ...] = ()
    added: tuple[tuple[str, int, int], ...] = ()
    tie_point: tuple[int | None, ...] = (None,)
    share: int = 1


FUEL = ("fuel", 120, 420)
MACHINES = (
    Pattern(
        name="skid steer",
        cargo_class="wheeled machine",
        weight=(6000, 8600),
        length=(9.5, 11.5),
        width=6.0,
        height=6.6,
        accessories=("bucket",),
        added=(("bucket", 420, 700), ("forks", 350, 480), FUEL),
        tie_point=(None, 5400, 6600),
        share=4,
    ),
    Pattern(
        name="compact track loader",
        cargo_class="tracked machine",
        weight=(8200, 11800),
        length=(10.5, 12.5),
        width=6.5,
        height=6.9,
        accessories=("bucket",),
        added=(("mulching head", 1900, 2400), ("bucket", 600, 900), FUEL),
        tie_point=(None, 6600, 9200),
        share=3,
    ),
    Pattern(
        name="mini excavator",
        cargo_class="tracked machine",
        weight=(3800, 12800),
        length=(12.0, 18.5),
        width=5.9,
        height=8.2,
        accessories=("boom", "blade"),
        added=(("wide bucket", 180, 420), ("thumb", 150, 300), FUEL),
        tie_point=(None, 4700, 6600),
        share=3,
    ),
    Pattern(
        name="mid excavator",
        cargo_class="tracked machine",
        weight=(28000, 48500),
        length=(25.0, 32.0),
        width=8.4,
        height=9.9,
        accessories=("boom", "bucket"),
        added=(("rock bucket", 1800, 2900), ("coupler", 600, 900)),
        tie_point=(None, 15000, 12000),
        share=4,
    ),
    Pattern(
        name="dozer",
        cargo_class="tracked machine",
        weight=(17500, 41000),
        length=(14.0, 19.5),
        width=8.5,
        height=9.6,
        accessories=("blade", "ripper"),
        pinned=("ripper",),
        added=(("ripper", 1900, 2600), FUEL),
        tie_point=(None, 15000, 20000),
        share=4,
    ),
    Pattern(
        name="wheel loader",
        cargo_class="articulated machine",
        weight=(11500, 36000),
        length=(19.0, 26.5),
        width=8.3,
        height=10.4,
        accessories=("bucket",),
        added=(("general purpose bucket", 1300, 2200), FUEL, ("ballast", 700, 1300)),
        tie_point=(None, 12000, 15000),
        share=4,
    ),
    Pattern(
        name="telehandler",
        cargo_class="wheeled machine",
        weight=(10800, 26500),
        length=(15.5, 21.0),
        width=8.2,
        height=8.3,
        accessories=("boom",),
        added=(("carriage and forks", 520, 880), FUEL),
        tie_point=(None, 9200, 12000),
        share=3,
    ),
    Pattern(
        name="roller",
        cargo_class="articulated machine",
        weight=(5400, 24500),
        length=(8.5, 19.0),
        width=7.0,
        height=9.4,
        added=(("water", 600, 1900), FUEL),
        tie_point=(None, 6600, 9200),
        share=3,
    ),
    Pattern(
        name="scissor lift",
        cargo_class="wheeled machine",
        weight=(2700, 8900),
        length=(6.1, 9.6),
        width=3.9,
        height=6.5,
        added=(("platform tools", 60, 220),),
        tie_point=(None, 4000, 5400),
        share=2,
    ),
    Pattern(
        name="tractor",
        cargo_class="wheeled machine",
        weight=(4900, 16500),
        length=(10.5, 15.5),
        width=7.2,
        height=8.8,
        accessories=("loader", "hoe"),
        pinned=("hoe",),
        added=(("front loader", 1000, 1700), ("wheel weights", 400, 1200), FUEL),
        tie_point=(None, 6600),
        share=3,
    ),
    Pattern(
        name="utility vehicle",
        cargo_class="light vehicle",
        weight=(1500, 7600),
        length=(9.8, 18.9),
        width=5.6,
        height=6.4,
        added=(("tools", 120, 600),),
        tie_point=(None, 3333, 4700),
        share=1,
    ),
)
CARGO = (
    Pattern(
        name="stacked planks",
        cargo_class="general",
        weight=(1800, 7800),
        length=(12.0, 20.0),
        width=4.0,
        height=3.5,
        share=3,
    ),
    Pattern(
        name="crated generator",
        cargo_class="general",
        weight=(700, 6800),
        length=(3.5, 9.5),
        width=3.8,
        height=4.6,
        share=3,
    ),
    Pattern(
        name="steel plates",
        cargo_class="general",
        weight=(2600, 13500),
        length=(8.0, 20.0),
        width=6.0,
        height=1.2,
        share=2,
    ),
    Pattern(
        name="site office",
        cargo_class="general",
        weight=(4200, 9600),
        length=(18.0, 30.0),
        width=8.0,
        height=8.5,
        share=1,
    ),
    Pattern(
        name="pallets of block",
        cargo_class="general",
        weight=(900, 11000),
        length=(4.0, 16.0),
        width=4.0,
        height=4.0,
        share=3,
    ),
)
