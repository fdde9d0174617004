"""Runs from a table of one run a line, as rows of the store; only the runner's word judges them."""

from __future__ import annotations

import json
from typing import Any

from tercet import engine
from tercet.domain import DatedThresholds
from tercet.formats.table.runs import FORMAT, TableRun
from tercet.library import localtime, written
from tercet.library.written import Said

Row = dict[str, Any]


def said_of(run: TableRun) -> Said:
    """What a line says, in the notation of paper logs."""
    parts = []
    if run.metres is not None:
        parts.append(f"{run.metres / 1000:.9g} km")
    if run.seconds is not None:
        parts.append(f"in {run.seconds:.9g} s" if parts else f"{run.seconds:.9g} s")
    return Said(" ".join([*parts, run.word]).strip(), FORMAT, run.effort)


def run_row(
    run: TableRun, part: int, judged: engine.Judgement, entry: DatedThresholds | None, zone: str
) -> Row:
    """The store's row of a table's run, without its id and its file."""
    said = said_of(run)
    start = written.moment(run.start, zone)
    return {
        "part": part,
        "start_utc": start.timestamp(),
        "utc_offset_s": localtime.offset_at(start, None, localtime.zone_named(zone)),
        "zone_from": f"{localtime.RUNNER} {zone}".strip(),
        "clock": "" if run.timed else "day",
        "day": run.start.date().isoformat(),
        "sport": run.sport,
        "kind": "race" if run.word == "race" else run.kind,
        "name": run.name,
        "device": "",
        "format": FORMAT,
        "records": 0,
        "channels": "",
        "hr_mean": run.heart_rate,
        "hr_max": run.heart_rate_max,
        "climb_m": run.climb_m,
        "fingerprint": "",  # sums say nothing about thresholds
        "stops": json.dumps([]),
        "laps": json.dumps([]),
        "damage": "",
        "note": run.note,
        "effort": run.effort,
        "notation": said.notation,
        **written.figures(said, judged, entry),
    }
