"""One file to judged rows: read, rounded, judged, packed; runs in worker processes."""

from __future__ import annotations

import json
import logging
import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import numpy as np

from tercet import engine, formats
from tercet.domain import DatedThresholds, Failed, RaceResult, Recording, Stream
from tercet.engine import causes, judging, timeline
from tercet.engine.corrections import Correction
from tercet.engine.gist import Gist, gist, gist_of_pieces
from tercet.engine.known import NOTHING, Known
from tercet.engine.repetitions import in_words
from tercet.engine.scale import Floats
from tercet.formats.paper import FORMAT as PAPER
from tercet.formats.paper import Page, Shorthand
from tercet.formats.table import FORMAT as TABLE
from tercet.formats.table import Naming, Table
from tercet.formats.unpack import MAX_BYTES, Counted, Refused
from tercet.language import tr
from tercet.library import localtime, season_file, tabled, unset_clock, written
from tercet.library.beside import presses
from tercet.library.dated import in_force as in_force
from tercet.library.known_race import known_race, pair_of
from tercet.library.localtime import Local
from tercet.library.parting import at_long_gaps
from tercet.library.sources import UNREADABLE, Source, why
from tercet.library.stored import engine_streams, stored_judgement
from tercet.library.written import Said
from tercet.store import packing
from tercet.store.queries import METRES, SECONDS

Row = dict[str, Any]
log = logging.getLogger(__name__)
#: Mean speed while moving of what may pass for running if the file does not say. [m/s]
RUNNER_SPEED = (1.7, 6.5)
#: Mends of leaps, which are no way.
LEAPS = {
    "positions that leap away and back, left out",
    "metres of leaps that nobody runs, left out",
}


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
    source: Source  # where its bytes may be read again
    status: str  # read, refused, passed over, season file
    format: str = ""
    problem: str = ""
    runs: tuple[ReadRun, ...] = ()
    season: season_file.SeasonFile | None = None
    size: int = 0


def judge(recording: Recording, entry: DatedThresholds | None) -> engine.Judgement:
    """Judge a rounded recording by the thresholds of its day."""
    return engine.judge(
        engine_streams(dict(recording.streams)),
        recording.time,
        entry.values if entry is not None else None,
        stops=recording.stops,
        beside=_pressed(recording),
    )


def _pressed(recording: Recording) -> Known:
    return Known(laps=presses(asdict(lap) for lap in recording.laps))


def judgement_row(judged: engine.Judgement, entry: DatedThresholds | None) -> Row:
    """The store's row of a judgement, without its run's id."""
    return _kept_row(gist(judged, entry.values if entry is not None else None), entry)


def _kept_row(kept: Gist, entry: DatedThresholds | None) -> Row:
    return {
        "method": judging.METHOD,
        "threshold_id": entry.id if entry is not None else None,
        **dict(zip(SECONDS, kept.seconds.tolist(), strict=True)),
        **dict(zip(METRES, kept.metres.tolist(), strict=True)),
        "shades": packing.pack_shades(kept.shades),
        "repetitions": json.dumps([vars(rep) for rep in kept.repetitions]),
        "words": in_words(kept.repetitions),
        "causes": _causes_text(kept.parts),
        "spread": kept.spread.astype("<u4").tobytes(),
        "mends": json.dumps(kept.mends),
        "remarks": json.dumps(list(kept.remarks)),
        "intervals": json.dumps(kept.intervals),
    }


def _causes_text(found: Mapping[causes.Cause, causes.Part]) -> str:
    """Moderate seconds by cause, with the speed of that part and the speed that was easy."""
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


def _run_row(recording: Recording, part: int) -> Row:
    """The store's row of a run, without its id, file and local clock, and what judging tells."""
    plain = timeline.summary(engine_streams(dict(recording.streams)), recording.time)
    return {
        "part": part,
        "start_utc": recording.start.timestamp(),
        "sport": sport_by_data(recording.sport, plain),
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
        "stops": json.dumps(recording.stops),
        "laps": json.dumps([vars(lap) for lap in recording.laps]),
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


def _or_none(value: float) -> float | None:
    return None if math.isnan(value) else value


@dataclass(frozen=True)
class Terms:
    """What files are read by: thresholds, the runner's zone, how columns were named, and, for
    diaries, results of races and the runner's own words.
    """

    thresholds: tuple[DatedThresholds, ...] = ()
    zone: str = ""
    namings: Mapping[str, Naming] = field(default_factory=dict)
    start: datetime | None = None  # of a table of samples that counts from its start
    results: tuple[RaceResult, ...] = ()
    shorthand: Shorthand | None = None


def read_file(source: str | Source, terms: Terms) -> ReadFile:
    """Read, judge and pack one file; never raises for what a file holds.

    Parameters
    ----------
    source : str or Source
        A file, or a member of an archive.
    terms : Terms
        Without thresholds every running second stays unjudged.
    """
    source = Source(source) if isinstance(source, str) else source
    if source.member < 0 and source.size > MAX_BYTES:
        return refused(source, tr("It is larger than {size} MB.", size=MAX_BYTES >> 20))
    try:
        with source.open() as opened:
            return _read_opened(source, Counted(opened), terms)
    except Refused as refusal:
        return refused(source, str(refusal))
    except UNREADABLE as error:
        return refused(source, tr("It cannot be read: {reason}.", reason=why(error)))


def refused(source: Source, problem: str) -> ReadFile:
    """A file that was not read."""
    return ReadFile(source.shown, "", source, "refused", problem=problem)


def _read_opened(source: Source, stream: Counted, terms: Terms) -> ReadFile:
    if source.shown.lower().endswith(".toml"):
        return _read_season(source, stream)
    zone = localtime.zone_named(terms.zone)
    told = formats.Told(
        namings=terms.namings, start=terms.start, zone=zone, shorthand=terms.shorthand
    )
    found = formats.read_stream(stream, told)
    name = stream.finish()

    def read(status: str, kind: str, problem: str, runs: tuple[ReadRun, ...] = ()) -> ReadFile:
        return ReadFile(source.shown, name, source, status, kind, problem, runs, size=stream.size)

    if isinstance(found, Failed):
        return read(found.status, found.format, found.reason)
    if isinstance(found, Page):
        return read("read", PAPER, found.problem, prepare_page(found, terms))
    if isinstance(found, Table):
        return read("read", TABLE, found.problem, prepare_table(found, terms))
    if terms.start is not None:
        found = unset_clock.started_at(found, terms.start, terms.zone)
    first = min(recording.start for recording in found)
    if unset_clock.dead_clock(first, datetime.now(UTC)):
        return read("refused", found[0].format, unset_clock.question(first))
    found = at_long_gaps(found)
    runs: list[ReadRun] = []
    kind = found[0].format
    problem = next((recording.damage for recording in found if recording.damage), "")
    while found:
        try:
            # held by nobody else, so that its samples are let go while it is judged
            rounded = [packing.rounded(found.pop(0), in_place=True)]
            runs.append(prepare(rounded.pop(), len(runs), terms.thresholds, terms.zone))
        except Exception as error:  # one file must never end the import of the others
            log.exception("judging %s failed", Path(source.shown).name)
            problem = tr(
                "It was read but could not be judged ({reason}).",
                reason=f"{type(error).__name__}: {error}",
            )
            return read("refused", kind, problem)
    return read("read", kind, problem, tuple(runs))


def _read_season(source: Source, stream: Counted) -> ReadFile:
    data = stream.read(season_file.MAX_BYTES)
    name, size = stream.finish(), stream.size
    try:
        season = season_file.parse(data.decode("utf-8"))
    except (season_file.SeasonFileError, UnicodeDecodeError) as error:
        said = tr("No season file: {reason}.", reason=error)
        return ReadFile(source.shown, name, source, "refused", "TOML", said, size=size)
    return ReadFile(source.shown, name, source, "season file", "TOML", season=season, size=size)


def prepare(
    recording: Recording, part: int, thresholds: Sequence[DatedThresholds], zone_name: str
) -> ReadRun:
    """Judge and pack one rounded recording; needs no samples of it once they are packed."""
    day, local = recording.start.date(), None
    entry = in_force(thresholds, day)
    if any(in_force(thresholds, day + timedelta(days=days)) != entry for days in (-1, 1)):
        local = localtime.local(recording, zone_name)
        entry = in_force(thresholds, localtime.local_day(recording.start, local.offset_s))
    values = entry.values if entry is not None else None
    row, packed = _run_row(recording, part), packing.pack_streams(recording)
    warmth = mean_warmth(recording.streams)
    _, pieces = judging.judged_pieces(
        engine_streams(dict(recording.streams)),
        recording.time,
        values,
        stops=recording.stops,
        beside=_pressed(recording),
    )
    recording = _at_its_middle(recording)
    kept = gist_of_pieces(pieces, values, warmth)
    del pieces  # and with them the line that they were laid out on
    row["climb_m"] = kept.climb_m
    row["fingerprint"] = json.dumps(asdict(kept.fingerprint)) if row["sport"] == "running" else ""
    # What knows the zone of a place takes as much memory as judging: it comes when that is over.
    local = local or localtime.local(recording, zone_name)
    return ReadRun(row | _clock(recording, local), _kept_row(kept, entry), packed)


def _at_its_middle(recording: Recording) -> Recording:
    """A recording of which but the middle value of every stream is left."""

    def middle(values: Floats) -> Floats:
        place = len(values) // 2
        return values[place : place + 1].copy()

    streams = {
        name: Stream(middle(stream.time), middle(stream.values))
        for name, stream in recording.streams.items()
    }
    return replace(recording, time=middle(recording.time), streams=streams)


def _clock(recording: Recording, local: Local) -> Row:
    """What a run's row says of its local clock."""
    return {
        "utc_offset_s": local.offset_s,
        "zone_from": local.source,
        "clock": "",
        "day": localtime.local_day(recording.start, local.offset_s).isoformat(),
    }


def prepare_page(page: Page, terms: Terms) -> tuple[ReadRun, ...]:
    """Judge the runs of a paper log."""
    runs = []
    for part, line in enumerate(page.runs):
        entry = in_force(terms.thresholds, line.start.date())
        race = pair_of(known_race(terms.results, line.start.date()))
        said = written.Said(line.notation, race=race)
        judged = written.judge(said, entry)
        row = written.run_row(line, part, terms.zone, race)
        row |= written.figures(said, judged, entry)
        runs.append(ReadRun(row, judgement_row(judged, entry), {}))
    return tuple(runs)


def prepare_table(table: Table, terms: Terms) -> tuple[ReadRun, ...]:
    """Judge the runs of a table by what the runner said of them."""
    runs = []
    for part, line in enumerate(table.runs):
        entry = in_force(terms.thresholds, line.start.date())
        said = tabled.said_of(line)
        judged = written.judge(said, entry)
        row = tabled.run_row(line, part, judged, entry, terms.zone)
        judgement = judgement_row(judged, entry) | written.metres_without_time(said)
        runs.append(ReadRun(row, judgement, {}))
    return tuple(runs)


def judge_again(
    packed: dict[str, bytes],
    stops: str,
    entry: DatedThresholds | None,
    words: Said | None = None,
    corrections: Sequence[Correction] = (),
    beside: Known = NOTHING,
) -> Row:
    """Judge a stored run again; gives a judgement row. Runs in worker processes.

    ``run`` holds what of the run's own row changes: all of a run without samples, whose lengths go
    by thresholds, and the way of one that leaps, which earlier versions counted.
    """
    judged = stored_judgement(packed, stops, entry, words, corrections, beside)
    row = judgement_row(judged, entry)
    if words is None and judged.mends.keys() & LEAPS:
        clock, streams = packing.unpack_streams(packed)
        plain = timeline.summary(engine_streams(streams), clock)
        return {**row, "run": {"distance_m": plain.distance_m, "moving_s": plain.moving_s}}
    if words is None:
        return row
    figures = written.figures(words, judged, entry)
    return {**row, **written.metres_without_time(words), "run": figures}
