"""``python -m tests.soak [files]``: mutated files of every format through reading and judging."""

from __future__ import annotations

import io
import random
import resource
import sys
import time
import zipfile
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from tercet.library import reading
from tercet.library.reading import Terms
from tercet.library.sources import Source, opened_up
from tests.formats.test_reading import DAMAGED, mutated

#: Files in all, the longest that one may take, and the most memory. [files], [s], [MB]
FILES, PATIENCE_S, MEMORY_MB = 20_000, 5.0, 300


def main() -> int:
    """Read them all; 1 if one took too long or too much memory, was lost or gave no reason."""
    files = int(sys.argv[1]) if len(sys.argv) > 1 else FILES
    chance = random.Random(20_261_125)
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in DAMAGED.items():
            made.writestr(f"folder/{name}", data)
    seeds = {**DAMAGED, "zip": archive.getvalue()}
    ended: Counter[tuple[str, str]] = Counter()
    slowest, bad = 0.0, 0
    with TemporaryDirectory() as folder:
        place = Path(folder) / "file"
        for number in range(files):
            name = list(seeds)[number % len(seeds)]
            place.write_bytes(mutated(seeds[name], chance))
            began = time.perf_counter()
            for found in opened_up([place], Path(folder)):
                if isinstance(found, Source):
                    read = reading.read_file(found, Terms())
                    good = bool(read.runs if read.status == "read" else read.problem)
                    ended[name, read.status] += 1
                else:
                    good = bool(found[1].reason)
                    ended[name, "refused"] += 1
                bad += not good
            slowest = max(slowest, time.perf_counter() - began)
    for (name, status), count in sorted(ended.items()):
        print(f"{name:8} {status:12} {count:6}")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{files} files, slowest {slowest:.2f} s, peak {peak:.0f} MB, without a reason {bad}")
    return int(bad > 0 or slowest > PATIENCE_S or peak > MEMORY_MB)


if __name__ == "__main__":
    sys.exit(main())
