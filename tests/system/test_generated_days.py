"""Generated days: every figure again, and on the smaller ones the proved optimum."""

from pathlib import Path

import pytest

from tests.oracle.recheck import recheck
from tests.system.running import ALL_READY, NOT_PROVED, SOME_HELD, disagreements, plan
from tests.system.varied import varied


@pytest.mark.parametrize("seed", range(2, 5))
def test_three_loads_are_the_best_there_is(seed: int, tmp_path: Path) -> None:
    assert (
        disagreements(
            plan(varied(3, seed), tmp_path, "day", "--time-limit", "300"), every_plan=False
        )
        == []
    )


@pytest.mark.parametrize("seed", range(3))
def test_a_whole_day_is_right(seed: int, tmp_path: Path) -> None:
    planned = plan(varied(14, seed), tmp_path, "day", "--time-limit", "20")
    assert planned.code in (ALL_READY, SOME_HELD, NOT_PROVED)
    assert recheck(planned.path, planned.results_path) == []
