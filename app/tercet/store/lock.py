"""A lock file held by the operating system, so that it never outlives its process."""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from pathlib import Path

from tercet.language import mark, tr
from tercet.store.errors import StoreBusy, StoreError


class FileLock:
    """An exclusive lock on a file, let go when closed or when the process dies."""

    def __init__(self, path: Path) -> None:
        self._path = path
        try:
            self._fd = os.open(path, os.O_RDWR | os.O_CREAT, 0o600)
        except OSError as error:
            raise StoreError(
                tr(
                    "The store cannot be written: {error} ({path}).",
                    error=error.strerror,
                    path=path.parent,
                )
            ) from error
        try:
            _lock(self._fd)
        except OSError as error:
            holder = os.read(self._fd, 20).decode("ascii", "replace").strip()
            os.close(self._fd)
            open_in = mark("This store is already open in another window: {path}")
            if holder.isdigit():
                open_in = mark(
                    "This store is already open in another window (process {number}): {path}"
                )
            raise StoreBusy(tr(open_in, number=holder, path=path.parent)) from error
        # The number is only told to a second opener: a full disk must not keep the store shut.
        with suppress(OSError):
            os.ftruncate(self._fd, 0)
            os.write(self._fd, str(os.getpid()).encode())

    def close(self) -> None:
        """Let go; once is enough, more does no harm."""
        fd, self._fd = self._fd, -1
        if fd < 0:
            return
        with suppress(OSError):
            os.ftruncate(fd, 0)
        os.close(fd)


if sys.platform == "win32":
    import msvcrt

    def _lock(fd: int) -> None:
        # One byte far past the end, so that the process number in front stays readable.
        os.lseek(fd, 1 << 20, os.SEEK_SET)
        msvcrt.locking(fd, msvcrt.LK_NBLCK, 1)
        os.lseek(fd, 0, os.SEEK_SET)

else:
    import fcntl

    def _lock(fd: int) -> None:
        fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
