"""Original files, kept byte for byte under their SHA-256."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO

from tercet.language import tr
from tercet.store.errors import StoreError

_PIECE = 2**20


def sha256(data: bytes) -> str:
    """Name of a content."""
    return hashlib.sha256(data).hexdigest()


class Originals:
    """A folder of contents; a file there is whole or absent."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise StoreError(
                tr(
                    "The folder of originals cannot be made: {error} ({folder}).",
                    error=error.strerror,
                    folder=folder,
                )
            ) from error

    def path(self, name: str) -> Path:
        """Where a content lies or would lie."""
        return self._folder / name[:2] / name

    def keep(self, name: str, data: bytes) -> None:
        """Keep a content; it is on the disk when this returns.

        Raises
        ------
        StoreError
            If the disk is full or cannot be written.
        """
        if not self.path(name).exists():
            self._write(name, iter((data,)))

    def keep_copy(self, name: str, stream: IO[bytes]) -> bool:
        """Keep the content of a stream; it is on the disk when this returns True.

        Returns
        -------
        bool
            False if the stream holds another content than its name says; nothing is kept then.

        Raises
        ------
        StoreError
            If the disk is full or cannot be written.
        OSError
            If the stream cannot be read.
        """
        if self.path(name).exists():
            return True
        told = hashlib.sha256()

        def pieces() -> Iterator[bytes]:
            while piece := stream.read(_PIECE):
                told.update(piece)
                yield piece

        return self._write(name, pieces(), lambda: told.hexdigest() == name)

    def _write(
        self, name: str, pieces: Iterator[bytes], right: Callable[[], bool] = lambda: True
    ) -> bool:
        """Write beside the place and move there, if it is right and whole."""
        place = self.path(name)
        part = place.with_suffix(".part")
        try:
            with self._told():
                place.parent.mkdir(exist_ok=True)
                out = part.open("wb")
            with out:
                for piece in pieces:
                    with self._told():
                        out.write(piece)
                if not right():
                    return False
                with self._told():
                    out.flush()
                    os.fsync(out.fileno())
            with self._told():
                part.replace(place)
            return True
        finally:
            with suppress(OSError):  # a disk that refuses has been told of already
                part.unlink(missing_ok=True)

    @contextmanager
    def _told(self) -> Iterator[None]:
        """Tell in words what the disk refuses."""
        try:
            yield
        except OSError as error:
            raise StoreError(
                tr(
                    "The original could not be kept: {error}. Make room on the disk that "
                    "holds {folder} and add the file again.",
                    error=error.strerror,
                    folder=self._folder,
                )
            ) from error

    def read(self, name: str) -> bytes:
        """Give a content back.

        Raises
        ------
        StoreError
            If it is gone.
        """
        try:
            return self.path(name).read_bytes()
        except OSError as error:
            raise StoreError(
                tr("An original is missing from the store: {name}.", name=name)
            ) from error

    def remove(self, names: Iterable[str]) -> None:
        """Remove contents, and half-written files that a killed import left.

        Raises
        ------
        StoreError
            If the folder cannot be written.
        """
        try:
            for place in [*self._folder.glob("??/*.part"), *map(self.path, names)]:
                place.unlink(missing_ok=True)
        except OSError as error:
            raise StoreError(
                tr(
                    "A deleted original could not be removed: {error} ({folder}).",
                    error=error.strerror,
                    folder=self._folder,
                )
            ) from error
