"""Where the bytes of a file to take in are: a file, or a member of an archive."""

from __future__ import annotations

import os
import stat
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import IO

from tercet.domain import Failed
from tercet.formats import archive
from tercet.formats.table.workbook import is_office
from tercet.formats.unpack import GZIP_MAGIC
from tercet.language import tr

#: Folders are searched this deep.
DEPTH = 32
#: What holds as much as GPX in fewer bytes, and how many times fewer. Common practice, no source.
DENSE = MappingProxyType({"gzip": 12, "FIT": 8})
#: Lighter ones are not looked into. [bytes]
_LIGHT_BYTES = 2**20
_HEAD_BYTES = 16
#: What a file that cannot be read raises.
UNREADABLE = (OSError, zipfile.BadZipFile, NotImplementedError, EOFError, ValueError, zlib.error)


@dataclass(frozen=True)
class Source:
    """A file, or with ``member`` from 0 on a member of the archive that the file is."""

    path: str
    member: int = -1
    label: str = ""  # for people, where the path says too little
    unpacked: int = 0  # length of a member as its archive tells it [bytes]

    @property
    def shown(self) -> str:
        """Its path as it may be shown and stored: marks that no text can hold are replaced."""
        text = self.label or self.path
        return text.encode("utf-8", "replace").decode("utf-8")

    @property
    def name(self) -> str:
        """The last part of what is shown."""
        return (
            self.shown.replace("\\", "/").rpartition("/")[2]
            if self.label
            else Path(self.shown).name
        )

    @property
    def folder(self) -> str:
        """The folder of what is shown."""
        if self.label:
            return self.shown.rpartition("/")[0]
        return str(Path(self.shown).parent)

    def open(self) -> IO[bytes]:
        """Open it for reading.

        Raises
        ------
        Any of UNREADABLE
        """
        if self.member >= 0:
            return archive.open_member(self.path, self.member)
        place = Path(self.path)
        if _leads_nowhere(place):
            raise OSError(tr("{name} is a link to a file that cannot be reached", name=self.name))
        if not stat.S_ISREG(place.stat().st_mode):
            raise OSError(tr("{name} is no ordinary file", name=self.name))
        return place.open("rb")

    @property
    def size(self) -> int:
        """Length of the file, that of its archive for a member, 0 if it is gone. [bytes]"""
        try:
            return Path(self.path).stat().st_size
        except (OSError, ValueError):
            return 0

    @property
    def weight(self) -> int:
        """About how many bytes of GPX hold as much: what reading it takes in time and memory."""
        size = self.unpacked if self.member >= 0 else self.size
        if size * max(DENSE.values()) < _LIGHT_BYTES:
            return size
        from tercet.formats.fit_frame import is_fit

        try:
            with self.open() as opened:
                head = opened.read(_HEAD_BYTES)
        except UNREADABLE:
            return 0
        kind = "gzip" if head.startswith(GZIP_MAGIC) else "FIT" if is_fit(head) else ""
        return size * DENSE.get(kind, 1)


def why(error: BaseException) -> str:
    """A reason in words."""
    return (getattr(error, "strerror", None) or str(error) or type(error).__name__).rstrip(".")


def find_files(paths: Iterable[str | Path]) -> list[Path]:
    """Files among the paths and in folders below them, sorted; no hidden ones.

    Links in folders are not followed; those that lead nowhere are named, so that they are listed.
    """
    found: dict[Path, None] = {}
    for given in paths:
        place = Path(given)
        if place.is_dir():
            for file in _below(place, DEPTH):
                found[file] = None
        else:
            found[place] = None
    return list(found)


def _below(folder: Path, depth: int) -> Iterator[Path]:
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError:
        return
    for entry in entries:
        if entry.name.startswith("."):
            continue
        if entry.is_symlink():
            if _leads_nowhere(Path(entry.path)):
                yield Path(entry.path)
        elif entry.is_dir() and depth > 0:
            yield from _below(Path(entry.path), depth - 1)
        elif entry.is_file():
            yield Path(entry.path)


def _leads_nowhere(place: Path) -> bool:
    """Whether it is a link whose end is gone, goes in a circle or lies where nobody may look."""
    try:
        place.stat()
    except OSError:
        return place.is_symlink()
    return False


def opened_up(files: Iterable[Path], folder: Path) -> Iterator[Source | tuple[Source, Failed]]:
    """Files as sources, archives as their members.

    Parameters
    ----------
    files : iterable of Path
    folder : Path
        A folder of the caller's for archives in archives; they must stay while sources are read.
    """
    for file in files:
        if not _is_archive(file):
            yield Source(str(file))
            continue
        shown = Source(str(file)).shown
        for found in archive.members(file, folder, shown):
            if isinstance(found, archive.Member):
                yield Source(found.archive, found.index, found.shown, found.size)
            else:
                yield Source(str(file), label=found[0]), found[1]


def _is_archive(file: Path) -> bool:
    try:
        if not file.is_file():
            return False
        with file.open("rb") as opened:
            if not archive.is_zip(opened.read(4)):
                return False
        with zipfile.ZipFile(file) as opened_up:
            # documents of office programs are archives too
            return not is_office(opened_up.namelist())
    except (OSError, ValueError):
        return False
    except (zipfile.BadZipFile, NotImplementedError, EOFError):
        return True  # which says what is wrong with it
