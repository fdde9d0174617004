"""What a user does with a paper log: keep a page, change a run's words, edit the shorthand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime

from tercet.domain import Changes
from tercet.formats.paper import FORMAT, Entry, PaperRun, Shorthand, parse_session
from tercet.formats.paper.shorthand import RESERVED
from tercet.language import mark, several, tr
from tercet.library import paper_log, reading, written
from tercet.library.intake import keep_said
from tercet.library.paper_log import Draft, Known
from tercet.library.reading import Row
from tercet.store import paper_queries, queries
from tercet.store.database import Store
from tercet.store.originals import sha256

#: A line of a page may hold this many sessions.
SESSIONS = 10


def keep(store: Store, draft: Draft, today: date) -> Changes:
    """Keep every run of a page that is read, and the shorthand answered meanwhile: one step.

    A run that is recorded already is attached to the recording and counted once; one that is
    here from paper adds nothing.
    """
    view = paper_log.read(store, draft, today)
    known = Known.of(store)
    data = draft.text.encode("utf-8")
    name = sha256(data)
    store.originals.keep(name, data)
    runs = [row for row in view.rows if row.kept]
    used: set[int] = set()
    count = len(runs)
    step = several(count, mark("Keep {n} run from paper"), mark("Keep {n} runs from paper"))
    with store.atomic(step):
        parts: dict[int, int] = {}
        for row in view.rows:
            entry = row.entry
            if not row.kept and row.state != paper_log.HERE:
                continue
            place = parts[entry.number] = parts.get(entry.number, -1) + 1
            part = SESSIONS * entry.number + place
            page = "" if row.state == paper_log.HERE else name  # a page kept again is known by it
            other = paper_log.stored_run(store, entry, row, known.zone, used, page)
            if other is not None:
                used.add(other["id"])
                if not other["notation"]:
                    kept = {"sha256": name, "part": part, "run_id": other["id"]}
                    store.put("attachment", kept)
                    keep_said(store, other["id"], entry.note, None)
                continue
            used.add(_put(store, _rows(entry, part, known), {"sha256": name}))
        if queries.is_used(store, name):
            store.put("file", _file_row(name, len(data), [row.entry for row in runs]))
        if draft.shorthand is not None:
            own = draft.shorthand
            store.put("setting", paper_queries.shorthand_row(own.words, own.bare))
    return Changes(runs=True, files=True, settings=draft.shorthand is not None, step=step)


def _rows(entry: Entry, part: int, known: Known) -> tuple[Row, Row]:
    """The store's rows of a run and of its judgement."""
    assert entry.start is not None
    force, race = known.on(entry.start.date())
    run = PaperRun(entry.start, entry.notation, entry.number, entry.note, entry.typed)
    said = written.Said(entry.notation, race=race)
    judged = written.judge(said, force)
    row = written.run_row(run, part, known.zone, race)
    row |= written.figures(said, judged, force)
    row["asks"] = " ".join(paper_log.guess_question(guess) for guess in entry.guesses)
    return row, reading.judgement_row(judged, force)


def _put(store: Store, rows: tuple[Row, Row], more: Row) -> int:
    run, judgement = rows
    number = store.put("run", {**run, **more})
    store.put("judgement", {**judgement, "run_id": more.get("id", number)})
    return int(more.get("id", number))


def _file_row(name: str, size: int, entries: list[Entry]) -> Row:
    days = [entry.start.date() for entry in entries if entry.start is not None]
    span = f" from {min(days)}" if days else ""
    return {
        "sha256": name,
        "name": f"Paper log{span}.txt",
        "folder": "",
        "size": size,
        "format": FORMAT,
        "status": "run",
        "problem": "",
        "taken_in": datetime.now(UTC).isoformat(timespec="seconds"),
    }


def line_of(store: Store, run_id: int) -> str:
    """A paper run as the line that it might be read from; nothing for others."""
    row = queries.run(store, run_id)
    if row is None or row["format"] != FORMAT:
        return ""
    half = f" {row['clock']}" if row["clock"] in ("am", "pm") else ""
    return f"{row['day']}{half}: {row['typed'] or row['notation']}"


def change_words(store: Store, run_id: int, draft: Draft, today: date) -> Changes | None:
    """Let a paper run say something else; its note stays unless the line brings one.

    Nothing happens unless the text is one run that is read.
    """
    earlier = queries.run(store, run_id)
    view = paper_log.read(store, replace(draft, changing=run_id), today)
    rows = [row for row in view.rows if row.state in (*paper_log.KEEPABLE, paper_log.HERE)]
    if earlier is None or earlier["format"] != FORMAT or len(rows) != 1:
        return None
    entry = rows[0].entry
    run, judgement = _rows(entry, earlier["part"], Known.of(store))
    step = tr("Change the words of a run")
    with store.atomic(step):
        kept = {"id": run_id, "sha256": earlier["sha256"], "note": entry.note or earlier["note"]}
        _put(store, (run, judgement), {**kept, "effort": earlier["effort"]})
        if draft.shorthand is not None:
            own = draft.shorthand
            store.put("setting", paper_queries.shorthand_row(own.words, own.bare))
    return Changes(runs=True, settings=draft.shorthand is not None, step=step)


def set_shorthand(store: Store, own: Shorthand) -> Changes:
    """Replace this runner's shorthand.

    Raises
    ------
    ValueError
        If a word already means something, or a meaning cannot be read; the message says which.
    """
    check_shorthand(own.words)
    step = tr("Change the shorthand")
    with store.atomic(step):
        store.put("setting", paper_queries.shorthand_row(own.words, own.bare))
    return Changes(settings=True, step=step)


def check_shorthand(words: Mapping[str, str]) -> None:
    """Raise a ValueError, in words, for shorthand that cannot be used."""
    for word, meaning in words.items():
        if word.casefold() in RESERVED:
            raise ValueError(
                tr('"{word}" already has a meaning in every diary: choose another word', word=word)
            )
        if not any(letter.isalpha() for letter in word) or " " in word:
            raise ValueError(tr('"{word}" is no word: write letters without a blank', word=word))
        told = (parse_session(f"20 min {meaning}"), parse_session(meaning))
        if not any(session.pieces and not session.unclear for session in told):
            raise ValueError(
                tr(
                    '"{meaning}" cannot be read: write a word such as easy or threshold',
                    meaning=meaning,
                )
            )
