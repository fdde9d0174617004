"""Parting a recording in two, and one that was left on for hours into the runs that it holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np

from tercet.domain import Recording, Stream
from tercet.engine.long_lines import LONGEST_S
from tercet.engine.scale import Floats
from tercet.engine.timeline import GAP_S
from tercet.language import grouped, tr

#: Without a sample for so long a recording holds two runs: a rest on the way is shorter, from a
#: morning to an evening it is longer (common practice, no source). [s]
APART_S = 3 * 3600.0
#: What lasts less on either side of it is no run of its own. [s]
RUN_S = 120.0
#: More runs in one recording are not looked for.
MOST_RUNS = 50


def at_long_gaps(recordings: Sequence[Recording]) -> list[Recording]:
    """The recordings of a file, each cut where nothing was recorded for hours.

    One of days is cut at every such gap, and what is no run is left out; else a stretch too short
    for a run stays with the run beside it.

    The first run of each keeps its place, so that parts of a file keep their numbers; further
    ones come behind all of them. Joining two of them takes it back.
    """
    firsts: list[Recording] = []
    rest: list[Recording] = []
    for recording in recordings:
        pieces, at = [recording], long_gaps(recording.time)
        if recording.elapsed_s > LONGEST_S:
            at = [float(recording.time[place]) for place in _after_gaps(recording.time)]
        for at_s in reversed(at):
            pieces[:1] = parted(pieces[0], at_s)
        if recording.elapsed_s > LONGEST_S:
            pieces = _runs_among(pieces)
        firsts.append(pieces[0])
        rest += pieces[1:]
    return firsts + sorted(rest, key=lambda recording: recording.start)


def _runs_among(pieces: list[Recording]) -> list[Recording]:
    """Pieces of a recording of days that are runs; the others are left out, which is told.

    A single wrong time would make its timer run for days. Where no piece is a run, the one that
    lasts longest stays, of equal ones that with the most samples.
    """
    kept = [piece for piece in pieces if piece.elapsed_s >= RUN_S]
    kept = kept or [max(pieces, key=lambda piece: (piece.elapsed_s, piece.records))]
    lost = sum(piece.records for piece in pieces) - sum(piece.records for piece in kept)
    if lost:
        told = tr("Samples left out, hours away from any run: {n}.", n=grouped(lost))
        kept[0] = replace(kept[0], damage=f"{kept[0].damage} {told}".strip())
    return kept


def long_gaps(clock: Floats) -> list[float]:
    """Where a recording's runs begin, but the first [s]; none where a piece would be no run."""
    after = _after_gaps(clock)
    if not 0 < len(after) < MOST_RUNS:
        return []
    found: list[float] = []
    begin = 0
    for place, end in zip(after, [*after[1:], len(clock)], strict=True):
        lasts = clock[place - 1] - clock[begin], clock[end - 1] - clock[place]
        if min(lasts) >= RUN_S:
            found.append(float(clock[place]))
            begin = place
    return found


def _after_gaps(clock: Floats) -> list[int]:
    """Places of the samples behind a gap of hours."""
    places: list[int] = (np.flatnonzero(np.diff(clock) >= APART_S) + 1).tolist()
    return places


def parted(whole: Recording, at_s: float) -> tuple[Recording, Recording]:
    """A recording in two; the second starts with the sample at the cut.

    The first ends with it, so that neither time nor metres fall between them; behind a gap, which
    is nobody's, it ends with the sample before.
    """
    first = int(np.searchsorted(whole.time, at_s, side="left"))
    begin = float(whole.time[first])
    last = first + (begin - float(whole.time[first - 1]) <= GAP_S)
    pieces = []
    for low, high, time in (
        (0.0, float(whole.time[last - 1]), whole.time[:last]),
        (begin, np.inf, whole.time[first:] - begin),
    ):
        streams = {}
        for name, stream in whole.streams.items():
            inside = (stream.time >= low) & (stream.time <= high)
            if inside.any():
                values = stream.values[inside]
                values = values - values[0] if name == "distance" and low else values
                streams[name] = Stream(stream.time[inside] - low, values)
        end = float(time[-1])
        stops = [(max(a - low, 0.0), min(b - low, end)) for a, b in whole.stops]
        laps = [lap for lap in whole.laps if low <= lap.start_s < high]
        pieces.append(
            replace(
                whole,
                start=datetime.fromtimestamp(whole.start.timestamp() + low, UTC),
                time=time,
                streams=streams,
                stops=tuple((a, b) for a, b in stops if a < b),
                laps=tuple(
                    replace(lap, start_s=lap.start_s - low, duration_s=min(lap.duration_s, end))
                    for lap in laps
                ),
            )
        )
    return pieces[0], pieces[1]
