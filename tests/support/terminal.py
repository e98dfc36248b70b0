"""Somebody at a terminal who types answers, one a question."""

import io
import sys

import pytest


class Typist(io.StringIO):
    """Standard input as a terminal; when the answers are used up, it is closed."""

    def isatty(self) -> bool:
        return True


def types(monkeypatch: pytest.MonkeyPatch, *answers: str) -> None:
    """Answer the next questions with these words; an empty one is Enter alone."""
    monkeypatch.setattr(sys, "stdin", Typist("".join(f"{answer}\n" for answer in answers)))


def nobody(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let nobody sit at the terminal, as in a script."""
    monkeypatch.setattr(sys, "stdin", io.StringIO())
