"""``python -m tests.soak.real_archive FOLDER``: an archive of GPX runs beside a reference reader.

Every file of the folder goes through the real import into a fresh store, which is removed again.
Elapsed time, distance and mean heart rate of every run are then compared with what gpxpy reads in
the original, its positions joined by geodesics (geographiclib).
"""

from __future__ import annotations

import gzip
import math
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import gpxpy
from geographiclib.geodesic import Geodesic

from tercet.formats.unpack import GZIP_MAGIC
from tercet.library.importing import Report
from tercet.library.library import Library
from tercet.store import queries
from tercet.store.database import Row, Store

#: What may lie between the two readers: time [s]; a share of the distance, and metres beside it;
#: heart rate [beats/min]. The store keeps positions to a centimetre and times to a millisecond.
WITHIN_S, WITHIN_SHARE, WITHIN_M, WITHIN_BPM = 0.01, 0.001, 1.0, 0.1
#: Where the program says that it left leaps out, its distance must lie between all of the
#: reference's and that without whatever is faster than any runner. [m/s]
LEAPS, FASTEST = "leap", 12.5
_HEART = frozenset({"hr", "heartrate"})

Point = tuple[float, float, float, float]  # unix time [s], latitude, longitude, heart rate or NaN


@dataclass(frozen=True)
class Figures:
    """What is compared of a run; heart rate is NaN without."""

    elapsed_s: float
    distance_m: float
    hr_mean: float

    def agree(self, other: Figures) -> bool:
        """Whether they lie within what is allowed of each other."""
        without = math.isnan(self.hr_mean), math.isnan(other.hr_mean)
        return (
            abs(self.elapsed_s - other.elapsed_s) <= WITHIN_S
            and abs(self.distance_m - other.distance_m)
            <= WITHIN_SHARE * other.distance_m + WITHIN_M
            and (all(without) or abs(self.hr_mean - other.hr_mean) <= WITHIN_BPM)
        )


@dataclass
class Verdict:
    """How the files and runs of an archive ended."""

    files: int = 0  # GPX files
    agree: int = 0  # runs
    mended: int = 0  # that agree but for leaps that the program left out and says so
    differ: int = 0
    again: int = 0  # files whose run came in from another one
    lost: int = 0  # files refused in which the reference reads a run
    others: int = 0  # files that are no GPX

    @property
    def words(self) -> str:
        """All of it in one line."""
        told = (
            f"{self.files} GPX files: {self.agree} runs agree, {self.mended} more without leaps "
            f"that were left out and told, {self.differ} differ. Files with a run that another "
            f"brought: {self.again}; refused although the reference reads them: {self.lost}; of "
            f"other kinds: {self.others}."
        )
        return f"{told} {'All well.' if self.well else 'NOT well.'}"

    @property
    def well(self) -> bool:
        """Whether there were runs, all of them came in, and all agree."""
        return self.agree + self.mended > 0 and not self.differ and not self.lost


def compare(folder: Path) -> Iterator[str | Verdict]:
    """Take a folder in and say how each run of a GPX compares; the verdict comes last."""
    with TemporaryDirectory() as name:
        library = Library(Path(name) / "store")
        try:
            report = library.take_in([folder])
            yield report.words
            yield from _compared(library, report)
        finally:
            library.close()


def _compared(library: Library, report: Report) -> Iterator[str | Verdict]:
    verdict = Verdict()
    for item in report.taken:
        kept = library.call(queries.file, item.sha256) if item.sha256 else None
        if kept is None or kept.format != "GPX":
            verdict.others += 1
            if item.outcome == "refused":
                yield f"refused  {item.path}: {item.detail}"
            continue
        if item.outcome == "already here":
            verdict.again += 1
            continue
        verdict.files += 1
        tracks = reference(library.original(item.sha256).read_bytes())
        if item.outcome in ("refused", "passed over"):
            verdict.lost += any(tracks)
            yield f"{item.outcome}  {item.path}: {item.detail}"
            continue
        runs = library.call(_runs_of, item.sha256)
        verdict.again += not runs
        for run in runs:
            span = inside(tracks, float(run["start_utc"]), float(run["elapsed_s"]))
            ours = Figures(run["elapsed_s"], run["distance_m"], _or_nan(run["hr_mean"]))
            theirs = figures(span)
            word = "agrees" if ours.agree(theirs) else "DIFFERS"
            if word == "DIFFERS" and LEAPS in run["mends"]:
                least = figures(steadily(span)).distance_m
                nearest_m = min(max(ours.distance_m, least), theirs.distance_m)
                word = "mended" if ours.agree(replace(theirs, distance_m=nearest_m)) else word
            verdict.agree += word == "agrees"
            verdict.mended += word == "mended"
            verdict.differ += word == "DIFFERS"
            yield _line(word, run, ours, theirs, item.path)
    yield verdict


def _runs_of(store: Store, sha256: str) -> list[Row]:
    found = queries.runs_between(store, -math.inf, math.inf)
    runs = []
    for number in [row["id"] for row in found if row["sha256"] == sha256]:
        run, judged = queries.run(store, number), queries.judgement(store, number)
        assert run is not None and judged is not None
        runs.append({**dict(run), "mends": judged["mends"]})
    return runs


def reference(data: bytes) -> list[list[Point]]:
    """The points of each track that carry a time, in its order, as gpxpy reads them."""
    text = gzip.decompress(data) if data.startswith(GZIP_MAGIC) else data
    found = []
    for track in gpxpy.parse(text).tracks:
        points = [
            (_unix(point.time), point.latitude, point.longitude, _heart_rate(point.extensions))
            for segment in track.segments
            for point in segment.points
            if point.time is not None
        ]
        found.append(sorted(points, key=lambda point: point[0]))
    return found


def inside(tracks: Sequence[Sequence[Point]], start: float, elapsed: float) -> list[Point]:
    """The points of a span of time, from the track that has most of them."""
    end = start + elapsed
    spans = [
        [point for point in track if start - WITHIN_S <= point[0] <= end + WITHIN_S]
        for track in tracks
    ]
    return max(spans, key=len, default=[])


def figures(points: Sequence[Point]) -> Figures:
    """Reckon what is compared from a run's points."""
    if not points:
        return Figures(0.0, 0.0, math.nan)
    metres = math.fsum(
        Geodesic.WGS84.Inverse(a[1], a[2], b[1], b[2], Geodesic.DISTANCE)["s12"]
        for a, b in pairwise(points)
    )
    beats = [point[3] for point in points if not math.isnan(point[3])]
    mean = math.fsum(beats) / len(beats) if beats else math.nan
    return Figures(points[-1][0] - points[0][0], metres, mean)


def steadily(points: Sequence[Point]) -> list[Point]:
    """Points without those that nobody could have reached from the last one kept."""
    kept: list[Point] = list(points[:1])
    for point in points[1:]:
        metres = figures([kept[-1], point]).distance_m
        if metres <= FASTEST * (point[0] - kept[-1][0]):
            kept.append(point)
    return kept


def _unix(moment: datetime) -> float:
    return (moment if moment.tzinfo else moment.replace(tzinfo=UTC)).timestamp()


def _heart_rate(extensions: Sequence[Any]) -> float:
    """Heart rate by the plain name of its element, however deep; NaN without."""
    for extension in extensions:
        for element in extension.iter():
            name = str(element.tag).rpartition("}")[2].lower()
            if name in _HEART and element.text and element.text.strip():
                return float(element.text)
    return math.nan


def _or_nan(value: float | None) -> float:
    return math.nan if value is None else value


def _line(word: str, run: Row, ours: Figures, theirs: Figures, path: str) -> str:
    day = datetime.fromtimestamp(run["start_utc"], UTC)
    return (
        f"{word:8} {day:%Y-%m-%d %H:%M}  {ours.elapsed_s:.1f} / {theirs.elapsed_s:.1f} s  "
        f"{ours.distance_m:.1f} / {theirs.distance_m:.1f} m "
        f"({ours.distance_m - theirs.distance_m:+.2f})  "
        f"{ours.hr_mean:.2f} / {theirs.hr_mean:.2f} beats/min  {Path(path).name}"
        f"  {run['damage']} {run['mends'] if word == 'mended' else ''}".rstrip()
    )


def main() -> int:
    """Print every comparison; 0 if all is well, 1 if not, 2 without a folder."""
    if len(sys.argv) != 2 or not Path(sys.argv[1]).is_dir():
        print("Name one folder: python -m tests.soak.real_archive FOLDER")
        return 2
    said: str | Verdict = ""
    for said in compare(Path(sys.argv[1])):
        print(said.words if isinstance(said, Verdict) else said, flush=True)
    return 0 if isinstance(said, Verdict) and said.well else 1


if __name__ == "__main__":
    sys.exit(main())
