"""Words that hurt: scalars as a tired or hostile hand types them, and measures grown from a grammar."""

from random import Random

#: Values put in the place of a typed one, as they stand in the file.
TOKENS = (
    "", "~", "null", "''", '""', "true", "no", "0", "-0", "-1", "1e999999", "1e-999999", ".nan", "-.inf", "0x1F", "0o7",
    "010", "1_000", "9" * 30, "9" * 400, "0." + "0" * 40 + "1", "1/0", "0/0", "1/3", "6:12", "6/12", "999999:12",
    "6:12:12", "#30", '"#30"', "8d", "10 penny", "2-3/8 x 0.113", "0.113 x 2-3/8", "12' 6\"", "12'6", "12 ft 13 in", "16 oc",
    "24 in oc", "-12 ft", "- 12 ft", "1000 ft", "1001 ft", "1/64 in", "1/128 in", "130 mph", "130", "USD 4860.00",
    "USD -1", "EUR 1,2", "usd 5", "2026-03-16", "16-03-2026", "03/16/2026", "2026-02-30", "0000-00-00", "9999-12-31",
    "2026-03-16T08:12:30", "2026-03-16T25:00", "-04:00", "+14:59", "-15:00", "America/New_York", "../../etc/passwd",
    "America", "posixrules", "Etc/GMT+12", "patch", "closed", "open", "S1", "s1", "S 1", "A" * 25, "[]", "{}", "[[]]", "{a: b}", "[a, b]",
    "[,]", "{a}", "*x", "&x y", "!!python/object:os.system x", "!!binary aGk=", "!x", "<<: {a: b}", "? a", "? [a, b]",
    "|\n  two\n  lines", ">-\n  folded\n", "|9\n x", "%x", "@x", "`x`", "'left open", '"left open', '"\\x"', '"\\u202e"', '"\\0"',
    '"\\ud800"', "a: b", "a : b : c", "- a", "a #b", "a # b", "---", "...", "photos/P01.jpg", "photos/../P01.jpg", "/etc/hostname",
    "photos\\P01.jpg", "C:/P01.jpg", "photos/", "photos", ".", "photos/" + "x" * 300 + ".jpg", "<b>x</b>", "{{ 7 * 7 }}", "{% raw %}",
    "</script><script>", "[x](y.md)", "**x**", "&amp;", "é", "屋根", "e\u0301" * 50, "\U0001f3e0", "\u00bd in", "2\u2032 6\u2033",
    "\u0661\u0662 ft", "\uff11\uff12 ft", "\u00a06 in", "\ufdfd" * 60, "x" * 199, "x" * 201, "x" * 5000, "x " * 20000, "$(id)", "%s%n", "{0.__class__}",
)  # fmt: skip

#: Characters slipped in anywhere: controls, marks that turn text, breaks that only some programs know, halves.
MARKS = (
    "\0", "\x07", "\x1b[31m", "\x7f", "\x85", "\u00a0", "\u00ad", "\u061c", "\u200b", "\u200d", "\u2028", "\u2029", "\u202e", "\u2066",
    "\ufeff", "\ufffd", "\uffff", "\U000e0041", "\U0010ffff", "\t", "\r", "\r\n", "\n", "\n\n", ":", ": ", "-", "- ", "#", " #", "[", "]", "{", "}",
    ",", "&", "*", "!", "|", ">", "'", '"', "%", "@", "`", "?", "\\", "<<", "---\n", "...\n", "%YAML 1.1\n---\n", "%TAG ! x\n",
)  # fmt: skip

_DIGITS = (
    "0",
    "1",
    "2",
    "6",
    "12",
    "13",
    "16",
    "24",
    "120",
    "1,200",
    "12,00",
    "0.131",
    ".5",
    "5.",
    "3/8",
    "15/32",
    "1/0",
    "6-1/2",
)
_DIGITS += (
    "6 1/2",
    "6\u00bd",
    "\u00bc",
    "\u2154",
    "6\u20111/2",
    "000012",
    "999999999",
    "1e3",
    "\u0663",
    "1_0",
    "0x10",
    "٫5",
    "1/9999",
)
_UNITS = (
    "",
    "in",
    "in.",
    '"',
    "\u2033",
    "''",
    "inch",
    "inches",
    "ft",
    "ft.",
    "'",
    "\u2032",
    "feet",
    "foot",
    "oc",
    "o.c.",
    "on center",
)
_UNITS += (
    "mph",
    "mi/h",
    "kph",
    "sq ft",
    "sq. ft.",
    "sf",
    "ft2",
    "ft\u00b2",
    "square",
    "squares",
    "sq",
    "d",
    "penny",
    ":12",
    "/12",
)
_UNITS += (" on 12", ":10", "mm", "m", "yd", "%", "deg", "\u00b0")
_JOINS = (
    "",
    " ",
    "  ",
    "-",
    " - ",
    " x ",
    "x",
    "\u00d7",
    " by ",
    "/",
    ":",
    ",",
    "+",
    "\u00a0",
    "\t",
    "\u2013",
    "\u2212",
)


def measure(dice: Random) -> str:
    """Return a text that looks like a measure, right or wrong."""
    parts = []
    for _ in range(dice.choice((1, 1, 1, 2, 2, 3, 5))):
        gap = dice.choice(("", " ", " ", "-", "\u2009"))
        parts.append(f"{dice.choice(_DIGITS)}{gap}{dice.choice(_UNITS)}")
    text = dice.choice(_JOINS).join(parts)
    if dice.random() < 0.1:
        text = dice.choice(("-", "+", "- ", "\u2212", "~", "about ", "(")) + text
    return spoiled(text, dice) if dice.random() < 0.2 else text


def spoiled(text: str, dice: Random) -> str:
    """Return a text with a slip of the finger: a letter lost, doubled, swapped, or a mark put in."""
    if not text:
        return dice.choice(MARKS)
    at = dice.randrange(len(text))
    here, rest = text[:at], text[at:]
    return dice.choice(
        (
            here + rest[1:],
            here + rest[0] + rest,
            here + rest[1:2] + rest[0] + rest[2:],
            here + dice.choice(MARKS) + rest,
            here + rest[0].swapcase() + rest[1:],
            text * 3,
        )
    )
