"""Readers of recordings, diaries and tables: bytes or a file in, runs or a plain reason out."""

from __future__ import annotations

import io
import os
import stat
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, tzinfo
from pathlib import Path

from tercet.domain import Failed, Recording
from tercet.formats.fit import MAX_FIT_BYTES, read_fit
from tercet.formats.fit_frame import is_fit
from tercet.formats.gpx import read_gpx
from tercet.formats.kinds import may_be_text, not_a_recording
from tercet.formats.paper import Page, Shorthand, read_page
from tercet.formats.table import Naming, Table, read_table
from tercet.formats.table.sheet import MAX_TABLE_BYTES
from tercet.formats.table.workbook import WORKBOOK, ZIP_MAGIC, is_office, names_in
from tercet.formats.tcx import read_tcx
from tercet.formats.unpack import GZIP_MAGIC, MAX_BYTES, Counted, Pieces, Refused
from tercet.formats.xml_points import root_of
from tercet.language import mark, tr

__all__ = ["Found", "Told", "read_bytes", "read_path", "read_stream"]

Found = list[Recording] | Page | Table | Failed
_BY_ROOT = {"gpx": read_gpx, "TrainingCenterDatabase": read_tcx}
_BOM = b"\xef\xbb\xbf"


@dataclass(frozen=True)
class Told:
    """What is known beside a file: a name for recordings without one, and how to read tables.

    ``namings`` are namings of columns by a table's shape; ``start`` is when a run began whose
    table counts from its start; ``zone`` is that of clocks without an offset, None for the
    computer's; ``shorthand`` is what the runner's own words in a diary mean.
    """

    name: str = ""
    namings: Mapping[str, Naming] = field(default_factory=dict)
    start: datetime | None = None
    zone: tzinfo | None = None
    shorthand: Shorthand | None = None


def read_bytes(data: bytes, name: str = "") -> Found:
    """Read whatever these bytes hold; what it is, is told by the bytes alone.

    Parameters
    ----------
    data : bytes
        A FIT, TCX or GPX file, a diary or a table as text, as it is or packed by gzip.
    name : str
        Name for recordings that bring none.

    Returns
    -------
    list of Recording, Page, Table or Failed
        One recording for each activity in the file, never an empty list; a page for a diary, a
        table for one of a run a line. Never raises: bytes that cannot be read give Failed with
        a plain reason.
    """
    return read_stream(Counted(io.BytesIO(data)), Told(name))


def read_stream(stream: Counted, told: Told) -> Found:
    """Read a file by pieces; as :func:`read_bytes`. Only XML need not be held as a whole."""
    try:
        return _read(Pieces(stream), told)
    except Refused as refusal:
        return Failed(str(refusal))
    except Exception as error:
        # One odd file must not end the import of a hundred; the reason keeps it visible.
        return Failed(
            tr(
                "It could not be understood ({kind}: {error}).",
                kind=type(error).__name__,
                error=error,
            )
        )


def read_path(path: str | os.PathLike[str], told: Told | None = None) -> Found:
    """Read a file.

    Parameters
    ----------
    path : path-like
        The file; its name is not looked at.
    told : Told or None

    Returns
    -------
    list of Recording, Page, Table or Failed
        As :func:`read_bytes`; a folder, or a file that cannot be opened, also gives Failed.
    """
    try:
        status = Path(path).stat()
        if stat.S_ISDIR(status.st_mode):
            return Failed(tr("This is a folder, not a file."))
        if not stat.S_ISREG(status.st_mode):
            return Failed(tr("This is not an ordinary file."))
        if status.st_size > MAX_BYTES:
            return Failed(tr("It is larger than {mb} MB.", mb=MAX_BYTES >> 20))
        with Path(path).open("rb") as opened:
            return read_stream(Counted(opened), told or Told())
    except FileNotFoundError:
        return Failed(tr("There is no such file."))
    except PermissionError:
        return Failed(tr("The file may not be read: permission is missing."))
    except (OSError, ValueError) as error:
        return Failed(tr("The file cannot be opened: {error}.", error=error))


def _read(pieces: Pieces, told: Told) -> Found:
    if pieces.packed and pieces.head.startswith(GZIP_MAGIC):
        return Failed(tr("This is a gzip file within a gzip file; unpack it first."), "passed over")
    if pieces.packed and not pieces.head:
        return Failed(pieces.damage or tr("The gzip file holds nothing."), offset=0)
    result = _read_plain(pieces, told)
    damage = pieces.damage
    if not damage:
        return result
    if isinstance(result, Failed):
        return replace(result, reason=f"{damage} {result.reason}")
    if isinstance(result, Page):
        return replace(result, damage=damage)
    if isinstance(result, Table):
        return replace(result, problem=f"{damage} {result.problem}".strip())
    result[-1] = replace(result[-1], damage=f"{damage} {result[-1].damage}".strip())
    return result


def _read_plain(pieces: Pieces, told: Told) -> Found:
    head = pieces.head
    if is_fit(head):
        return read_fit(pieces.whole(MAX_FIT_BYTES, mark("It is larger than {mb} MB.")), told.name)
    if head.startswith(ZIP_MAGIC):
        return _read_workbook(
            pieces.whole(MAX_TABLE_BYTES, mark("As a spreadsheet it is larger than {mb} MB.")), told
        )
    # blanks before the XML declaration are not allowed, but written
    text = head[:1024].removeprefix(_BOM).lstrip()
    if not text.startswith(b"<") or text.startswith(b"<\x00"):
        return _read_text(pieces, told)
    if not head.startswith((b"<", _BOM)):
        pieces.head = head = head.lstrip()
    root = root_of(head)
    if root in _BY_ROOT:
        return _BY_ROOT[root](pieces, told.name)
    if not root:
        return Failed(tr("It begins like XML, but is too damaged to tell what it is."), offset=0)
    return Failed(
        tr("This is XML of another kind (<{root}>), not a recording.", root=root[:40]),
        "passed over",
    )


def _read_workbook(data: bytes, told: Told) -> Found:
    names = names_in(data)
    if names and WORKBOOK not in names:
        if not is_office(names):
            return not_a_recording(data)
        kind = tr("This is a document of another kind; save its table as xlsx or CSV and add that.")
        return Failed(kind, "passed over")
    table = read_table(data, told.name, told.namings, told.start, told.zone)
    return Failed(tr("Its first sheet holds no table."), format="CSV") if table is None else table


def _read_text(pieces: Pieces, told: Told) -> Found:
    """A diary or a table; a table goes first only where all its columns are understood."""
    if not may_be_text(pieces.head):
        return not_a_recording(pieces.head)
    data = pieces.whole(MAX_TABLE_BYTES, mark("As a text it is larger than {mb} MB."))
    table = read_table(data, told.name, told.namings, told.start, told.zone, certain=True)
    if table is not None:
        return table
    page = read_page(data, told.shorthand)
    if page is not None:
        return page
    table = read_table(data, told.name, told.namings, told.start, told.zone)
    return not_a_recording(data) if table is None else table
