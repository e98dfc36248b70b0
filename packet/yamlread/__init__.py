"""YAML text → plain values and the place of each; every scalar stays the text that was typed.

Only the plain part of YAML is read: no anchors, no tags, no merge keys, one document a file.
"""

from packet.yamlread.document import MOST_DEEP, Document
from packet.yamlread.reader import LIMIT_BYTES, parse_yaml, read_bytes, read_yaml
from packet.yamlread.tree import MOST_NODES

__all__ = ["LIMIT_BYTES", "MOST_DEEP", "MOST_NODES", "Document", "parse_yaml", "read_bytes", "read_yaml"]
