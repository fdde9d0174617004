"""A runner's whole record as one archive of open parts: written whole, read within bounds.

The archive is a zip file. ``manifest.json`` says what it is; ``files.jsonl``, ``runs.jsonl``,
``pieces.jsonl``, ``threshold.jsonl``, ``block.jsonl``, ``race.jsonl``, ``planned.jsonl`` and
``test.jsonl`` hold a JSON object a line; ``settings.json`` one object; ``shared.jsonl`` what
earlier copies said, as pairs of what and fingerprint; ``originals/`` every original file, byte for
byte, by its SHA-256.
"""

from __future__ import annotations

import json
import os
import zipfile
import zlib
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from threading import Event
from typing import Any

from tercet.language import tr
from tercet.library import record_pieces
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.library.record_pieces import Piece, fingerprint
from tercet.store import record_queries as rows
from tercet.store.database import Row, Store

WHAT = "Tercet record"
VERSION = 1
#: Settings that belong to the runner and not to a computer.
SETTINGS = ("runner", "zone", "spacing")
#: The words and choices of a review go along as well; each is merged on its own.
REVIEW = "review "
#: Bounds of what is read. [files], [bytes]
MOST_MEMBERS = 400_000
LARGEST_TEXT = 512 * 2**20
LARGEST_ORIGINAL = 512 * 2**20
CHUNK = 1 << 20


class RecordError(Exception):
    """What is wrong with an archive, in words for the person at the screen."""


class OtherRunner(RecordError):
    """A record is of another runner than the one it would go into."""


@dataclass(frozen=True)
class Parts:
    """All of a record but its originals."""

    runner: str
    files: list[Row]
    runs: list[Row]
    plan: dict[str, list[Row]]
    settings: dict[str, Any]
    shared: set[tuple[str, str]]
    pieces: list[Piece] = field(default_factory=list)
    by: str = ""  # whose copy it is, as that copy calls itself
    written: str = ""


def said(run: Row) -> dict[str, Any]:
    """What a person may say about a run, by field; every field is merged on its own."""
    return {
        "note": run["note"],
        "effort": run["effort"],
        "meant": run["meant"],
        "kind": [run["sport"], run["kind"]],
        "day": [run["start_utc"], run["utc_offset_s"], run["day"]],
        "corrections": [
            {name: value for name, value in item.items() if name != "said_at"}
            for item in run["corrections"]
        ],
    }


def subject(run: Row, field: str) -> str:
    """What a fingerprint is about: a field of a run."""
    return f"run:{run['sha256']}:{run['part']}:{field}"


def parts_of(store: Store) -> Parts:
    """Read a store's record, in the store's thread."""
    settings = rows.settings(store, SETTINGS) | rows.settings_like(store, REVIEW)
    return Parts(
        runner=settings.get("runner", ""),
        files=rows.files(store),
        runs=rows.runs(store),
        plan={table: rows.plan_part(store, table) for table in rows.PLAN_PARTS},
        settings=settings,
        shared=rows.shared(store),
        pieces=record_pieces.pieced(store),
    )


def sayings(parts: Parts) -> Iterator[tuple[str, str]]:
    """Every fingerprint of what a record says."""
    for run in parts.runs:
        for name, value in said(run).items():
            yield subject(run, name), fingerprint(value)
    for files, pieces in record_pieces.groups(parts.pieces):
        what, told = record_pieces.saying(files, pieces)
        yield what, fingerprint(told)
    for table, held in parts.plan.items():
        yield f"plan:{table}", fingerprint(held)
    for name, value in parts.settings.items():
        if name.startswith(REVIEW):
            yield name, fingerprint(value)


def write(
    library: Library,
    target: Path,
    *,
    by: str = "",
    progress: Callable[[Progress], None] = lambda _: None,
    stop: Event | None = None,
) -> bool:
    """Write a runner's whole record; gives whether it was finished. Blocks.

    The file bears its name only when it is whole. ``by`` says whose copy it is.

    Raises
    ------
    RecordError
        If it cannot be written, or an original is missing.
    """
    parts: Parts = library.call(parts_of)
    known = set(sayings(parts))
    part = target.with_name(target.name + ".part")
    try:
        with zipfile.ZipFile(part, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
            _write_texts(archive, parts, known, by)
            for done, file in enumerate(parts.files, 1):
                if stop is not None and stop.is_set():
                    break
                name = file["sha256"]
                archive.write(library.original(name), f"originals/{name[:2]}/{name}")
                progress(Progress(done, len(parts.files), file["name"]))
        if stop is not None and stop.is_set():
            return False
        with part.open("rb") as whole:
            os.fsync(whole.fileno())
        part.replace(target)
    except OSError as error:
        raise RecordError(
            tr(
                "The record could not be written: {error}. Choose another place, or make room "
                "there, and write it again.",
                error=error.strerror or error,
            )
        ) from error
    finally:
        part.unlink(missing_ok=True)
    library.call(lambda store: store.note_shared(sorted(known)))
    return True


def _write_texts(
    archive: zipfile.ZipFile, parts: Parts, known: set[tuple[str, str]], by: str
) -> None:
    manifest = {
        "what": WHAT,
        "version": VERSION,
        "runner": parts.runner,
        "by": by,
        "written": datetime.now(UTC).isoformat(timespec="seconds"),
        "files": len(parts.files),
        "runs": len(parts.runs),
    }
    archive.writestr("manifest.json", json.dumps(manifest, indent=1, ensure_ascii=False))
    archive.writestr("settings.json", json.dumps(parts.settings, indent=1, ensure_ascii=False))
    pieces = [piece.told() for piece in parts.pieces]
    tables = {"files": parts.files, "runs": parts.runs, "pieces": pieces, **parts.plan}
    for name, held in tables.items():
        archive.writestr(f"{name}.jsonl", _lines(held))
    archive.writestr("shared.jsonl", _lines(sorted(parts.shared | known)))


def _lines(held: Iterable[Any]) -> str:
    return "".join(json.dumps(item, ensure_ascii=False) + "\n" for item in held)


class Archive:
    """An archive opened for reading; everything in it is checked before it is believed.

    Raises
    ------
    RecordError
        If it is no record, a newer one, damaged, or over a bound.
    """

    def __init__(self, path: Path) -> None:
        try:
            self._zip = zipfile.ZipFile(path)
        except (OSError, zipfile.BadZipFile) as error:
            raise RecordError(
                tr("{path} is no record: it cannot be opened as one.", path=path.name)
            ) from error
        try:
            self._names = self._checked_names()
            self.parts = self._read()
        except BaseException:
            self._zip.close()
            raise

    def close(self) -> None:
        """Let go of the file."""
        self._zip.close()

    def _checked_names(self) -> dict[str, zipfile.ZipInfo]:
        held = self._zip.infolist()
        if len(held) > MOST_MEMBERS:
            raise RecordError(tr("It holds more than {most} files.", most=MOST_MEMBERS))
        return {info.filename: info for info in held}

    def _read(self) -> Parts:
        manifest = self._json("manifest.json")
        if not isinstance(manifest, dict) or manifest.get("what") != WHAT:
            raise RecordError(tr("It is a zip file, but not a runner's record."))
        if not isinstance(manifest.get("version"), int) or manifest["version"] > VERSION:
            raise RecordError(tr("It was written by a newer version of Tercet. Use that version."))
        settings = self._json("settings.json")
        try:
            return Parts(
                runner=str(manifest.get("runner", "")),
                files=self._table("files"),
                runs=[_checked_run(run) for run in self._table("runs")],
                plan={table: self._table(table) for table in rows.PLAN_PARTS},
                settings={
                    name: str(value)
                    for name, value in settings.items()
                    if name in SETTINGS or name.startswith(REVIEW)
                },
                pieces=[record_pieces.read(row) for row in self._pieces()],
                shared={(str(what), str(hash_)) for what, hash_ in self._table("shared")},
                by=str(manifest.get("by", "")),
                written=str(manifest.get("written", "")),
            )
        except (KeyError, TypeError, ValueError, AttributeError) as error:
            raise RecordError(tr("The record is damaged: {error}.", error=error)) from error

    def _bytes(self, name: str, most: int) -> bytes:
        info = self._names.get(name)
        if info is None:
            raise RecordError(tr("The record is not whole: it lacks {name}.", name=name))
        if info.file_size > most:
            raise RecordError(
                tr("{name} in it is larger than {most} MB.", name=name, most=most >> 20)
            )
        try:
            with self._zip.open(info) as stream:
                data = stream.read(most + 1)
        except (
            OSError,
            zipfile.BadZipFile,
            NotImplementedError,
            RuntimeError,
            EOFError,
            zlib.error,
        ) as error:
            raise RecordError(tr("The record is damaged at {name}.", name=name)) from error
        if len(data) > most:
            raise RecordError(
                tr("{name} in it is larger than {most} MB.", name=name, most=most >> 20)
            )
        return data

    def _json(self, name: str) -> Any:
        try:
            return json.loads(self._bytes(name, LARGEST_TEXT))
        except (ValueError, RecursionError) as error:
            raise RecordError(tr("The record is damaged at {name}.", name=name)) from error

    def _table(self, name: str) -> list[Any]:
        out = []
        for line in self._bytes(f"{name}.jsonl", LARGEST_TEXT).splitlines():
            try:
                out.append(json.loads(line))
            except (ValueError, RecursionError) as error:
                raise RecordError(
                    tr("The record is damaged at {name}.jsonl.", name=name)
                ) from error
        return out

    def _pieces(self) -> list[Any]:
        # records of earlier versions carry none
        return self._table("pieces") if "pieces.jsonl" in self._names else []

    def original(self, name: str) -> bytes:
        """An original by its SHA-256, checked against it."""
        data = self._bytes(f"originals/{name[:2]}/{name}", LARGEST_ORIGINAL)
        if sha256(data).hexdigest() != name:
            raise RecordError(
                tr("The record is damaged: the original {name} is not as it was.", name=name[:12])
            )
        return data


def _checked_run(run: Row) -> Row:
    run = {**rows.LATER, **run}
    missing = [name for name in (*rows.RUN_COLUMNS, "attached", "corrections") if name not in run]
    if missing:
        raise ValueError(tr("a run without {missing}", missing=missing[0]))
    if run["effort"] is not None and not 0 <= int(run["effort"]) <= 10:
        raise ValueError(tr("an effort outside 0 to 10"))
    if run["meant"] not in (None, 0, 1):
        raise ValueError(tr("a run neither meant nor not"))
    return run


def places(run: Row) -> Sequence[tuple[str, int]]:
    """Contents and parts by which a run is known on any computer."""
    return [(run["sha256"], run["part"]), *((a, b) for a, b in run["attached"])]
