"""Generated days: every figure again, and on the smaller ones the proved optimum."""

from pathlib import Path

import pytest

from tests.oracle.recheck import recheck
from tests.system.running import ALL_READY, SOME_HELD, disagreements, plan
from tests.system.varied import varied


@pytest.mark.parametrize("seed", range(8))
def test_three_loads_are_the_best_there_is(seed: int, tmp_path: Path) -> None:
    assert disagreements(plan(varied(3, seed), tmp_path)) == []


@pytest.mark.parametrize("seed", range(3))
def test_a_whole_day_is_right(seed: int, tmp_path: Path) -> None:
    planned = plan(varied(14, seed), tmp_path)
    assert planned.code in (ALL_READY, SOME_HELD)
    assert recheck(planned.path, planned.results_path) == []
