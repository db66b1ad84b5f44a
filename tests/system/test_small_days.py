"""Small days with everything in them: every figure again, and the proved optimum."""

from pathlib import Path

import pytest

from tests.system.running import disagreements, plan
from tests.system.small_days import small_day


@pytest.mark.parametrize("seed", range(60))
def test_the_plan_is_right_and_the_best_there_is(seed: int, tmp_path: Path) -> None:
    assert disagreements(plan(small_day(seed), tmp_path, "day", "--time-limit", "300")) == []
