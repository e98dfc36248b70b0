"""Evaluates the arithmetic of a working, and nothing else.

Allowed: numbers, names with a given value, + - * / ** and unary minus, and sqrt, ceil, floor, min, max.
Integers and decimals are exact fractions; a result is a float only after sqrt or where a given value is one.
"""

import ast
import math
from collections.abc import Callable, Mapping
from fractions import Fraction

Number = int | float | Fraction

#: What the program, too, takes for floating noise before it counts a further piece; kept apart from its own.
NOISE = Fraction(1, 1_000_000_000)

LONGEST_FORMULA = 2_000
MOST_EXPONENT = 8


class NotArithmetic(Exception):
    """The formula holds something else than arithmetic, or does not fit its values."""


def _ceil(value: Number) -> int:
    return -math.floor(-(Fraction(value) - NOISE))


def _floor(value: Number) -> int:
    return math.floor(Fraction(value) + NOISE)


def _power(base: Number, exponent: Number) -> Number:
    if not -MOST_EXPONENT <= exponent <= MOST_EXPONENT:
        raise NotArithmetic(f"exponent {exponent} is over {MOST_EXPONENT}")
    return base**exponent


_OPERATIONS: dict[type[ast.operator], Callable[[Number, Number], Number]] = {
    ast.Add: lambda a, b: a + b,
    ast.Sub: lambda a, b: a - b,
    ast.Mult: lambda a, b: a * b,
    ast.Div: lambda a, b: Fraction(1) * a / b,
    ast.Pow: _power,
}
_FUNCTIONS: dict[str, tuple[int, int, Callable[..., Number]]] = {
    "sqrt": (1, 1, lambda value: math.sqrt(value)),
    "ceil": (1, 1, _ceil),
    "floor": (1, 1, _floor),
    "min": (2, 20, min),
    "max": (2, 20, max),
}


def names(formula: str) -> set[str]:
    """The symbols of a formula, its functions left out."""
    found = {node.id for node in ast.walk(_tree(formula)) if isinstance(node, ast.Name)}
    return found - set(_FUNCTIONS)


def evaluate(formula: str, values: Mapping[str, Number]) -> Number:
    """Return the value of a formula; every name must have a value and every value must be used."""
    unused = set(values) - names(formula)
    if unused:
        raise NotArithmetic(f"not in the formula: {', '.join(sorted(unused))}")
    return _value(_tree(formula), values)


def _tree(formula: str) -> ast.expr:
    if len(formula) > LONGEST_FORMULA:
        raise NotArithmetic("formula is too long")
    try:
        return ast.parse(formula, mode="eval").body
    except (SyntaxError, ValueError, RecursionError) as error:
        raise NotArithmetic(f"cannot be read: {formula!r}") from error


def _value(node: ast.expr, values: Mapping[str, Number]) -> Number:
    match node:
        case ast.Constant(value=int() | float() as number) if not isinstance(number, bool):
            return Fraction(str(number))
        case ast.Name(id=name) if name in values:
            value = values[name]
            return value if isinstance(value, float) else Fraction(value)
        case ast.Name(id=name):
            raise NotArithmetic(f"no value for {name}")
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_value(operand, values)
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _OPERATIONS:
            return _OPERATIONS[type(op)](_value(left, values), _value(right, values))
        case ast.Call(func=ast.Name(id=name), args=args, keywords=[]) if name in _FUNCTIONS:
            least, most, function = _FUNCTIONS[name]
            if least <= len(args) <= most:
                return function(*(_value(arg, values) for arg in args))
    raise NotArithmetic(f"not arithmetic: {ast.unparse(node)}")
