"""The policy of a page: scripts of the frame are allowed by their hash, scripts of the content never are."""

from collections.abc import Callable
from pathlib import Path

from packet.site.engine import Page
from packet.site.policy import PLACEHOLDER, with_hashes

POLICY = f'<meta content="script-src {PLACEHOLDER}">'
#: Worked out with ``printf 'run()' | openssl dgst -sha256 -binary | base64``.
RUN = "'sha256-AvyuiL0SD1mVY3NNxR+V2uo+lhk6RMFrytWmRt6CrJQ='"


def test_a_script_of_the_frame_is_allowed_by_its_hash() -> None:
    page = f"{POLICY}<script>run()</script><main>words</main>"
    assert with_hashes(page, "words") == page.replace(PLACEHOLDER, RUN)


def test_a_script_is_named_once_and_one_from_a_file_not_at_all() -> None:
    page = f'{POLICY}<script>run()</script><script src="a.js"></script><script>run()</script>'
    assert with_hashes(page, "words").count("sha256-") == 1


def test_a_script_of_the_content_is_never_allowed() -> None:
    content = "<p>words</p><script>steal()</script>"
    made = with_hashes(f"{POLICY}<script>run()</script><main>{content}</main>", content)
    assert made.count("sha256-") == 1
    assert RUN in made


def test_data_in_a_page_is_no_script() -> None:
    assert "sha256" not in with_hashes(f'{POLICY}<script type="application/json">{{}}</script>', "")


def test_the_engine_fills_in_the_policy_of_a_theme(build: Callable[..., Path], look: Path) -> None:
    main = look / "theme" / "main.html"
    main.write_text(
        main.read_text().replace(
            "{% block site_meta %}",
            '{% block site_meta %}<meta name="p" content="{{ config.extra.inline_scripts }}">',
        )
    )
    body = "# Front\n\n<script>steal()</script>\n"
    with_script = (build(Page("index", "Front", body), files={}) / "index.html").read_text()
    without = (build(Page("index", "Front", "# Front\n"), files={}) / "index.html").read_text()
    policies = [text.partition('name="p" content="')[2].partition('"')[0] for text in (with_script, without)]
    assert policies[0] == policies[1]
    assert policies[0].count("'sha256-") >= 2, "the theme writes scripts of its own into every page"
    assert "steal()" in with_script
