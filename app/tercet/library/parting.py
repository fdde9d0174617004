"""Parting a recording in two, and one that was left on for hours into the runs that it holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np

from tercet.domain import Recording, Stream
from tercet.engine.scale import Floats

#: Without a sample for so long a recording holds two runs: a rest on the way is shorter, from a
#: morning to an evening it is longer (common practice, no source). [s]
APART_S = 3 * 3600.0
#: What lasts less on either side of it is no run of its own. [s]
RUN_S = 120.0
#: More runs in one recording are not looked for.
MOST_RUNS = 50


def at_long_gaps(recordings: Sequence[Recording]) -> list[Recording]:
    """The recordings of a file, each cut where nothing was recorded for hours.

    The first run of each keeps its place, so that parts of a file keep their numbers; further
    ones come behind all of them. Joining two of them takes it back.
    """
    firsts, rest = [], []
    for recording in recordings:
        whole = recording
        for at_s in reversed(long_gaps(recording.time)):
            whole, after = parted(whole, at_s)
            rest.append(after)
        firsts.append(whole)
    return firsts + sorted(rest, key=lambda recording: recording.start)


def long_gaps(clock: Floats) -> list[float]:
    """Where a recording's runs begin, but the first [s]; none where a piece would be no run."""
    after: list[int] = (np.flatnonzero(np.diff(clock) >= APART_S) + 1).tolist()
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


def parted(whole: Recording, at_s: float) -> tuple[Recording, Recording]:
    """A recording in two; the sample at the cut belongs to the second, which starts with it."""
    first = int(np.searchsorted(whole.time, at_s, side="left"))
    begin = float(whole.time[first])
    pieces = []
    for low, high, time in (
        (0.0, begin, whole.time[:first]),
        (begin, np.inf, whole.time[first:] - begin),
    ):
        streams = {}
        for name, stream in whole.streams.items():
            inside = (stream.time >= low) & (stream.time < high)
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
