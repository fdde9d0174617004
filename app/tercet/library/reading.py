"""One file to judged rows: read, rounded, judged, packed; runs in worker processes."""

from __future__ import annotations

import json
import logging
import math
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

import numpy as np

from tercet import engine, formats
from tercet.domain import DatedThresholds, Failed, Recording, Stream
from tercet.engine import causes, curve, judging, timeline
from tercet.engine.cleaning import moving_mean
from tercet.engine.corrections import Correction, apply_corrections
from tercet.engine.fingerprint import fingerprint
from tercet.engine.repetitions import in_words
from tercet.formats.paper import FORMAT as PAPER
from tercet.formats.paper import Page
from tercet.library import localtime, season_file, written
from tercet.store import packing
from tercet.store.originals import sha256
from tercet.store.queries import METRES, SECONDS

Row = dict[str, Any]
log = logging.getLogger(__name__)
#: Larger files than this are refused unread. [bytes]
LARGEST_FILE = 512 * 2**20
#: Mean speed while moving of what may pass for running if the file does not say. [m/s]
RUNNER_SPEED = (1.7, 6.5)


@dataclass(frozen=True)
class ReadRun:
    """One activity of a file, ready to be put into the store."""

    run: Row
    judgement: Row
    streams: dict[str, bytes]
    same_as: str = ""  # in words, set when taken in


@dataclass(frozen=True)
class ReadFile:
    """What became of one file."""

    path: str
    sha256: str
    data: bytes
    status: str  # read, refused, passed over, season file
    format: str = ""
    problem: str = ""
    runs: tuple[ReadRun, ...] = ()
    season: season_file.SeasonFile | None = field(default=None)


def in_force(entries: Sequence[DatedThresholds], day: date) -> DatedThresholds | None:
    """The thresholds of a day: the last that start on or before it, else the first of all."""
    if not entries:
        return None
    ordered = sorted(entries, key=lambda entry: entry.start)
    at = bisect_right([entry.start for entry in ordered], day)
    return ordered[max(at - 1, 0)]


def engine_streams(streams: dict[str, Stream]) -> dict[str, tuple[Any, Any]]:
    """Streams as the engine takes them."""
    return {name: (stream.time, stream.values) for name, stream in streams.items()}


def judge(recording: Recording, entry: DatedThresholds | None) -> engine.Judgement:
    """Judge a rounded recording by the thresholds of its day."""
    return engine.judge(
        engine_streams(dict(recording.streams)),
        recording.time,
        entry.values if entry is not None else None,
        stops=recording.stops,
    )


def judgement_row(judged: engine.Judgement, entry: DatedThresholds | None) -> Row:
    """The store's row of a judgement, without its run's id."""
    seconds, metres = judged.seconds_by_shade(), judged.metres_by_shade()
    return {
        "method": judging.METHOD,
        "threshold_id": entry.id if entry is not None else None,
        **dict(zip(SECONDS, seconds.tolist(), strict=True)),
        **dict(zip(METRES, metres.tolist(), strict=True)),
        "shades": packing.pack_shades(judged.shades),
        "repetitions": json.dumps([asdict(rep) for rep in judged.repetitions]),
        "words": in_words(judged.repetitions),
        "causes": causes_text(judged, entry),
        "spread": curve.spread(judged).astype("<u4").tobytes(),
        "mends": json.dumps(dict(judged.mends)),
        "remarks": json.dumps(list(judged.remarks)),
        "intervals": json.dumps(judged.intervals),
    }


def causes_text(judged: engine.Judgement, entry: DatedThresholds | None) -> str:
    """Moderate seconds by cause, with the speed of that part and the speed that was easy."""
    values = entry.values if entry is not None else None
    found = causes.parts(judged, values, causes.causes(judged, values))
    rows = {
        cause.name: [
            round(part.seconds, 1),
            *(None if math.isnan(v) else round(v, 3) for v in (part.speed, part.easy_speed)),
        ]
        for cause, part in found.items()
    }
    return json.dumps(rows, separators=(",", ":"))


def start_place(recording: Recording) -> str:
    """Where about a run began, to some 200 m, so that loops can be told apart; never shown."""
    both = [recording.streams.get(name) for name in ("latitude", "longitude")]
    if any(stream is None or not len(stream.values) for stream in both):
        return ""
    return " ".join(f"{float(stream.values[0]):.3f}" for stream in both if stream is not None)


def run_row(recording: Recording, part: int, judged: engine.Judgement, zone_name: str) -> Row:
    """The store's row of a run, without its id and its file."""
    plain = timeline.summary(engine_streams(dict(recording.streams)), recording.time)
    offset = localtime.offset_at(
        recording.start, recording.utc_offset_s, localtime.zone_named(zone_name)
    )
    sport = sport_by_data(recording.sport, plain)
    return {
        "part": part,
        "start_utc": recording.start.timestamp(),
        "utc_offset_s": offset,
        "day": localtime.local_day(recording.start, offset).isoformat(),
        "sport": sport,
        "kind": recording.kind,
        "name": recording.name,
        "device": recording.device,
        "format": recording.format,
        "records": recording.records,
        "channels": " ".join(sorted(recording.streams)),
        "elapsed_s": plain.elapsed_s,
        "moving_s": plain.moving_s,
        "distance_m": plain.distance_m,
        "hr_mean": _or_none(plain.hr_mean),
        "hr_max": _or_none(plain.hr_max),
        "climb_m": climb(judged.altitude),
        "fingerprint": json.dumps(asdict(fingerprint(judged, mean_warmth(recording.streams))))
        if sport == "running"
        else "",
        "stops": json.dumps(recording.stops),
        "laps": json.dumps([asdict(lap) for lap in recording.laps]),
        "damage": recording.damage,
        "notation": "",
        "place": start_place(recording),
    }


def sport_by_data(sport: str, plain: timeline.Summary) -> str:
    """A missing sport is running if the speed while moving is a runner's, else stays unknown."""
    if sport != "unknown" or plain.moving_s < 60:
        return sport
    low, high = RUNNER_SPEED
    return "running" if low <= plain.distance_m / plain.moving_s <= high else "unknown"


def mean_warmth(streams: Mapping[str, Stream]) -> float | None:
    """Mean temperature that the watch recorded, None without. [degrees C]"""
    kept = streams.get("temperature")
    return round(float(np.mean(kept.values)), 1) if kept is not None and len(kept.values) else None


def climb(altitude: Any) -> float | None:
    """Metres climbed, from altitude calmed over half a minute with steps under 2 m left out."""
    known = np.asarray(altitude, dtype=np.float64)
    known = known[np.isfinite(known)]
    if len(known) < 60:
        return None
    calm = moving_mean(known, 31)
    total, low = 0.0, float(calm[0])
    for height in calm[::5].tolist():
        if height < low:
            low = height
        elif height - low >= 2.0:
            total += height - low
            low = height
    return total


def _or_none(value: float) -> float | None:
    return None if math.isnan(value) else value


def read_file(path: str, thresholds: Sequence[DatedThresholds], zone_name: str) -> ReadFile:
    """Read, judge and pack one file; never raises for what a file holds.

    Parameters
    ----------
    path : str
        A file.
    thresholds : sequence of DatedThresholds
        Empty: every running second stays unjudged.
    zone_name : str
        The runner's IANA zone, or "" for the computer's.
    """
    place = Path(path)
    try:
        if place.stat().st_size > LARGEST_FILE:
            return ReadFile(path, "", b"", "refused", problem="It is larger than 512 MB.")
        data = place.read_bytes()
    except OSError as error:
        return ReadFile(path, "", b"", "refused", problem=f"It cannot be read: {error.strerror}.")
    name = sha256(data)
    if place.suffix.lower() == ".toml":
        try:
            season = season_file.parse(data.decode("utf-8"))
        except (season_file.SeasonFileError, UnicodeDecodeError) as error:
            return ReadFile(path, name, data, "refused", "TOML", f"No season file: {error}.")
        return ReadFile(path, name, data, "season file", "TOML", season=season)
    found = formats.read_bytes(data)
    if isinstance(found, Failed):
        return ReadFile(path, name, data, found.status, found.format, found.reason)
    if isinstance(found, Page):
        lines = prepare_page(found, thresholds, zone_name)
        return ReadFile(path, name, data, "read", PAPER, found.problem, lines)
    runs = []
    for part, raw in enumerate(found):
        recording = packing.rounded(raw)
        try:
            runs.append(prepare(recording, part, thresholds, zone_name))
        except Exception as error:  # one file must never end the import of the others
            log.exception("judging %s failed", place.name)
            problem = f"It was read but could not be judged ({type(error).__name__}: {error})."
            return ReadFile(path, name, data, "refused", recording.format, problem)
    problem = next((recording.damage for recording in found if recording.damage), "")
    return ReadFile(path, name, data, "read", found[0].format, problem, tuple(runs))


def prepare(
    recording: Recording, part: int, thresholds: Sequence[DatedThresholds], zone_name: str
) -> ReadRun:
    """Judge and pack one rounded recording."""
    offset = localtime.offset_at(
        recording.start, recording.utc_offset_s, localtime.zone_named(zone_name)
    )
    entry = in_force(thresholds, localtime.local_day(recording.start, offset))
    judged = judge(recording, entry)
    return ReadRun(
        run_row(recording, part, judged, zone_name),
        judgement_row(judged, entry),
        packing.pack_streams(recording),
    )


def prepare_page(
    page: Page, thresholds: Sequence[DatedThresholds], zone_name: str
) -> tuple[ReadRun, ...]:
    """Judge the runs of a paper log."""
    runs = []
    for part, line in enumerate(page.runs):
        entry = in_force(thresholds, line.start.date())
        judged = written.judge(line.notation, entry)
        row = written.run_row(line, part, judged, zone_name)
        row |= written.figures(line.notation, judged, entry)
        runs.append(ReadRun(row, judgement_row(judged, entry), {}))
    return tuple(runs)


def stored_judgement(
    packed: dict[str, bytes],
    stops: str,
    entry: DatedThresholds | None,
    notation: str = "",
    corrections: Sequence[Correction] = (),
) -> engine.Judgement:
    """Judge stored streams, or the words of a paper run, again by (other) thresholds.

    The runner's corrections are put over the judgement, whatever it has become.
    """
    if notation:
        return apply_corrections(written.judge(notation, entry), corrections)
    clock, streams = packing.unpack_streams(packed)
    spans = [(float(a), float(b)) for a, b in json.loads(stops)]
    judged = engine.judge(
        engine_streams(streams), clock, entry.values if entry is not None else None, stops=spans
    )
    return apply_corrections(judged, corrections)


def judge_again(
    packed: dict[str, bytes],
    stops: str,
    entry: DatedThresholds | None,
    notation: str = "",
    corrections: Sequence[Correction] = (),
) -> Row:
    """Judge a stored run again; gives a judgement row. Runs in worker processes.

    For a paper run ``run`` holds what of its own row changes with the thresholds.
    """
    judged = stored_judgement(packed, stops, entry, notation, corrections)
    row = judgement_row(judged, entry)
    return {**row, "run": written.figures(notation, judged, entry)} if notation else row
