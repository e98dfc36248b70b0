"""The environment our page templates run in: the office's first, then the packaged ones, and nothing else.

Templates see values and words, never files or Python: the environment is sandboxed, unknown names are errors,
and everything printed passes ``escaping.said`` unless it is markup already.
"""

import traceback
from collections.abc import Callable, Mapping, Sequence
from numbers import Real
from pathlib import Path
from typing import Any

from jinja2 import (
    BaseLoader,
    ChoiceLoader,
    Environment,
    FileSystemLoader,
    PrefixLoader,
    StrictUndefined,
    TemplateError,
    TemplateNotFound,
    TemplateSyntaxError,
    nodes,
    pass_environment,
    pass_eval_context,
)
from jinja2.compiler import CodeGenerator, Frame
from jinja2.exceptions import SecurityError
from jinja2.nodes import EvalContext
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup

from packet.problems import Problem, Refused
from packet.site.bytecode import MemoryCache
from packet.site.escaping import glued, ref, said, said_lines

#: Reaches the packaged template of the same name, so that an override can extend it:
#: ``default:pages/scope.md.j2``.
PACKAGED_PREFIX = "default"

TEMPLATE_ENDING = ".j2"

#: Jinja's filters that stay. The others make markup out of text in their own way, draw lots, or calculate.
_KEPT_FILTERS = (
    "batch", "capitalize", "count", "d", "default", "dictsort", "first", "groupby", "indent", "items",
    "last", "length", "list", "lower", "map", "reject", "rejectattr", "reverse", "select", "selectattr",
    "slice", "sort", "string", "title", "trim", "unique", "upper",
)  # fmt: skip

_KEPT_GLOBALS = ("cycler", "dict", "joiner", "namespace", "range")

#: Mistakes of a template that Python itself reports (a number added to text, a missing key).
_TEMPLATE_MISTAKES = (
    ArithmeticError, AttributeError, LookupError, MemoryError, OSError, RecursionError, TypeError, ValueError,
)  # fmt: skip

_ROOM = Path(__file__).resolve().parents[1]
_bytecode = MemoryCache()


class _Generator(CodeGenerator):
    """Jinja's code generator with ``~`` put together by our own escaping."""

    def visit_Concat(self, node: nodes.Concat, frame: Frame) -> None:  # noqa: N802 (Jinja's name)
        """Write ``a ~ b`` as a call."""
        self.write("environment.glued((")
        for part in node.nodes:
            self.visit(part, frame)
            self.write(", ")
        self.write("))")


class _Pages(ImmutableSandboxedEnvironment):
    """A sandbox in which text and markup never mix unescaped."""

    code_generator_class = _Generator
    intercepted_binops = frozenset({"+", "%", "*", "**"})
    glued = staticmethod(glued)

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:
        """Refuse the methods of markup: they escape for HTML, but not for Markdown."""
        return not isinstance(obj, Markup) and super().is_safe_attribute(obj, attr, value)

    def wrap_str_format(self, value: Any) -> Callable[..., str] | None:
        """Leave the format method of markup to the check above."""
        return (
            None if isinstance(getattr(value, "__self__", None), Markup) else super().wrap_str_format(value)
        )

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        """Add markup and text by our own escaping; refuse other sums with markup, and what grows fast."""
        if isinstance(left, Markup) or isinstance(right, Markup):
            if operator == "+":
                return glued((left, right))
            message = f"markup takes no {operator}"
            raise SecurityError(message)
        if operator == "**" or (operator == "*" and not (isinstance(left, Real) and isinstance(right, Real))):
            message = "a template multiplies plain numbers only, and takes no powers"
            raise SecurityError(message)
        return super().call_binop(context, operator, left, right)


class _FolderLoader(FileSystemLoader):
    """Loads templates of one folder; a link that leads out of it is no template."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder, encoding="utf-8-sig")  # an editor may write a byte mark
        self._folder = folder.resolve()

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        """Return source and file of a template.

        Raises:
            TemplateNotFound: No such template inside the folder.
        """
        source, filename, uptodate = super().get_source(environment, template)
        if not Path(filename).resolve().is_relative_to(self._folder):
            raise TemplateNotFound(template)
        return source, filename, uptodate


def make_environment(
    template_dirs: Sequence[Path],
    words: Mapping[str, Any],
    *,
    filters: Mapping[str, Callable[..., Any]] | None = None,
    globals: Mapping[str, Any] | None = None,
) -> Environment:
    """Return the environment of page templates.

    Args:
        template_dirs: Folders of templates, the office's before the packaged one, which is last.
        words: The text catalogue, ``words["results.meets"]`` in a template.
        filters: Further filters, such as those that write numbers, days and units.
        globals: Further names every template sees.
    """
    folders = [_FolderLoader(folder) for folder in template_dirs]
    loaders: list[BaseLoader] = [PrefixLoader({PACKAGED_PREFIX: folders[-1]}, delimiter=":"), *folders]
    environment = _Pages(
        loader=ChoiceLoader(loaders),
        undefined=StrictUndefined,
        autoescape=True,
        finalize=_printed,
        trim_blocks=True,
        lstrip_blocks=True,
        extensions=["jinja2.ext.i18n"],
        bytecode_cache=_bytecode,
        optimized=False,  # a value worked out while compiling would hold one language in shared bytecode
        auto_reload=True,
    )
    own: dict[str, Callable[..., Any]] = {
        "said": said,
        "said_lines": said_lines,
        "ref": ref,
        "escape": said,
        "e": said,
    }
    own |= {"join": _join, "replace": _replace}
    kept = {name: environment.filters[name] for name in _KEPT_FILTERS}
    environment.filters = {**kept, **own, **(filters or {})}
    seen = {name: environment.globals[name] for name in _KEPT_GLOBALS}
    environment.globals.clear()
    environment.globals.update({**seen, "words": words, **(globals or {})})
    environment.globals.update(gettext=_translated, ngettext=_translated_number)
    environment.newstyle_gettext = True  # type: ignore[attr-defined]
    environment.policies["ext.i18n.trimmed"] = True
    return environment


def render(environment: Environment, name: str, values: Mapping[str, Any]) -> str:
    """Return a template filled with values.

    Raises:
        Refused: The template is missing or bad (``template-bad``), with its file and line.
    """
    try:
        return environment.get_template(name).render(values)
    except (TemplateError, *_TEMPLATE_MISTAKES) as error:
        if not isinstance(error, TemplateError) and _raised_by_us(error):
            raise
        raise Refused((template_problem(error, environment, name),)) from error


def template_problem(error: Exception, environment: Environment, name: str) -> Problem:
    """Return the problem of a bad template, at the last place in a template that the error passed.

    Args:
        error: What rendering raised.
        environment: Where it was rendered; its folders tell where a missing template was looked for.
        name: The template that was asked for.
    """
    why = f"{type(error).__name__}: {error}"
    if isinstance(error, TemplateSyntaxError) and error.filename:
        return Problem("template-bad", Path(error.filename), error.lineno, found=name, values={"why": why})
    frames = traceback.extract_tb(error.__traceback__)
    places = [frame for frame in frames if frame.filename.endswith(TEMPLATE_ENDING)]
    if places:
        line = places[-1].lineno or 1
        return Problem("template-bad", Path(places[-1].filename), line, found=name, values={"why": why})
    return Problem("template-bad", _folder(environment) / name, found=name, values={"why": why})


@pass_eval_context
def _printed(context: EvalContext, value: Any) -> Markup:
    """Escape whatever a template prints.

    It asks for the context so that Jinja prints no constant while compiling: compiled templates are shared
    between languages.
    """
    return said(value)


@pass_environment
def _join(environment: Environment, value: Any, between: Any = "", attribute: str | None = None) -> str:
    """Join the items of a list, escaping those that are not markup when some are."""
    if attribute is not None:
        value = [environment.getitem(item, attribute) for item in value]
    return glued(value, between)


def _replace(value: Any, old: str, new: str) -> str:
    """Replace a part of a text; markup is refused, since its letters are not those that were typed."""
    if isinstance(value, str) and not any(isinstance(part, Markup) for part in (value, old, new)):
        return value.replace(old, new)
    message = "only plain text takes replace"
    raise SecurityError(message)


def _translated(message: str, **values: Any) -> Markup:
    """Return a sentence of a template with its values put in; sentences are markup, values are not."""
    return Markup(message % {name: said(value) for name, value in values.items()})


def _translated_number(one: str, many: str, number: int, **values: Any) -> Markup:
    """Return the form of a sentence that fits a number."""
    return _translated(one if number == 1 else many, **{"num": number, **values})


def _raised_by_us(error: BaseException) -> bool:
    """Tell whether the innermost frame of an error lies in this program: then it is a fault of ours."""
    frames = traceback.extract_tb(error.__traceback__)
    return bool(frames) and Path(frames[-1].filename).resolve().is_relative_to(_ROOM)


def _folder(environment: Environment) -> Path:
    """Return the first folder templates are looked for in."""
    loaders = environment.loader.loaders if isinstance(environment.loader, ChoiceLoader) else ()
    folders = [Path(loader.searchpath[0]) for loader in loaders if isinstance(loader, FileSystemLoader)]
    return folders[0] if folders else Path()
