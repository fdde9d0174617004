"""Write the sample season: ``python -m tests.simulator.write_samples [FOLDER]``.

The same bytes every time. Files are written, none removed.
"""

from __future__ import annotations

import gzip
import sys
from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path

from tests.simulator import sample_plan as samples
from tests.simulator.record import Simulated
from tests.simulator.write_fit import fit_bytes
from tests.simulator.write_gpx import gpx_bytes
from tests.simulator.write_tcx import tcx_bytes

ENCODERS: dict[str, Callable[[Simulated, str], bytes]] = {
    "fit": fit_bytes,
    "tcx": tcx_bytes,
    "gpx": gpx_bytes,
}

DIARY = """\
Week of Mon 2026-06-08, by hand: the watch is away for repair

Mon: rest
Tue am: 15 min easy, 10 x 100 m fast / 100 m jog, 800 m jog
Wed pm: 45 min easy
Thu am: 20 min easy, 8 x 200 m hard / 200 m jog, 10 min easy
Fri: rest
Sat am: 30 min easy
Sun am: 80 min easy, 10 min moderate, 5 min easy
"""

README = """\
# Sample logs

A season to try the program with: 24 weeks of an invented runner, Ines Aldana, on Corvaleta, an
island that does not exist (its coordinates lie in the open sea). Nothing here is from a real
person or a real watch; a simulator made every second.

- `*.fit`, `*.tcx`, `*.gpx`, some packed as `.gz`: {runs} runs and one bike ride, named by the local
  start. 2026-07-23 is there twice, as FIT and as GPX.
- `2026-05-21-1815.fit` and `2026-06-20-0905.gpx` are broken on purpose: nothing can be read.
- `diary-week.txt`: the week from 2026-06-08 written by hand, because no files exist for it.
- `season.toml`: her thresholds, blocks and races.

To write the folder again, byte for byte, from the root of the repository:

    python -m tests.simulator.write_samples
"""


def season_toml() -> str:
    """Thresholds, blocks and races as the program reads them."""
    lines = ["[runner]", f'name = "{samples.RUNNER_NAME}"', f'zone = "{samples.ZONE}"', ""]
    for day, runner in ((samples.FIRST_DAY, samples.SPRING), (samples.BETTER_FROM, samples.SUMMER)):
        lines += ["[[thresholds]]", f"from = {day}"]
        lines += [f"{k} = {getattr(runner, k)}" for k in ("hr_rest", "hr_max", "lt1_hr", "lt2_hr")]
        for key in ("lt1_speed", "lt2_speed"):
            pace = round(1000 / getattr(runner, key))
            lines.append(f'{key} = "{pace // 60}:{pace % 60:02d}/km"')
        lines.append("")
    start = samples.FIRST_DAY
    for name, kind, weeks, target in samples.BLOCKS:
        end = start + timedelta(days=7 * weeks - 1)
        lines += [
            "[[blocks]]", f'name = "{name}"', f'kind = "{kind}"', f"start = {start}",
            f"end = {end}", f"easy_target = {target:.2f}", "",
        ]  # fmt: skip
        start = end + timedelta(days=1)
    for day, name, metres in samples.RACES:
        lines += ["[[races]]", f"day = {day}", f'name = "{name}"', f"distance_m = {metres}", ""]
    return "\n".join(lines[:-1]) + "\n"


def files() -> Iterator[tuple[str, bytes]]:
    """Every file of the folder: its name and its bytes."""
    runs = 0
    first_fit = b""
    for planned in samples.plan():
        run = samples.run(planned)
        runs += planned.kind != "ride"
        for ending in planned.formats:
            data = ENCODERS[ending](run, planned.name)
            first_fit = first_fit or (data if ending == "fit" else b"")
            packed = gzip.compress(data, 9, mtime=0) if planned.packed else data
            yield f"{planned.stem}.{ending}{'.gz' if planned.packed else ''}", packed
    yield "2026-05-21-1815.fit", first_fit[:23]
    yield (
        "2026-06-20-0905.gpx",
        b'\x00\x1f\x8e<?xml version="1.0"?><gpx><trk><trkseg><trkpt lat="40.',
    )
    yield "diary-week.txt", DIARY.encode()
    yield "season.toml", season_toml().encode()
    yield "README.md", README.format(runs=runs).encode()


def main(folder: str = "sample_logs") -> None:
    """Write them all."""
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    for name, data in files():
        (target / name).write_bytes(data)


if __name__ == "__main__":
    main(*sys.argv[1:2])
