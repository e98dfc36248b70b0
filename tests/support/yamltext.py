"""Editing a YAML text at a path, by the marks of PyYAML's own nodes."""

import yaml
from yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode


def _step(node: Node, name: str) -> Node | None:
    """Return what a step of a path leads to: a key, a list position from 0, or the id of an entry."""
    if isinstance(node, MappingNode):
        return next((value for key, value in node.value if key.value == name), None)
    if isinstance(node, SequenceNode):
        for item in node.value:
            mine = _step(item, "id") if isinstance(item, MappingNode) else None
            if isinstance(mine, ScalarNode) and mine.value == name:
                return item
        return node.value[int(name)] if name.isdecimal() and int(name) < len(node.value) else None
    return None


def _node(text: str, steps: list[str]) -> Node | None:
    node: Node | None = yaml.compose(text, Loader=yaml.SafeLoader)
    for step in steps:
        node = _step(node, step) if node is not None else None
    return node


def with_value(text: str, path: str, value: str) -> str:
    """Return the text with YAML put in the place of a value; a missing key becomes its parent's first."""
    steps = path.split(".")
    node = _node(text, steps)
    if node is not None:
        start, end = node.start_mark.index, node.end_mark.index
        end = start + len(text[start:end].rstrip())  # a block ends where the next key starts
        return f"{text[:start]}{value}{text[end:]}"
    parent = _node(text, steps[:-1])
    assert isinstance(parent, MappingNode), f"nothing at {path}"
    start = parent.start_mark.index
    if parent.flow_style:
        return f"{text[: start + 1]}{steps[-1]}: {value}, {text[start + 1 :]}"
    return f"{text[:start]}{steps[-1]}: {value}\n{' ' * parent.start_mark.column}{text[start:]}"


def place_of(text: str, path: str, *, key: bool = False) -> tuple[int, int]:
    """Return line and column of a value, or of its key [1-based]."""
    steps = path.split(".")
    node = _node(text, steps)
    if key:
        parent = _node(text, steps[:-1])
        assert isinstance(parent, MappingNode)
        node = next((name for name, _ in parent.value if name.value == steps[-1]), None)
    assert node is not None, f"nothing at {path}"
    return node.start_mark.line + 1, node.start_mark.column + 1
