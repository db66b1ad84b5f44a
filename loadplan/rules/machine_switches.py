"""Disputed points of machines and vehicles."""

from __future__ import annotations

from fractions import Fraction

from loadplan.day.house import AtThreshold, HeavyEnds, StateRules
from loadplan.rules.switch import HANDBOOK, NO_SOURCE, SECOND_HAND, Reading, Switch, no, yes

MACHINE_SWITCHES = (
    Switch(
        name="Heavy from",
        field="heavy_from",
        asks="From what weight up are machines secured under 393.130 where the row does not say?",
        readings=(
            Reading(
                word="0",
                value=Fraction(0),
                rests_on="393.130(a) lets the carrier choose; four is the stricter choice",
            ),
            Reading(
                word="10,000 lb (4,536 kg; in Canada 4,500 kg)",
                value=Fraction(10000),
                rests_on="393.130(a) binds from there up only; state police teach two below it",
            ),
        ),
        us="0",
    ),
    Switch(
        name="Machine of exactly 10,000 lb",
        field="at_threshold",
        asks="Is a machine of exactly 10,000 lb (4,536 kg) heavy?",
        readings=(
            Reading(
                word="heavy",
                value=AtThreshold.HEAVY,
                rests_on='393.130(a) says "10,000 lb or more"',
            ),
            Reading(
                word="light",
                value=AtThreshold.LIGHT,
                rests_on='393.128 reaches up to 10,000 lb; the handbook says "more than"',
                certainty=HANDBOOK,
            ),
        ),
        us="heavy",
    ),
    Switch(
        name="Ends of heavy machines",
        field="heavy_ends",
        asks='What is "as close as practicable to the front and rear"?',
        readings=(
            Reading(
                word="each corner",
                value=HeavyEnds.EACH_CORNER,
                rests_on="our reading of 393.130(c)(2)",
                certainty=NO_SOURCE,
            ),
            Reading(
                word="two front and two rear",
                value=HeavyEnds.TWO_AND_TWO,
                rests_on="the text names no left and right; two and two is inferred as well",
                certainty=NO_SOURCE,
            ),
        ),
        us="each corner",
    ),
    Switch(
        name="Floor on heavy machines",
        field="heavy_floor",
        asks="Must each tie-down on heavy machinery bear 5,000 lb (2,268 kg)?",
        readings=(
            no("the text of 393.130 that was read has no such line"),
            yes("the handbook and the model regulation (NSC Standard 10 s. 89)", HANDBOOK),
        ),
        us="no",
        canada="yes",
    ),
    Switch(
        name="Straps on machines",
        field="straps_on_machines",
        asks="May webbing hold machines?",
        readings=(
            yes("393.130 names no material; webbing is barred for crushed cars only"),
            no("many yards hold machines by chain only", NO_SOURCE),
        ),
        us="yes",
    ),
    Switch(
        name="Light vehicle tie-downs",
        field="light_vehicle_tie_downs",
        asks="Are two tie-downs enough for a light vehicle?",
        readings=(
            Reading(
                word="2",
                value=2,
                rests_on="393.128 and s. 88: front and rear held with at least two",
            ),
            Reading(
                word="4",
                value=4,
                rests_on='the handbook says "at least two at both the front and rear"',
                certainty=HANDBOOK,
            ),
        ),
        us="2",
    ),
    Switch(
        name="State rules",
        field="state_rules",
        asks="Which declared add-on of a state holds?",
        readings=(
            Reading(word="none", value=StateRules.NONE, rests_on="the rule set alone"),
            Reading(
                word=StateRules.CALIFORNIA_VEHICLES.value,
                value=StateRules.CALIFORNIA_VEHICLES,
                rests_on="California Vehicle Code 29004(a)(3), by an officer's letter: at least "
                "four on a vehicle carried on a trailer",
                certainty=SECOND_HAND,
            ),
        ),
        us="none",
    ),
)
