"""The check of an archive against the reference reader: it agrees, and it can disagree."""

from __future__ import annotations

import math
import shutil
from pathlib import Path

import pytest

from tercet import resources
from tests.soak import real_archive
from tests.soak.real_archive import Figures, Verdict, compare

RUNS = ("2026-05-08-1855.gpx", "2026-07-05-0837.gpx.gz")
BROKEN, OTHER = "2026-06-20-0905.gpx", "season.toml"


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    for name in (*RUNS, BROKEN, OTHER):
        shutil.copy(resources.samples() / name, tmp_path / name)
    return tmp_path


def test_runs_of_the_sample_season_agree(archive: Path) -> None:
    *lines, verdict = compare(archive)
    assert isinstance(verdict, Verdict) and verdict.well, lines
    # one of them holds a leap that nobody runs
    assert (verdict.files, verdict.agree, verdict.mended, verdict.others) == (2, 1, 1, 2)
    assert sum(str(line).startswith(("agrees", "mended")) for line in lines) == 2
    assert any(BROKEN in str(line) and str(line).startswith("refused") for line in lines)


def test_a_sample_less_in_the_reference_is_found(
    archive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    figures = real_archive.figures
    monkeypatch.setattr(real_archive, "figures", lambda points: figures(points[:-1]))
    verdict = list(compare(archive))[-1]
    assert isinstance(verdict, Verdict) and not verdict.well
    assert (verdict.agree, verdict.mended, verdict.differ) == (0, 0, 2)
    assert "NOT well" in verdict.words


@pytest.mark.parametrize(
    "other",
    [
        Figures(1800.02, 5000.0, 150.0),
        Figures(1800.0, 5006.1, 150.0),
        Figures(1800.0, 5000.0, 150.2),
        Figures(1800.0, 5000.0, math.nan),
    ],
)
def test_what_is_too_far_apart(other: Figures) -> None:
    ours = Figures(1800.0, 5000.0, 150.0)
    assert not ours.agree(other) and not other.agree(ours)
    assert ours.agree(Figures(1800.009, 5005.9, 150.09))
    assert Figures(9.0, 5.0, math.nan).agree(Figures(9.0, 5.0, math.nan))
