"""Searching runs: what a hand may type, and what it finds."""

from __future__ import annotations

from datetime import date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet import language
from tercet.library.search import SearchError, parse
from tercet.library.views import SessionView


def run(**changes: object) -> SessionView:
    plain = SessionView(
        id=1, day=date(2026, 6, 17), start=datetime(2026, 6, 17, 18), name="6 x 3 min uphill",
        sport="running", kind="", seconds=(2940.0, 300.0, 1080.0, 60.0, 0.0),
        metres=(8000.0, 1000.0, 4500.0, 0.0, 0.0), elapsed_s=4400.0, moving_s=4320.0,
        distance_m=13_500.0, effort=7, climb_m=212.0, note="left calf quiet",
    )  # fmt: skip
    return plain._replace(**changes)


@pytest.mark.parametrize(
    "text",
    ["", "uphill", "UPHILL", "june", "jun 2026", "2026", "wednesday", "2026-06-17", "2026-06",
     "17.6.", "17.6.2026", '"left calf"', "hard > 10 min", "hard>10", "hard > 0:10", "hard >= 18",
     "hard < 19 min", "easy > 60 %", "easy < 70%", "moderate = 5 min", "time > 1:10", "time < 80",
     "distance > 13", "distance > 13,2", "distance < 9 miles", "pace < 5:30", "pace > 5:00",
     "pace < 9:00 /mile", "effort > 6", "climb > 200", "easy", "june hard > 10 min uphill",
     '"left ca'],
)  # fmt: skip
def test_it_is_found(text: str) -> None:
    assert parse(text)(run())


@pytest.mark.parametrize(
    "text",
    ["downhill", "july", "2025", "monday", "2026-06-18", "18.6.", "17.6.2025", '"calf left"',
     "hard > 18 min", "easy > 70 %", "time > 1:15", "distance > 14", "pace < 5:00", "effort > 7",
     "race", "treadmill", "repetitions", "june hard > 30 min", "hard"],
)  # fmt: skip
def test_it_is_not_found(text: str) -> None:
    assert not parse(text)(run())


def test_kinds_and_repetitions() -> None:
    assert parse("race")(run(kind="race")) and parse("repetitions")(run(repetitions="20 x 200 m"))
    assert parse("hard")(run(seconds=(10.0, 0.0, 20.0, 0.0, 0.0)))
    ride = run(sport="cycling", kind="", effort=None)
    assert parse("cycling")(ride)
    assert not parse("hard > 1")(ride) and not parse("effort < 9")(ride)


def test_running_on_a_race_day_is_a_race() -> None:
    found = parse("june race", {run().day})
    assert found(run()) and not found(run(day=date(2026, 6, 18)))
    assert not found(run(sport="cycling"))


@pytest.mark.parametrize("text", ["mood > 3", "distance > 1:30", "effort > 1:00"])
def test_what_is_not_understood_is_told(text: str) -> None:
    with pytest.raises(SearchError):
        parse(text)


def test_the_words_of_the_language_in_use_are_understood_beside_those_of_the_source() -> None:
    language.use("de")
    try:
        for text in ("hart > 10 min", "locker > 60 %", "juni", "Mittwoch", "Strecke > 13,2",
                     "Tempo < 5:30", "Anstrengung > 6", "hard > 10", "wednesday"):  # fmt: skip
            assert parse(text)(run()), text
        for text in ("hart > 18 min", "rennen", "Januar", "hart"):
            assert not parse(text)(run()), text
        assert parse("laufband")(run(kind="treadmill"))
        assert parse("wiederholungen")(run(repetitions="20 x 200 m"))
    finally:
        language.use(language.SOURCE)


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    try:
        parse(text)(run())
    except SearchError as error:
        assert str(error)
