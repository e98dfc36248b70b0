"""Functions that tests run inside a page, one a file."""

from pathlib import Path


def script(name: str) -> str:
    """Return the function of ``<name>.js``."""
    return (Path(__file__).parent / f"{name}.js").read_text(encoding="utf-8").strip()
