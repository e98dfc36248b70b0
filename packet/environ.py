"""Environment variables of this process, set for a while: libraries that take no other word are told so."""

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager


@contextmanager
def environment(wanted: Mapping[str, str]) -> Iterator[None]:
    """Set environment variables inside the block, and put back what stood there before."""
    before = {name: os.environ.get(name) for name in wanted}
    os.environ.update(wanted)
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                os.environ.pop(name, None)
            else:
                os.environ[name] = value
