"""Environment variables set for a while are put back as they were."""

import os

import pytest

from packet.environ import environment


def test_what_stood_there_comes_back_and_what_did_not_goes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PACKET_KEPT", "before")
    monkeypatch.delenv("PACKET_NEW", raising=False)

    def inside() -> None:
        with environment({"PACKET_KEPT": "inside", "PACKET_NEW": "1"}):
            assert (os.environ["PACKET_KEPT"], os.environ["PACKET_NEW"]) == ("inside", "1")
            raise KeyError

    with pytest.raises(KeyError):
        inside()
    assert os.environ["PACKET_KEPT"] == "before"
    assert "PACKET_NEW" not in os.environ
