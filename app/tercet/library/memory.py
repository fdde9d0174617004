"""How a worker's memory is handed out: what it needs no more goes back to the system."""

from __future__ import annotations

import contextlib
import ctypes
import sys

#: From this size on memory is taken from the system and given back to it piece by piece. [bytes]
_LARGE_BYTES = 2**20
#: The C library's number (malloc.h) of the parameter that says so.
_MMAP_THRESHOLD = -3


def give_back() -> None:
    """Let this process give back large arrays when they are done with.

    The C library of Linux keeps for itself what is as large as anything freed before, in the end
    as much again as a recording of days takes.
    """
    if sys.platform == "linux":
        with contextlib.suppress(AttributeError, OSError):
            ctypes.CDLL(None).mallopt(_MMAP_THRESHOLD, _LARGE_BYTES)
