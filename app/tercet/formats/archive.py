"""Zip archives: their members one by one, within fixed limits, never written by their names."""

from __future__ import annotations

import stat
import tempfile
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path, PurePosixPath
from typing import IO

from tercet.domain import Failed
from tercet.language import grouped, tr

ZIP_MAGIC = (b"PK\x03\x04", b"PK\x05\x06")
#: An archive in an archive in an archive, and no further.
MAX_DEPTH = 3
MAX_MEMBERS = 50_000
#: Unpacked, one member and all members of an archive together. [bytes]
MAX_MEMBER_BYTES = 256 * 2**20
MAX_TOTAL_BYTES = 4 * 2**30
#: A member shrunk further than this is a trap once it is also large.
MAX_RATIO = 200
RATIO_MATTERS_FROM = 16 * 2**20
_COPIED_AT_ONCE = 2**20
#: Folders and files that archivers add for themselves.
_ADDED = ("__MACOSX",)
_ENCRYPTED = 0x1


@dataclass(frozen=True)
class Member:
    """A file in an archive: the archive's file, the member's place in it, and how to show it."""

    archive: str
    index: int
    shown: str  # "archive.zip/folder/name"
    size: int = 0  # as the archive tells it [bytes]


def is_zip(head: bytes) -> bool:
    """Whether a file's first bytes are those of a zip archive."""
    return head.startswith(ZIP_MAGIC)


def members(
    path: Path, folder: Path, shown: str = "", depth: int = 1
) -> Iterator[Member | tuple[str, Failed]]:
    """Go through the files of an archive and of archives in it.

    Parameters
    ----------
    path : Path
        The archive.
    folder : Path
        An existing folder of the caller's, for the archives inside; the caller removes it.
    shown : str
        Name of the archive for people.
    depth : int
        How deep this archive lies.

    Yields
    ------
    Member, or (str, Failed)
        Members in the archive's order, without folders, links and hidden files; what is past a
        limit with the reason.
    """
    shown = shown or str(path)
    try:
        with zipfile.ZipFile(path) as archive:
            infos = archive.infolist()
    except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError, EOFError) as error:
        yield shown, Failed(tr("The archive is damaged: {error}.", error=error), format="zip")
        return
    if len(infos) > MAX_MEMBERS:
        yield (
            shown,
            Failed(
                tr("The archive holds more than {most} files.", most=grouped(MAX_MEMBERS)),
                format="zip",
            ),
        )
        return
    total = 0
    for index, info in enumerate(infos):
        name = plain_name(info.filename)
        if info.is_dir() or _left_out(info, name):
            continue
        label = f"{shown}/{name}"
        total += info.file_size
        problem = _problem(info, total)
        if problem is not None:
            yield label, problem
        elif name.lower().endswith(".zip"):
            yield from _inner(path, index, folder, label, depth)
        else:
            yield Member(str(path), index, label, info.file_size)


def plain_name(name: str) -> str:
    """A member's name as it may be shown: no way up, no drive, no mark that text cannot hold."""
    name = name.replace("\\", "/").encode("utf-8", "replace").decode("utf-8")
    parts = [part for part in PurePosixPath(name).parts if part not in ("/", "..", ".")]
    if parts and len(parts[0]) == 2 and parts[0][1] == ":":
        parts = parts[1:]
    kept = "/".join(parts)
    return "".join(mark if mark.isprintable() else "\ufffd" for mark in kept) or "\ufffd"


def _left_out(info: zipfile.ZipInfo, name: str) -> bool:
    parts = name.split("/")
    link = stat.S_ISLNK(info.external_attr >> 16)
    return link or parts[0] in _ADDED or any(part.startswith(".") for part in parts)


def _problem(info: zipfile.ZipInfo, total: int) -> Failed | None:
    if info.flag_bits & _ENCRYPTED:
        return Failed(tr("It is locked by a password; unpack it first."), format="zip")
    if info.file_size > MAX_MEMBER_BYTES:
        return Failed(
            tr("Unpacked it is larger than {mb} MB.", mb=MAX_MEMBER_BYTES >> 20), format="zip"
        )
    if total > MAX_TOTAL_BYTES:
        return Failed(
            tr("The archive unpacks to more than {gb} GB.", gb=MAX_TOTAL_BYTES >> 30), format="zip"
        )
    ratio = info.file_size / max(info.compress_size, 1)
    if info.file_size > RATIO_MATTERS_FROM and ratio > MAX_RATIO:
        return Failed(
            tr("Unpacked it is {ratio} times larger, as no recording is.", ratio=grouped(ratio)),
            format="zip",
        )
    return None


def _inner(
    path: Path, index: int, folder: Path, label: str, depth: int
) -> Iterator[Member | tuple[str, Failed]]:
    if depth >= MAX_DEPTH:
        yield (
            label,
            Failed(tr("Archives are nested more than {most} deep.", most=MAX_DEPTH), format="zip"),
        )
        return
    try:
        with (
            tempfile.NamedTemporaryFile(dir=folder, suffix=".zip", delete=False) as out,
            open_member(str(path), index) as stream,
        ):
            while piece := stream.read(_COPIED_AT_ONCE):
                out.write(piece)
    except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError, EOFError) as error:
        yield label, Failed(tr("The archive is damaged: {error}.", error=error), format="zip")
        return
    yield from members(Path(out.name), folder, label, depth + 1)


def open_member(archive: str, index: int) -> IO[bytes]:
    """Open a member for reading.

    Raises
    ------
    OSError, zipfile.BadZipFile, NotImplementedError
        If the archive is gone or damaged, or packed in a way that is not known here.
    """
    status = Path(archive).stat()
    found = _opened(archive, status.st_size, status.st_mtime_ns)
    return found.open(found.infolist()[index])


@lru_cache(maxsize=2)
def _opened(archive: str, size: int, changed: int) -> zipfile.ZipFile:
    """Kept open, for the list of an archive of thousands takes long to read."""
    return zipfile.ZipFile(archive)


def let_go() -> None:
    """Close the archives that were kept open."""
    _opened.cache_clear()
