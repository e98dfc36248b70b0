"""Who may read a packet: one copy is built for each of these readers."""

from typing import Literal, get_args

Reader = Literal["outside", "office"]

#: One copy of the packet is built for each of these.
READERS: tuple[Reader, ...] = get_args(Reader)

OFFICE: tuple[Reader, ...] = ("office",)
EVERYONE: tuple[Reader, ...] = READERS
