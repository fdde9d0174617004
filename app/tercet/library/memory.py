"""How a worker's memory is handed out: what it needs no more goes back to the system."""

from __future__ import annotations

import contextlib
import ctypes
import sys

#: From this size on memory is taken from the system and given back to it piece by piece; of
#: smaller pieces so much is kept for the next, since every page that comes anew takes time. [bytes]
_LARGE_BYTES, _SPARE_BYTES = 2**20, 8 * 2**20
#: The C library's numbers (malloc.h) of the parameters that say so.
_MMAP_THRESHOLD, _TRIM_THRESHOLD = -3, -1


def give_back() -> None:
    """Let this process give back large arrays when they are done with.

    The C library of Linux keeps for itself what is as large as anything freed before, in the end
    as much again as a recording of days takes.
    """
    if sys.platform == "linux":
        with contextlib.suppress(AttributeError, OSError):
            allocator = ctypes.CDLL(None)
            allocator.mallopt(_MMAP_THRESHOLD, _LARGE_BYTES)
            allocator.mallopt(_TRIM_THRESHOLD, _SPARE_BYTES)
