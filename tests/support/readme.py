"""What README shows in YAML."""

import re
from collections.abc import Iterator

from tests.support.office import ROOT


def readme_files() -> Iterator[tuple[str, str]]:
    """Yield what README shows in YAML, by the name in its first line; the record has none."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    for block in re.findall(r"^```yaml\n(.*?)^```$", text, re.MULTILINE | re.DOTALL):
        named = re.match(r"# (.+)\n", block)
        yield (named[1] if named else "job"), block
