"""Pages in, a site out: the only module that imports MkDocs.

MkDocs 1.x keeps state in module globals and on class-level options, so one site is built at a time and from
a configuration of its own, loaded from YAML bytes (a reused Python list fails the second time). What costs a
site its time is kept between builds: compiled templates, the theme's file list, the bytes of its assets.
"""

import re
import tempfile
import threading
import traceback
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

import yaml
from jinja2 import Environment, TemplateError

from packet.site import assets
from packet.site.blocks import Parted, parted
from packet.site.buildlog import BuildLog, build_variables, collected_log
from packet.site.bytecode import MemoryCache
from packet.site.policy import PLACEHOLDER, with_hashes

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import File, Files
    from mkdocs.structure.pages import Page as BuiltPage

#: Markdown extensions of a page; each one costs time on every page, so the list is short.
MARKDOWN_EXTENSIONS = ("attr_list", "tables", "toc")

#: Markdown inside HTML blocks, a fifth of a page's Markdown time: only for pages that ask for it.
NESTED_EXTENSION = "md_in_html"
_ASKS_FOR_NESTING = re.compile(r"<[^<>]+\smarkdown\s*=")

#: Optional file of a theme folder: features, palette and icons, as the theme names them.
SETTINGS_NAME = "theme.yml"
_SETTINGS_KEYS = frozenset({"features", "palette", "icon", "direction"})

_SHIM = "assets/javascripts/iframe-worker.js"
_INDEX_JSON = "search/search_index.json"  # for a served packet; one opened from disk reads search_index.js
_UNSAFE_IN_TITLES = frozenset('<>&"')
_PAGE_NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")

_one_at_a_time = threading.Lock()
_bytecode = MemoryCache()
_environments: dict[tuple[Path, str], tuple[assets.Stamp, Environment]] = {}


class SiteFailed(Exception):
    """The pages do not make a whole site: a broken link, a bad theme template, a bad setting.

    Attributes:
        reasons: What the engine reported, in its own words, in order.
    """

    def __init__(self, reasons: Sequence[str]) -> None:
        self.reasons: tuple[str, ...] = tuple(dict.fromkeys(reasons))
        super().__init__("\n".join(self.reasons))


@dataclass(frozen=True)
class Page:
    """One page before Markdown.

    Attributes:
        name: File name without ending; ``index`` is the front page.
        title: Title in navigation and window; plain words, never record text.
        body: Markdown with HTML, record text already escaped.
    """

    name: str
    title: str
    body: str


def build_site(
    *,
    site_name: str,
    language: str,
    pages: Sequence[Page],
    files: Mapping[str, bytes | Path],
    theme_dir: Path,
    assets_dir: Path,
    epoch: int,
    site_dir: Path,
    extra: Mapping[str, Any] | None = None,
) -> None:
    """Build one site into an empty folder.

    Args:
        site_name: Name in the header of every page; plain words, never record text.
        language: Language of the theme's own words and of the search index, ``en``.
        pages: Pages in the order of the navigation, ``index`` among them.
        files: Photos, drawings and data by path in the site; bytes, or a file to copy.
        theme_dir: Overrides of theme templates; its other files are published too.
        assets_dir: Styles, scripts and fonts, published below ``assets/``.
        epoch: Time every date in the output is taken from [seconds since 1970, UTC].
        site_dir: Folder to build into; absent or empty.
        extra: Values for the theme's templates as ``config.extra``. These templates escape nothing
            by themselves.

    Raises:
        SiteFailed: MkDocs warned or failed; nothing in ``site_dir`` is fit to be published.
        ValueError: A page or file name that the site can't hold; names come from ids, never from typed text.
        FileExistsError: ``site_dir`` holds something (a build would empty it).
    """
    site_dir = site_dir.absolute()
    if site_dir.exists() and any(site_dir.iterdir()):
        raise FileExistsError(str(site_dir))
    _refuse_markup([site_name, *(page.title for page in pages)])
    _refuse_names(pages, files)
    theme_dir = theme_dir.resolve()
    shipped = {**assets.folder_assets(theme_dir), **assets.folder_assets(assets_dir.resolve(), "assets/")}
    if _SHIM not in shipped:
        raise SiteFailed([f"{assets_dir}: search opened from disk needs {_SHIM}"])
    settings = _settings(site_name, language, pages, theme_dir, shipped)
    contents = _Contents(pages, {**shipped, **files}, theme_dir)
    site_dir.mkdir(parents=True, exist_ok=True)
    with (
        _one_at_a_time,
        build_variables(epoch),
        collected_log() as log,
        tempfile.TemporaryDirectory(prefix=".docs-", dir=site_dir.parent) as docs_dir,
    ):
        settings |= {"docs_dir": docs_dir, "site_dir": str(site_dir)}
        _run(settings, contents, site_dir.parent / "mkdocs.yml", extra or {}, log)


def markdown_extensions(pages: Sequence[Page]) -> tuple[str, ...]:
    """Return the Markdown extensions a site's pages are read with."""
    nested = any(_ASKS_FOR_NESTING.search(page.body) for page in pages)
    return (*MARKDOWN_EXTENSIONS, NESTED_EXTENSION) if nested else MARKDOWN_EXTENSIONS


def _refuse_markup(titles: Sequence[str]) -> None:
    """Refuse titles that the theme would print as markup."""
    unsafe = " ".join(sorted(_UNSAFE_IN_TITLES))
    bad = [f"{title!r}: a title holds none of {unsafe}" for title in titles if _UNSAFE_IN_TITLES & set(title)]
    if bad:
        raise SiteFailed(bad)


def _refuse_names(pages: Sequence[Page], files: Mapping[str, bytes | Path]) -> None:
    """Refuse names that would leave the site's folder, hide a page or be read as a page."""
    names = [page.name for page in pages]
    bad = [name for name in names if not _PAGE_NAME.fullmatch(name) or names.count(name) > 1]
    taken = {f"{name}.html" for name in names} | {_INDEX_JSON}
    for name in files:
        parts = name.split("/")
        if name in taken or name.endswith(".md") or any(not part or part.startswith(".") for part in parts):
            bad.append(name)
    if bad or "index" not in names:
        message = f"names a site cannot hold: {bad}" if bad else "a site needs a page named index"
        raise ValueError(message)


def _settings(
    site_name: str, language: str, pages: Sequence[Page], theme_dir: Path, shipped: Mapping[str, bytes]
) -> dict[str, Any]:
    """Return the MkDocs configuration of one site as plain values."""
    favicon = next((name for name in assets.FAVICONS if name in shipped), assets.FAVICONS[-1])
    theme = {"name": "material", "custom_dir": str(theme_dir), "language": language, "font": False}
    theme |= {"favicon": favicon, **_theme_settings(theme_dir / SETTINGS_NAME)}
    strictly = {"not_found": "warn", "absolute_links": "warn"}
    return {
        "site_name": site_name,
        "theme": theme,
        "nav": [{page.title: f"{page.name}.md"} for page in pages],
        "use_directory_urls": False,
        "strict": True,
        "plugins": [{"material/search": {}}, {"material/offline": {}}],
        "markdown_extensions": list(markdown_extensions(pages)),
        "extra_css": assets.linked_styles(shipped),
        "extra_javascript": [name for name in assets.linked_scripts(shipped) if name != _SHIM],
        "extra": {"generator": False, "polyfills": [_SHIM]},
        "validation": {
            "nav": {**strictly, "omitted_files": "warn"},
            "links": {**strictly, "anchors": "warn", "unrecognized_links": "warn"},
        },
    }


def _theme_settings(path: Path) -> dict[str, Any]:
    """Return the theme folder's own settings; a setting that would load something from outside is refused."""
    if not path.is_file():
        return {}
    try:
        settings = yaml.safe_load(path.read_text(encoding="utf-8")) or {}
    except (yaml.YAMLError, UnicodeDecodeError) as error:
        raise SiteFailed([f"{path}: {error}"]) from error
    if not isinstance(settings, dict) or set(settings) - _SETTINGS_KEYS:
        raise SiteFailed([f"{path}: a theme sets only {', '.join(sorted(_SETTINGS_KEYS))}"])
    return settings


def _run(
    settings: dict[str, Any], contents: "_Contents", file: Path, extra: Mapping[str, Any], log: BuildLog
) -> None:
    """Load, start, build and shut down in that order; turn what MkDocs reports into one error."""
    from mkdocs.commands.build import build
    from mkdocs.config.base import load_config
    from mkdocs.exceptions import Abort, MkDocsException

    document = BytesIO(yaml.safe_dump(settings, allow_unicode=True, sort_keys=False).encode())
    try:
        config = load_config(document, config_file_path=str(file))
        contents.prepare(config, extra)
        try:
            config.plugins.on_startup(command="build", dirty=False)
            build(config)
        finally:
            config.plugins.on_shutdown()
    except Exception as error:
        place = _template_place(error)
        if not place and not isinstance(error, (Abort, MkDocsException, TemplateError)):
            raise
        reasons = [*log.reasons, *([f"{place}: {error}"] if place else [])]
        raise SiteFailed(reasons or [str(error)]) from error
    if log.reasons:
        raise SiteFailed(log.reasons)


@dataclass(frozen=True)
class _Contents:
    """A small MkDocs plugin: puts pages and files into the build, and keeps the slow parts warm."""

    pages: Sequence[Page]
    files: Mapping[str, bytes | Path]
    theme_dir: Path
    _theme_assets: dict[str, bytes] = field(default_factory=dict)
    _parted: dict[str, Parted] = field(default_factory=dict)

    def prepare(self, config: "MkDocsConfig", extra: Mapping[str, Any]) -> None:
        """Change a loaded configuration where YAML can't say it."""
        theme, language = config.theme, str(config.theme["language"])
        package_dir = Path(theme.dirs[1])
        own = theme["favicon"] in self.files
        needed = assets.theme_assets(
            package_dir, language, palette=bool(theme.get("palette")), favicon=not own
        )
        self._theme_assets.update(needed)
        environment = _environment(theme, self.theme_dir, language)
        theme.get_env = lambda: environment
        theme.static_templates = set()  # no 404 page, no site map: both need a server
        config.extra.update({"inline_scripts": PLACEHOLDER, **extra})
        config.mdx_configs["toc"] = {"slugify": _anchor}
        config.plugins["packet"] = self

    def on_files(self, files: "Files", *, config: "MkDocsConfig") -> "Files":
        """Add the pages and everything published beside them."""
        from mkdocs.structure.files import File, InclusionLevel

        def generated(name: str, content: str | bytes | Path) -> "File":
            source: dict[str, Any] = {"content": content}
            if isinstance(content, Path):
                source = {"abs_src_path": str(content.resolve())}
            return File.generated(config, name, inclusion=InclusionLevel.INCLUDED, **source)

        for name, content in {**self._theme_assets, **self.files}.items():
            files.append(generated(name, content))
        for page in self.pages:
            files.append(generated(f"{page.name}.md", page.body))
        return files

    def on_page_markdown(
        self, markdown: str, *, page: "BuiltPage", config: "MkDocsConfig", files: "Files"
    ) -> str:
        """Take the page's HTML blocks out of Markdown's way."""
        apart = parted(markdown)
        self._parted[page.file.src_uri] = apart
        return apart.text

    def on_page_content(self, html: str, *, page: "BuiltPage", config: "MkDocsConfig", files: "Files") -> str:
        """Put the blocks back, and tell which anchors they hold."""
        apart = self._parted.pop(page.file.src_uri)
        page.present_anchor_ids = (page.present_anchor_ids or set()) | apart.anchors()
        return apart.whole(html)

    def on_post_page(self, output: str, *, page: "BuiltPage", config: "MkDocsConfig") -> str:
        """Write the hashes of the frame's scripts into the page's policy."""
        return with_hashes(output, page.content or "")


def _anchor(text: str, separator: str) -> str:
    """Return the anchor of a heading that has none of its own: numbered, never made from typed words."""
    return "part"


def _environment(theme: Any, theme_dir: Path, language: str) -> Environment:
    """Return the theme's Jinja environment, the same one until a file of the theme folder changes."""
    stamp = assets.folder_stamp(theme_dir)
    known = _environments.get((theme_dir, language))
    if known is None or known[0] != stamp:
        environment: Environment = theme.get_env()
        environment.bytecode_cache = _bytecode
        # The files to publish are added by _Contents; listing the package again would find 14,500.
        environment.list_templates = lambda *args, **kwargs: []  # type: ignore[method-assign]
        known = (stamp, environment)
        _environments[theme_dir, language] = known
    return known[1]


def _template_place(error: BaseException) -> str:
    """Return ``file:line`` of the theme template an error was raised in, or an empty text."""
    frames = traceback.extract_tb(error.__traceback__)
    found = [f"{frame.filename}:{frame.lineno}" for frame in frames if frame.filename.endswith(".html")]
    return found[-1] if found else ""
