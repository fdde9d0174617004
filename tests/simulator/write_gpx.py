"""A small GPX 1.1 encoder with heart rate and cadence; the same bytes every time."""

from __future__ import annotations

from xml.sax.saxutils import escape

import numpy as np

from tests.simulator.record import Simulated
from tests.simulator.write_tcx import SCHEMA, stamp


def gpx_bytes(run: Simulated, name: str = "") -> bytes:
    """Encode a run: points with a position only, a new segment after each stop, no speed."""
    s = run.samples
    resumed = {b for _, b in run.stops}
    sport = "cycling" if run.session.sport == "cycling" else "running"
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        '<gpx version="1.1" creator="invented watch" xmlns="http://www.topografix.com/GPX/1/1"'
        f' xmlns:x="{SCHEMA}/TrackPointExtension/v1">',
        f"<metadata><time>{stamp(run.start, 0)}</time></metadata>",
        f"<trk><name>{escape(name)}</name><type>{sport}</type>",
        "<trkseg>",
    ]
    for k, t in enumerate(s["time"].tolist()):
        if t in resumed:
            lines += ["</trkseg>", "<trkseg>"]
        if np.isnan(s["latitude"][k]):
            continue
        parts = [f'<trkpt lat="{s["latitude"][k]:.6f}" lon="{s["longitude"][k]:.6f}">']
        if not np.isnan(s["altitude"][k]):
            parts.append(f"<ele>{s['altitude'][k]:.1f}</ele>")
        parts.append(f"<time>{stamp(run.start, t)}</time>")
        extra = ""
        if not np.isnan(s["heart_rate"][k]):
            extra += f"<x:hr>{int(s['heart_rate'][k])}</x:hr>"
        if not np.isnan(s["cadence"][k]):
            extra += f"<x:cad>{round(s['cadence'][k] / 2)}</x:cad>"
        if extra:
            parts.append(
                f"<extensions><x:TrackPointExtension>{extra}</x:TrackPointExtension></extensions>"
            )
        lines.append("".join(parts) + "</trkpt>")
    lines += ["</trkseg>", "</trk>", "</gpx>", ""]
    return "\n".join(lines).encode()
