"""Changes to the structure of a record: keys and values lost, doubled, renamed, retyped, swapped and grafted."""

import json
from collections.abc import Callable
from copy import deepcopy
from random import Random
from typing import Any

import yaml

from tests.fuzz.words import TOKENS, measure, spoiled

Tree = Any
#: A list or mapping, and the key or position of one of its values.
Place = tuple[Any, Any]
TreeChange = Callable[[Tree, Random], None]


def places(tree: Tree) -> list[Place]:
    """Return every value's holder and key."""
    found: list[Place] = []
    waiting = [tree]
    while waiting:
        holder = waiting.pop()
        keys = (
            list(holder)
            if isinstance(holder, dict)
            else range(len(holder))
            if isinstance(holder, list)
            else ()
        )
        for key in keys:
            found.append((holder, key))
            waiting.append(holder[key])
    return found


def _one(tree: Tree, dice: Random) -> Place:
    return dice.choice(places(tree) or [([""], 0)])


def _drop(tree: Tree, dice: Random) -> None:
    holder, key = _one(tree, dice)
    del holder[key]


def _double(tree: Tree, dice: Random) -> None:
    holder, key = _one(tree, dice)
    if isinstance(holder, list):
        holder[key:key] = [deepcopy(holder[key]) for _ in range(dice.choice((1, 1, 3, 500)))]
    else:
        holder[f"{key}{dice.choice(('_', '2', ' ', 's'))}"] = deepcopy(holder[key])


def _rename(tree: Tree, dice: Random) -> None:
    holder, key = _one(tree, dice)
    if isinstance(holder, dict):
        others = [k for h, k in places(tree) if isinstance(h, dict)]
        new = dice.choice((spoiled(str(key), dice), dice.choice(others), dice.choice(TOKENS)))
        holder[new] = holder.pop(key)


def _retype(tree: Tree, dice: Random) -> None:
    holder, key = _one(tree, dice)
    value = holder[key]
    shapes: list[Any] = [[value], {"x": value}, "", None, [], {}, [value, value], {"id": "X1"}]
    if isinstance(value, dict):
        shapes += [list(value.values()), list(value.items()) and [dict([pair]) for pair in value.items()]]
    if isinstance(value, list) and value:
        shapes += [value[0], dict(enumerate(map(str, value)))]
    holder[key] = deepcopy(dice.choice(shapes))


def _swap(tree: Tree, dice: Random) -> None:
    """Let two values change places; either may have held the other."""
    (one, key), (other, name) = _one(tree, dice), _one(tree, dice)
    left, right = deepcopy(one[key]), deepcopy(other[name])
    one[key] = right
    other[name] = left


def _graft(tree: Tree, dice: Random) -> None:
    (holder, key), (from_, name) = _one(tree, dice), _one(tree, dice)
    value = deepcopy(from_[name])
    if isinstance(holder, dict):
        holder[name if isinstance(name, str) else key] = value
    else:
        holder.insert(key, value)


def _scalar(tree: Tree, dice: Random) -> None:
    scalars = [(h, k) for h, k in places(tree) if isinstance(h[k], str)]
    if scalars:
        holder, key = dice.choice(scalars)
        same = [h[k] for h, k in scalars]
        words = (
            dice.choice(TOKENS),
            measure(dice),
            measure(dice),
            spoiled(holder[key], dice),
            dice.choice(same),
        )
        holder[key] = dice.choice(words)


def _nest(tree: Tree, dice: Random) -> None:
    holder, key = _one(tree, dice)
    value = holder[key]
    for _ in range(dice.choice((1, 2, 30, 39, 45))):
        value = [value] if dice.random() < 0.5 else {"a": value}
    holder[key] = value


TREE_CHANGES: tuple[TreeChange, ...] = (
    _drop, _drop, _double, _rename, _retype, _swap, _graft, _scalar, _scalar, _scalar, _scalar, _nest,
)  # fmt: skip


def parsed(data: bytes) -> Tree:
    """Return a good file's values, every scalar as the text that was typed."""
    return yaml.load(data.decode(), Loader=yaml.BaseLoader)  # noqa: S506 (makes text, lists and mappings only)


def written(tree: Tree, dice: Random) -> bytes:
    """Return values as YAML, in one of the ways a program would write them."""
    if dice.random() < 0.3:
        return json.dumps(tree, ensure_ascii=dice.random() < 0.5, indent=dice.choice((None, 1))).encode(
            "utf-8", "replace"
        )
    width = dice.choice((40, 110, 10_000))
    text: str = yaml.dump(
        tree, Dumper=yaml.SafeDumper, sort_keys=False, allow_unicode=dice.random() < 0.8, width=width,
        default_flow_style=dice.choice((False, False, None)),
    )  # fmt: skip
    return text.encode("utf-8", "replace")
