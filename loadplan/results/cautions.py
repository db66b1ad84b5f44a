"""What every page says about itself: what it is not, and who stays responsible."""

from __future__ import annotations

EDITION = (
    "The rules were read in stored copies in 2026-11; figures from memory or from common practice "
    "are marked so. Check the current text of the federal, state and local rules."
)
SHEET = (
    "This page shows which rules were checked with the figures of the day workbook, and nothing "
    "else. Gear, anchor points, tie points and weights must be as stated. The driver and the "
    "carrier remain responsible for the cargo and its inspection. " + EDITION
)
CHANGES = (
    "Yellow figures can be changed on screen: WLL, weights, credits and shares are worked out "
    "again. Counts, positions and the checks below are not."
)
CAUTIONS = (
    "The driver and the carrier remain responsible for the cargo, its distribution and its "
    "inspection before and during the trip (49 CFR 392.9; NSC Standard 10 in Canada).",
    "The count and aggregate rules do not look at angles, friction, tipping or crash forces. A "
    "load can pass every rule here and still need more tie-downs sideways or against tipping.",
    "Gear is taken as the day workbook states it. Look at every piece before it goes out; a "
    "damaged, knotted or unmarked piece changes the figures.",
    "Anchor points, tie points and winches without a rating do not limit the figures here. Look "
    "up what they bear.",
    "Estimated weights are only estimates. Weigh what passes narrowly.",
    "Permits, commodity sections, state and local rules, and the carrier's own rules may ask for "
    "more. Ask licensed practice where in doubt.",
    EDITION,
)
CHECKED = (
    "For each article: the aggregate WLL of its tie-downs against its weight with everything on "
    "it, the number of tie-downs and where they stand, the tie-downs of its accessories, and what "
    "its own row asks (reach, shackles, edge protectors, chain only).",
    "For each tie-down: the WLL of every rated part, the pieces that go together, and the lowest "
    "part by name.",
    "For each load: anchor points and winches used; payload, deck length, width and height as "
    "advice only.",
    "For the day: no piece of gear on two loads at once, from departure to return and turnaround.",
    "Every plan was judged again, piece by piece, by code that is kept apart from the planner.",
)
NOT_CHECKED = (
    "Directions of pull, angles, lengths of chain along the deck, friction, tipping.",
    "Axle weights, the position of articles on the deck, permits, routes and bridges.",
    "The condition of gear, deck and machine: that is what the list on each load sheet is for.",
)
