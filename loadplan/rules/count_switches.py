"""Disputed points of numbers: what the count by length adds to, and accessories."""

from __future__ import annotations

from loadplan.day.house import AccessoryWLL
from loadplan.rules.switch import HANDBOOK, NO_SOURCE, SECOND_HAND, Reading, Switch, no, yes

COUNT_SWITCHES = (
    Switch(
        name="Length count on machines",
        field="length_count_on_machines",
        asks="Does the count by length add to the four (or two) of machines and light vehicles?",
        readings=(
            yes("393.110 stands beside the other sections; the handbook says more may be needed"),
            no("393.110(d) frees machinery fastened by special methods", HANDBOOK),
        ),
        us="yes",
    ),
    Switch(
        name="Length count on commodities",
        field="length_count_on_commodities",
        asks="Does the count by length add to the numbers of the commodity sections?",
        readings=(
            no("a commodity section prevails where it gives its own numbers (393.106(a))"),
            yes("393.110 counts every article; the stricter reading", NO_SOURCE),
        ),
        us="no",
    ),
    Switch(
        name="Direct tie-down blocks forward",
        field="direct_blocks_forward",
        asks="Does a tie-down to the article count as blocking it forward (393.110(c))?",
        readings=(
            no("a tie-down is not what 393.110(c) lists: headerboard, bulkhead, other cargo"),
            yes("the handbook lists a tie-down attached to the cargo", HANDBOOK),
        ),
        us="no",
    ),
    Switch(
        name="Belly tie-down on lumber under 6 ft",
        field="low_lumber_belly",
        asks="Do three tiers or more under 6 ft (1.83 m) high need the belly tie-down?",
        readings=(
            yes("393.118 as it stands"),
            no("a rule proposed in the US, said to follow the Canadian standard", SECOND_HAND),
        ),
        us="yes",
    ),
    Switch(
        name="Accessory tie-downs",
        field="accessory_tie_downs",
        asks="How many tie-downs does an accessory need that no pin holds?",
        readings=(
            Reading(
                word="1",
                value=1,
                rests_on="393.130(b)(1) gives no number; a state interpretation says one each",
                certainty=SECOND_HAND,
            ),
            Reading(word="2", value=2, rests_on="a stricter house", certainty=NO_SOURCE),
        ),
        us="1",
    ),
    Switch(
        name="Accessory counts in number",
        field="accessory_in_number",
        asks="Do the tie-downs of accessories count among the four, two or those by length?",
        readings=(
            no("a state interpretation calls them extra", SECOND_HAND),
            yes("393.130(b)(1) does not say that they are extra"),
        ),
        us="no",
    ),
    Switch(
        name="Accessory counts in aggregate",
        field="accessory_counts",
        asks="Do the tie-downs of accessories count in the aggregate?",
        readings=(
            no("393.130(b)(1) gives them no credit"),
            yes("they hold the machine too; with half their WLL", NO_SOURCE),
        ),
        us="no",
    ),
    Switch(
        name="Accessory WLL",
        field="accessory_wll",
        asks="What must the tie-down of an accessory bear?",
        readings=(
            Reading(word="any", value=AccessoryWLL.ANY, rests_on="nothing published was found"),
            Reading(
                word="half its weight",
                value=AccessoryWLL.HALF,
                rests_on="the aggregate rule applied to the accessory alone, where its weight is "
                "given",
                certainty=NO_SOURCE,
            ),
        ),
        us="any",
    ),
)
