"""Written pieces to seconds, metres and shades, by hand arithmetic."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import Evidence, Shade, Thresholds
from tercet.engine.notation import (
    WORDS,
    Bout,
    Piece,
    judge_pieces,
    race_speed,
    stretches,
    typical_speed,
)

#: LT1 at 5:33.3/km, LT2 at 4:10/km.
RUNNER = Thresholds(lt1_speed=3.0, lt2_speed=4.0)
BY_HEART = Thresholds(lt1_hr=146, lt2_hr=167)


def one(bout: Bout, thresholds: Thresholds | None = RUNNER, race=None):
    (found,) = stretches([Piece(bout)], thresholds, race)
    return found


@pytest.mark.parametrize(
    ("words", "shade"),  # common practice, no source
    [
        (("easy", "jog", "warm-up", "cool-down", "recovery"), Shade.EASY),
        (("steady", "moderate", "tempo", "threshold"), Shade.MODERATE),
        (("hard", "fast", "strides", "sprint"), Shade.HARD),
        (("walk", "rest"), Shade.NOT_RUNNING),
    ],
)
@pytest.mark.parametrize("thresholds", [None, BY_HEART, RUNNER])
def test_a_word_is_a_shade_with_and_without_thresholds(words, shade, thresholds) -> None:
    for word in words:
        assert one(Bout(seconds=600, word=word), thresholds).shade == shade


def test_metres_follow_from_seconds_and_seconds_from_metres() -> None:
    # 0.85 x 3 = 2.55 m/s, (3 + 4) / 2 = 3.5 m/s, 1.08 x 4 = 4.32 m/s
    assert one(Bout(seconds=600, word="easy")).metres == pytest.approx(1530.0)
    assert one(Bout(seconds=600, word="tempo")).metres == pytest.approx(2100.0)
    assert one(Bout(metres=432, word="fast")).seconds == pytest.approx(100.0)
    assert one(Bout(metres=140, word="walk")).seconds == pytest.approx(100.0)  # 1.4 m/s
    assert one(Bout(seconds=90, word="rest")).metres == 0.0


@pytest.mark.parametrize("thresholds", [None, BY_HEART])
def test_without_speeds_nothing_is_added_to_what_was_written(thresholds) -> None:
    assert one(Bout(seconds=600, word="easy"), thresholds).metres is None
    assert one(Bout(metres=800, word="jog"), thresholds).seconds is None
    assert one(Bout(metres=400, seconds=80), thresholds).shade == Shade.UNJUDGED
    judged = judge_pieces([Piece(Bout(metres=8000, word="steady"))], thresholds)
    assert judged.elapsed_s == 0.0 and judged.metres_by_shade().sum() == 0.0


@pytest.mark.parametrize(
    ("speed", "shade"),
    [
        (2.99, Shade.EASY),
        (3.0, Shade.MODERATE),
        (3.99, Shade.MODERATE),
        (4.0, Shade.HARD),
        (6.0, Shade.HARD),
    ],
)
def test_a_pace_is_judged_by_the_two_lines_and_goes_before_the_word(speed, shade) -> None:
    for word in ("", "easy", "hard"):
        found = one(Bout(seconds=100, word=word, speed=speed))
        assert found.shade == shade and found.metres == pytest.approx(100 * speed)
    assert one(Bout(seconds=100, word="easy", speed=speed), None).shade == Shade.EASY


def test_the_time_for_a_distance_is_a_pace_where_no_word_was_said() -> None:
    assert one(Bout(metres=400, seconds=80)).shade == Shade.HARD  # 5 m/s
    assert one(Bout(metres=400, seconds=120)).shade == Shade.MODERATE  # 3.33 m/s
    assert one(Bout(metres=400, seconds=160)).shade == Shade.EASY  # 2.5 m/s
    assert one(Bout(metres=8000, seconds=2400, word="easy")).shade == Shade.EASY


def test_nothing_said_of_how_hard_is_unjudged() -> None:
    found = one(Bout(seconds=600))
    assert found.shade == Shade.UNJUDGED and found.metres == pytest.approx(1530.0)
    assert one(Bout(metres=1530)).seconds == pytest.approx(600.0)


def test_race_paces_follow_the_power_law() -> None:
    # P. S. Riegel, American Scientist 69:285-290, 1981: time ~ distance ** 1.06. The hour's race
    # is 14,400 m, so 5,000 m take 3600 x (5 / 14.4) ** 1.06 = 1173.1 s: 4.262 m/s.
    assert race_speed(RUNNER, metres=5000) == pytest.approx(4.262, abs=0.001)
    assert race_speed(RUNNER, metres=14_400) == pytest.approx(4.0)
    assert race_speed(RUNNER, seconds=3600) == pytest.approx(4.0)
    found = one(Bout(metres=200, race_m=5000))
    assert found.shade == Shade.HARD and found.seconds == pytest.approx(46.92, abs=0.01)
    assert one(Bout(seconds=1200, race_m=21_097.5)).shade == Shade.MODERATE
    # A known race goes before the one-hour rule, and works without thresholds.
    assert race_speed(RUNNER, (1000.0, 5000.0), metres=5000) == pytest.approx(5.0)
    assert one(Bout(metres=200, race_m=5000), None, (1000.0, 5000.0)).seconds == 40.0
    assert race_speed(Thresholds(), metres=5000) is None


def test_a_race_is_judged_by_its_time_else_by_its_length_else_by_the_word() -> None:
    assert one(Bout(metres=10_000, seconds=2400, word="race")).shade == Shade.HARD
    assert one(Bout(metres=21_097.5, seconds=6000, word="race")).shade == Shade.MODERATE
    assert one(Bout(metres=10_000, word="race")).shade == Shade.HARD
    assert one(Bout(metres=42_195, word="race")).shade == Shade.MODERATE
    assert one(Bout(seconds=1200, word="race")).shade == Shade.HARD
    assert one(Bout(metres=42_195, word="race"), None).shade == Shade.HARD


def test_repetitions_stand_in_order_each_with_its_recovery() -> None:
    session = [
        Piece(Bout(seconds=60, word="easy")),
        Piece(Bout(seconds=20, word="fast"), 3, Bout(seconds=40, word="jog")),
        Piece(Bout(seconds=10, word="hard"), 2, Bout(seconds=30, word="rest")),
    ]
    judged = judge_pieces(session, RUNNER)
    assert judged.letters == "E" * 60 + ("H" * 20 + "E" * 40) * 3 + ("H" * 10 + "R" * 30) * 2
    assert judged.elapsed_s == 320.0
    starts = [rep.start_s for rep in judged.repetitions]
    assert starts == [60.0, 120.0, 180.0, 240.0, 280.0]
    assert [rep.recovery_s for rep in judged.repetitions] == [40.0, 40.0, None, 30.0, None]
    assert [rep.duration_s for rep in judged.repetitions] == [20.0, 20.0, 20.0, 10.0, 10.0]
    assert judged.repetitions[0].distance_m == pytest.approx(20 * 4.32)
    assert (judged.evidence[:60] == Evidence.WORD).all()
    assert (judged.evidence[250:280] == Evidence.NONE).all()


def test_sets_are_run_as_often_as_written_each_with_its_recovery() -> None:
    fast, jog = Bout(seconds=20, word="fast"), Bout(seconds=10, word="jog")
    walk = Bout(seconds=30, word="walk")
    inner = (Piece(fast, 2, jog), Piece(Bout(seconds=5, word="hard")), Piece(jog))
    judged = judge_pieces([Piece(count=2, recovery=walk, inner=inner)], RUNNER)
    once = ("H" * 20 + "E" * 10) * 2 + "H" * 5 + "E" * 10 + "R" * 30
    assert judged.letters == once * 2
    # Four fast ones and the single hard one of each set; the jog between is no repetition.
    assert [rep.duration_s for rep in judged.repetitions] == [20.0, 20.0, 5.0] * 2
    assert [rep.start_s for rep in judged.repetitions] == [0.0, 30.0, 60.0, 105.0, 135.0, 165.0]
    deep = Piece(count=2, inner=(Piece(count=3, inner=(Piece(fast, 4),), recovery=walk),))
    assert sum(times for times, bout in deep.bouts() if bout is fast) == 24
    assert judge_pieces([deep], RUNNER).seconds_by_shade()[Shade.HARD] == 480


def test_speed_is_what_was_written_and_level_speed_also_what_is_typical() -> None:
    pieces = [Piece(Bout(seconds=60, word="easy")), Piece(Bout(metres=400, seconds=80))]
    judged = judge_pieces(pieces, RUNNER)
    assert np.isnan(judged.speed[:60]).all() and judged.speed[60:] == pytest.approx(5.0)
    assert judged.level_speed[:60] == pytest.approx(2.55)
    assert judged.level_speed[60:] == pytest.approx(5.0)
    resting = judge_pieces([Piece(Bout(seconds=60, word="rest"))], RUNNER)
    assert np.isnan(resting.level_speed).all()
    assert np.isnan(judge_pieces(pieces[:1], None).level_speed).all()
    assert np.isnan(judged.heart_rate).all() and np.isnan(judged.altitude).all()
    assert judged.scale[:60] == pytest.approx(0.85) and judged.scale[60:] == pytest.approx(3.0)


def test_no_pieces_make_an_empty_line() -> None:
    judged = judge_pieces([], RUNNER)
    assert judged.elapsed_s == 0.0 and judged.repetitions == ()


def test_typical_speeds_lie_in_their_shades() -> None:
    assert typical_speed(Shade.EASY, RUNNER) == pytest.approx(2.55)
    assert typical_speed(Shade.UNJUDGED, RUNNER) == pytest.approx(2.55)
    assert typical_speed(Shade.MODERATE, BY_HEART) is None


BOUTS = st.builds(
    Bout,
    seconds=st.floats(1, 4000),
    metres=st.none() | st.floats(30, 9000),
    word=st.sampled_from(["", *WORDS]),
) | st.builds(
    Bout,
    metres=st.floats(30, 9000),
    word=st.sampled_from(["", *WORDS]),
    speed=st.none() | st.floats(1, 9),
)
PLAIN = st.builds(Piece, BOUTS, st.integers(1, 9), st.none() | BOUTS)
SETS = st.builds(
    Piece,
    st.just(Bout()),
    st.integers(1, 4),
    st.none() | BOUTS,
    st.lists(PLAIN, min_size=1, max_size=3).map(tuple),
)
PIECES = st.lists(PLAIN | SETS, min_size=1, max_size=5)


@given(PIECES)
def test_shades_last_as_long_as_written_and_metres_are_all_there(pieces) -> None:
    run = stretches(pieces, RUNNER)
    judged = judge_pieces(pieces, RUNNER)
    for shade in Shade:
        wanted = sum(item.seconds or 0.0 for item in run if item.shade == shade)
        assert abs(judged.seconds_by_shade()[shade] - wanted) <= 0.5 + 1e-6
        metres = sum(item.metres or 0.0 for item in run if item.shade == shade)
        assert judged.metres_by_shade()[shade] == pytest.approx(metres)
    points = judged.scale[judged.shades == Shade.MODERATE]
    assert ((points >= 1) & (points < 2)).all()
    plain = [piece for piece in pieces if not piece.inner]
    if len(plain) == len(pieces):
        assert len(judged.repetitions) == sum(piece.count for piece in plain if piece.count > 1)
    written = [(n, bout) for piece in pieces for n, bout in piece.bouts()]
    assert len(run) == sum(n for n, _ in written)
    seconds = sum(n * bout.seconds for n, bout in written if bout.seconds is not None)
    assert seconds <= sum(item.seconds or 0.0 for item in run) * (1 + 1e-9)
