"""Takes another copy's record into a store: nothing twice, nothing lost, conflicts told."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from threading import Event
from typing import Any

from tercet.domain import Changes
from tercet.language import month, several, tr
from tercet.library import reading, record_pieces, rejudge
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.library.record import (
    REVIEW,
    SETTINGS,
    Archive,
    OtherRunner,
    Parts,
    places,
    said,
    subject,
)
from tercet.library.record_files import take_files
from tercet.library.record_pieces import fingerprint
from tercet.library.record_report import STEP, Conflict, Merged
from tercet.library.record_words import FIELD_COUNTS, FIELD_WORDS, PART_WORDS
from tercet.library.review import choices
from tercet.store import queries
from tercet.store import record_queries as rows
from tercet.store.database import Row, Store


def take_in(
    library: Library,
    source: Path,
    progress: Callable[[Progress], None] = lambda _: None,
    stop: Event | None = None,
    *,
    whoever: bool = False,
) -> Merged:
    """Take a record in, as one undo step; taking it in again changes nothing. Blocks.

    What only the other copy says is taken; where both say something and neither is an older
    state of the other, this copy's word stays and the conflict is told.

    Raises
    ------
    RecordError
        If the archive cannot be believed; nothing was changed then.
    OtherRunner
        If it bears another name than the runner here, unless ``whoever``; nothing was changed.
    """
    stop = stop or Event()
    archive = Archive(source)
    try:
        parts = archive.parts
        token = object()
        done = Merged(parts.runner, parts.by, parts.written)
        done.into = library.call(queries.setting, "runner")
        if done.into and done.runner and done.into != done.runner and not whoever:
            raise OtherRunner(
                tr(
                    "This is {theirs}'s record, and this is {mine}'s season. Nothing was changed. "
                    "Open {theirs}, or add a runner, and take it in there.",
                    theirs=done.runner,
                    mine=done.into,
                )
            )
        known = library.call(queries.known_files)
        wanted = [file for file in parts.files if file["sha256"] not in known]
        done.here = len(parts.files) - len(wanted)
        # The other copy's lines first, so that its runs are judged once.
        _add(done, library.call(_merge_plan, parts, token))
        take_files(library, archive, wanted, done, token, progress, stop)
        fresh = {file["sha256"] for file in wanted}
        _add(done, library.call(_merge_pieces, parts, fresh, token))
        _add(done, library.call(_merge_runs, parts, fresh, token))
        if library.call(queries.judged_by_others):
            done.changes |= library.judge_all_again(progress, token=token, stop=stop, step=tr(STEP))
        done.stopped |= stop.is_set()
        return done
    finally:
        archive.close()


def _add(done: Merged, more: tuple[list[str], list[Conflict], Changes]) -> None:
    done.taken += more[0]
    done.conflicts += more[1]
    done.changes |= more[2]


def _older(what: str, value: Any, known: set[tuple[str, str]]) -> bool:
    """Whether a copy with this knowledge has had what is said here, or nothing is said."""
    nothing = value in ("", None, [])
    return nothing or (what, fingerprint(value)) in known


def _verdict(what: str, mine: Any, theirs: Any, here: set[Any], there: set[Any]) -> str:
    """Whose word holds: "same", "mine", "theirs", or "both" for a conflict."""
    if mine == theirs:
        return "same"
    older_here, older_there = _older(what, mine, there), _older(what, theirs, here)
    if older_here != older_there:
        return "theirs" if older_here else "mine"
    return "both"


def _merge_plan(
    store: Store, parts: Parts, token: object
) -> tuple[list[str], list[Conflict], Changes]:
    """Thresholds, blocks, races, plans, tests and settings, each part as a whole."""
    taken, conflicts, here = [], [], rows.shared(store)
    with store.atomic(tr(STEP), token):
        for table, words in PART_WORDS.items():
            mine, theirs = rows.plan_part(store, table), parts.plan[table]
            what = f"plan:{table}"
            guessed = table == "threshold" and all(row["estimated"] for row in mine)
            verdict = _verdict(what, mine, theirs, here, parts.shared)
            if verdict == "theirs" or (verdict == "both" and guessed):
                put_part(store, table, theirs)
                taken.append(tr(words))
            elif verdict == "both":
                conflicts.append(
                    Conflict(_capital(tr(words)), mine, theirs, part=table, rows=tuple(theirs))
                )
                continue
            store.put("shared", {"what": what, "hash": fingerprint(theirs)})
        own = rows.settings(store, SETTINGS)
        for name, value in parts.settings.items():
            if not own.get(name) and not name.startswith(REVIEW):
                store.put("setting", {"name": name, "value": value})
        reviewed, told = _merge_reviews(store, parts, here)
        taken, conflicts = taken + reviewed, conflicts + told
    changed = Changes(thresholds=True, plan=True, settings=True, step=tr(STEP))
    return taken, conflicts, changed if taken else Changes()


def _merge_reviews(
    store: Store, parts: Parts, here: set[tuple[str, str]]
) -> tuple[list[str], list[Conflict]]:
    """Words and choices of reviews, each review as a whole, inside an open step."""
    taken, conflicts, own = [], [], rows.settings_like(store, REVIEW)
    for name, value in parts.settings.items():
        if not name.startswith(REVIEW):
            continue
        mine = own.get(name, "")
        verdict = _verdict(name, mine, value, here, parts.shared)
        row: Row = {"name": name, "value": value}
        if verdict == "both":
            about = tr(
                "Words of the review from {day}",
                day=name.removeprefix(REVIEW).partition("..")[0],
            )
            here_said, there_said = choices.in_words(mine), choices.in_words(value)
            conflicts.append(Conflict(about, here_said, there_said, setting=name, rows=(row,)))
            continue
        if verdict == "theirs":
            store.put("setting", row)
            taken.append(tr("words of a review"))
        store.put("shared", {"what": name, "hash": fingerprint(value)})
    return taken, conflicts


def put_part(store: Store, table: str, theirs: Sequence[Row]) -> None:
    """Put a part's rows in place of those that are here, inside an open step.

    Raises
    ------
    RecordError
        If a row cannot be one of this part.
    """
    for number in rows.plan_ids(store, table):
        store.remove(table, number)
    known = rows.columns(store, table)
    for row in theirs:
        store.put(table, {name: row[name] for name in row if name in known and name != "id"})


def _merge_pieces(
    store: Store, parts: Parts, fresh: set[str], token: object
) -> tuple[list[str], list[Conflict], Changes]:
    """Runs that were joined, cut or typed, those of the same files as a whole."""
    taken = kept = 0
    here, own = rows.shared(store), record_pieces.pieced(store)
    mine_said = {(run["sha256"], run["part"]): run for run in rows.runs(store)}
    with store.atomic(tr(STEP), token):
        for files, theirs in record_pieces.groups(parts.pieces):
            mine = [piece for piece in own if piece.files & files]
            what, told = record_pieces.saying(files, theirs)
            verdict = _verdict(what, record_pieces.saying(files, mine)[1], told, here, parts.shared)
            if verdict != "same" and files <= fresh:
                verdict = "theirs"
            elif verdict == "theirs" and _shaded_here(mine_said, files, parts):
                verdict = "both"
            if verdict == "theirs":
                record_pieces.replace_by(store, mine, theirs)
                taken += 1
            elif verdict == "both":
                kept += 1
                continue
            store.put("shared", {"what": what, "hash": fingerprint(told)})
    words = [tr("{n} joined, cut or typed", n=taken)] if taken else []
    words += [tr("{n} joined, cut or typed otherwise here and left so", n=kept)] if kept else []
    return words, [], Changes(runs=True, step=tr(STEP)) if taken else Changes()


def _shaded_here(mine: dict[Any, Row], files: set[str], parts: Parts) -> bool:
    """Whether stretches of these files were shaded here and the other copy has not had that."""
    held = [run for place, run in mine.items() if place[0] in files and run["corrections"]]
    return any(
        not _older(subject(run, "corrections"), said(run)["corrections"], parts.shared)
        for run in held
    )


def _merge_runs(
    store: Store, parts: Parts, fresh: set[str], token: object
) -> tuple[list[str], list[Conflict], Changes]:
    """What was said about runs, field by field; of a fresh run all of it is taken."""
    counts: dict[str, int] = {}
    conflicts: list[Conflict] = []
    read: dict[str, dict[int, Row]] = {}
    here, numbers = rows.shared(store), rows.run_numbers(store)
    mine = {(run["sha256"], run["part"]): run for run in rows.runs(store)}
    by_number = {numbers[place]: run for place, run in mine.items()}
    with store.atomic(tr(STEP), token):
        for run in parts.runs:
            number = next((numbers[place] for place in places(run) if place in numbers), None)
            if number is None:
                continue
            own = by_number[number]
            for name, theirs in said(run).items():
                own_value = said(own)[name]
                what = subject(run, name)
                verdict = _verdict(what, own_value, theirs, here, parts.shared)
                if verdict == "both" and run["sha256"] in fresh:
                    verdict = "theirs"
                elif verdict == "both" and name in ("kind", "day"):
                    verdict = _against_file(store, own, name, own_value, theirs, read)
                if verdict == "theirs":
                    put_field(store, number, run, name)
                    counts[name] = counts.get(name, 0) + 1
                elif verdict == "both":
                    conflicts.append(_run_conflict(run, name, own_value, theirs))
                    continue
                if verdict != "same" or theirs not in ("", None, []):
                    store.put("shared", {"what": what, "hash": fingerprint(theirs)})
    taken = [several(count, *FIELD_COUNTS[name]) for name, count in counts.items()]
    return taken, conflicts, Changes(runs=True, step=tr(STEP)) if taken else Changes()


def _against_file(
    store: Store, run: Row, name: str, mine: Any, theirs: Any, read: dict[str, dict[int, Row]]
) -> str:
    """Whose word holds where one of the two is only what the file itself says.

    ``read`` keeps what files said: a log of many runs is read once and not for each of them.
    """
    sha256 = run["sha256"]
    if sha256 not in read:
        terms = reading.Terms(zone=queries.setting(store, "zone"))
        found = reading.read_file(str(store.originals.path(sha256)), terms)
        read[sha256] = {item.run["part"]: item.run for item in found.runs}
    own = read[sha256].get(run["part"])
    raw = said({**run, **own})[name] if own is not None else None
    if own is None or raw not in (mine, theirs):
        return "both"
    return "theirs" if raw == mine else "mine"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _run_conflict(run: Row, name: str, mine: Any, theirs: Any) -> Conflict:
    day = date.fromisoformat(run["day"])
    about = tr(
        "Run of {day} {month} {year}: {what}",
        day=day.day,
        month=month(day.month),
        year=day.year,
        what=tr(FIELD_WORDS[name]),
    )
    return Conflict(about, mine, theirs, run=run, saying=name)


def put_field(store: Store, number: int, run: Row, name: str) -> None:
    """Put what a record says about a run in one field, inside an open step."""
    now = datetime.now(UTC).isoformat(timespec="seconds")
    if name == "corrections":
        for held in rows.correction_ids(store, number):
            store.remove("correction", held)
        known = rows.columns(store, "correction")
        for item in run["corrections"]:
            kept = {key: item[key] for key in item if key in known and key != "id"}
            store.put("correction", {"said_at": now, **kept, "run_id": number})
    else:
        columns = {
            "note": ("note",),
            "effort": ("effort",),
            "meant": ("meant",),
            "kind": ("sport", "kind"),
            "day": ("start_utc", "utc_offset_s", "day"),
        }[name]
        store.put("run", {"id": number, "said_at": now, **{key: run[key] for key in columns}})
    if name in ("corrections", "kind"):
        rejudge.judge_one(store, number)


def choose(store: Store, kept: Sequence[Conflict], taken: Sequence[Conflict]) -> Changes:
    """Settle where two copies differ, as one undo step; it is not asked about again."""
    step = (
        tr("Take the other copy's word for {n}", n=len(taken))
        if taken
        else tr("Keep this copy's word")
    )
    numbers = rows.run_numbers(store)
    with store.atomic(step):
        for item in taken:
            if item.part:
                put_part(store, item.part, item.rows)
            elif item.setting:
                store.put("setting", item.rows[0])
            elif item.run is not None:
                number = next((numbers[at] for at in places(item.run) if at in numbers), None)
                if number is not None:
                    put_field(store, number, item.run, item.saying)
        for item in (*kept, *taken):
            what, theirs = f"plan:{item.part}", item.theirs
            if item.run is not None:
                what = subject(item.run, item.saying)
            elif item.setting:
                what, theirs = item.setting, item.rows[0]["value"]
            store.put("shared", {"what": what, "hash": fingerprint(theirs)})
    return Changes(runs=True, thresholds=True, plan=True, settings=True, step=step)
