"""From the samples a reader gathered to a Recording that keeps its promises."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from tercet.domain import STREAM_UNITS, Failed, Lap, Recording, Stream
from tercet.engine.scale import Floats
from tercet.formats.sports import on_foot
from tercet.language import grouped, mark, tr

#: Columns that a reader gathers: unix time [s], then every stream in its own unit.
COLUMNS = ("time", *STREAM_UNITS)
COLUMN = MappingProxyType({name: index for index, name in enumerate(COLUMNS)})

MAX_SAMPLES = 2_000_000
MAX_ELAPSED_S = 10 * 86_400.0
MAX_UTC_OFFSET_S = 14 * 3600
#: All that a clock may say, also one that was never set: the runner is asked for its start then.
EARLIEST = datetime(1970, 1, 1, tzinfo=UTC).timestamp()
LATEST = datetime(2127, 1, 1, tzinfo=UTC).timestamp()
#: Up to this share of samples, or one sample, may carry an impossible time; more of them in a
#: file known to be damaged.
MAX_STRAY_SHARE = 0.01
MAX_STRAY_SHARE_DAMAGED = 0.5

#: What a value must lie between (both included) to be taken for a measurement at all; wide on
#: purpose, for judging what is likely is the engine's task. Common practice, no source.
BOUNDS = MappingProxyType(
    {
        "heart_rate": (25.0, 250.0),
        "speed": (0.0, 70.0),
        "distance": (0.0, 3.0e6),
        "latitude": (-90.0, 90.0),
        "longitude": (-180.0, 180.0),
        "altitude": (-1_000.0, 10_000.0),
        "cadence": (0.0, 400.0),
        "power": (0.0, 3_000.0),
        "temperature": (-60.0, 80.0),
    }
)
#: Nobody runs 240 steps a minute on average: a median up to this counts one foot only.
MAX_STRIDE_RATE = 120.0
_TOO_LONG = mark("The times of its samples lie more than ten days apart.")


@dataclass
class Draft:
    """What a reader knows of one activity beside its samples; all times in unix seconds."""

    format: str
    sport: str = "unknown"
    kind: str = ""
    utc_offset_s: int | None = None
    device: str = ""
    name: str = ""
    laps: list[Lap] = field(default_factory=list)
    stops: list[tuple[float, float]] = field(default_factory=list)
    damage: list[str] = field(default_factory=list)


def assemble(draft: Draft, columns: Sequence[Floats]) -> Recording | Failed:
    """Put samples in order, drop what cannot be, and make a Recording.

    Samples are sorted by time, those of one time staying in the file's order. Where several
    carry the same time, a stream takes the first finite value and leaves the later ones, so
    a stream's clock rises strictly; ``Recording.time`` keeps every sample and does not fall.
    Samples without a time, or further than ``MAX_ELAPSED_S`` from the middle one, are left
    out and mentioned as damage, as long as they are few (``MAX_STRAY_SHARE``).

    Parameters
    ----------
    draft : Draft
        The rest of what the file says; not changed.
    columns : sequence of ndarray of float64, shape (n,) each
        In the order of ``COLUMNS``, NaN where nothing was measured. Cadence may count one foot
        only (doubled here if its median is at most ``MAX_STRIDE_RATE``). Not changed, and may
        be taken over into the recording.

    Returns
    -------
    Recording or Failed
        Failed where there is no sample, no time, or nothing but absurd times.
    """

    def failed(reason: str) -> Failed:
        return Failed(" ".join([reason, *draft.damage]), format=draft.format)

    if not len(columns[0]):
        return failed(tr("It holds no samples."))
    if len(columns[0]) > MAX_SAMPLES:
        return failed(tr("It holds more than {most} samples.", most=grouped(MAX_SAMPLES)))
    damage = list(draft.damage)
    timed = np.isfinite(columns[0])
    if not timed.any():
        return failed(tr("None of its {n} samples carries a time.", n=grouped(len(timed))))
    if not timed.all():
        damage.append(
            tr("Samples left out for want of a time: {n}.", n=grouped(int((~timed).sum())))
        )
        columns = [column[timed] for column in columns]

    share = MAX_STRAY_SHARE_DAMAGED if draft.damage else MAX_STRAY_SHARE
    unix = columns[0]
    allowed = max(1, int(share * len(unix)))
    possible = (unix >= EARLIEST) & (unix < LATEST)
    if not possible.any() or np.count_nonzero(~possible) > allowed:
        return failed(tr("Its times lie before 1970 or after 2126."))
    middle = np.median(unix[possible])
    near = possible & (np.abs(unix - middle) <= MAX_ELAPSED_S)
    if np.count_nonzero(~near) > allowed:
        return failed(tr(_TOO_LONG))
    if not near.all():
        damage.append(
            tr("Samples left out for an impossible time: {n}.", n=grouped(int((~near).sum())))
        )
        columns = [column[near] for column in columns]
    if (np.diff(columns[0]) < 0).any():  # sorting copies, and a recording may be long
        order = np.argsort(columns[0], kind="stable")
        columns = [column[order] for column in columns]
    first, last = float(columns[0][0]), float(columns[0][-1])
    if last - first > MAX_ELAPSED_S:
        return failed(tr(_TOO_LONG))

    offset = draft.utc_offset_s
    # Unix seconds as floats carry a quarter of a microsecond of noise.
    time = np.round(columns[0] - first, 6)
    return Recording(
        start=datetime.fromtimestamp(first, UTC),
        time=time,
        streams=_streams(time, columns, steps=on_foot(draft.sport)),
        format=draft.format,
        sport=draft.sport,
        kind=draft.kind,
        utc_offset_s=None if offset is None or abs(offset) > MAX_UTC_OFFSET_S else offset,
        device=draft.device,
        name=draft.name,
        laps=_laps(draft.laps, first, float(time[-1])),
        stops=_stops(draft.stops, first, float(time[-1])),
        damage=" ".join(damage),
    )


def gather(results: Iterable[Recording | Failed], format_name: str) -> list[Recording] | Failed:
    """Sum up what the activities of one file gave.

    Parameters
    ----------
    results : iterable of Recording or Failed
        In the file's order.
    format_name : str
        For the Failed of a file without any activity.

    Returns
    -------
    list of Recording, or Failed
        The recordings; if there are some, the last one's damage also tells of activities
        beside it that were refused. Without any, the first Failed.
    """
    results = list(results)
    recordings = [result for result in results if isinstance(result, Recording)]
    failures = [result for result in results if isinstance(result, Failed)]
    if not recordings:
        return failures[0] if failures else Failed(tr("It holds no activity."), format=format_name)
    for failure in failures:
        if failure.status == "refused":
            told = tr(
                "Another activity in the file could not be read: {reason}", reason=failure.reason
            )
            damage = f"{recordings[-1].damage} {told}".strip()
            recordings[-1] = replace(recordings[-1], damage=damage)
    return recordings


def _streams(time: Floats, columns: Sequence[Floats], *, steps: bool) -> dict[str, Stream]:
    # a plain dict, since recordings travel between processes
    streams: dict[str, Stream] = {}
    here = _position_known(columns)
    rising = not (np.diff(time) <= 0).any()
    for name, (low, high) in BOUNDS.items():
        values = columns[COLUMN[name]]
        if name == "cadence":
            values = _steps(values) if steps else np.full_like(values, np.nan)
        good = (values >= low) & (values <= high)  # false for NaN
        if name in ("latitude", "longitude"):
            good &= here
        if not good.any():
            continue
        if rising and good.all():
            streams[name] = Stream(time, np.ascontiguousarray(values))  # one clock for all
            continue
        clock, values = time[good], values[good]
        rises = np.concatenate(([True], np.diff(clock) > 0))
        streams[name] = Stream(clock[rises], values[rises])
    return streams


def _position_known(columns: Sequence[Floats]) -> NDArray[np.bool_]:
    """Both coordinates possible; exactly 0, 0 is how some devices write "no position"."""
    latitude, longitude = (columns[COLUMN[name]] for name in ("latitude", "longitude"))
    known: NDArray[np.bool_] = (
        (np.abs(latitude) <= BOUNDS["latitude"][1])
        & (np.abs(longitude) <= BOUNDS["longitude"][1])
        & ((latitude != 0.0) | (longitude != 0.0))
    )
    return known


def _steps(cadence: Floats) -> Floats:
    """Steps a minute from a cadence that may count one foot only; shape (n,)."""
    low, high = BOUNDS["cadence"]
    cadence = np.where((cadence >= low) & (cadence <= high), cadence, np.nan)
    turning = cadence[cadence > 0.0]
    one_foot = len(turning) > 0 and float(np.median(turning)) <= MAX_STRIDE_RATE
    return cadence * 2.0 if one_foot else cadence


def _laps(laps: list[Lap], first: float, elapsed: float) -> tuple[Lap, ...]:
    placed = []
    for lap in laps:
        start = lap.start_s - first
        end = min(start + lap.duration_s, elapsed)
        start = max(start, 0.0)
        if start < end:  # also false for NaN
            placed.append(
                Lap(
                    round(start, 6),
                    round(end - start, 6),
                    _possible_distance(lap.distance_m),
                    lap.pressed,
                )
            )
    return tuple(sorted(placed, key=lambda lap: lap.start_s))


def _possible_distance(distance: float | None) -> float | None:
    low, high = BOUNDS["distance"]
    return distance if distance is not None and low <= distance <= high else None


def _stops(
    stops: list[tuple[float, float]], first: float, elapsed: float
) -> tuple[tuple[float, float], ...]:
    """Clip to the recording, sort, and join what overlaps."""
    joined: list[tuple[float, float]] = []
    for start, end in sorted((max(a - first, 0.0), min(b - first, elapsed)) for a, b in stops):
        if not start < end:
            continue
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return tuple((round(start, 6), round(end, 6)) for start, end in joined)
