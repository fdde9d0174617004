"""Runs from a paper log: judged by their words, and told from recordings of the same run."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from tercet import engine
from tercet.domain import DatedThresholds
from tercet.engine.notation import judge_pieces, stretches
from tercet.engine.scale import Shade
from tercet.formats.paper import FORMAT, PaperRun, parse_session
from tercet.library import localtime
from tercet.store import queries
from tercet.store.database import Store

Row = dict[str, Any]
#: A paper entry and a recording of the day are one run if they last alike to this share.
SAME_SECONDS = 0.25
#: Halves of the local day that an entry's hour stands for. [h]
_HALVES = {7: (0.0, 12.0), 18: (12.0, 24.0)}


def judge(notation: str, entry: DatedThresholds | None) -> engine.Judgement:
    """Judge a session as typed, by the thresholds of its day.

    What is not understood adds nothing and is named in the remarks.
    """
    session = parse_session(notation)
    values = entry.values if entry is not None else None
    judged = judge_pieces(session.pieces, values)
    remarks = [
        f'Not understood and not counted: "{piece.text}". {piece.question}'
        for piece in session.unclear
    ]
    run = stretches(session.pieces, values)
    if any(item.seconds is None for item in run):
        remarks.append("Pieces without a time are not counted until both speeds are known.")
    if any(item.shade == Shade.UNJUDGED for item in run):
        remarks.append("Pieces without a word or a pace are not judged.")
    return replace(judged, remarks=tuple(remarks))


def figures(notation: str, judged: engine.Judgement, entry: DatedThresholds | None) -> Row:
    """Parts of a run's row that follow from the thresholds: its seconds and its metres."""
    values = entry.values if entry is not None else None
    told = stretches(parse_session(notation).pieces, values)
    elapsed = judged.elapsed_s
    standing = float(judged.seconds_by_shade()[Shade.NOT_RUNNING])
    return {
        "elapsed_s": elapsed,
        "moving_s": elapsed - standing,
        "distance_m": sum(item.metres or 0.0 for item in told),
    }


def moment(run: PaperRun, zone_name: str) -> datetime:
    """The run's start as an aware moment; its clock is the runner's."""
    zone = localtime.zone_named(zone_name)
    local = run.start.astimezone() if zone is None else run.start.replace(tzinfo=zone)
    return local.astimezone(UTC)


def run_row(run: PaperRun, part: int, judged: engine.Judgement, zone_name: str) -> Row:
    """The store's row of a paper run, without its figures, its id and its file."""
    start = moment(run, zone_name)
    offset = localtime.offset_at(start, None, localtime.zone_named(zone_name))
    pieces = parse_session(run.notation).pieces
    return {
        "part": part,
        "start_utc": start.timestamp(),
        "utc_offset_s": offset,
        "day": run.start.date().isoformat(),
        "sport": "running",
        "kind": "race"
        if any(b.word == "race" for piece in pieces for _, b in piece.bouts())
        else "",
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
        day and half. For a recording: the first paper run that it is by the same rule.
    """
    stored = [dict(row) for row in queries.runs_of_day(store, run["day"])]
    if not run["notation"]:
        return next((row for row in stored if row["notation"] and _covers(run, row)), None)
    for row in stored:
        used = any(file == sha256 for file, _ in queries.attachments(store, row["id"]))
        if not row["notation"] and not used and _covers(row, run):
            return row
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


def _covers(recording: Row, paper: Row) -> bool:
    """Whether a recording is the run of a paper entry of the same day."""
    if recording["sport"] != "running" or paper["elapsed_s"] <= 0:
        return False
    hour = localtime.local_time(paper["start_utc"], paper["utc_offset_s"]).hour
    begin, end = _HALVES.get(hour, (0.0, 24.0))
    start = localtime.local_time(recording["start_utc"], recording["utc_offset_s"])
    first = start.hour + start.minute / 60
    if first >= end or first + recording["elapsed_s"] / 3600 <= begin:
        return False
    lengths = (recording["elapsed_s"], recording["moving_s"])
    return any(abs(length / paper["elapsed_s"] - 1.0) <= SAME_SECONDS for length in lengths)
