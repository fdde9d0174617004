"""Writes a recording as TCX: its clock and channels and nothing of its file, device or names."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from xml.sax.saxutils import quoteattr

import numpy as np

from tercet.domain import Recording, Stream
from tercet.engine.scale import Floats

_SPORTS = {"running": "Running", "cycling": "Biking"}
_HEAD = (
    '<?xml version="1.0" encoding="UTF-8"?>\n'
    '<TrainingCenterDatabase xmlns="http://www.garmin.com/xmlschemas/TrainingCenterDatabase/v2">'
    "<Activities>"
)
_SPEED = '<TPX xmlns="http://www.garmin.com/xmlschemas/ActivityExtension/v2">'


def write_tcx(recording: Recording) -> bytes:
    """Write a recording as one activity of one lap.

    Parameters
    ----------
    recording : Recording
        In SI units, its clock in UTC. Temperature, laps and stops have no place in the file; a
        point without a position has none there.

    Returns
    -------
    bytes
        UTF-8; :func:`tercet.formats.tcx.read_tcx` reads it back.
    """
    streams = recording.streams
    clocks = [recording.time, *(stream.time for stream in streams.values())]
    clock = np.unique(np.concatenate(clocks))
    columns = {name: _on(clock, stream) for name, stream in streams.items()}
    begin = _utc(recording.start, 0.0)
    distance = streams.get("distance")
    metres = float(distance.values[-1]) if distance is not None and len(distance.values) else 0.0
    sport = quoteattr(_SPORTS.get(recording.sport, "Other"))
    points = "".join(
        _point(_utc(recording.start, at), {name: float(held[k]) for name, held in columns.items()})
        for k, at in enumerate(clock.tolist())
    )
    return (
        f"{_HEAD}<Activity Sport={sport}><Id>{begin}</Id><Lap StartTime={quoteattr(begin)}>"
        f"<TotalTimeSeconds>{recording.elapsed_s:.1f}</TotalTimeSeconds>"
        f"<DistanceMeters>{metres:.1f}</DistanceMeters><Calories>0</Calories>"
        "<Intensity>Active</Intensity><TriggerMethod>Manual</TriggerMethod>"
        f"<Track>{points}</Track></Lap></Activity></Activities></TrainingCenterDatabase>\n"
    ).encode()


def _on(clock: Floats, stream: Stream) -> Floats:
    out = np.full(len(clock), np.nan)
    out[np.searchsorted(clock, stream.time)] = stream.values
    return out


def _utc(start: datetime, seconds: float) -> str:
    when = start + timedelta(seconds=seconds)
    return f"{when:%Y-%m-%dT%H:%M:%S}.{when.microsecond // 1000:03d}Z"


def _point(when: str, held: Mapping[str, float]) -> str:
    told = {name: value for name, value in held.items() if value == value}
    parts = [f"<Time>{when}</Time>"]
    if "latitude" in told and "longitude" in told:
        parts.append(
            f"<Position><LatitudeDegrees>{told['latitude']:.7f}</LatitudeDegrees>"
            f"<LongitudeDegrees>{told['longitude']:.7f}</LongitudeDegrees></Position>"
        )
    for name, tag, decimals in (
        ("altitude", "AltitudeMeters", 1),
        ("distance", "DistanceMeters", 2),
    ):
        if name in told:
            parts.append(f"<{tag}>{told[name]:.{decimals}f}</{tag}>")
    if "heart_rate" in told:
        parts.append(f"<HeartRateBpm><Value>{told['heart_rate']:.0f}</Value></HeartRateBpm>")
    extra = ""
    if "speed" in told:
        extra += f"<Speed>{told['speed']:.3f}</Speed>"
    if "cadence" in told:
        # one foot's steps, as the schema has them
        extra += f"<RunCadence>{told['cadence'] / 2:.0f}</RunCadence>"
    if "power" in told:
        extra += f"<Watts>{told['power']:.0f}</Watts>"
    if extra:
        parts.append(f"<Extensions>{_SPEED}{extra}</TPX></Extensions>")
    return f"<Trackpoint>{''.join(parts)}</Trackpoint>\n"
