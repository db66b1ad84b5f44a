"""The gear of the generated days: about thirty kinds, some marked, some not, some worn out.

Marked strengths are those of the published default tables or round figures of the trade (common
practice, no source). ``role`` and ``tier`` say what a kind is scaled by: the tier is the credited
WLL in pounds it is good for; ``share`` its part of that tier's pieces.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Piece:
    """One kind of gear in pounds and feet, and how many of it a day is given."""

    id: str
    kind: str
    role: str
    tier: int
    share: float
    size: str = ""
    grade: str = ""
    length: float | None = None
    wll: int | None = None
    breaking: int | None = None
    fits: str = ""
    condition: str = ""
    mass: float | None = None


TIERS = (3000, 5400, 6600, 9200, 16000)

# fmt: off
CAGE = (
    Piece(id="CH-25-70", kind="chain", role="chain", tier=3000, share=0.25, size="1/4",
          grade="G70", length=12, wll=3150, mass=8),
    Piece(id="CH-38-U", kind="chain", role="chain", tier=3000, share=0.45, size="3/8", length=16,
          mass=25),
    Piece(id="CH-31-43", kind="chain", role="chain", tier=3000, share=0.3, size="5/16", grade="4",
          length=14, mass=15),
    Piece(id="CH-31-70", kind="chain", role="chain", tier=5400, share=0.4, size="5/16", grade="70",
          length=20, wll=4700, mass=21),
    Piece(id="CH-31-80", kind="chain", role="chain", tier=5400, share=0.2, size="5/16",
          grade="800", length=16, mass=18),
    Piece(id="CH-38-43", kind="chain", role="chain", tier=5400, share=0.4, size="3/8", grade="430",
          length=20, wll=5400, mass=30),
    Piece(id="CH-38-70", kind="chain", role="chain", tier=6600, share=0.5, size="3/8", grade="G70",
          length=20, wll=6600, mass=31),
    Piece(id="CH-38-70L", kind="chain", role="chain", tier=6600, share=0.3, size="10 mm",
          grade="Grade 70", length=30, mass=46),
    Piece(id="CH-38-80", kind="chain", role="chain", tier=6600, share=0.2, size="3/8 in",
          grade="8", length=20, wll=7100, mass=31),
    Piece(id="CH-38-100", kind="chain", role="chain", tier=9200, share=0.35, size="3/8",
          grade="G100", length=20, wll=8800, mass=31),
    Piece(id="CH-50-43", kind="chain", role="chain", tier=9200, share=0.35, size="1/2", grade="43",
          length=20, wll=9200, mass=50),
    Piece(id="CH-50-70", kind="chain", role="chain", tier=9200, share=0.3, size="1/2", grade="70",
          length=25, wll=11300, mass=62),
    Piece(id="CH-62-70", kind="chain", role="chain", tier=16000, share=0.6, size="5/8", grade="70",
          length=20, wll=15800, mass=78),
    Piece(id="CH-50-100", kind="chain", role="chain", tier=16000, share=0.4, size="1/2",
          grade="100", length=20, wll=15000, mass=50),
    Piece(id="LB-S", kind="lever binder", role="binder", tier=3000, share=1.0, wll=2600,
          fits="1/4-5/16", mass=4),
    Piece(id="LB-M", kind="lever binder", role="binder", tier=5400, share=1.0, wll=5400,
          fits="5/16-3/8", mass=12),
    Piece(id="RB-M", kind="ratchet binder", role="binder", tier=6600, share=0.7, wll=6600,
          fits="5/16-3/8", mass=11),
    Piece(id="RB-M2", kind="ratchet binder", role="binder", tier=6600, share=0.3, breaking=21600,
          fits="5/16, 3/8", mass=12),
    Piece(id="LB-L", kind="lever binder", role="binder", tier=9200, share=0.5, wll=9200,
          fits="3/8-1/2", mass=19),
    Piece(id="RB-L", kind="ratchet binder", role="binder", tier=9200, share=0.5, wll=13000,
          fits="3/8-1/2", mass=15),
    Piece(id="RB-XL", kind="ratchet binder", role="binder", tier=16000, share=1.0, wll=18100,
          fits="1/2-5/8", mass=20),
    Piece(id="RB-?", kind="ratchet binder", role="few", tier=0, share=0.0, fits="3/8", mass=11),
    Piece(id="RS-2", kind="ratchet strap", role="strap", tier=3000, share=0.4, size="2", length=27,
          wll=3333, mass=6),
    Piece(id="RS-2U", kind="ratchet strap", role="strap", tier=3000, share=0.25, size="2 in",
          length=27, mass=6),
    Piece(id="RS-3", kind="ratchet strap", role="strap", tier=5400, share=0.4, size="3", length=30,
          breaking=15000, mass=9),
    Piece(id="RS-4", kind="ratchet strap", role="strap", tier=5400, share=0.3, size="4", length=30,
          wll=5400, mass=13),
    Piece(id="WS-4", kind="winch strap", role="strap", tier=5400, share=0.6, size="4", length=30,
          wll=5400, mass=9),
    Piece(id="WS-3", kind="winch strap", role="strap", tier=3000, share=0.35, size="75 mm",
          length=27, mass=7),
    Piece(id="WR-50", kind="wire rope", role="few", tier=0, share=0.0, size="1/2", length=20,
          mass=10),
    Piece(id="TB-1", kind="turnbuckle", role="few", tier=0, share=0.0, wll=5200, mass=9),
    Piece(id="SH-58", kind="shackle", role="shackle", tier=6600, share=0.6, size="5/8", wll=6500,
          mass=1.5),
    Piece(id="SH-100", kind="shackle", role="shackle", tier=16000, share=0.6, size="1", wll=17000,
          mass=5),
    Piece(id="EP-R", kind="edge protector", role="protector", tier=0, share=0.6, mass=2),
    Piece(id="EP-P", kind="edge protector", role="protector", tier=0, share=0.4, mass=1),
)
# fmt: on
