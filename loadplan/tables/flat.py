"""The flat sheets of a plan, by name, in the order they stand in the results workbook."""

from __future__ import annotations

from loadplan.outcome.day_plan import DayPlan
from loadplan.tables.checks import checks
from loadplan.tables.facts import DayFacts
from loadplan.tables.gear import gear_use, pick_list
from loadplan.tables.sheet_names import load_sheet_names
from loadplan.tables.shortfall import shortfall
from loadplan.tables.sources import sources
from loadplan.tables.summary import summary
from loadplan.tables.table import Table
from loadplan.tables.tie_downs import tie_downs


def flat_tables(plan: DayPlan) -> dict[str, Table]:
    """Every flat sheet of ``plan``; ``Shortfall`` only where something is short."""
    return tables_of(DayFacts(plan))


def tables_of(facts: DayFacts) -> dict[str, Table]:
    """The same from facts that are worked out already."""
    plan = facts.plan
    names = load_sheet_names([load.id for load in plan.day.loads])
    found = {"Summary": summary(facts, names)}
    if plan.shortages:
        found["Shortfall"] = shortfall(plan)
    found["Pick list"] = pick_list(plan)
    found["Tie-downs"] = tie_downs(facts)
    found["Checks"] = checks(plan)
    found["Gear use"] = gear_use(plan)
    found["Sources"] = sources(facts)
    return found
