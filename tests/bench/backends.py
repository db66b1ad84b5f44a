"""The same program handed to several solvers; one that is not installed is left out."""

from __future__ import annotations

import importlib.util
from collections.abc import Callable, Mapping
from fractions import Fraction

import numpy

from tests.oracle.program import Answer, Program

Terms = Mapping[int, Fraction | int]
Backend = Callable[[Program, Terms, float], Answer | None]


def highs(program: Program, terms: Terms, seconds: float) -> Answer | None:
    """HiGHS in process, one thread, no gap allowed."""
    return program.least(terms, seconds)


def cbc(program: Program, terms: Terms, seconds: float) -> Answer | None:
    """The CBC that comes with PuLP, no gap allowed."""
    import pulp

    problem = pulp.LpProblem("day", pulp.LpMinimize)
    variables = [
        pulp.LpVariable(f"x{n}", 0, upper, cat=pulp.LpInteger)
        for n, upper in enumerate(program.upper)
    ]
    problem += pulp.LpAffineExpression([(variables[v], float(c)) for v, c in terms.items()])
    for low, row, high in program.rows:
        if row:
            expression = pulp.LpAffineExpression([(variables[v], c) for v, c in row.items()])
            if low == high:
                problem += expression == low
                continue
            if low > -numpy.inf:
                problem += expression >= low
            if high < numpy.inf:
                problem += expression <= high
    solver = pulp.PULP_CBC_CMD(msg=False, timeLimit=max(1, seconds), gapRel=0, threads=1)
    problem.solve(solver)
    if problem.sol_status not in (pulp.LpSolutionOptimal, pulp.LpSolutionIntegerFeasible):
        return None
    values = [round(v.value() or 0) for v in variables]
    found = float(sum(c * values[v] for v, c in terms.items()))
    proved = problem.sol_status == pulp.LpSolutionOptimal
    return Answer(values=values, bound=found if proved else -numpy.inf, proved=proved)


def scipy_milp(program: Program, terms: Terms, seconds: float) -> Answer | None:
    """SciPy's milp, no gap allowed."""
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_array

    cost = numpy.zeros(len(program.upper))
    for variable, coefficient in terms.items():
        cost[variable] = float(coefficient)
    starts, columns, values = [0], [], []
    for _, row, _ in program.rows:
        columns += row.keys()
        values += row.values()
        starts.append(len(columns))
    matrix = csr_array((values, columns, starts), shape=(len(program.rows), len(cost)))
    lows, highs_ = [low for low, _, _ in program.rows], [high for _, _, high in program.rows]
    answer = milp(
        cost,
        integrality=numpy.ones(len(cost)),
        bounds=Bounds(0, numpy.array(program.upper, dtype=float)),
        constraints=LinearConstraint(matrix, lows, highs_),
        options={"mip_rel_gap": 0, "time_limit": max(0.1, seconds)},
    )
    if answer.x is None:
        return None
    found = [round(v) for v in answer.x]
    return Answer(values=found, bound=answer.mip_dual_bound, proved=answer.status == 0)


def cp_sat(program: Program, terms: Terms, seconds: float) -> Answer | None:
    """CP-SAT with eight workers; rows are scaled to whole numbers."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    variables = [model.new_int_var(0, upper, "") for upper in program.upper]
    for low, row, high in program.rows:
        scale = 2  # credits are halves, strengths whole numbers
        total = cp_model.LinearExpr.weighted_sum(
            [variables[v] for v in row], [round(scale * c) for c in row.values()]
        )
        if low > -numpy.inf:
            model.add(total >= round(scale * low))
        if high < numpy.inf:
            model.add(total <= round(scale * high))
    model.minimize(
        cp_model.LinearExpr.weighted_sum(
            [variables[v] for v in terms], [round(c) for c in terms.values()]
        )
    )
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = max(0.1, seconds)
    solver.parameters.num_workers = 8
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None
    return Answer(
        values=[solver.value(v) for v in variables],
        bound=solver.best_objective_bound,
        proved=status == cp_model.OPTIMAL,
    )


def installed() -> dict[str, Backend]:
    """Every solver that is there, by name."""
    wanted: dict[str, tuple[str, Backend]] = {
        "HiGHS": ("highspy", highs),
        "CBC": ("pulp", cbc),
        "SciPy milp": ("scipy", scipy_milp),
        "CP-SAT, 8 workers": ("ortools", cp_sat),
    }
    return {
        name: solve
        for name, (module, solve) in wanted.items()
        if importlib.util.find_spec(module) is not None
    }
