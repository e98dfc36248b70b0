"""Templates of an office and of the package: which is used, what it may do, how a bad one is reported."""

from pathlib import Path
from typing import Any

import pytest
from jinja2 import Environment
from markupsafe import Markup

from packet.problems import Problem, Refused
from packet.site.templating import make_environment, render
from packet.text import figure_number

TYPED = "<b>*_[x](y)"
ESCAPED = "&#60;b&#62;&#42;&#95;&#91;x&#93;&#40;y&#41;"


@pytest.fixture
def office(tmp_path: Path) -> Path:
    folder = tmp_path / "office"
    folder.mkdir()
    return folder


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    folder = tmp_path / "shipped"
    folder.mkdir()
    return folder


def rendered(source: str, folder: Path, **values: Any) -> str:
    (folder / "page.md.j2").write_text(source)
    return render(make_environment([folder], {}), "page.md.j2", values)


def refused(environment: Environment, name: str, **values: Any) -> Problem:
    with pytest.raises(Refused) as caught:
        render(environment, name, values)
    (problem,) = caught.value.problems
    assert problem.code == "template-bad"
    return problem


def test_the_office_comes_first_and_reaches_the_packaged_one(office: Path, shipped: Path) -> None:
    (shipped / "page.md.j2").write_text(
        "{% block a %}packaged{% endblock %}, {% block b %}rest{% endblock %}"
    )
    (shipped / "other.md.j2").write_text("packaged other")
    (office / "page.md.j2").write_text('{% extends "default:page.md.j2" %}{% block a %}ours{% endblock %}')
    environment = make_environment([office, shipped], {})
    assert render(environment, "page.md.j2", {}) == "ours, rest"
    assert render(environment, "default:page.md.j2", {}) == "packaged, rest"
    assert render(environment, "other.md.j2", {}) == "packaged other"


def test_nothing_outside_the_folders_is_reached(office: Path, shipped: Path, tmp_path: Path) -> None:
    (tmp_path / "secret.md.j2").write_text("secret")
    (office / "link.md.j2").symlink_to(tmp_path / "secret.md.j2")
    environment = make_environment([office, shipped], {})
    for name in ("../secret.md.j2", "link.md.j2", str(tmp_path / "secret.md.j2"), "default:../secret.md.j2"):
        assert refused(environment, name).found == name


def test_the_working_directory_is_not_searched(
    office: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "here.md.j2").write_text("here")
    monkeypatch.chdir(tmp_path)
    refused(make_environment([office], {}), "here.md.j2")


@pytest.mark.parametrize(
    ("source", "shown"),
    [
        ("{{ text }}", ESCAPED),
        ("{{ text | e }}", ESCAPED),
        ("{{ text | said }}", ESCAPED),
        ("{{ text | escape | string }}", ESCAPED),
        ("{{ text ~ '*' }}", f"{ESCAPED}&#42;"),
        ("{{ mark ~ text }}", f"<i>{ESCAPED}"),
        ("{{ text ~ mark ~ text }}", f"{ESCAPED}<i>{ESCAPED}"),
        ("{{ mark + text }}", f"<i>{ESCAPED}"),
        ("{{ text + mark }}", f"{ESCAPED}<i>"),
        ("{{ [mark, text] | join(', ') }}", f"<i>&#44;&#32;{ESCAPED}"),
        ("{{ [text, text] | join(mark) }}", f"{ESCAPED}<i>{ESCAPED}"),
        ("{{ [{'t': text}] | join(mark, attribute='t') }}", ESCAPED),
        ("{{ [text] | map('upper') | first | lower }}", ESCAPED),
        ("{% macro m(t) %}<i>{{ t }}</i>{% endmacro %}{{ m(text) }}", f"<i>{ESCAPED}</i>"),
        ("{% macro m() %}<i>{% endmacro %}{{ m() ~ text }}", f"<i>{ESCAPED}"),
        ("{% set x %}<i>{{ text }}{% endset %}{{ x ~ text }}", f"<i>{ESCAPED}{ESCAPED}"),
        ("{% set x = text %}{{ x }}", ESCAPED),
        ("{% trans t=text %}<i>{{ t }} 100%{% endtrans %}", f"<i>{ESCAPED} 100%"),
        ("{% trans n=2, t=text %}one{% pluralize %}{{ n }} {{ t }}{% endtrans %}", f"2 {ESCAPED}"),
        ("{% trans n=1, t=text %}one {{ t }}{% pluralize %}{{ n }}{% endtrans %}", f"one {ESCAPED}"),
        ("{% autoescape false %}{{ text }}{% endautoescape %}", ESCAPED),
        ("{% filter upper %}{{ text }}{% endfilter %}", ESCAPED.upper()),
        ("{{ text.replace('b', '<') }}", ESCAPED.replace("b", "&#60;")),
        ("{{ text | replace('b', '<') }}", ESCAPED.replace("b", "&#60;")),
        ("{{ '%s' % text }}", ESCAPED),
        ("{{ '{}'.format(text) }}", ESCAPED),
        ("{{ '<i>' }}", "&#60;i&#62;"),
        ("{{ 12 }}", "12"),
        ("{{ mark }}", "<i>"),
    ],
)  # fmt: skip
def test_whatever_is_printed_is_escaped_once_unless_it_is_markup(
    office: Path, source: str, shown: str
) -> None:
    assert rendered(source, office, text=TYPED, mark=Markup("<i>")) == shown


@pytest.mark.parametrize(
    "source",
    [
        "{{ text | safe }}",
        "{{ text | urlize }}",
        "{{ {'a': text} | xmlattr }}",
        "{{ text | tojson }}",
        "{{ mark.join([text]) }}",
        "{{ mark.format(text) }}",
        "{{ mark % text }}",
        "{{ '%s' % mark }}",
        "{{ mark | replace('i', text) }}",
        "{{ text | replace('b', mark) }}",
        "{{ _(text) }}",
        "{{ none }}",
        "{{ 1.5 }}",
        "{{ missing }}",
        "{{ text.missing }}",
        "{{ ''.__class__.__mro__ }}",
        "{{ [].append(1) }}",
        "{{ lipsum() }}",
        "{{ range(10**9) }}",
        "{{ 1 / 0 }}",
        "{{ 1 + 'a' }}",
        "{% include 'nowhere.j2' %}",
        "{% include 'page.md.j2' %}",
    ],
)
def test_what_a_template_may_not_do_is_a_problem_at_its_line(office: Path, source: str) -> None:
    (office / "page.md.j2").write_text(f"first line\n\n{source}\n")
    problem = refused(make_environment([office], {}), "page.md.j2", text=TYPED, mark=Markup("<i>"))
    assert (problem.file, problem.line) == (office / "page.md.j2", 3)
    assert problem.values["why"]


def test_a_bad_part_is_named_not_the_page_that_includes_it(office: Path) -> None:
    (office / "page.md.j2").write_text('{% include "part.md.j2" %}')
    (office / "part.md.j2").write_text("one\n{{ job.missing }}\n")
    environment = make_environment([office], {})
    problem = refused(environment, "page.md.j2", job={})
    assert (problem.file.name, problem.line) == ("part.md.j2", 2)
    assert "missing" in problem.values["why"]
    (office / "part.md.j2").write_text("one\n\n{% if %}\n")
    assert (refused(environment, "page.md.j2").file.name, refused(environment, "page.md.j2").line) == (
        "part.md.j2",
        3,
    )


def test_a_missing_page_is_looked_for_in_the_office_first(office: Path, shipped: Path) -> None:
    problem = refused(make_environment([office, shipped], {}), "pages/none.md.j2")
    assert problem.file == office / "pages" / "none.md.j2"


def test_a_template_that_is_no_text_is_a_problem(office: Path) -> None:
    (office / "page.md.j2").write_bytes(b"\xff\xfe\x00")
    refused(make_environment([office], {}), "page.md.j2")


def test_a_fault_of_our_own_filter_is_not_blamed_on_the_template(office: Path) -> None:
    (office / "page.md.j2").write_text("{{ {} | number }}")
    with pytest.raises(KeyError):
        render(make_environment([office], {}, filters={"number": figure_number}), "page.md.j2", {})


def test_compiled_templates_are_shared_but_never_their_words(office: Path) -> None:
    (office / "page.md.j2").write_text(
        "{% set x = 3 | feet %}{{ x }} {{ 4 | feet }} {{ words['roof'] }} {{ 'a' ~ 5 | feet }}"
    )
    english = make_environment([office], {"roof": "roof"}, filters={"feet": lambda n: f"{n} feet"})
    other = make_environment([office], {"roof": "Dach"}, filters={"feet": lambda n: f"{n} Fuss"})
    assert render(english, "page.md.j2", {}) == "3 feet 4 feet roof a5 feet"
    assert render(other, "page.md.j2", {}) == "3 Fuss 4 Fuss Dach a5 Fuss"


def test_an_edited_template_is_used_at_once(office: Path) -> None:
    assert rendered("one", office) == "one"
    assert rendered("two", office) == "two"


def test_a_missing_word_is_a_problem(office: Path) -> None:
    (office / "page.md.j2").write_text("{{ words['no.such'] }}")
    assert "no.such" in refused(make_environment([office], {}), "page.md.j2").values["why"]
