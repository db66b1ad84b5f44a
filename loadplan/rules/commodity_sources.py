"""Sources of the commodity sections, 49 CFR 393.116 to 393.136, each with its certainty."""

from __future__ import annotations

from loadplan.rules.cite import cfr, handbook, memory

LOGS = handbook(
    "393.116",
    "Natural wood that keeps the shape of the bole, on a vehicle with bunks, bolsters, stakes or "
    "standards.",
)
LOGS_LENGTHWISE = handbook(
    "393.116",
    "Shortwood lengthwise: two tie-downs over each stack, or one midway where every log is under "
    "10 ft (3.04 m) and the stack is blocked in front and at the rear. Longwood: one at each bunk, "
    "or two around the load with front and rear at least 10 ft (3.04 m) apart.",
)
LOGS_CROSSWISE = handbook(
    "393.116",
    "Shortwood crosswise: two tie-downs lengthwise over one stack, at about one and two thirds of "
    "the logs; over two stacks side by side at least one across each.",
)
LOGS_SHARE = handbook(
    "393.116",
    "Lengthwise logs: the working load limits add up to at least one sixth of the weight of the "
    "stack, in place of one half.",
)
LOGS_FLOOR = handbook("393.116", "Each tie-down on logs bears at least 4,000 lb (1,800 kg).")
LOGS_WRAPPERS = handbook(
    "393.116", "Large logs that rise above the bunks: two more wrappers to the load beneath."
)
LUMBER = cfr(
    "393.118",
    "Bundled building products; one tier follows the general rules; bundles side by side touch or "
    "are held apart.",
)
LUMBER_TIERS = handbook(
    "393.118",
    "More than one tier: stakes, blocking or friction between the tiers, or a sided vehicle; else "
    "tie-downs over the top and over a lower tier, or over every tier, with two on each top bundle "
    "over 5 ft (1.52 m).",
)
LUMBER_MIDDLE = memory(
    "393.118",
    "Three tiers: the middle one; more: a middle tier no higher than 6 ft above the deck, else the "
    "second from the bottom.",
)
LUMBER_LOW = cfr(
    "393.118",
    "A rule proposed in the United States, said to follow the Canadian standard, would let loads "
    "of three or more tiers under 6 ft high go without the tie-down over the middle tier.",
)
COILS = handbook(
    "393.120",
    "Coils of 5,000 lb (2,268 kg) or more, singly or together; lighter ones may follow the general "
    "rules.",
)
COIL_VERTICAL = handbook(
    "393.120",
    "Eye vertical: one tie-down diagonally each way across the eye, one straight over it, and "
    "blocking, mats or tie-downs against movement forward and rearward.",
)
COIL_CROSSWISE = handbook(
    "393.120",
    "Eye crosswise: one tie-down through the eye forward and one rearward; no nailed blocking as "
    "the only means.",
)
COIL_NO_X = memory("393.120", "Eye crosswise: the tie-downs do not cross in the eye.")
COIL_LENGTHWISE = handbook(
    "393.120",
    "Eye lengthwise: one diagonally each way through the eye and one over the top; or two straight "
    "through the eye and one over; or two over the top near front and rear.",
)
COIL_ROWS = handbook(
    "393.120",
    "Rows, eye vertical: one tie-down against the front, one against the rear, one over each coil. "
    "Rows, eye lengthwise: two over each coil.",
)
PAPER = handbook(
    "393.122",
    "Paper rolls of 5,000 lb (2,268 kg) or more, singly or together: contact, blocking, banding; "
    "tie-downs on open vehicles by the general rules.",
)
PAPER_WIDTH = memory(
    "393.122",
    "A forward roll that can tip is banded where it is wider than 1.25 times its diameter; 1.75 "
    "where friction mats alone hold it forward.",
)
PIPE = cfr(
    "393.124",
    "Concrete pipe crosswise on flatbeds: half the weight of the group, blocking, and tie-downs "
    "through upper pipes that also hold those below.",
)
PIPE_UP_TO_45 = handbook(
    "393.124",
    "Inside diameter up to 45 in (1,143 mm): lengthwise one chain or wire rope of 1/2 in (13 mm) "
    "or two of 3/8 in (10 mm), and front and rear bottom pipe tied rearward and forward.",
)
PIPE_TRANSVERSE = memory(
    "393.124",
    "Inside diameter up to 45 in: one tie-down across for each 10 ft (3.04 m) of load or part of "
    "it.",
)
PIPE_OVER_45 = handbook(
    "393.124",
    "Inside diameter over 45 in (1,143 mm): at least one tie-down through each pipe, two through "
    "the front and the rear one unless they stand against structure.",
)
CHASSIS = cfr(
    "393.126",
    "Container on a container chassis: locked at its lower corners, play of 1/2 in (1.27 cm) "
    "forward, rearward and sideways and 1 in (2.54 cm) upward; chain or wire rope may replace a "
    "lock.",
)
CONTAINER_DECK = cfr(
    "393.126",
    "Loaded container on another vehicle: chain, wire rope or devices at all four lower corners.",
)
CONTAINER_SHARE = handbook(
    "393.126", "Loaded container on another vehicle: half its loaded weight, ends independent."
)
CONTAINER_EMPTY = cfr(
    "393.126",
    "Empty container on another vehicle: steady before it is tied, secured against all movement.",
)
CONTAINER_OVERHANG = memory("393.126", "Empty container: overhang up to 5 ft (1.5 m) at each end.")
FLATTENED = handbook(
    "393.132",
    "Flattened vehicles: walls on four sides, or two, three or four tie-downs over each stack "
    "where three, two or no sides have walls; each of at least 5,000 lb (2,268 kg).",
)
FLATTENED_FOUR = memory("393.132", "Walls of full height on four sides: no tie-downs.")
NO_WEBBING = handbook("393.132", "Flattened vehicles: no synthetic webbing.")
CONNECTING_WEBBING = memory(
    "393.132", "Webbing may connect wire rope or chain where it does not touch the vehicles."
)
ROLL_OFF = cfr(
    "393.134",
    "Without an integral system: blocked forward, front held by the lifting device or other "
    "means, and at the rear one tie-down to chassis and container, two lengthwise to the side "
    "rails, or two hooks, within 2 m (6 ft 7 in) of the rear.",
)
ROLL_OFF_PARTS = memory("393.134", "Missing or defective parts: tie-downs of equal strength.")
BOULDERS = cfr(
    "393.136",
    "Natural rock over 11,000 lb (5,000 kg) or over 2 m3 on an open vehicle; lighter rock may "
    "follow this section or the general rules.",
)
BOULDER_BASE = handbook(
    "393.136",
    "Flattest side down on two hardwood pieces of 4 x 4 in (10 x 10 cm) or a hardwood crib.",
)
BOULDER_CHAIN = handbook("393.136", "Chain only, against the rock, in valleys or notches.")
BOULDER_CUBIC = handbook("393.136", "Cubic: two chains across the top, near the blocking.")
BOULDER_STABLE = handbook(
    "393.136",
    "Not cubic, stable base: two chains crossed over the top and joined where they cross.",
)
BOULDER_UNSTABLE = handbook(
    "393.136",
    "Not cubic, unstable base: one chain round the top of half the weight, and four chains from it "
    "to the vehicle of a quarter of the weight each, at 45 degrees or less.",
)
FRICTION_MAT = cfr(
    "393.108(g)", "A friction mat without a mark resists sideways half the weight that rests on it."
)

COMMODITY_SOURCES = (
    *(LOGS, LOGS_LENGTHWISE, LOGS_CROSSWISE, LOGS_SHARE, LOGS_FLOOR, LOGS_WRAPPERS),
    *(LUMBER, LUMBER_TIERS, LUMBER_MIDDLE, LUMBER_LOW),
    *(COILS, COIL_VERTICAL, COIL_CROSSWISE, COIL_NO_X, COIL_LENGTHWISE, COIL_ROWS),
    *(PAPER, PAPER_WIDTH),
    *(PIPE, PIPE_UP_TO_45, PIPE_TRANSVERSE, PIPE_OVER_45),
    *(CHASSIS, CONTAINER_DECK, CONTAINER_SHARE, CONTAINER_EMPTY, CONTAINER_OVERHANG),
    *(FLATTENED, FLATTENED_FOUR, NO_WEBBING, CONNECTING_WEBBING),
    *(ROLL_OFF, ROLL_OFF_PARTS),
    *(BOULDERS, BOULDER_BASE, BOULDER_CHAIN, BOULDER_CUBIC, BOULDER_STABLE, BOULDER_UNSTABLE),
    FRICTION_MAT,
)
