"""The files a site publishes beside its pages: the theme's own, the office's theme folder, styles and fonts.

The theme package holds 14,500 files (58 MB of icons). A site needs four of them, so they are picked by
pattern and kept in memory instead of being listed and copied again for every job.
"""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path

#: What a page of the theme really loads; the hash in a name changes with each release of the theme.
_THEME_PATTERNS = (
    "assets/stylesheets/main.*.min.css",
    "assets/javascripts/bundle.*.min.js",
    "assets/javascripts/workers/search.*.min.js",
)

#: Loaded only when the theme folder sets a palette.
_PALETTE_PATTERN = "assets/stylesheets/palette.*.min.css"

#: Word stemming for other languages than English, loaded by the search worker.
_STEMMER_PATTERNS = (
    "assets/javascripts/lunr/tinyseg.js",
    "assets/javascripts/lunr/wordcut.js",
    "assets/javascripts/lunr/min/lunr.stemmer.support.min.js",
    "assets/javascripts/lunr/min/lunr.multi.min.js",
    "assets/javascripts/lunr/min/lunr.{language}.min.js",
)

#: Read while building, never published.
_NOT_PUBLISHED = {".html", ".j2", ".md", ".yml", ".yaml", ".py", ".pyc", ".map"}

#: Where a favicon of our own may lie; the theme package has the last one.
FAVICONS = ("assets/images/favicon.svg", "assets/images/favicon.png")

_SOURCE_MAP_NOTE = re.compile(rb"\n?(?://# sourceMappingURL=\S+|/\*# sourceMappingURL=\S+ \*/)\s*\Z")

_IMPORTED = re.compile(rb"""@import\s+(?:url\()?\s*["']?(?:\./)?([\w.-]+)""")

Stamp = tuple[tuple[str, int, int], ...]

_kept: dict[Path, tuple[tuple[str, int, int], bytes]] = {}


def folder_stamp(folder: Path) -> Stamp:
    """Return name, size and time of every file below a folder, to see whether one was edited."""
    return tuple(_stamp_of(path, path.relative_to(folder).as_posix()) for path in _files(folder))


def theme_assets(package_dir: Path, language: str, *, palette: bool, favicon: bool) -> dict[str, bytes]:
    """Return the theme files a page loads, by published path.

    Args:
        package_dir: Folder of the installed theme.
        language: Language of the search index; English needs no stemmer.
        palette: The theme's own colours are switched on.
        favicon: The theme's own favicon is used.

    Raises:
        FileNotFoundError: The installed theme has no such file, so its layout has changed.
    """
    needed = [
        *_THEME_PATTERNS,
        *([_PALETTE_PATTERN] if palette else []),
        *([FAVICONS[-1]] if favicon else []),
    ]
    stemmers = (
        [] if language == "en" else [pattern.format(language=language) for pattern in _STEMMER_PATTERNS]
    )
    found: dict[str, bytes] = {}
    for pattern in [*needed, *stemmers]:
        paths = sorted(package_dir.glob(pattern))
        if not paths and pattern in needed:
            raise FileNotFoundError(str(package_dir / pattern))
        for path in paths:
            found[path.relative_to(package_dir).as_posix()] = _SOURCE_MAP_NOTE.sub(b"\n", _content(path))
    return found


def folder_assets(folder: Path, published_below: str = "") -> dict[str, bytes]:
    """Return the published files of a folder by published path; templates and settings stay behind.

    Args:
        folder: A theme folder or a folder of styles, scripts and fonts.
        published_below: Folder of the site they are published in, with a closing slash.
    """
    return {
        published_below + path.relative_to(folder).as_posix(): _content(path)
        for path in _files(folder)
        if path.suffix.lower() not in _NOT_PUBLISHED
    }


def linked_styles(published: Mapping[str, bytes]) -> list[str]:
    """Return the style sheets every page links: those that no other sheet imports."""
    sheets = {
        name: text for name, text in published.items() if re.fullmatch(r"assets/stylesheets/[^/]+\.css", name)
    }
    imported = {found[1].decode() for text in sheets.values() for found in _IMPORTED.finditer(text)}
    return sorted(name for name in sheets if name.rpartition("/")[2] not in imported)


def linked_scripts(published: Mapping[str, bytes]) -> list[str]:
    """Return the scripts every page loads."""
    return sorted(name for name in published if re.fullmatch(r"assets/javascripts/[^/]+\.js", name))


def _files(folder: Path) -> Iterator[Path]:
    """Yield the files below a folder by name, leaving out what starts with a dot."""
    for path in sorted(folder.iterdir()):
        if path.name.startswith((".", "__pycache__")):
            continue
        if path.is_dir():
            yield from _files(path)
        else:
            yield path


def _stamp_of(path: Path, name: str) -> tuple[str, int, int]:
    seen = path.stat()
    return name, seen.st_size, seen.st_mtime_ns


def _content(path: Path) -> bytes:
    """Return a file's bytes, read again only when it changed."""
    stamp = _stamp_of(path, path.name)
    known = _kept.get(path)
    if known is None or known[0] != stamp:
        known = (stamp, path.read_bytes())
        _kept[path] = known
    return known[1]
