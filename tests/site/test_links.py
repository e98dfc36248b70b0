"""Every kind of address in a built site is looked at, and only faults are reported."""

from pathlib import Path

import pytest

from packet.site.links import broken_links


@pytest.fixture
def site(tmp_path: Path) -> Path:
    folder = tmp_path / "a site"
    (folder / "photos").mkdir(parents=True)
    (folder / "other.html").write_text('<h1 id="top-of-it">x</h1><a name="old"></a>')
    (folder / "photos" / "P 1.jpg").write_bytes(b"")
    (folder / "plan.svg").write_text('<svg id="s"><g id="valley"/><use href="#valley"/></svg>')
    return folder


def faults(site: Path, body: str, name: str = "index.html") -> list[str]:
    (site / name).write_text(body)
    return [line.removeprefix(f"{name}:") for line in broken_links(site)]


@pytest.mark.parametrize(
    "body",
    [
        '<a href="other.html">x</a>',
        '<a href="other.html#top-of-it">x</a>',
        '<a href="other.html#old">x</a>',
        '<a href="./photos/P%201.jpg?x=1">x</a>',
        '<a href="#here" id="here">x</a>',
        '<a href="#top">x</a>',
        '<a href="https://town.example/permits">x</a>',
        '<a href="mailto:a@b.example">x</a><a href="tel:+18435550142">x</a>',
        '<img src="photos/P 1.jpg" srcset="photos/P%201.jpg 1x, photos/P%201.jpg 2x">',
        '<img src="data:image/png;base64,AAAA">',
        '<svg><use href="plan.svg#valley"/><rect id="r" fill="url(#r)"/></svg>',
        "<style>/* url(nowhere.png) */ p { background: url('plan.svg') }</style>",
        '<p style="background:url(&quot;plan.svg&quot;)">url(nowhere) in a text is no address</p>',
        "<pre>&lt;img src=nowhere.png&gt;</pre>",
        "<script>const a = '<img src=\"nowhere.png\">';</script>",
    ],
)
def test_a_good_address_is_no_fault(site: Path, body: str) -> None:
    assert faults(site, body) == []


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<p>\n<a href="nowhere.html">x</a>', "2: 'nowhere.html' (a href): no such file"),
        ('<a href="other.html#nothing">x</a>', "1: 'other.html#nothing' (a href): no such anchor"),
        ('<a href="#nothing">x</a>', "1: '#nothing' (a href): no such anchor"),
        ('<input name="n"><a href="#n">x</a>', "1: '#n' (a href): no such anchor"),
        ('<a href="Other.html">x</a>', "1: 'Other.html' (a href): no such file"),
        ('<a href="photos/">x</a>', "1: 'photos/' (a href): no such file"),
        ('<a href=".">x</a>', "1: '.' (a href): no such file"),
        ('<a href="/other.html">x</a>', "1: '/other.html' (a href): needs a server"),
        ('<a href="../a site/other.html">x</a>', "1: '../a site/other.html' (a href): leaves the site"),
        ('<a href="">x</a>', "1: '' (a href): empty"),
        ('<a href="javascript:alert(1)">x</a>', "1: 'javascript:alert(1)' (a href): no address to follow"),
        (
            '<a href="java&#10;script:alert(1)">x</a>',
            "1: 'java\\nscript:alert(1)' (a href): no address to follow",
        ),
        ('<a href="file:///etc/passwd">x</a>', "1: 'file:///etc/passwd' (a href): no address to follow"),
        ('<a href="//cdn.example/x">x</a>', "1: '//cdn.example/x' (a href): no address to follow"),
        ('<a href="http://[x">x</a>', "1: 'http://[x' (a href): not an address"),
        ('<img src="nowhere.png">', "1: 'nowhere.png' (img src): no such file"),
        ('<img srcset="plan.svg 1x, nowhere.png 2x">', "1: 'nowhere.png' (img srcset): no such file"),
        ('<img src="https://a.example/x.png">', "1: 'https://a.example/x.png' (img src): asks a network"),
        ('<script src="//a.example/x.js"></script>', "1: '//a.example/x.js' (script src): asks a network"),
        (
            '<link rel="preconnect" href="https://a.example">',
            "1: 'https://a.example' (link href): asks a network",
        ),
        ('<iframe src="https://a.example"></iframe>', "1: 'https://a.example' (iframe src): asks a network"),
        ('<video poster="nowhere.jpg"></video>', "1: 'nowhere.jpg' (video poster): no such file"),
        ('<object data="nowhere.pdf"></object>', "1: 'nowhere.pdf' (object data): no such file"),
        ('<svg><image xlink:href="nowhere.png"/></svg>', "1: 'nowhere.png' (image xlink:href): no such file"),
        ('<svg><use href="plan.svg#hip"/></svg>', "1: 'plan.svg#hip' (use href): no such anchor"),
        ('<svg><rect fill="url(#none)"/></svg>', "1: '#none' (rect fill): no such anchor"),
        ("<style>\n@import 'nowhere.css';</style>", "1: 'nowhere.css' (style): no such file"),
        ('<p style="background:url(nowhere.png)">', "1: 'nowhere.png' (p style): no such file"),
        (
            '<meta http-equiv="refresh" content="0; url=https://a.example">',
            "1: 'https://a.example' (meta refresh): asks a network",
        ),
    ],
)
def test_a_bad_address_is_named_with_place_and_fault(site: Path, body: str, fault: str) -> None:
    assert faults(site, body) == [fault]


def test_style_sheets_and_drawings_are_read_too(site: Path) -> None:
    fonts = "@font-face { src: url(nowhere.woff2) url(https://a.example/f.woff2) }"
    css = f"/* a\nb */\n{fonts}\np {{ filter: url(#in-the-page) }}"
    assert faults(site, css, "all.css") == [
        "3: 'nowhere.woff2' (style): no such file",
        "3: 'https://a.example/f.woff2' (style): asks a network",
    ]
    (site / "all.css").unlink()
    assert faults(site, '<svg><image href="nowhere.png"/></svg>', "roof.svg") == [
        "1: 'nowhere.png' (image href): no such file"
    ]


def test_addresses_are_read_from_the_folder_of_their_page(site: Path) -> None:
    assert faults(site, '<a href="../other.html">x</a><a href="other.html">y</a>', "photos/page.html") == [
        "1: 'other.html' (a href): no such file"
    ]
