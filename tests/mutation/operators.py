"""The mutants of one module: small changes of its meaning, one at a time.

Texts are left as they are, apart from the words that code compares: what is printed has its own
tests. So are annotations and docstrings, which do nothing.
"""

from __future__ import annotations

import ast
import copy
from collections.abc import Callable, Iterator
from dataclasses import dataclass

_COMPARE: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
}
_ARITHMETIC: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Add,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.FloorDiv,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
}
_CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "ceil": "floor", "floor": "ceil"}
_SKIPPED = frozenset({"annotation", "returns", "type_params", "decorator_list"})


@dataclass(frozen=True, kw_only=True)
class Mutant:
    """One change: where it stands, what it does, and the module's tree with it made."""

    line: int
    column: int
    what: str
    tree: ast.Module


def mutants(source: str) -> Iterator[Mutant]:
    """Every mutant of the module ``source``."""
    tree = ast.parse(source)
    for place, node in enumerate(_nodes(tree)):
        for which, (what, _) in enumerate(_changes(node)):
            changed = copy.deepcopy(tree)
            same = next(one for at, one in enumerate(_nodes(changed)) if at == place)
            _changes(same)[which][1]()
            ast.fix_missing_locations(changed)
            yield Mutant(line=node.lineno, column=node.col_offset, what=what, tree=changed)


def _nodes(tree: ast.AST) -> Iterator[ast.AST]:
    """The nodes that can be changed, in a fixed order; no annotations, no imports."""
    for name, value in ast.iter_fields(tree):
        if name in _SKIPPED:
            continue
        for node in value if isinstance(value, list) else [value]:
            if isinstance(node, ast.keyword) and node.arg == "strict":
                continue  # It only says that two sequences are of one length.
            if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
                continue
            if isinstance(node, ast.AST) and not isinstance(node, ast.Import | ast.ImportFrom):
                if hasattr(node, "lineno"):
                    yield node
                yield from _nodes(node)


def _changes(node: ast.AST) -> list[tuple[str, Callable[[], None]]]:
    """What can be done to ``node``: words, and a function that does it in place."""
    match node:
        case ast.Compare(ops=[operator]) if type(operator) in _COMPARE:
            new = _COMPARE[type(operator)]
            return [(_swap(operator, new), lambda: setattr(node, "ops", [new()]))]
        case ast.BinOp() | ast.AugAssign() if type(node.op) in _ARITHMETIC and not _text(node):
            put = _ARITHMETIC[type(node.op)]
            return [(_swap(node.op, put), lambda: setattr(node, "op", put()))]
        case ast.BoolOp():
            other = ast.Or if isinstance(node.op, ast.And) else ast.And
            return [(_swap(node.op, other), lambda: setattr(node, "op", other()))]
        case ast.UnaryOp(op=ast.Not()):
            truth = ast.Call(ast.Name("bool", ast.Load()), [node.operand], [])
            return [("without not", lambda: _become(node, truth))]
        case ast.Constant(value=bool()):
            value = node.value
            return [(f"{value} -> {not value}", lambda: setattr(node, "value", not value))]
        case ast.Constant(value=int()):
            value = node.value
            return [(f"{value} -> {value + 1}", lambda: setattr(node, "value", value + 1))]
        case ast.Call(func=ast.Name(id=name)) if name in _CALLS:
            return [(f"{name} -> {_CALLS[name]}", lambda: setattr(node.func, "id", _CALLS[name]))]
        case ast.If() | ast.IfExp() | ast.While():
            test = node.test
            turned = ast.UnaryOp(ast.Not(), test)
            if isinstance(test, ast.Compare | ast.BoolOp | ast.UnaryOp):
                return []
            return [("if -> if not", lambda: setattr(node, "test", turned))]
        case ast.GeneratorExp() | ast.ListComp() | ast.SetComp() | ast.DictComp():
            return [
                ("without its if", lambda one=one: setattr(one, "ifs", []))
                for one in node.generators
                if one.ifs
            ]
        case ast.Return(value=ast.expr() as value) if not isinstance(value, ast.Constant):
            return [("return None", lambda: setattr(node, "value", ast.Constant(None)))]
        case ast.Expr(value=ast.YieldFrom(value=ast.Tuple(elts=[]))):
            return []
        case ast.Expr(value=ast.Yield() | ast.YieldFrom() | ast.Call()):
            drop = ast.Expr(ast.Constant(None))
            if isinstance(node.value, ast.Call):
                return [("statement dropped", lambda: setattr(node, "value", drop.value))]
            none = ast.YieldFrom(ast.Tuple([], ast.Load()))
            return [("yields nothing", lambda: setattr(node, "value", none))]
    return []


def _text(node: ast.BinOp | ast.AugAssign) -> bool:
    """Whether an operand is plainly text: what is printed is not mutated."""
    sides = [node.left, node.right] if isinstance(node, ast.BinOp) else [node.value]
    return any(
        isinstance(side, ast.JoinedStr)
        or (isinstance(side, ast.Constant) and isinstance(side.value, str))
        for side in sides
    )


def _swap(old: ast.AST, new: type[ast.AST]) -> str:
    return f"{type(old).__name__} -> {new.__name__}"


def _become(node: ast.UnaryOp, other: ast.Call) -> None:
    """Turn ``node`` into ``other`` where it stands."""
    node.__class__ = ast.Call  # type: ignore[assignment]
    node.__dict__.pop("op")
    node.__dict__.update(func=other.func, args=other.args, keywords=[])
