"""``tercet tally``: recordings and diaries judged without a window, as words, CSV or JSON."""

from __future__ import annotations

import argparse
import csv
import json
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any, TextIO

from tercet import engine, formats
from tercet.domain import DatedThresholds, Failed, Recording
from tercet.engine import estimate, timeline
from tercet.engine.fingerprint import fingerprint
from tercet.formats.paper import Page
from tercet.formats.table import Table
from tercet.invocation import Parser, UsageError, clock
from tercet.library import localtime, reading, season_file, stored, tabled, written
from tercet.library.parting import at_long_gaps
from tercet.library.sources import find_files
from tercet.store import packing
from tercet.store.queries import METRES, SECONDS

#: Names of a tally's columns, in order.
COLUMNS = (
    "path",
    "status",
    "problem",
    "format",
    "sport",
    "start_utc",
    "records",
    "elapsed_s",
    "moving_s",
    "distance_m",
    "hr_mean",
    "easy_s",
    "moderate_s",
    "hard_s",
    "not_running_s",
    "unjudged_s",
    "easy_m",
    "moderate_m",
    "hard_m",
    "thresholds",
    "reps",
)


def tally_parser() -> argparse.ArgumentParser:
    """The arguments of ``tercet tally``."""
    tally = Parser(
        prog="tercet tally",
        description="Judge recordings and diaries without a window or a store and print one line "
        "a run.",
    )
    tally.add_argument("paths", nargs="+", type=Path, metavar="PATH", help="files or folders")
    tally.add_argument(
        "--thresholds",
        type=Path,
        metavar="FILE.toml",
        help="dated [[thresholds]]; without it they are estimated from the recordings",
    )
    form = tally.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="a list of objects, one a run")
    form.add_argument("--csv", action="store_true", help="comma-separated, one line a run")
    tally.add_argument(
        "--per-second",
        action="store_true",
        help="add shades: one letter a second, E M H R (not running) U (unjudged)",
    )
    return tally


def run_tally(arguments: Sequence[str], out: TextIO) -> int:
    """``tercet tally``: gives the exit code.

    Raises
    ------
    UsageError
        For a missing path or a bad thresholds file.
    """
    asked = tally_parser().parse_args(arguments)
    for path in asked.paths:
        if not path.exists():
            raise UsageError(f"there is no {path}")
    entries: list[DatedThresholds] = []
    zone = ""
    if asked.thresholds is not None:
        try:
            season = season_file.parse(asked.thresholds.read_text("utf-8"))
        except OSError as error:
            raise UsageError(f"{asked.thresholds} cannot be read: {error.strerror}") from error
        except UnicodeDecodeError as error:
            raise UsageError(f"{asked.thresholds} is not UTF-8 text") from error
        except season_file.SeasonFileError as error:
            raise UsageError(f"{asked.thresholds}: {error}") from error
        if not season.thresholds:
            raise UsageError(f"{asked.thresholds} holds no [[thresholds]]")
        entries, zone = list(season.thresholds), season.zone
    rows = tally(asked.paths, entries, zone, per_second=asked.per_second)
    if asked.json:
        json.dump(rows, out, indent=1, allow_nan=False)
        out.write("\n")
    elif asked.csv:
        _write_csv(rows, out, per_second=asked.per_second)
    else:
        _write_words(rows, out)
    if any(row["status"] == "read" for row in rows):
        return 0
    why = next((row["problem"] for row in rows if row["problem"]), "there is no recording there")
    sys.stderr.write(f"tercet: no run was read: {why}\n")
    return 1


def tally(
    paths: Sequence[Path],
    entries: Sequence[DatedThresholds],
    zone: str = "",
    *,
    per_second: bool = False,
) -> list[dict[str, Any]]:
    """Judge files and folders: one row a run, and one a file that gave none."""
    found: list[tuple[Path, Recording | Failed]] = []
    worded: list[tuple[Path, Page | Table]] = []
    for place in find_files(paths):
        if place.suffix.lower() == ".toml":
            continue
        result = formats.read_path(place)
        if isinstance(result, Failed):
            found.append((place, result))
        elif isinstance(result, Page | Table):
            worded.append((place, result))
        else:
            found += [(place, packing.rounded(recording)) for recording in at_long_gaps(result)]
    estimated = not entries
    if estimated:
        entries = _estimated([rec for _, rec in found if isinstance(rec, Recording)])
    rows = [_row(place, item, entries, zone, estimated, per_second) for place, item in found]
    for place, page in worded:
        rows += _worded_rows(place, page, entries, zone, estimated, per_second)
    return rows


def _estimated(recordings: Sequence[Recording]) -> list[DatedThresholds]:
    prints = []
    for recording in recordings:
        plain = timeline.summary(_streams(recording), recording.time)
        if reading.sport_by_data(recording.sport, plain) == "running":
            prints.append(fingerprint(reading.judge(recording, None)))
    guess = estimate.from_runs(prints)
    if guess is None:
        return []
    return [DatedThresholds(date.min, guess.values, guess.source, True, dict(guess.interval))]


def _streams(recording: Recording) -> dict[str, Any]:
    return stored.engine_streams(dict(recording.streams))


def _row(
    place: Path,
    item: Recording | Failed,
    entries: Sequence[DatedThresholds],
    zone: str,
    estimated: bool,
    per_second: bool,
) -> dict[str, Any]:
    row: dict[str, Any] = dict.fromkeys(COLUMNS)
    row["path"] = str(place)
    if isinstance(item, Failed):
        row |= {"status": "refused", "problem": item.reason, "format": item.format or None}
        return row
    plain = timeline.summary(_streams(item), item.time)
    sport = reading.sport_by_data(item.sport, plain)
    row |= {
        "status": "read" if sport == "running" else "not running",
        "problem": item.damage or None,
        "format": item.format,
        "sport": sport,
        "start_utc": item.start.isoformat().replace("+00:00", "Z"),
        "records": item.records,
        "elapsed_s": round(plain.elapsed_s, 3),
        "moving_s": round(plain.moving_s, 3),
        "distance_m": round(plain.distance_m, 2),
        "hr_mean": None if plain.hr_mean != plain.hr_mean else round(plain.hr_mean, 2),
    }
    if sport != "running":
        return row
    local = localtime.local(item, zone)
    entry = reading.in_force(entries, localtime.local_day(item.start, local.offset_s))
    return row | _judged(reading.judge(item, entry), entry, estimated, per_second)


def _worded_rows(
    place: Path,
    page: Page | Table,
    entries: Sequence[DatedThresholds],
    zone: str,
    estimated: bool,
    per_second: bool,
) -> list[dict[str, Any]]:
    """Rows of a diary or a table; what was not understood in it is told with its first run."""
    told = (
        [(line.start, written.Said(line.notation), "running") for line in page.runs]
        if isinstance(page, Page)
        else [(line.start, tabled.said_of(line), line.sport) for line in page.runs]
    )
    rows: list[dict[str, Any]] = []
    for start, said, sport in told:
        entry = reading.in_force(entries, start.date())
        judged = written.judge(said, entry)
        lengths = written.figures(said, judged, entry)
        row: dict[str, Any] = dict.fromkeys(COLUMNS)
        row |= {
            "path": str(place),
            "status": "read",
            "problem": None if rows else page.problem or None,
            "format": said.format,
            "sport": sport,
            "start_utc": written.moment(start, zone).isoformat().replace("+00:00", "Z"),
            "records": 0,
            **{name: round(value, 2) for name, value in lengths.items()},
        }
        rows.append(row | _judged(judged, entry, estimated, per_second))
    return rows


def _judged(
    judged: engine.Judgement, entry: DatedThresholds | None, estimated: bool, per_second: bool
) -> dict[str, Any]:
    """The part of a row that judging gives."""
    row: dict[str, Any] = {}
    seconds = judged.seconds_by_shade().tolist()
    metres = judged.metres_by_shade().tolist()
    row |= {name: round(value, 3) for name, value in zip(SECONDS, seconds, strict=True)}
    row |= {
        name: round(value, 2) for name, value in zip(METRES, metres, strict=True) if name in COLUMNS
    }
    row["thresholds"] = None if entry is None else ("estimated" if estimated else "given")
    row["reps"] = [
        {
            "start_s": rep.start_s,
            "duration_s": rep.duration_s,
            "distance_m": round(rep.distance_m, 1),
            "shade": engine.LETTERS[rep.shade],
        }
        for rep in judged.repetitions
    ]
    if per_second:
        row["shades"] = judged.letters
    return row


def _write_csv(rows: Sequence[dict[str, Any]], out: TextIO, *, per_second: bool) -> None:
    columns = [*COLUMNS, *(["shades"] if per_second else [])]
    writer = csv.DictWriter(out, columns, lineterminator="\n")
    writer.writeheader()
    for row in rows:
        reps = row["reps"]
        flat = {**row, "reps": "" if reps is None else json.dumps(reps, separators=(",", ":"))}
        writer.writerow({name: _safe(flat.get(name)) for name in columns})


def _safe(value: Any) -> Any:
    """Keep a spreadsheet from taking a file's name or words for a formula."""
    if isinstance(value, str) and value[:1] in ("=", "+", "-", "@", "\t", "\r"):
        return "'" + value
    return "" if value is None else value


def _write_words(rows: Sequence[dict[str, Any]], out: TextIO) -> None:
    width = max((len(Path(row["path"]).name) for row in rows), default=4)
    out.write(
        f"{'file':<{width}}  {'easy':>8} {'moderate':>8} {'hard':>8} {'unjudged':>8}      km\n"
    )
    for row in rows:
        name = Path(row["path"]).name
        if row["status"] != "read":
            reason = row["problem"] or f"{row['sport']}: not counted as running"
            out.write(f"{name:<{width}}  {row['status']}: {reason}\n")
            continue
        times = (clock(row[key]) for key in ("easy_s", "moderate_s", "hard_s", "unjudged_s"))
        about = " about" if row["thresholds"] == "estimated" else ""
        line = " ".join(f"{text:>8}" for text in times)
        out.write(f"{name:<{width}}  {line} {row['distance_m'] / 1000:7.2f}{about}\n")
    judged = [row for row in rows if row["status"] == "read"]
    sums = [sum(row[key] for row in judged) for key in ("easy_s", "moderate_s", "hard_s")]
    if sum(sums):
        share = 100 * sums[0] / sum(sums)
        runs = "1 run" if len(judged) == 1 else f"{len(judged)} runs"
        out.write(
            f"{runs}: easy {clock(sums[0])}, moderate {clock(sums[1])}, "
            f"hard {clock(sums[2])}; {share:.1f} % easy\n"
        )
