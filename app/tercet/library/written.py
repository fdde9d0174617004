"""Runs from paper logs and tables: judged by words, and told from recordings of the same run."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any

from tercet import engine
from tercet.domain import DatedThresholds
from tercet.engine.known import shade_of_effort
from tercet.engine.notation import Bout, Piece, Stretch, judge_pieces, stretches
from tercet.engine.scale import Shade
from tercet.formats.paper import FORMAT, PaperRun, parse_session
from tercet.formats.paper.lines import STARTS
from tercet.formats.table.runs import FORMAT as TABLE
from tercet.language import tr
from tercet.library import localtime
from tercet.library.known_race import basis
from tercet.store import queries
from tercet.store.database import Store

Row = dict[str, Any]
#: A paper entry and a recording of the day are one run if they last alike to this share.
SAME_SECONDS = 0.25
#: Where an entry has no time, its distance and the recording's are alike to this share.
SAME_METRES = 0.1
#: Halves of the local day. [h]
_HALVES = {"am": (0.0, 12.0), "pm": (12.0, 24.0)}
#: What an entry's hour stands for: no diary says more of the time of day.
CLOCKS = {at.hour: half or "day" for half, at in STARTS.items()}


@dataclass(frozen=True)
class Said:
    """What is known of a run without samples.

    ``notation`` is the session as typed; of a table's run its sums, and the word if there was
    one. ``effort`` is the session RPE (CR-10) or None. ``race`` is a known race, [s] and [m],
    that paces written as those of another race are reckoned from.
    """

    notation: str
    format: str = FORMAT
    effort: int | None = None
    race: tuple[float, float] | None = None

    @property
    def sums(self) -> bool:
        """Whether only sums are known: their mean pace judges nothing, and nothing is inferred."""
        return self.format == TABLE


def said_by(row: Any) -> Said | None:
    """What a stored run's row says in words, None for a recording.

    The known race is the one of the day on which it was kept, so judging it again gives the same.
    """
    if not row["notation"]:
        return None
    race = (row["known_s"], row["known_m"]) if row["known_s"] and row["known_m"] else None
    return Said(row["notation"], row["format"], row["effort"], race)


def word_of(effort: int) -> str:
    """The word that a session RPE stands for.

    Up to 4 easy, from 7 hard, between them moderate: Seiler and Kjerland 2006, Scand J Med Sci
    Sports 16:49-56 (from memory).
    """
    return shade_of_effort(effort).name.lower()


def pieces_of(said: Said) -> tuple[Piece, ...]:
    """Its pieces; sums without a word take the one that the effort stands for."""
    pieces = parse_session(said.notation).pieces
    if not said.sums or said.effort is None:
        return pieces
    word = word_of(said.effort)
    return tuple(
        piece if piece.work.word else replace(piece, work=replace(piece.work, word=word))
        for piece in pieces
    )


def stretches_of(said: Said, entry: DatedThresholds | None) -> list[Stretch]:
    """Its stretches by the thresholds of its day; sums need none."""
    values = entry.values if entry is not None and not said.sums else None
    return stretches(pieces_of(said), values, said.race)


def judge(said: Said, entry: DatedThresholds | None) -> engine.Judgement:
    """Judge a session as typed, by the thresholds of its day.

    What is not understood adds nothing and is named in the remarks.
    """
    session = parse_session(said.notation)
    values = entry.values if entry is not None and not said.sums else None
    judged = judge_pieces(pieces_of(said), values, said.race)
    remarks = [
        tr(
            'Not understood and not counted: "{text}". {question}',
            text=piece.text,
            question=piece.question,
        )
        for piece in session.unclear
    ]
    run = stretches_of(said, entry)
    if any(item.seconds is None for item in run):
        remarks.append(
            tr("How long it took is not known: its distance counts, its time does not.")
            if said.sums
            else tr("Pieces without a time are not counted until both speeds are known.")
        )
    if any(item.shade == Shade.UNJUDGED for item in run):
        remarks.append(
            tr("A table knows no samples: it is judged once an effort is said.")
            if said.sums
            else tr("Pieces without a word or a pace are not judged.")
        )
    if any(bout.race_m is not None for bout in _bouts(session.pieces)):
        remarks.append(basis(said.race))
    return replace(judged, remarks=tuple(remarks))


def _bouts(pieces: tuple[Piece, ...]) -> list[Bout]:
    return [bout for piece in pieces for _, bout in piece.bouts()]


def figures(said: Said, judged: engine.Judgement, entry: DatedThresholds | None) -> Row:
    """Parts of a run's row that follow from the thresholds: its seconds and its metres."""
    elapsed = judged.elapsed_s
    standing = float(judged.seconds_by_shade()[Shade.NOT_RUNNING])
    return {
        "elapsed_s": elapsed,
        "moving_s": elapsed - standing,
        "distance_m": sum(item.metres or 0.0 for item in stretches_of(said, entry)),
    }


def metres_without_time(said: Said) -> Row:
    """Metres by shade of a run whose time is not known: no second is there to lay them on."""
    told = stretches_of(said, None)
    if not said.sums or any(item.seconds for item in told):
        return {}
    sums = dict.fromkeys(queries.METRES, 0.0)
    for item in told:
        sums[queries.METRES[item.shade]] += item.metres or 0.0
    return dict(sums)


def moment(start: datetime, zone_name: str) -> datetime:
    """A start by the runner's clock as an aware moment."""
    zone = localtime.zone_named(zone_name)
    local = start.astimezone() if zone is None else start.replace(tzinfo=zone)
    return local.astimezone(UTC)


def run_row(
    run: PaperRun, part: int, zone_name: str, race: tuple[float, float] | None = None
) -> Row:
    """The store's row of a paper run, without its figures, its id and its file."""
    start = moment(run.start, zone_name)
    offset = localtime.offset_at(start, None, localtime.zone_named(zone_name))
    bouts = _bouts(parse_session(run.notation).pieces)
    races = [bout for bout in bouts if bout.word == "race"]
    result = next((bout for bout in races if bout.seconds and bout.metres), None)
    return {
        "part": part,
        "start_utc": start.timestamp(),
        "utc_offset_s": offset,
        "zone_from": f"{localtime.RUNNER} {zone_name}".strip(),
        "clock": CLOCKS.get(run.start.hour, ""),
        "day": run.start.date().isoformat(),
        "sport": "running",
        "kind": "race" if races else "",
        "name": "",
        "device": "",
        "format": FORMAT,
        "records": 0,
        "channels": "",
        "hr_mean": None,
        "hr_max": None,
        "climb_m": None,
        "fingerprint": "",  # words say nothing about thresholds
        "stops": json.dumps([]),
        "laps": json.dumps([]),
        "damage": "",
        "note": run.note,
        "notation": run.notation,
        "typed": run.typed if run.typed != run.notation else "",
        "known_s": race[0] if race is not None else None,
        "known_m": race[1] if race is not None else None,
        "race_s": result.seconds if result is not None else None,
        "race_m": result.metres if result is not None else None,
    }


def same_run(store: Store, run: Row, sha256: str) -> Row | None:
    """Find the stored run that a new one is, where one of the two is from paper.

    Parameters
    ----------
    store : Store
    run : dict
        The new run's row.
    sha256 : str
        Its file.

    Returns
    -------
    dict or None
        For a paper run: a recording of the same local day, in the same half of it where the
        entry says am or pm, whose elapsed or moving time is its own within 25 %; a recording
        stands for one line of a page only. Else the same words in another file for the same
        day and half. For a recording: a paper run by the same rule. Of several the one whose
        length is nearest.
    """
    stored = [dict(row) for row in queries.runs_of_day(store, run["day"])]
    if not run["notation"]:
        return _nearest([(_apart(run, row), row) for row in stored if row["notation"]])
    recorded = []
    for row in stored:
        used = any(file == sha256 for file, _ in queries.attachments(store, row["id"]))
        if not row["notation"] and not used:
            recorded.append((_apart(row, run), row))
    found = _nearest(recorded)
    if found is not None:
        return found
    return next(
        (
            row
            for row in stored
            if row["sha256"] != sha256
            and row["start_utc"] == run["start_utc"]
            and _folded(row["notation"]) == _folded(run["notation"])
        ),
        None,
    )


def _folded(notation: str) -> str:
    return " ".join(notation.casefold().split())


def _nearest(found: list[tuple[float | None, Row]]) -> Row | None:
    """Of runs with how far their lengths are apart the nearest; None where none fits."""
    fit = [(apart, place) for place, (apart, _) in enumerate(found) if apart is not None]
    return found[min(fit)[1]][1] if fit else None


def _apart(recording: Row, paper: Row) -> float | None:
    """How far a recording's length is from that of a paper entry; None if it is not its run."""
    if recording["sport"] != "running" or not (paper["elapsed_s"] or paper["distance_m"]):
        return None
    begin, end = _HALVES.get(paper["clock"], (0.0, 24.0))
    start = localtime.local_time(recording["start_utc"], recording["utc_offset_s"])
    first = start.hour + start.minute / 60
    if first >= end or first + recording["elapsed_s"] / 3600 <= begin:
        return None
    if not paper["elapsed_s"]:
        metres = abs(recording["distance_m"] / paper["distance_m"] - 1.0)
        return metres if metres <= SAME_METRES else None
    lengths = (recording["elapsed_s"], recording["moving_s"])
    seconds = min(abs(length / paper["elapsed_s"] - 1.0) for length in lengths)
    return seconds if seconds <= SAME_SECONDS else None
