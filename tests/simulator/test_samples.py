"""The sample season: written again byte for byte, small, and what it says it is."""

from __future__ import annotations

import hashlib
import itertools
import tomllib
from collections import Counter
from datetime import date, timedelta
from pathlib import Path

import fitdecode
import pytest

from tests.simulator import sample_plan as samples
from tests.simulator.write_samples import main, season_toml

FOLDER = Path(__file__).parents[2] / "sample_logs"


def hashes(folder: Path) -> dict[str, str]:
    return {p.name: hashlib.sha256(p.read_bytes()).hexdigest() for p in sorted(folder.iterdir())}


def test_writing_the_folder_again_gives_the_same_bytes(tmp_path: Path) -> None:
    main(str(tmp_path))
    assert hashes(tmp_path) == hashes(FOLDER)


def test_the_folder_is_small_and_holds_every_format() -> None:
    files = list(FOLDER.iterdir())
    assert sum(p.stat().st_size for p in files) < 5_000_000
    endings = Counter("".join(p.suffixes) for p in files)
    assert endings[".fit"] + endings[".fit.gz"] > 100
    assert min(endings[e] for e in (".tcx", ".tcx.gz", ".gpx", ".gpx.gz")) >= 1


def test_the_season_file_covers_the_plan() -> None:
    told = tomllib.loads(season_toml())
    blocks = told["blocks"]
    assert blocks[0]["start"] == date(2026, 4, 13) and blocks[-1]["end"] == date(2026, 9, 27)
    for before, after in itertools.pairwise(blocks):
        assert after["start"] == before["end"] + timedelta(days=1)
    days = {p.start.date() for p in samples.plan()}
    assert min(days) >= blocks[0]["start"] and max(days) == told["races"][-1]["day"]
    week = {samples.DIARY_WEEK + timedelta(days=k) for k in range(7)}
    assert not week & days
    assert [t["from"] for t in told["thresholds"]] == [date(2026, 4, 13), date(2026, 7, 6)]


def test_blocks_have_the_make_up_they_stand_for() -> None:
    letters: Counter[tuple[str, str]] = Counter()
    for planned in samples.plan():
        weeks = (planned.start.date() - samples.FIRST_DAY).days // 7
        block = next(b for b, end in (("G", 12), ("S", 17), ("P", 22), ("T", 24)) if weeks < end)
        for letter, seconds in samples.run(planned).seconds().items():
            letters[block, letter] += seconds
    share = {b: letters[b, "E"] / sum(letters[b, c] for c in "EMH") for b in "GSPT"}
    assert share["G"] > 0.90
    assert 0.80 < share["S"] < 0.90
    assert 0.73 < share["P"] < 0.79
    assert letters["G", "H"] > letters["G", "M"] and letters["P", "M"] > letters["P", "H"]


def test_the_broken_files_are_broken() -> None:
    with (
        pytest.raises(fitdecode.FitError),
        fitdecode.FitReader(FOLDER / "2026-05-21-1815.fit") as f,
    ):
        list(f)
    assert not (FOLDER / "2026-06-20-0905.gpx").read_bytes().lstrip().startswith(b"<")
