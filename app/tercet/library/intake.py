"""Read files into the store: each file once, each run once, the richer recording shown."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from tercet import language
from tercet.domain import Changes
from tercet.language import tr
from tercet.library.operations import apply_season
from tercet.store import queries
from tercet.store.database import Row, Store
from tercet.store.piece_queries import FIRST_MADE

if TYPE_CHECKING:
    from tercet.library.reading import ReadFile, ReadRun

#: The setting that holds the list of the last import, and how many files it names at most.
LAST_IMPORT, REMEMBERED = "last import", 2_000
#: Two recordings are one run if they start within this ... [s]
SAME_START_S = 300.0
#: ... share this much of the shorter one's time ...
SAME_OVERLAP = 0.8
#: ... and differ by no more than this in distance.
SAME_DISTANCE = 0.05
#: One that is shorter than this share of the other is a part of it (cut off, trimmed) if their
#: mean speeds differ by no more than this. Common practice, no source.
PART_OF, PART_SPEED = 0.9, 0.3


@dataclass(frozen=True)
class Taken:
    """What became of one file of an import; ``outcome`` is what the list shows."""

    path: str
    outcome: str  # new, already here, same run, other sport, refused, passed over, season file
    detail: str = ""
    sha256: str = ""
    runs: int = 0  # that came in with it


def take_in(
    store: Store, files: Sequence[ReadFile], token: object, step: str
) -> tuple[list[Taken], Changes]:
    """Take read files into the store; files already there add nothing."""
    taken: list[Taken] = []
    known = {file.sha256 for file in files if queries.file(store, file.sha256) is not None}
    files = [file if file.sha256 in known else _original_kept(store, file) for file in files]
    with store.atomic(step, token):
        for file in files:
            if not file.sha256:
                taken.append(Taken(file.path, "refused", file.problem))
            elif file.sha256 in known:
                taken.append(Taken(file.path, "already here", sha256=file.sha256))
            else:
                known.add(file.sha256)
                taken.append(_take_file(store, file))
    changes = Changes(runs=True, files=True, step=step)
    if any(item.outcome == "season file" for item in taken):
        changes |= Changes(thresholds=True, plan=True, settings=True)
    return taken, changes


def remember(store: Store, taken: Sequence[Taken], token: object, step: str) -> None:
    """Keep the list of an import, as part of its step, for the next start of the program."""
    rows = [[item.path, item.outcome, item.detail, item.sha256, item.runs] for item in taken]
    with store.atomic(step, token):
        store.put("setting", {"name": LAST_IMPORT, "value": json.dumps(rows[:REMEMBERED])})


def last_import(store: Store) -> list[Taken]:
    """The list of the last import that brought something."""
    return [Taken(*row) for row in json.loads(queries.setting(store, LAST_IMPORT, "[]"))]


def take_again(store: Store, file: ReadFile) -> Taken:
    """Take in anew, inside an open step, a listed file that is read otherwise by now."""
    return _take_file(store, file)


def _original_kept(store: Store, file: ReadFile) -> ReadFile:
    """Keep the bytes that were read; a file that is another by now is refused."""
    from tercet.library import reading
    from tercet.library.sources import UNREADABLE, why

    if not file.sha256:
        return file
    try:
        with file.source.open() as opened:
            same = store.originals.keep_copy(file.sha256, opened)
    except UNREADABLE as error:
        return reading.refused(
            file.source, tr("It cannot be read again: {reason}.", reason=why(error))
        )
    if same:
        return file
    return reading.refused(file.source, tr("It changed while it was read; add it again."))


def _take_file(store: Store, file: ReadFile) -> Taken:
    status, detail, runs = file.status, file.problem, 0
    if file.season is not None:
        detail = apply_season(store, file.season)
    elif file.status == "read":
        same: list[str] = []
        sports: list[str] = []
        for item in file.runs:
            words = _take_run(store, file.sha256, item)
            if words:
                same.append(words)
            else:
                sports.append(str(item.run["sport"]))
        if not sports:
            status, detail = "same run", same[0]
        elif all(sport != "running" for sport in sports):
            status, detail = (
                "other sport",
                tr("{sport}: kept, not counted as running", sport=tr(sports[0])),
            )
        else:
            status = "run"
            runs = sports.count("running")
    store.put(
        "file",
        {
            "sha256": file.sha256,
            "name": file.source.name,
            "folder": file.source.folder,
            "size": file.size,
            "format": file.format,
            "status": status,
            "problem": file.problem if status == "run" else detail,
            "taken_in": datetime.now(UTC).isoformat(timespec="seconds"),
        },
    )
    return Taken(file.path, "new" if status == "run" else status, detail, file.sha256, runs)


def _take_run(store: Store, sha256: str, item: ReadRun) -> str:
    """Put a run, or attach it to the run it is; gives words if it was attached."""
    from tercet.library.written import same_run

    part = int(item.run["part"])
    store.put_streams(sha256, part, item.streams)
    other = None if item.run["notation"] else _same_run(store, item.run)
    other = other or same_run(store, item.run, sha256)
    if other is None:
        number = store.put("run", {**item.run, "sha256": sha256})
        store.put("judgement", {**item.judgement, "run_id": number})
        return ""
    name = other["name"]
    if not name and other.get("notation"):
        name = tr("{format} entry", format=other["format"])
    elif not name:
        name = tr("{format} recording", format=other["format"])
    told = {"name": name, "day": _when(other)}
    richer = _richness(item.run) > _richness(other)
    if (_is_part(other, item.run) or richer) and not _is_part(item.run, other):
        store.put(
            "attachment", {"sha256": other["sha256"], "part": other["part"], "run_id": other["id"]}
        )
        store.put("run", {**item.run, "sha256": sha256, "id": other["id"]})
        store.put("judgement", {**item.judgement, "run_id": other["id"]})
        return tr("the same run as {name} of {day}; this one holds more and is shown", **told)
    store.put("attachment", {"sha256": sha256, "part": part, "run_id": other["id"]})
    keep_said(store, other["id"], item.run.get("note", ""), item.run.get("effort"))
    return tr("the same run as {name} of {day}; counted once", **told)


def keep_said(store: Store, run_id: int, note: str, effort: int | None) -> None:
    """Let a run keep what was said of it in an entry that is counted as that run.

    A note is added to one that is there; an effort said of the run itself stays.
    """
    row = queries.run(store, run_id)
    if row is None:
        return
    more: Row = {}
    if note.strip() and note.strip() not in row["note"]:
        more["note"] = " / ".join(part for part in (row["note"], note.strip()) if part)
    if effort is not None and row["effort"] is None:
        more["effort"] = effort
    if more:
        said_at = datetime.now(UTC).isoformat(timespec="seconds")
        store.put("run", {"id": run_id, "said_at": said_at, **more})


def _when(row: Row) -> str:
    moment = datetime.fromtimestamp(row["start_utc"] + row["utc_offset_s"], UTC)
    day = tr(
        "{day} {month} {year}",
        day=moment.day,
        month=language.month(moment.month),
        year=moment.year,
    )
    if row.get("clock"):
        return day if row["clock"] == "day" else f"{day}, {row['clock']}"
    return f"{day}, {moment:%H:%M}"


def _richness(row: Row) -> tuple[int, int]:
    return len(str(row["channels"]).split()), int(row["records"])


def _is_part(part: Row, whole: Row) -> bool:
    """Whether one recording of a file is the beginning of another, by length and speed."""
    made = any(int(row["part"]) >= FIRST_MADE or row.get("notation") for row in (part, whole))
    if (
        made
        or part["sport"] != whole["sport"]
        or not part["elapsed_s"] < PART_OF * whole["elapsed_s"]
    ):
        return False
    speeds = [row["distance_m"] / row["elapsed_s"] for row in (part, whole)]
    return bool(min(speeds) > 0 and max(speeds) - min(speeds) <= PART_SPEED * max(speeds))


def _same_run(store: Store, run: Row) -> Row | None:
    start, elapsed = float(run["start_utc"]), float(run["elapsed_s"])
    for row in queries.runs_between(store, start - SAME_START_S, start + SAME_START_S):
        other = dict(row)
        shorter = min(elapsed, other["elapsed_s"])
        shared = min(start + elapsed, other["start_utc"] + other["elapsed_s"]) - max(
            start, other["start_utc"]
        )
        if shorter <= 0 or shared < SAME_OVERLAP * shorter:
            continue
        if _is_part(run, other) or _is_part(other, run):
            return other
        longer_m = max(run["distance_m"], other["distance_m"])
        apart = abs(run["distance_m"] - other["distance_m"])
        if min(run["distance_m"], other["distance_m"]) > 0 and apart > SAME_DISTANCE * longer_m:
            continue
        return other
    return None
