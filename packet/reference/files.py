"""The YAML files of a folder of ``shared/``."""

from collections.abc import Iterator
from pathlib import Path

from packet.problems import Problem


def yaml_files(folder: Path) -> tuple[Path, ...]:
    """Return the YAML files of a folder in order of name; none when there is no such folder."""
    return tuple(sorted(path for path in folder.glob("*.yaml") if path.is_file()))


def misnamed(folder: Path) -> Iterator[Problem]:
    """Return a problem for each file that ends in ``.yml`` and would be passed over in silence."""
    for path in sorted(folder.glob("*.yml")):
        yield Problem("wrong-suffix", path, found=path.name, values={"accepted": f"{path.stem}.yaml"})
