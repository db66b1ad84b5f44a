"""Disputed points of strength: credits, floors and what the aggregate is asked of."""

from __future__ import annotations

from loadplan.rules.profile import HALF, ONE
from loadplan.rules.switch import HANDBOOK, SECOND_HAND, Reading, Switch, no, yes

STRENGTH_SWITCHES = (
    Switch(
        name="Direct credit",
        field="direct_credit",
        asks="What share of its WLL does a tie-down to the article count with?",
        readings=(
            Reading(word="1/2", value=HALF, rests_on="393.106(d)(1)"),
            Reading(
                word="1",
                value=ONE,
                rests_on="the handbook counts half for each end on an anchor point and half for "
                "each on the cargo; NSC Standard 10 s. 10 read literally",
                certainty=HANDBOOK,
            ),
        ),
        us="1/2",
    ),
    Switch(
        name="Same side credit",
        field="same_side_credit",
        asks="What share does a tie-down that comes back to the same side count with?",
        readings=(
            Reading(word="1/2", value=HALF, rests_on="393.106(d)(2)"),
            Reading(
                word="1",
                value=ONE,
                rests_on="NSC Standard 10 s. 10: half for each end on an anchor point, and it has "
                "two",
            ),
        ),
        us="1/2",
        canada="1",
    ),
    Switch(
        name="Aggregate in each direction",
        field="each_direction",
        asks="Is half the weight needed in each direction by itself?",
        readings=(
            no("393.106(d) as it stands names no direction"),
            yes(
                'the rule of 1994 said "in any direction"; a state trainer teaches half forward, '
                "rearward and sideways each",
                SECOND_HAND,
            ),
        ),
        us="no",
    ),
    Switch(
        name="Aggregate on roll-off containers",
        field="roll_off_aggregate",
        asks="Is half the weight asked of the rear tie-downs of a roll-off container?",
        readings=(
            yes("393.106(d) stands beside the commodity sections"),
            no("the lifting device is structure that holds it (393.106(b))"),
        ),
        us="yes",
    ),
    Switch(
        name="Floor on logs",
        field="log_floor",
        asks="Must each tie-down on logs bear 4,000 lb (1,800 kg)?",
        readings=(
            yes("the handbook says so", HANDBOOK),
            no("not confirmed in the text of 393.116"),
        ),
        us="yes",
    ),
)
