"""Templates of an office see values and words: no way known leads from them to Python, to files or to the machine."""

from pathlib import Path
from typing import Any

import pytest
from markupsafe import Markup

from packet.problems import Refused
from packet.site.filters import make_filters
from packet.site.templating import make_environment, render
from packet.text import load_words
from packet.workspace import packaged

#: What would be printed by a template that got out.
SECRET = "squirrel-7731"

#: Ways from a value to its class, to everything that is loaded, and from there to the machine.
CLIMBS = (
    "''.__class__", "''.__class__.__mro__", "''['__class__']", "''['__cla' ~ 'ss__']", "''['__cla' + 'ss__']", "().__class__.__base__.__subclasses__()",
    "{}.__class__.__bases__[0].__subclasses__()", "[].__init__.__globals__", "''.format.__globals__", "''.join.__self__",
    "words.__class__", "words.__init__.__globals__", "words['__class__']", "copy.__class__", "copy.items.__self__.__class__", "copy['__class__']",
    "text.__init__", "text.encode.__self__.__class__", "mark.__class__", "mark.__html__", "mark.__class__.__init__.__globals__",
    "cycler.__init__.__globals__", "cycler.__init__.__globals__.os.popen('id').read()", "joiner.__init__.__globals__", "namespace.__init__.__globals__",
    "dict.__base__.__subclasses__()", "range.__class__", "dict.fromkeys.__self__", "namespace(a=1).__class__", "(namespace(a=1))['__class__']",
    "self.__init__.__globals__", "self._TemplateReference__context", "self.__class__", "loop", "caller", "varargs.__class__", "super()", "super.__class__",
    "gettext.__globals__", "ngettext.__code__", "_.__globals__", "(gettext).__closure__", "lipsum.__globals__", "lipsum.__globals__['os']", "url_for.__globals__",
    "config.items()", "request.application", "get_flashed_messages.__globals__", "g.pop", "environment", "context", "namespace.mro()", "cycler('a').next.__func__",
    "(1).__class__", "(1).real.__class__", "none.__class__", "true.__class__", "missing.__class__", "missing._fail_with_undefined_error", "(copy.job).__dict__",
)  # fmt: skip

#: Ways through formatting of text, through filters and through tests.
DETOURS = (
    "'{0.__class__}'.format(text)", "'{0.__class__.__mro__}'.format(copy)", "'{x.__init__.__globals__}'.format(x=cycler)", "'{0[__class__]}'.format(copy)",
    "'{.__class__}'.format(text)", "'{0.__class__}'.format_map({'0': text})", "'{a.__class__}'.format_map(dict(a=text))", "'{!r:{0.__class__}}'.format(text)",
    "mark.format(text)", "mark.format_map({})", "('{0.__class__}' | string).format(text)", "'%c' % text", "'%d' % text",
    "text | attr('__class__')", "text | attr('upper')", "copy | attr('items')", "[text] | map('attr', '__class__') | list", "[text] | map(attribute='__class__') | first",
    "[text] | map(attribute='__class__.__mro__') | list", "[cycler] | map(attribute='__init__.__globals__') | first", "[text] | sort(attribute='__class__')",
    "[text] | groupby('__class__')", "[text] | unique(attribute='__class__') | list", "[text] | selectattr('__class__') | list", "[text] | rejectattr('__class__.x') | list",
    "[text] | join(attribute='__class__')", "[text] | map('__class__') | list", "[text] | map('attr') | list", "[text] | select('__class__') | list",
    "text | pprint", "text | tojson", "copy | xmlattr", "text | safe", "text | striptags", "text | format", "'%s' | format(mark)", "text | filesizeformat", "[1] | random",
    "text | wordwrap(10)", "text | center(10)", "[1] | sum(start=copy)", "[text] | max", "text | forceescape", "text | truncate", "text | urlize", "text | wordcount",
    "text | number.__globals__", "range(10**7)", "'a' * 10**11", "(1, 2) * 10**10", "2 ** 10 ** 8", "10 ** 400 * 1.0", "dict(copy).pop('x')", "copy.update({'a': 1})",
    "copy.clear()", "copy.setdefault('a', 1)", "[].append(1)", "words._x", "[1, 2].sort()", "copy.pop('job')",
)  # fmt: skip

#: Ways to other files, as whole lines of a template.
FILES = (
    "{% include '../../etc/passwd' %}", "{% include '/etc/passwd' %}", "{% include 'file:///etc/passwd' %}", "{% include '../secret.md.j2' %}",
    "{% include 'pages/../../secret.md.j2' %}", "{% include 'default:../secret.md.j2' %}", "{% include 'default:/etc/passwd' %}", "{% include 'default:default:page.md.j2' %}",
    "{% include 'link.md.j2' %}", "{% include 'linked/secret.md.j2' %}", "{% include ['../secret.md.j2', '/etc/passwd'] %}", "{% include '..\\\\secret.md.j2' %}",
    "{% import '../secret.md.j2' as s %}{{ s }}", "{% from '../secret.md.j2' import x %}{{ x }}", "{% extends '../secret.md.j2' %}", "{% extends '/etc/passwd' %}",
    "{% import 'os' as os %}{{ os }}", "{% from 'os' import popen %}", "{% include text %}", "{% include copy %}", "{% extends none %}",
    "{% do copy.clear() %}", "{% debug %}", "{% call 1 %}{% endcall %}", "{% set copy['job'] = 1 %}", "{% python %}x{% endpython %}",
    "{% for x in x %}{{ loop.__class__ }}{% endfor %}", "{% for x in [1] %}{{ loop.__init__.__globals__ }}{% endfor %}", "{% for x in [1] %}{{ loop._iterator }}{% endfor %}",
    "{% macro m() %}{{ caller.__globals__ }}{% endmacro %}{% call m() %}{% endcall %}", "{% macro m() %}x{% endmacro %}{{ m.__class__ }}", "{% macro m() %}x{% endmacro %}{{ m._func.__globals__ }}",
    "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "{% set n = namespace() %}{% set n.__class__ = 1 %}{{ n.__class__ }}", "{% set n = namespace(a=1) %}{{ n._Namespace__attrs }}",
    "{% block x %}{{ self.x.__class__ }}{% endblock %}", "{% filter attr('__class__') %}x{% endfilter %}", "{% trans x=text.__class__ %}{{ x }}{% endtrans %}", "{% trans %}{{ copy.__class__ }}{% endtrans %}",
)  # fmt: skip


@pytest.fixture
def office(tmp_path: Path) -> Path:
    """A folder of templates with a secret beside it, and links that lead to the secret."""
    folder = tmp_path / "templates"
    folder.mkdir()
    (tmp_path / "secret.md.j2").write_text(f"{SECRET}{{% macro x() %}}{SECRET}{{% endmacro %}}")
    (folder / "link.md.j2").symlink_to(tmp_path / "secret.md.j2")
    (folder / "linked").symlink_to(tmp_path)
    return folder


def attempt(office: Path, line: str) -> tuple[str, Any]:
    """Fill in a page whose fourth line tries something; returns what it printed and its problem."""
    (office / "page.md.j2").write_text(f"One line.\n\n{{# another #}}\n{line}\n")
    words = load_words((packaged("shared"),))
    environment = make_environment([office, packaged("templates")], words, filters=make_filters(words))
    values = {"copy": {"job": {"number": "26-041"}}, "text": "typed", "mark": Markup("<i>")}
    try:
        return render(environment, "page.md.j2", values), None
    except Refused as refused:
        (problem,) = refused.problems
        return "", problem


@pytest.mark.parametrize("line", [*(f"{{{{ {way} }}}}" for way in (*CLIMBS, *DETOURS)), *FILES])
def test_a_way_out_is_a_problem_at_its_line(office: Path, line: str) -> None:
    printed, problem = attempt(office, line)
    assert printed == ""
    assert (problem.code, problem.file.name, problem.line) == ("template-bad", "page.md.j2", 4)
    assert SECRET not in problem.values["why"]
    assert "root:" not in problem.values["why"]


@pytest.mark.parametrize("line", ["{% set x.y = 1 %}", "{% set copy.job = 1 %}", "{% set words.x = 1 %}"])
def test_nothing_that_is_handed_over_can_be_changed(office: Path, line: str) -> None:
    """Jinja tells no line here."""
    printed, problem = attempt(office, line)
    assert (printed, problem.code, problem.file.name) == ("", "template-bad", "page.md.j2")


@pytest.mark.parametrize("way", CLIMBS)
def test_a_condition_leads_no_further(office: Path, way: str) -> None:
    """A name that leads nowhere may be asked for (``is defined``), and then it is not there."""
    printed, problem = attempt(office, f"{{% if ({way}) is defined %}}reached{{% endif %}}")
    assert problem or "reached" not in printed or way in ("loop", "caller")
    printed, problem = attempt(office, f"{{% set x = {way} %}}{{{{ x }}}}")
    assert problem


def test_a_page_of_the_office_that_tries_to_get_out_stops_the_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from packet.cli.main import status
    from tests.conftest import SMALLEST
    from tests.support.office import NUMBER, Office

    made = Office(tmp_path / "office", SMALLEST)
    monkeypatch.chdir(made.root)
    for line in ("{{ cycler.__init__.__globals__ }}", "{% include '../../../../../../etc/passwd' %}"):
        made.file(
            "templates/pages/scope.md.j2",
            f'{{% extends "default:pages/scope.md.j2" %}}\n{{% block body %}}\n{line}\n{{% endblock %}}\n',
        )
        assert status(["build"]) == 2
        error = capsys.readouterr().err
        assert "templates/pages/scope.md.j2:3:1: error[template-bad]" in error
        assert "root:" not in error
        assert not (made.root / "out" / NUMBER).exists()
