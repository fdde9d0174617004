"""``python -m tests.bench.large``: a GPX of 100 MB, also stopped and four at once; a million laps.

Two figures of memory are printed: the resident peak of the process that reads a file, with what of
it was there before the file (the interpreter and the imports), and the peak of all processes
together, shared pages counted once.
"""

from __future__ import annotations

import math
import os
import random
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

from tercet import formats
from tercet.domain import DatedThresholds, Failed
from tercet.engine.shades import Thresholds
from tercet.library import memory, operations, reading
from tercet.library.library import Library
from tercet.library.reading import Terms
from tests.bench.family import Family

#: What is asked of 100 MB: time [s], memory [MB], and until a stop is answered [s].
BYTES, WITHIN_S, MEMORY_MB, ANSWER_S = 100_000_000, 6.0, 100, 0.5
#: Several at once, and the memory of all processes together. [MB]
AT_ONCE, ALL_MB = 4, 600
LAPS = 1_000_000
THRESHOLDS = DatedThresholds(
    date(2020, 1, 1), Thresholds(lt1_speed=3.0, lt2_speed=3.8, lt1_hr=140.0, lt2_hr=165.0)
)
_AT_ONCE = 2_000
#: How fast each minute of it is. [m/s]
_SPEEDS = (2.8, 3.0, 2.9, 2.7, 4.6, 1.2, 4.9, 0.0, 5.2, 2.2)
_HEAD = (
    '<gpx version="1.1" creator="none" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>\n'
)


def points(month: int) -> Iterator[str]:
    """Points of an endless run of hard minutes and rests, a second apart, some thousand at once."""
    first, latitude, chance = 0, 40.0, random.Random(20_261_125)
    while True:
        lines = []
        for k in range(first, first + _AT_ONCE):
            speed = _SPEEDS[k // 60 % len(_SPEEDS)] + 0.3 * math.sin(k / 25)
            latitude += speed / 111_000
            seen = latitude + chance.gauss(0, 2e-6)
            lines.append(
                f'<trkpt lat="{seen:.7f}" lon="9.1234567"><ele>{500 + k // 4 % 50:.1f}</ele>'
                f"<time>2024-{month:02}-{1 + k // 86400:02}T{k // 3600 % 24:02}:{k // 60 % 60:02}:"
                f"{k % 60:02}Z</time><extensions><TrackPointExtension>"
                f"<hr>{120 + k // 5 % 40}</hr><cad>85</cad></TrackPointExtension></extensions>"
                "</trkpt>\n"
            )
        yield "".join(lines)
        first += _AT_ONCE


def write_gpx(place: Path, size: int = BYTES, month: int = 5) -> None:
    """Write a track of about this size."""
    with place.open("w", encoding="ascii") as out:
        written = out.write(_HEAD)
        for piece in points(month):
            written += out.write(piece)
            if written >= size:
                break
        out.write("</trkseg></trk></gpx>")


def write_laps(tcx: Path, fit: Path) -> None:
    """Write a TCX and a FIT of a few points and a million laps."""
    from tests.formats.build import LAP, Fit, run_fit  # not in processes whose memory is told

    lap = '<Lap StartTime="2024-05-01T00:00:00Z"><TotalTimeSeconds>1</TotalTimeSeconds></Lap>\n'
    stamp = "<Time>2024-05-01T00:00:{:02}Z</Time><HeartRateBpm><Value>120</Value></HeartRateBpm>"
    track = "".join(f"<Trackpoint>{stamp.format(k)}</Trackpoint>" for k in range(30))
    with tcx.open("w", encoding="ascii") as out:
        out.write('<TrainingCenterDatabase><Activities><Activity Sport="Running">')
        out.write(f'<Lap StartTime="2024-05-01T00:00:00Z"><Track>{track}</Track></Lap>')
        for _ in range(LAPS // 1_000):
            out.write(1_000 * lap)
        out.write("</Activity></Activities></TrainingCenterDatabase>")
    made: Fit = run_fit(30)
    fields = {"timestamp": 1, "start_time": 1_130_000_000, "total_elapsed_time": 1_000}
    made.define(3, LAP, tuple(fields))
    before = len(made.body)
    made.data(3, **fields)
    made.body += made.body[before:] * (LAPS - 1)
    with fit.open("wb") as out:
        out.write(_framed(made.body))


def _framed(body: bytearray) -> bytes:
    """A FIT file whose check sum is left out, for reckoning it bit by bit takes minutes."""
    size = len(body).to_bytes(4, "little")
    return bytes([12, 0x20, 0x34, 0x08]) + size + b".FIT" + bytes(body) + b"\0\0"


def said(place: Path, call: Callable[[Path], str]) -> None:
    """Print what a call said in this process, its time, and the peak of memory."""
    before = _peak_mb()
    began, cpu = time.perf_counter(), time.process_time()
    words = call(place)
    spent, used = time.perf_counter() - began, time.process_time() - cpu
    print(f"  {words}\n  {spent:.2f} s, {used:.2f} s of them at work")
    print(f"  resident peak {_peak_mb():.0f} MB, {before:.0f} MB of it before the file was opened")


def _peak_mb() -> float:
    """Of this program alone: what getrusage tells counts what it was started from, too."""
    status = Path("/proc/self/status").read_text("ascii")
    return int(status.partition("VmHWM:")[2].split()[0]) / 1024


def read(place: Path) -> str:
    """Read only."""
    found = formats.read_path(place)
    if isinstance(found, Failed):
        return found.reason
    assert isinstance(found, list)
    return f"{found[0].records:,} records, {len(found[0].laps):,} laps. {found[0].damage}"


def judge(place: Path) -> str:
    """Read, judge and pack, as a worker of an import does."""
    memory.give_back()
    found = reading.read_file(str(place), Terms((THRESHOLDS,)))
    return f"{found.status}, {len(found.runs)} run. {found.problem}"


def whole(places: list[Path], folder: Path, thresholds: bool = False) -> tuple[float, str]:
    """Take files into a fresh store, which keeps them too; without thresholds judged twice.

    Returns
    -------
    tuple of float and str
        Seconds it took, and all of it in words.
    """
    library = Library(folder)
    if thresholds:
        library.call(operations.set_thresholds, [THRESHOLDS], {}, step="thresholds")
    began = time.perf_counter()
    with Family() as family:
        report = library.take_in(places)
    spent = time.perf_counter() - began
    library.close()
    words = f"{report.words}: {spent:.2f} s, all processes together {family.peak_mb:.0f} MB"
    return spent, words


def stopped(place: Path, after_s: float, folder: Path) -> float:
    """Seconds until an import that is stopped so late has ended."""
    library, stop = Library(folder / f"store-{after_s}"), threading.Event()
    asked = 0.0

    def ask() -> None:
        nonlocal asked
        asked = time.perf_counter()
        stop.set()

    timer = threading.Timer(after_s, ask)
    timer.start()
    report = library.take_in([place], stop=stop)
    took = time.perf_counter() - asked
    assert report.stopped, report
    library.close()
    return took


def main() -> None:
    """Print every figure; each file is read in a process of its own."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        gpx, tcx, fit = folder / "long.gpx", folder / "laps.tcx", folder / "laps.fit"
        write_gpx(gpx)
        write_laps(tcx, fit)
        print(f"load: {os.getloadavg()[0]:.1f}")
        for place in (gpx, tcx, fit):
            for way in ("read", "judge"):
                print(f"{way} {place.name}, {place.stat().st_size / 1e6:.0f} MB", flush=True)
                subprocess.run(
                    [sys.executable, "-m", "tests.bench.large", way, str(place)], check=True
                )
        spent, words = whole([gpx], folder / "one", thresholds=True)
        print(f"  whole import of {gpx.name}: {words}")
        print(f"(wanted of {gpx.name}: <= {WITHIN_S} s, <= {MEMORY_MB} MB)")
        several = [folder / f"several-{month}.gpx" for month in range(1, AT_ONCE + 1)]
        for month, place in enumerate(several, start=1):
            write_gpx(place, month=month)
        print(f"  {len(several)} such files at once: {whole(several, folder / 'several')[1]}")
        print(f"(wanted: <= {ALL_MB} MB)")
        for share in (0.1, 0.3, 0.6):
            after_s = share * spent
            took = stopped(gpx, after_s, folder)
            print(f"stopped after {after_s:.1f} s: answered in {took:.2f} s (wanted <= {ANSWER_S})")


if __name__ == "__main__":
    if sys.argv[1:]:
        said(Path(sys.argv[2]), {"read": read, "judge": judge}[sys.argv[1]])
    else:
        main()
