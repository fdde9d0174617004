"""``tercet tally``: the names and figures it promises, the same as the app's, and plain refusals.

Outside check: fitfast, a FIT decoder written in another language on another profile library.
"""

from __future__ import annotations

import csv
import gzip
import io
import json
import math
import os
import random
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import fitfast
import numpy as np
import pandas as pd
import pytest

from tercet import invocation, resources
from tercet.__main__ import main
from tercet.library.library import Library
from tercet.store import queries

SAMPLES = resources.samples()
SEASON = SAMPLES / "season.toml"
NAMES = [
    "path", "status", "problem", "format", "sport", "start_utc", "records", "elapsed_s",
    "moving_s", "distance_m", "hr_mean", "easy_s", "moderate_s", "hard_s", "not_running_s",
    "unjudged_s", "easy_m", "moderate_m", "hard_m", "thresholds", "reps",
]  # fmt: skip
FEW = [
    "2026-04-15-1806.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx", "2026-05-12-1813.fit",
    "2026-05-21-1815.fit", "2026-05-27-1833.tcx.gz", "2026-06-27-0839.fit.gz",
    "2026-07-23-0623.fit", "2026-09-24-0626.fit",
]  # fmt: skip
RUN = str(SAMPLES / "2026-04-15-1806.fit")
INTERVALS = str(SAMPLES / "2026-05-12-1813.fit")
APP = str(Path(__file__).parents[1] / "app")

Rows = list[dict[str, Any]]


def tally(capsys: pytest.CaptureFixture[str], *arguments: object) -> Rows:
    code = main(["tally", *map(str, arguments), "--json"])
    out, err = capsys.readouterr()
    assert (code, err) == (0, "")
    rows = json.loads(out)
    assert isinstance(rows, list)
    return rows


@pytest.fixture(scope="module")
def few(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("few") / "logs"
    folder.mkdir()
    for name in FEW:
        shutil.copy(SAMPLES / name, folder / name)
    return folder


# What it prints --------------------------------------------------------------------------


def test_each_object_has_the_promised_names_and_no_other(
    capsys: pytest.CaptureFixture[str], few: Path
) -> None:
    rows = tally(capsys, few, "--thresholds", SEASON)
    assert [Path(row["path"]).name for row in rows] == sorted(FEW)
    assert all(list(row) == NAMES for row in rows)
    by_second = tally(capsys, RUN, "--thresholds", SEASON, "--per-second")
    assert list(by_second[0]) == [*NAMES, "shades"]


def test_values_have_the_promised_kinds(capsys: pytest.CaptureFixture[str], few: Path) -> None:
    rows = {Path(row["path"]).name: row for row in tally(capsys, few, "--thresholds", SEASON)}
    run = rows["2026-04-15-1806.fit"]
    assert (run["status"], run["problem"], run["format"], run["sport"]) == (
        "read", None, "FIT", "running",
    )  # fmt: skip
    assert run["start_utc"].startswith("2026-04-15T16:06:") and run["start_utc"].endswith("Z")
    assert run["thresholds"] == "given" and run["reps"] == []
    assert isinstance(run["records"], int) and run["records"] > 100
    for name in NAMES[7:19]:
        assert isinstance(run[name], float) and run[name] >= 0
    ride = rows["2026-06-27-0839.fit.gz"]
    assert (ride["status"], ride["sport"], ride["easy_s"]) == ("not running", "cycling", None)
    assert ride["distance_m"] > 10_000
    broken = rows["2026-05-21-1815.fit"]
    assert broken["status"] == "refused" and broken["problem"].endswith(".")
    assert broken["records"] is broken["easy_s"] is broken["reps"] is None
    assert {rows[name]["format"] for name in FEW if "2026-05-0" in name} == {"TCX", "GPX"}


def test_the_five_times_add_up_to_the_elapsed_time(
    capsys: pytest.CaptureFixture[str], few: Path
) -> None:
    for row in tally(capsys, few, "--thresholds", SEASON):
        if row["status"] == "read":
            five = [row[name] for name in NAMES[11:16]]
            assert sum(five) == pytest.approx(row["elapsed_s"], abs=0.01)
            assert row["moving_s"] <= row["elapsed_s"]
            metres = row["easy_m"] + row["moderate_m"] + row["hard_m"]
            assert 0.9 * row["distance_m"] < metres <= 1.001 * row["distance_m"]


def test_repetitions_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    (row,) = tally(capsys, INTERVALS, "--thresholds", SEASON)
    reps = row["reps"]
    assert len(reps) == 12  # the plan's 12 x 200 m
    assert all(list(rep) == ["start_s", "duration_s", "distance_m", "shade"] for rep in reps)
    assert [rep["start_s"] for rep in reps] == sorted(rep["start_s"] for rep in reps)
    assert {rep["shade"] for rep in reps} == {"H"}
    assert np.median([rep["distance_m"] for rep in reps]) == pytest.approx(200, abs=20)


@pytest.mark.parametrize("name", ["2026-05-12-1813.fit", "2026-05-08-1855.gpx"])
def test_one_letter_a_second(capsys: pytest.CaptureFixture[str], name: str) -> None:
    (row,) = tally(capsys, SAMPLES / name, "--thresholds", SEASON, "--per-second")
    shades = row["shades"]
    assert len(shades) == math.ceil(row["elapsed_s"])
    assert set(shades) <= set("EMHRU")
    for letter, column in zip("EMHRU", NAMES[11:16], strict=True):
        # the last second may be shorter than one
        assert shades.count(letter) - 1 < row[column] <= shades.count(letter)


def test_the_plain_form_has_a_line_a_file_and_a_sum(
    capsys: pytest.CaptureFixture[str], few: Path
) -> None:
    assert main(["tally", str(few), "--thresholds", str(SEASON)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines[1:-1]] == sorted(FEW)
    assert "7 runs: easy " in lines[-1] and "% easy" in lines[-1]
    assert "refused:" in lines[1 + sorted(FEW).index("2026-05-21-1815.fit")]


def test_csv_is_what_json_says(capsys: pytest.CaptureFixture[str], few: Path) -> None:
    rows = tally(capsys, few, "--thresholds", SEASON)
    assert main(["tally", str(few), "--thresholds", str(SEASON), "--csv"]) == 0
    text = capsys.readouterr().out
    frame = pd.read_csv(io.StringIO(text))
    assert list(frame.columns) == NAMES
    assert len(frame) == len(rows)
    for row, (_, line) in zip(rows, frame.iterrows(), strict=True):
        for name in NAMES[:-1]:
            if row[name] is None:
                assert pd.isna(line[name])
            elif isinstance(row[name], str):
                assert line[name] == row[name]
            else:
                assert line[name] == pytest.approx(row[name])
        reps = [] if pd.isna(line["reps"]) else json.loads(line["reps"])
        assert reps == (row["reps"] or [])


def test_csv_with_a_letter_a_second(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tally", RUN, "--thresholds", str(SEASON), "--csv", "--per-second"]) == 0
    (line,) = csv.DictReader(io.StringIO(capsys.readouterr().out))
    assert len(line["shades"]) == math.ceil(float(line["elapsed_s"]))


def test_no_cell_of_csv_is_a_formula(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copy(RUN, '=1+1, "x".fit')
    assert main(["tally", '=1+1, "x".fit', "--csv"]) == 0
    (line,) = csv.DictReader(io.StringIO(capsys.readouterr().out))
    assert line["path"] == '\'=1+1, "x".fit'


# Thresholds ------------------------------------------------------------------------------


def test_without_thresholds_they_are_estimated_and_said_to_be(
    capsys: pytest.CaptureFixture[str], few: Path
) -> None:
    rows = [row for row in tally(capsys, few) if row["status"] == "read"]
    assert {row["thresholds"] for row in rows} == {"estimated"}
    assert all(row["easy_s"] > 0 for row in rows)
    assert main(["tally", str(few)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert sum(line.endswith(" about") for line in lines) == len(rows)


def test_paces_and_speeds_are_the_same_thresholds(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "pace.toml").write_text(
        '[[thresholds]]\nfrom = 2026-04-13\nlt1_speed = "5:20/km"\nlt2_speed = "7:14.5/mile"\n'
    )
    (tmp_path / "speed.toml").write_text(
        f"[[thresholds]]\nfrom = 2026-04-13\nlt1_speed = {1000 / 320}\n"
        f"lt2_speed = {1609.344 / 434.5}\n"
    )
    by_pace, by_speed = (
        tally(capsys, RUN, INTERVALS, "--thresholds", tmp_path / f"{name}.toml", "--per-second")
        for name in ("pace", "speed")
    )
    assert by_pace == by_speed
    assert by_pace[1]["hard_s"] > 0


def test_thresholds_hold_from_their_day(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    slow = "lt1_speed = 1.2\nlt2_speed = 1.4\n"
    fast = "lt1_speed = 6.0\nlt2_speed = 7.0\n"
    (tmp_path / "dated.toml").write_text(
        f"[[thresholds]]\nfrom = 2026-04-01\n{slow}[[thresholds]]\nfrom = 2026-05-12\n{fast}"
    )
    before, after = tally(capsys, RUN, INTERVALS, "--thresholds", tmp_path / "dated.toml")
    assert before["easy_s"] < 60 < before["hard_s"]
    assert after["hard_s"] < 60 < after["easy_s"]


# The same numbers as in the app ----------------------------------------------------------


def test_the_app_stores_the_same_numbers(
    capsys: pytest.CaptureFixture[str], few: Path, tmp_path: Path
) -> None:
    rows = {row["path"]: row for row in tally(capsys, few, "--thresholds", SEASON)}
    library = Library(tmp_path / "store")
    try:
        library.take_in([SEASON, few])
        compare(library, rows, few)
    finally:
        library.close()


def test_the_app_estimates_the_same(
    capsys: pytest.CaptureFixture[str], few: Path, tmp_path: Path
) -> None:
    rows = {row["path"]: row for row in tally(capsys, few)}
    library = Library(tmp_path / "store")
    try:
        library.take_in([few])
        compare(library, rows, few)
    finally:
        library.close()


def compare(library: Library, rows: dict[str, dict[str, Any]], folder: Path) -> None:
    stored = library.call(queries.sessions)
    assert len(stored) == sum(row["status"] != "refused" for row in rows.values())
    for session in stored:
        file = library.call(queries.file, session["sha256"])
        assert file is not None
        row = rows[str(folder / file.name)]
        names = ["elapsed_s", "moving_s", "distance_m", "hr_mean"]
        if row["status"] == "read":
            names += NAMES[11:19]
        for name in names:
            # tally rounds to a thousandth of a second and a hundredth of a metre or beat
            assert row[name] == pytest.approx(session[name], abs=0.0051), (file.name, name)
        assert (row["format"], row["sport"]) == (session["format"], session["sport"])


# A second decoder ------------------------------------------------------------------------

EVERY_FIT = sorted({path.name for path in SAMPLES.glob("*.fit*")} - {"2026-05-21-1815.fit"})


@pytest.mark.parametrize("name", random.Random(20260413).sample(EVERY_FIT, 25))
def test_a_second_decoder_sees_the_same_recording(
    capsys: pytest.CaptureFixture[str], name: str
) -> None:
    data = (SAMPLES / name).read_bytes()
    theirs = fitfast.records(gzip.decompress(data) if name.endswith(".gz") else data)
    code = main(["tally", str(SAMPLES / name), "--thresholds", str(SEASON), "--json"])
    (ours,) = json.loads(capsys.readouterr().out)
    assert code == (0 if ours["sport"] == "running" else 1)
    time, distance = theirs["timestamp"], theirs["distance"]
    assert ours["records"] == len(time)
    assert ours["elapsed_s"] == pytest.approx(time[-1] - time[0], abs=1.0)
    known = np.isfinite(distance)
    assert ours["distance_m"] == pytest.approx(distance[known][-1], rel=0.005)
    rate = theirs["heart_rate"]
    assert ours["hr_mean"] == pytest.approx(np.nanmean(rate), abs=0.5)
    # moving: steps of at most 30 s at 0.5 m/s or more
    step, way = np.diff(time[known]), np.diff(distance[known])
    moving = step[(step > 0) & (step <= 30) & (way >= 0.5 * step)].sum()
    assert ours["moving_s"] == pytest.approx(moving, abs=2.0)


# Refusals --------------------------------------------------------------------------------


def refused(capsys: pytest.CaptureFixture[str], *arguments: object) -> str:
    """The one line that a bad call says."""
    code = main(list(map(str, arguments)))
    out, err = capsys.readouterr()
    assert code != 0 and out == ""
    assert err.startswith("tercet: ") and err.endswith("\n") and err.count("\n") == 1
    return err


def test_a_path_that_is_not_there(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert "there is no " in refused(capsys, "tally", tmp_path / "gone.fit")
    assert "there is no " in refused(capsys, "tally", RUN, tmp_path / "gone.fit", "--json")


@pytest.mark.parametrize(
    "arguments",
    [[], [RUN, "--jsn"], [RUN, "--json", "--csv"], [RUN, "--thresholds"]],
    ids=["no path", "misspelt", "two forms", "no file"],
)
def test_a_bad_argument(capsys: pytest.CaptureFixture[str], arguments: list[str]) -> None:
    assert "--help" in refused(capsys, "tally", *arguments)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[[thresholds]\n", "not readable as TOML"),
        ("", "holds no"),
        ("[[races]]\nday = 2026-07-26\n", "holds no [[thresholds]]"),
        (
            "[[thresholds]]\nfrom = 2026-04-13\nlt1_hr = 170\nlt2_hr = 160\n",
            "entry 1: lt1_hr must be below lt2_hr: 170 and 160",
        ),
        (
            '[[thresholds]]\nfrom = 2026-04-13\nlt1_speed = "4:30/km"\nlt2_speed = "5:30/km"\n',
            "lt1_speed must be below lt2_speed",
        ),
        ("[[thresholds]]\nfrom = 2026-04-13\nlt1_hr = 140\n", "belong together"),
        ('[[thresholds]]\nfrom = "soon"\nlt1_hr = 140\nlt2_hr = 160\n', "no date"),
    ],
)
def test_a_bad_thresholds_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str, words: str
) -> None:
    path = tmp_path / "thresholds.toml"
    path.write_text(text)
    said = refused(capsys, "tally", RUN, "--thresholds", path, "--json")
    assert words in said and "thresholds.toml" in said


def test_a_thresholds_file_that_cannot_be_read(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "binary.toml").write_bytes(b"\xff\xfe\x00")
    assert "No such file" in refused(capsys, "tally", RUN, "--thresholds", tmp_path / "gone.toml")
    assert "not UTF-8" in refused(capsys, "tally", RUN, "--thresholds", tmp_path / "binary.toml")
    assert "cannot be read" in refused(capsys, "tally", RUN, "--thresholds", tmp_path)


def test_nothing_that_could_be_read(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert main(["tally", str(tmp_path), "--json"]) == 1
    out, err = capsys.readouterr()
    assert json.loads(out) == [] and err.count("\n") == 1
    assert main(["tally", str(SAMPLES / "2026-05-21-1815.fit"), "--json"]) == 1
    out, err = capsys.readouterr()
    assert json.loads(out)[0]["status"] == "refused"
    assert err.startswith("tercet: no run was read: ") and err.count("\n") == 1


def test_help_names_every_option(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        main(["tally", "--help"])
    said = capsys.readouterr().out
    assert left.value.code == 0
    assert all(option in said for option in ("--thresholds", "--json", "--csv", "--per-second"))


# As a program ----------------------------------------------------------------------------


def tercet(*arguments: object, **options: Any) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "tercet", *map(str, arguments)],
        env={**os.environ, "PYTHONPATH": APP, "PYTHONUNBUFFERED": ""}, text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, **options,
    )  # fmt: skip


def test_it_says_one_line_and_fails_as_a_program_too(tmp_path: Path) -> None:
    with tercet("tally", tmp_path / "gone.fit") as process:
        out, err = process.communicate(timeout=60)
    assert (process.returncode, out) == (2, "")
    assert err == f"tercet: there is no {tmp_path / 'gone.fit'}\n"


@pytest.mark.skipif(sys.platform == "win32", reason="pipes differ there")
@pytest.mark.parametrize("options", [[], ["--json", "--per-second"]], ids=["short", "long"])
def test_a_reader_that_goes_away_does_no_harm(options: list[str]) -> None:
    with tercet("tally", RUN, *options) as process:
        assert process.stdout is not None and process.stderr is not None
        process.stdout.close()
        assert process.stderr.read() == ""
        process.wait(timeout=60)
    assert process.returncode in (0, 1)


def test_clock() -> None:
    assert [invocation.clock(s) for s in (0, 59.6, 3599.5, 360_000)] == [
        "0:00:00", "0:01:00", "1:00:00", "100:00:00",
    ]  # fmt: skip
