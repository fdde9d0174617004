"""A small TCX encoder: one activity, the same bytes every time.

The namespaces are the ones the format's public schemas carry.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from xml.sax.saxutils import escape

import numpy as np

from tests.simulator.record import Simulated

SCHEMA = "http://www.garmin.com/xmlschemas"


def stamp(start: datetime, seconds: float) -> str:
    """A moment in UTC, whole seconds."""
    return (start + timedelta(seconds=int(seconds))).strftime("%Y-%m-%dT%H:%M:%SZ")


def _points(run: Simulated, first: float, last: float) -> tuple[list[list[str]], list[float]]:
    """Track points of a lap, cut into one track for each stretch of running timer."""
    s = run.samples
    resumed = [b for _, b in run.stops]
    tracks: list[list[str]] = [[]]
    beats: list[float] = []
    for k in np.flatnonzero((s["time"] >= first) & (s["time"] < last)).tolist():
        t = float(s["time"][k])
        if t in resumed and tracks[-1]:
            tracks.append([])
        parts = [f"<Time>{stamp(run.start, t)}</Time>"]
        if not np.isnan(s["latitude"][k]):
            parts.append(
                f"<Position><LatitudeDegrees>{s['latitude'][k]:.6f}</LatitudeDegrees>"
                f"<LongitudeDegrees>{s['longitude'][k]:.6f}</LongitudeDegrees></Position>"
            )
        if not np.isnan(s["altitude"][k]):
            parts.append(f"<AltitudeMeters>{s['altitude'][k]:.1f}</AltitudeMeters>")
        if not np.isnan(s["distance"][k]):
            parts.append(f"<DistanceMeters>{s['distance'][k]:.1f}</DistanceMeters>")
        if not np.isnan(s["heart_rate"][k]):
            beats.append(float(s["heart_rate"][k]))
            parts.append(f"<HeartRateBpm><Value>{int(beats[-1])}</Value></HeartRateBpm>")
        extra = ""
        if not np.isnan(s["speed"][k]):
            extra += f"<x:Speed>{s['speed'][k]:.2f}</x:Speed>"
        if not np.isnan(s["cadence"][k]):
            extra += f"<x:RunCadence>{round(s['cadence'][k] / 2)}</x:RunCadence>"
        if extra:
            parts.append(f"<Extensions><x:TPX>{extra}</x:TPX></Extensions>")
        tracks[-1].append(f"<Trackpoint>{''.join(parts)}</Trackpoint>")
    return tracks, beats


def tcx_bytes(run: Simulated, name: str = "") -> bytes:
    """Encode a run; the clock is UTC and the file says nothing of the local one."""
    sport = "Biking" if run.session.sport == "cycling" else "Running"
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<TrainingCenterDatabase xmlns="{SCHEMA}/TrainingCenterDatabase/v2"'
        f' xmlns:x="{SCHEMA}/ActivityExtension/v2">',
        f'<Activities><Activity Sport="{sport}">',
        f"<Id>{stamp(run.start, 0)}</Id>",
    ]
    for first, length, metres, trigger in run.laps:
        last = first + length + (1 if trigger == "session_end" else 0)
        tracks, beats = _points(run, first, last)
        held = sum(max(0, min(last, b) - max(first, a)) for a, b in run.stops)
        lines += [
            f'<Lap StartTime="{stamp(run.start, first)}">',
            f"<TotalTimeSeconds>{length - held}</TotalTimeSeconds>",
            f"<DistanceMeters>{metres:.1f}</DistanceMeters>",
            "<Calories>0</Calories>",
        ]
        if beats:
            lines.append(
                f"<AverageHeartRateBpm><Value>{round(sum(beats) / len(beats))}</Value>"
                "</AverageHeartRateBpm>"
                f"<MaximumHeartRateBpm><Value>{int(max(beats))}</Value></MaximumHeartRateBpm>"
            )
        method = "Distance" if trigger == "distance" else "Manual"
        lines.append(f"<Intensity>Active</Intensity><TriggerMethod>{method}</TriggerMethod>")
        for points in tracks:
            lines += ["<Track>", *points, "</Track>"]
        lines.append("</Lap>")
    if name:
        lines.append(f"<Notes>{escape(name)}</Notes>")
    lines += ["</Activity></Activities>", "</TrainingCenterDatabase>", ""]
    return "\n".join(lines).encode()
