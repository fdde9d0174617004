"""The runner's word over a judgement holds whatever is judged anew."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import numpy as np
import pytest
from tests.formats.build import gpx, gpx_point, segment

from tercet import resources
from tercet.domain import DatedThresholds
from tercet.engine.shades import Thresholds
from tercet.library import operations, rejudge, season
from tercet.library.library import Library
from tercet.store import queries
from tercet.store.database import Store

RUN = resources.samples() / "2026-05-09-0846.fit"


def correct(store: Store, run_id: int, shade: str, start: float, end: float) -> None:
    with store.atomic("Shade a stretch"):
        row = {"kind": "shade", "start_s": start, "end_s": end, "shade": shade, "said_at": ""}
        store.put("correction", {**row, "run_id": run_id})
        rejudge.judge_one(store, run_id)


def seconds(library: Library) -> list[float]:
    row = library.call(queries.sessions)[0]
    return [row[name] for name in queries.SECONDS]


def test_a_stretch_shaded_by_hand_stays_so_by_other_thresholds(tmp_path: Path) -> None:
    library = Library(tmp_path / "store")
    try:
        library.take_in([resources.samples() / "season.toml", RUN])
        run_id = library.call(queries.run_ids)[0]
        before = seconds(library)
        library.call(correct, run_id, "H", 600.0, 900.0)
        after = seconds(library)
        assert after[2] >= before[2] + 250
        assert abs(sum(after) - sum(before)) < 1e-6
        detail = library.call(season.session_detail, run_id)
        assert detail is not None
        assert (np.asarray(detail.trace.shades)[600:900] == 2).mean() > 0.99
        entries = library.call(queries.thresholds)
        faster = [
            replace(
                entry,
                values=replace(
                    entry.values,
                    lt1_speed=(entry.values.lt1_speed or 3.0) * 1.3,
                    lt2_speed=(entry.values.lt2_speed or 3.5) * 1.3,
                    lt1_hr=None,
                    lt2_hr=None,
                ),
            )
            for entry in entries
        ]
        library.use(library.preview(faster), "Use other thresholds")
        anew = seconds(library)
        assert 295 <= anew[2] <= after[2]
        library.call(operations.undo)
        assert seconds(library) == after
        library.call(operations.undo)
        assert seconds(library) == before
    finally:
        library.close()


def test_the_way_of_a_run_that_leapt_is_put_right_when_it_is_judged_anew(tmp_path: Path) -> None:
    """As an earlier version left it: with two kilometres there and back that nobody ran."""
    points = [
        gpx_point(s, 50.0 + s * 2.7e-5 + (0.018 if 300 <= s < 304 else 0.0), 7.0, hr=140)
        for s in range(900)
    ]
    log = tmp_path / "leaps.gpx"
    log.write_bytes(gpx(f"<type>running</type>{segment(points)}"))
    library = Library(tmp_path / "store")
    try:
        library.take_in([resources.samples() / "season.toml", log])
        run_id = library.call(queries.run_ids)[0]

        def left(store: Store) -> None:
            with store.atomic("As it was"):
                store.put("run", {"id": run_id, "distance_m": 6700.0})

        def anew(store: Store) -> None:
            with store.atomic("Judge anew"):
                rejudge.judge_one(store, run_id)

        library.call(left)
        library.call(anew)
        (run,) = library.call(season.season).sessions
        # 899 steps of 2.7e-5 degrees of latitude, 3.00 m each by WGS84 at 50 degrees.
        assert run.distance_m == pytest.approx(2700, abs=5)
        assert sum(run.metres) == pytest.approx(run.distance_m, abs=0.1)
    finally:
        library.close()


@pytest.mark.parametrize(
    ("heart", "lines", "told"),
    [(136, "both", True), (None, "both", True), (136, "heart", True), (None, "heart", False)],
)
def test_an_effort_judges_only_where_no_channel_does(
    tmp_path: Path, heart: int | None, lines: str, told: bool
) -> None:
    """Where channels judged a run it is not judged again, and that would have changed nothing."""
    points = [gpx_point(s, 50.0 + s * 2.7e-5, 7.0, hr=heart and heart + s % 5) for s in range(900)]
    log = tmp_path / "run.gpx"
    log.write_bytes(gpx(f"<type>running</type>{segment(points)}"))
    values = Thresholds(lt1_hr=145.0, lt2_hr=165.0)
    if lines == "both":
        values = replace(values, lt1_speed=3.2, lt2_speed=3.9)
    library = Library(tmp_path / "store")
    try:
        entry = DatedThresholds(date(2020, 1, 1), values)
        library.call(operations.set_thresholds, [entry], {}, step="thresholds")
        library.take_in([log])
        run_id = library.call(queries.run_ids)[0]
        for effort, shade in ((8, 2), (2, 0), (None, 4)):
            library.call(operations.set_effort, run_id, effort)
            kept = seconds(library)
            assert kept[0 if told else shade] > 800
            assert told or not library.call(rejudge.by_channels, run_id)
            assert lines == "heart" or library.call(rejudge.by_channels, run_id)
            library.judge_all_again()
            assert seconds(library) == kept
    finally:
        library.close()
