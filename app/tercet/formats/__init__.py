"""Readers of recordings and diaries: bytes or a file in, runs or a plain reason out."""

from __future__ import annotations

import os
import stat
from dataclasses import replace
from pathlib import Path

from tercet.domain import Failed, Recording
from tercet.formats.fit import read_fit
from tercet.formats.fit_frame import is_fit
from tercet.formats.gpx import read_gpx
from tercet.formats.kinds import not_a_recording
from tercet.formats.paper import Page, read_page
from tercet.formats.tcx import read_tcx
from tercet.formats.unpack import GZIP_MAGIC, MAX_BYTES, gunzip
from tercet.formats.xml_points import Refused, root_of

__all__ = ["read_bytes", "read_path"]

_BY_ROOT = {"gpx": read_gpx, "TrainingCenterDatabase": read_tcx}
_BOM = b"\xef\xbb\xbf"


def read_bytes(data: bytes, name: str = "") -> list[Recording] | Page | Failed:
    """Read whatever these bytes hold; what it is, is told by the bytes alone.

    Parameters
    ----------
    data : bytes
        A FIT, TCX or GPX file or a diary as text, as it is or packed by gzip.
    name : str
        Name for recordings that bring none.

    Returns
    -------
    list of Recording, Page or Failed
        One recording for each activity in the file, never an empty list; a page for a diary.
        Never raises: bytes that cannot be read give Failed with a plain reason.
    """
    try:
        return _read(data, name)
    except Refused as refusal:
        return Failed(str(refusal))
    except Exception as error:
        # One odd file must not end the import of a hundred; the reason keeps it visible.
        return Failed(f"It could not be understood ({type(error).__name__}: {error}).")


def read_path(path: str | os.PathLike[str]) -> list[Recording] | Page | Failed:
    """Read a file.

    Parameters
    ----------
    path : path-like
        The file; its name is not looked at.

    Returns
    -------
    list of Recording, Page or Failed
        As :func:`read_bytes`; a folder, or a file that cannot be opened, also gives Failed.
    """
    try:
        status = Path(path).stat()
        if stat.S_ISDIR(status.st_mode):
            return Failed("This is a folder, not a file.")
        if not stat.S_ISREG(status.st_mode):
            return Failed("This is not an ordinary file.")
        if status.st_size > MAX_BYTES:
            return Failed(f"It is larger than {MAX_BYTES >> 20} MB.")
        data = Path(path).read_bytes()
    except FileNotFoundError:
        return Failed("There is no such file.")
    except PermissionError:
        return Failed("The file may not be read: permission is missing.")
    except (OSError, ValueError) as error:
        return Failed(f"The file cannot be opened: {error}.")
    return read_bytes(data)


def _read(data: bytes, name: str) -> list[Recording] | Page | Failed:
    if not data.startswith(GZIP_MAGIC):
        return _read_plain(data, name)
    unpacked = gunzip(data)
    if isinstance(unpacked, Failed):
        return unpacked
    inner, damage = unpacked
    if inner.startswith(GZIP_MAGIC):
        return Failed("This is a gzip file within a gzip file; unpack it first.", "passed over")
    result = _read_plain(inner, name)
    if not damage:
        return result
    if isinstance(result, Failed):
        return replace(result, reason=f"{damage} {result.reason}")
    if isinstance(result, Page):
        return replace(result, damage=damage)
    result[-1] = replace(result[-1], damage=f"{damage} {result[-1].damage}".strip())
    return result


def _read_plain(data: bytes, name: str) -> list[Recording] | Page | Failed:
    if is_fit(data):
        return read_fit(data, name)
    # blanks before the XML declaration are not allowed, but written
    head = data[:1024].removeprefix(_BOM).lstrip()
    if not head.startswith(b"<") or head.startswith(b"<\x00"):
        page = read_page(data)
        return not_a_recording(data) if page is None else page
    text = data if data.startswith((b"<", _BOM)) else data.lstrip()
    root = root_of(text)
    if root in _BY_ROOT:
        return _BY_ROOT[root](text, name)
    if not root:
        return Failed("It begins like XML, but is too damaged to tell what it is.", offset=0)
    return Failed(f"This is XML of another kind (<{root[:40]}>), not a recording.", "passed over")
