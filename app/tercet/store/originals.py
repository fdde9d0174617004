"""Original files, kept byte for byte under their SHA-256."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable
from pathlib import Path

from tercet.store.errors import StoreError


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
                f"The folder of originals cannot be made: {error.strerror} ({folder})."
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
        place = self.path(name)
        if place.exists():
            return
        part = place.with_suffix(".part")
        try:
            place.parent.mkdir(exist_ok=True)
            with part.open("wb") as out:
                out.write(data)
                out.flush()
                os.fsync(out.fileno())
            part.replace(place)
        except OSError as error:
            part.unlink(missing_ok=True)
            raise StoreError(
                f"The original could not be kept: {error.strerror}. Make room on the disk "
                f"that holds {self._folder} and add the file again."
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
            raise StoreError(f"An original is missing from the store: {name}.") from error

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
                f"A deleted original could not be removed: {error.strerror} ({self._folder})."
            ) from error
