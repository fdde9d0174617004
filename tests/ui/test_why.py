"""'Why this shade?' answers in a sentence with its numbers."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.formats.build import activity, tcx, tcx_lap, tcx_point

from tercet import resources
from tercet.engine import LETTERS
from tercet.library import counted, season
from tercet.library.library import Library
from tercet.ui.made_from import made_from_words
from tercet.ui.why import why


@pytest.fixture
def three(tmp_path: Path) -> Iterator[Library]:
    """A repetition session and a diary."""
    library = Library(tmp_path / "store")
    samples = resources.samples()
    library.take_in(
        [samples / "season.toml", samples / "2026-04-14-1843.fit", samples / "diary-week.txt"]
    )
    yield library
    library.close()


def test_every_second_of_a_run_has_an_answer_that_fits_its_shade(three: Library) -> None:
    run = three.call(season.session_views)[0]
    detail = three.call(season.session_detail, run.id)
    assert detail is not None and detail.thresholds is not None
    said = {"E": "easy", "M": "moderate", "H": "hard", "R": "not running", "U": "not judged"}
    seen = set()
    for second, shade in enumerate(detail.trace.shades.tolist()):
        answer = why(detail, second)
        assert said[LETTERS[shade]] in answer
        seen.add(LETTERS[shade])
    assert {"E", "H"} <= seen
    easy = why(detail, 600)
    assert "slower than 5:39" in easy and "/min" in easy
    assert "about" not in easy


def test_the_pace_that_is_named_fits_the_words_about_it(three: Library) -> None:
    run = three.call(season.session_views)[0]
    detail = three.call(season.session_detail, run.id)
    assert detail is not None and detail.thresholds is not None
    lt1, lt2 = detail.thresholds.lt1_speed, detail.thresholds.lt2_speed
    assert lt1 and lt2
    for second, level in enumerate(detail.trace.level_speed.tolist()):
        answer = why(detail, second)
        if "on level ground" not in answer:
            continue
        assert ("slower than" in answer) == (level < lt1)
        assert ("faster than" in answer) == (level >= lt2)
        assert ("between" in answer) == (lt1 <= level < lt2)


def test_a_diary_says_that_nothing_was_measured(three: Library) -> None:
    written = [item for item in three.call(season.session_views) if item.hr_mean is None]
    assert len(written) == 5
    detail = three.call(season.session_detail, written[0].id)
    assert detail is not None
    assert "by what you wrote" in why(detail, 60)
    assert why(detail, 10**6) == ""


def test_a_race_day_names_its_longest_run(tmp_path: Path) -> None:
    library = Library(tmp_path / "store")
    samples = resources.samples()
    library.take_in([samples / "season.toml", samples / "2026-07-26-0920.fit"])
    assert [item.name for item in library.call(season.session_views)] == ["Corvaleta Harbour 10"]
    library.close()


@pytest.mark.parametrize(
    ("paces", "reason"),
    [
        ('lt1_speed = "5:40/km"\nlt2_speed = "4:40/km"\n', "no pace was recorded"),
        ("", "the thresholds hold no pace"),
    ],
)
def test_a_run_with_power_alone_says_what_judged_it(
    tmp_path: Path, paces: str, reason: str
) -> None:
    """Ten minutes at 200 W, ten at 300 W, from a meter whose lines are 236 and 280 W."""
    season_file, log = tmp_path / "season.toml", tmp_path / "power.tcx"
    season_file.write_text(
        f"[[thresholds]]\nfrom = 2026-01-01\n{paces}lt1_power = 236\nlt2_power = 280\n", "utf-8"
    )
    points = [tcx_point(k, watts=200 if k < 600 else 300) for k in range(1200)]
    log.write_bytes(tcx(activity(tcx_lap(0, 1199, points))))
    library = Library(tmp_path / "store")
    library.take_in([season_file, log])
    run = library.call(season.session_views)[0]
    detail = library.call(season.session_detail, run.id)
    told = library.call(counted.behind, run.day, run.day)
    library.close()
    assert detail is not None
    assert abs(run.seconds[0] - 600) <= 10 and abs(run.seconds[2] - 600) <= 10
    assert "easy by running power, 200 W against 236 and 280 W" in why(detail, 300)
    said = made_from_words(run, detail)
    assert said.startswith(f"Shaded by running power, as {reason}. Power against 236 and")
    assert (told.runs, told.power, told.pace, told.heart) == (1, 1, 0, 0)
