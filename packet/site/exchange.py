"""Two folders change places in one step where the system can do it."""

import ctypes
import errno
import os
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

_AT_FDCWD = -100
_RENAME_EXCHANGE = 2

#: What a system or file system without the call answers.
_NOT_OFFERED = frozenset({errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP})


def exchange(one: Path, other: Path) -> bool:
    """Let two folders of one file system change places, with no moment in between.

    Returns:
        False when the system can't: nothing has changed then.

    Raises:
        OSError: A folder is missing or may not be moved.
    """
    rename = _renameat2()
    if rename is None:
        return False
    if rename(_AT_FDCWD, os.fsencode(one), _AT_FDCWD, os.fsencode(other), _RENAME_EXCHANGE) == 0:
        return True
    code = ctypes.get_errno()
    if code in _NOT_OFFERED:
        return False
    raise OSError(code, os.strerror(code), str(one), None, str(other))


@cache
def _renameat2() -> Callable[..., int] | None:
    """Return the C library's ``renameat2``, or None where there is none."""
    if not sys.platform.startswith("linux"):
        return None
    function = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if function is None:
        return None
    function.argtypes = (ctypes.c_int, ctypes.c_char_p, ctypes.c_int, ctypes.c_char_p, ctypes.c_uint)
    function.restype = ctypes.c_int
    found: Callable[..., int] = function
    return found
