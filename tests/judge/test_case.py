"""The judgement's own figures against the package's, and what it may know of."""

import subprocess
import sys

from loadplan.day.article import Routing
from loadplan.judge.case import load_case
from loadplan.rules.demand import load_demand
from loadplan.wll.piece import rate
from loadplan.wll.tie_down import rate_tie_down
from tests.judge.test_mutations import plans


def test_the_wll_of_a_tie_down_is_the_one_printed():
    """Worked out apart, the judgement's lowest part is that of the printed tie-down rating."""
    seen = 0
    for plan in plans():
        day = plan.day
        ratings = {gear.id: rate(gear, day.units) for gear in day.gear}
        by_article = {
            one.id: tuple(tied for tied in plan.tie_downs if tied.article == one.id)
            for one in day.articles
        }
        for load in day.loads:
            asked = load_demand(day, load)
            whole = load_case(day, asked, ready=True, ratings=ratings, tie_downs=by_article)
            for case in whole.articles:
                for tied in case.tie_downs:
                    direct = tied.routing is Routing.DIRECT and not tied.accessory
                    rating = rate_tie_down(
                        member=ratings[tied.member].wll,
                        tensioner=ratings[tied.tensioner].wll if tied.tensioner else None,
                        connector=ratings[tied.shackle].wll if tied.shackle else None,
                        anchor=asked.anchor_wll,
                        tie_point=case.article.tie_point_wll if direct else None,
                    )
                    assert case.wll(tied) == rating.wll
                    seen += 1
    assert seen >= 200


def test_the_judgement_never_meets_the_solver():
    code = (
        "import sys, loadplan.judge.judge, loadplan.judge.pool; "
        "print(sorted(m for m in sys.modules "
        "if m.split('.')[0] in ('pulp', 'highspy') or m.startswith('loadplan.plan')))"
    )
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert found.stdout == "[]\n"
