"""Originals of a record that a store lacks: unpacked, taken in as if dropped, and named."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Event

from tercet.domain import Changes
from tercet.language import tr
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.library.record import Archive, RecordError
from tercet.library.record_report import STEP, Merged
from tercet.store import queries
from tercet.store import record_queries as rows
from tercet.store.database import Row, Store


def take_files(
    library: Library,
    archive: Archive,
    wanted: Sequence[Row],
    done: Merged,
    token: object,
    progress: Callable[[Progress], None],
    stop: Event,
) -> None:
    """Read the files that this store lacks, as if they had been dropped."""
    read = [file for file in wanted if file["status"] != "season file"]
    # A season file's lines came with the plan; reading it again would bring its first ones back.
    rest = [(file, archive.original(file["sha256"])) for file in wanted if file not in read]
    with TemporaryDirectory(prefix="tercet-") as folder:
        paths = []
        for number, file in enumerate(read):
            if stop.is_set():
                break
            paths.append(_unpacked(archive, file, Path(folder) / str(number)))
            progress(Progress(number + 1, len(read), file["name"]))
        if paths:
            report = library.take_in(paths, progress, stop, token=token, step=tr(STEP))
            done.new_files = len(report.taken) - report.count("already here", "refused")
            done.refused = report.count("refused")
            done.changes |= report.changes
        done.stopped = stop.is_set()
        done.changes |= library.call(_name_files, read, rest, token)


def _unpacked(archive: Archive, file: Row, folder: Path) -> Path:
    """An original as a file that bears its own name, as far as this system allows."""
    name = Path(str(file["name"]).replace("\\", "/")).name.strip() or "recording"
    data = archive.original(file["sha256"])
    folder.mkdir()
    for candidate in (name, "recording"):
        place = folder / candidate
        try:
            place.write_bytes(data)
        except (OSError, ValueError) as error:
            if candidate == "recording":
                raise RecordError(
                    tr("A file of the record could not be unpacked: {error}.", error=error)
                ) from error
        else:
            return place
    raise AssertionError("unreachable")


def _name_files(
    store: Store, read: Sequence[Row], rest: Sequence[tuple[Row, bytes]], token: object
) -> Changes:
    """Forget the folder that files were unpacked to; keep those that need no reading."""
    for file, data in rest:
        store.originals.keep(file["sha256"], data)
    with store.atomic(tr(STEP), token):
        for file in read:
            if queries.file(store, file["sha256"]) is not None:
                kept = {name: file[name] for name in ("sha256", "name", "put_away", "taken_in")}
                store.put("file", {**kept, "folder": ""})
        for file, _ in rest:
            store.put("file", {**{name: file[name] for name in rows.FILE_COLUMNS}, "folder": ""})
    return Changes(files=True, step=tr(STEP)) if read or rest else Changes()
