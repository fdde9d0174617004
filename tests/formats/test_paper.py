"""Diaries as text: sessions to pieces, pages to dated runs, and what is asked back."""

from __future__ import annotations

import time
from datetime import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet import resources
from tercet.domain import Failed
from tercet.engine.notation import WORDS, Bout, Piece
from tercet.formats import read_bytes, read_path
from tercet.formats.paper import Page, parse_session

KM = 1000.0
MILE = 1609.344
JOG_200 = Bout(metres=200, word="jog")


def pieces(text: str) -> list[Piece]:
    session = parse_session(text)
    assert not session.unclear
    return list(session.pieces)


def page(text: str) -> Page:
    found = read_bytes(text.encode())
    assert isinstance(found, Page), found
    return found


def runs(text: str) -> list[tuple[str, str]]:
    return [(f"{run.start:%Y-%m-%d %H}", run.notation) for run in page(text).runs]


@pytest.mark.parametrize(
    ("text", "bout"),
    [
        ("15 min easy", Bout(900, word="easy")),
        ("easy 45 min run", Bout(2700, word="easy")),
        ("8 km steady", Bout(metres=8000, word="steady")),
        ("8,5 km easy", Bout(metres=8500, word="easy")),
        ("5 miles", Bout(metres=5 * MILE)),
        ("1:30 h easy", Bout(5400, word="easy")),
        ("1 h 30", Bout(5400)),
        ("1h30min easy", Bout(5400, word="easy")),
        ("45:00 easy", Bout(2700, word="easy")),
        ("1:25:00 easy", Bout(5100, word="easy")),
        ("1 min 30 s fast", Bout(90, word="fast")),
        ("20' tempo", Bout(1200, word="tempo")),
        ("15 min warm-up", Bout(900, word="warm-up")),
        ("15 min WU", Bout(900, word="warm-up")),
        ("10 min cool down", Bout(600, word="cool-down")),
        ("10 min walk", Bout(600, word="walk")),
        ("20 min @ 4:10/km", Bout(1200, speed=4.0)),
        ("20 min @ 4:10 min/km", Bout(1200, speed=4.0)),
        ("20 min 6:00 per mile", Bout(1200, speed=MILE / 360)),
        ("20 min @ 14.4 km/h", Bout(1200, speed=4.0)),
        ("20 min @ threshold", Bout(1200, word="threshold")),
        ("20 min tempo pace", Bout(1200, word="tempo")),
        ("20 min @ 10 km pace", Bout(1200, race_m=10_000)),
        ("20 min 10k pace", Bout(1200, race_m=10_000)),
        ("5 km @ half marathon pace", Bout(metres=5000, race_m=21_097.5)),
        ("15 km at marathon pace", Bout(metres=15_000, race_m=42_195)),
        ("1000 m @ mile pace", Bout(metres=1000, race_m=MILE)),
        ("10 km in 42:10", Bout(2530, 10_000)),
        ("half marathon race in 1:35", Bout(5700, 21_097.5, "race")),
        ("10 km race", Bout(metres=10_000, word="race")),
    ],
)
def test_one_bout(text, bout) -> None:
    for typed in (text, text.upper(), text.replace(" ", "  ")):
        (piece,) = pieces(typed)
        assert piece == Piece(bout)
        assert (piece.start, piece.end) == (0, len(typed))


@pytest.mark.parametrize(
    ("text", "piece"),
    [
        ("10 x 100 m fast / 100 m jog",
         Piece(Bout(metres=100, word="fast"), 10, Bout(metres=100, word="jog"))),
        ("6 x 200 m @ 5k pace / 200 m jog", Piece(Bout(metres=200, race_m=5000), 6, JOG_200)),
        ("10 x 400 in 80 s (90 s rest)", Piece(Bout(80, 400), 10, Bout(90, word="rest"))),
        ("10 x 400 @ 1:20 with 200 jog", Piece(Bout(80, 400), 10, JOG_200)),
        ("5 x 1 km @ 3:30", Piece(Bout(210, 1000), 5)),
        ("3 x 10 min @ 4:10/km / 2 min jog",
         Piece(Bout(600, speed=4.0), 3, Bout(120, word="jog"))),
        ("6 x 1:30 hard / 1:30 jog", Piece(Bout(90, word="hard"), 6, Bout(90, word="jog"))),
        ("8 x 20 s strides", Piece(Bout(20, word="strides"), 8)),
        ("4 x 1 mile threshold (60 s)", Piece(Bout(metres=MILE, word="threshold"), 4, Bout(60))),
        ("6 x 3' hard (90 s recovery)", Piece(Bout(180, word="hard"), 6, Bout(90))),
    ],
)  # fmt: skip
def test_repetitions(text, piece) -> None:
    for typed in (text, text.replace(" x ", "×"), text.replace(" x ", " * ")):
        assert pieces(typed) == [piece]
    for tight in ("10x100m fast/100m jog", "10×100m fast /100m jog"):
        assert pieces(tight) == pieces("10 x 100 m fast / 100 m jog")


def test_pieces_keep_their_places_and_comments_are_kept_apart() -> None:
    text = "15 min easy, 6 x 200 m hard / 200 m jog;800 m jog # windy, cold"
    session = parse_session(text)
    typed = [text[piece.start : piece.end] for piece in session.pieces]
    assert typed == ["15 min easy", "6 x 200 m hard / 200 m jog", "800 m jog"]
    assert session.comment == "windy, cold" and not session.unclear
    assert parse_session("5 km easy -- with Bea").comment == "with Bea"


@pytest.mark.parametrize(
    ("text", "where", "question", "readings"),
    [
        ("10 x 100 m strds", "strds", "strides?", ("strides",)),
        ("20 min stedy", "stedy", "steady?", ("steady",)),
        ("20 min grumf", "grumf", "What does it mean?", ("easy", "steady", "hard")),
        ("20 min T", "T", "threshold or tempo?", ("threshold", "tempo")),
        ("3/4 x 1 mile hard", "3/4 x", "3 or 4 times?", ("3 x", "4 x")),
        ("16 x 1 on 1 off", "16 x 1 on 1 off", "hard was", ("16 x 1 min hard / 1 min jog",)),
        ("20 min @ 4:10-4:16/km", "@ 4:10-4:16/km", "Which pace?", ("@ 4:13/km", "@ 4:10/km")),
        ("easy 20 min steady", "easy 20 min steady", "easy or steady?", ()),
        ("8 km easy, last 5 min hard", "last 5 min hard", "How much of", ()),
        ("4 x 400 in 500", "500", "500 what", ()),
        ("2 x (2 x (2 x (2 x (400 m))))", "2 x (400 m)", "Sets within", ()),
        ("9 x (9 x (9 x 1 s fast))", "9 x (9 x (9 x 1 s fast))", "More than 500", ()),
        ("45 easy", "45", "45 what", ("45 min", "45 km", "45 miles")),
        ("15 m easy", "15 m", "Minutes or metres?", ("15 min", "15 metres")),
        ("1:30 easy", "1:30", "Hours or minutes?", ("1:30 h", "1:30 min")),
        ("20 min @ 4:10", "@ 4:10", "kilometre or a mile", ("@ 4:10/km", "@ 4:10/mile")),
        ("5 x 1200 m @ 4:10", "@ 4:10", "For the repetition", ("in 4:10", "@ 4:10/km")),
        ("10 x 400 @ 80", "@ 80", "80 what?", ("in 80 s", "@ 80 km pace")),
        ("10 km race pace", "race pace", "Pace of which race?", ("@ 5 km pace",)),
        ("10 x strides", "strides", "How long?", ("100 m strides",)),
        ("easy steady 20 min", "easy steady", "easy or steady?", ("easy", "steady")),
        ("2 x 6 x 200", "2 x 6 x 200", "2 sets of 6 x 200?", ("2 x (6 x 200)",)),
        ("10 x", "10 x", "How should this be read?", ()),
        ("300 x 1 min hard", "300 x", "whole numbers", ()),
        ("0 min easy", "0 min", "Nothing at all?", ()),
        ("10 km in 10 min", "10 km in 10 min", "Nobody runs", ()),
        ("5 km in 25 min @ 4:10/km", "5 km in 25 min @ 4:10/km", "Two paces", ()),
        ("200 x 10 km easy", "200 x 10 km easy", "More than a day", ()),
        ("99999999999999999999 km", "99999999999999999999 km", "More than a day", ()),
    ],
)
def test_an_unclear_piece_is_asked_about_and_counts_nothing(
    text, where, question, readings
) -> None:
    for before, after in (("", ""), ("15 min easy, ", ", 5 km jog")):
        session = parse_session(before + text + after)
        known = text.startswith("8 km easy")
        assert len(session.pieces) == (2 if before else 0) + known
        (unclear,) = session.unclear
        assert unclear.text == where == (before + text)[unclear.start : unclear.end]
        assert question in unclear.question
        assert unclear.readings[: len(readings)] == readings


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("2 x (5 x 200 m / 200 m jog) / 3 min",
         [Piece(count=2, recovery=Bout(180), inner=(Piece(Bout(metres=200), 5, JOG_200),))]),
        ("3 x (1 km @ 10k pace, 400 fast) (2 min jog)",
         [Piece(count=3, recovery=Bout(120, word="jog"),
                inner=(Piece(Bout(metres=1000, race_m=10_000)),
                       Piece(Bout(metres=400, word="fast"))))]),
        ("2 sets of (6 x 30 s fast / 30 s jog), 3 min walk between sets",
         [Piece(count=2, recovery=Bout(180, word="walk"),
                inner=(Piece(Bout(30, word="fast"), 6, Bout(30, word="jog")),))]),
        ("6 x 3 min hard, 2 min jog between",
         [Piece(Bout(180, word="hard"), 6, Bout(120, word="jog"))]),
        ("45 min easy, last 10 min steady",
         [Piece(Bout(2100, word="easy")), Piece(Bout(600, word="steady"))]),
        ("10 km, first 2 km easy",
         [Piece(Bout(metres=2000, word="easy")), Piece(Bout(metres=8000))]),
        ("14 miles easy, 1:52", [Piece(Bout(6720, 14 * MILE, "easy"))]),
        ("10 x 400 in 80", [Piece(Bout(80, 400), 10)]),
        ("20 min MP + 5 min easy",
         [Piece(Bout(1200, race_m=42_195)), Piece(Bout(300, word="easy"))]),
        ("20 min easy then 6 x 20 s strides",
         [Piece(Bout(1200, word="easy")), Piece(Bout(20, word="strides"), 6)]),
    ],
)  # fmt: skip
def test_sets_parts_and_whole_times(text, wanted) -> None:
    assert pieces(text) == wanted


def test_words_that_say_nothing_of_the_running_are_notes() -> None:
    session = parse_session("5k race 19:42, mud, 3rd # cold")
    assert session.pieces == (Piece(Bout(1182, 5000, "race")),) and not session.unclear
    assert session.note == "mud, 3rd, cold"
    session = parse_session("7 miles easy w/ Bea and Tom, hills")
    assert len(session.pieces) == 1 and session.notes == ("w/ Bea and Tom", "hills")
    assert parse_session("20 min easy, strds").unclear  # may be running


def test_a_day_cannot_hold_more_than_a_day() -> None:
    session = parse_session(", ".join(["10 h easy"] * 9))
    assert len(session.pieces) == 2 and len(session.unclear) == 7
    assert parse_session("5 km " * 1000).unclear[0].question.startswith("More than 1,000")


def test_the_sample_diary() -> None:
    found = read_path(resources.samples() / "diary-week.txt")
    assert isinstance(found, Page)
    assert found.problem == ""
    assert [run.start for run in found.runs] == [
        datetime(2026, 6, 9, 7),
        datetime(2026, 6, 10, 18),
        datetime(2026, 6, 11, 7),
        datetime(2026, 6, 13, 7),
        datetime(2026, 6, 14, 7),
    ]
    assert [run.line for run in found.runs] == [4, 5, 6, 8, 9]
    assert found.runs[1].notation == "45 min easy"


def test_days_are_named_in_many_ways() -> None:
    assert runs(
        "Week of Mon 2026-06-08, by hand\n"
        "Tue am: 5 km easy\npm: 4 km easy\nWed 3 km easy; pm: 2 km easy -- tired\n"
        "2026-06-12: 1 km easy\n9 June: 6 km easy\n13.6.2026 7 km easy\n14.6.: 8 km easy\n"
        "June 15th, 2026 - 9 km easy\nTue 16 Jun pm: 10 km easy\n17/6/2026: 11 km easy\n"
    ) == [
        ("2026-06-09 07", "5 km easy"),
        ("2026-06-09 18", "4 km easy"),
        ("2026-06-10 12", "3 km easy"),
        ("2026-06-10 18", "2 km easy"),
        ("2026-06-12 12", "1 km easy"),
        ("2026-06-09 12", "6 km easy"),
        ("2026-06-13 12", "7 km easy"),
        ("2026-06-14 12", "8 km easy"),
        ("2026-06-15 12", "9 km easy"),
        ("2026-06-16 18", "10 km easy"),
        ("2026-06-17 12", "11 km easy"),
    ]  # fmt: skip


def test_a_week_is_seven_days_from_its_date() -> None:
    text = "2024\n# Week 10: from Wed 6 March\nWed: 5 km easy\nTue: 6 km easy # a long day off\n"
    assert runs(text) == [("2024-03-06 12", "5 km easy"), ("2024-03-12 12", "6 km easy")]
    assert page(text).runs[1].note == "a long day off"
    with_rest = (
        "Week of 2024-03-04\nMon: rest\nTue off\nWed: -\nThu:\nFri: 5 km easy\nSat: rest day"
    )
    assert runs(with_rest) == [("2024-03-08 12", "5 km easy")] and not page(with_rest).problem


@pytest.mark.parametrize(
    ("text", "line", "where", "question"),
    [
        ("2026-06-09: 5 km easy\nThu 12 June: 5 km easy", 2, "Thu 12 June:", "is a Friday"),
        ("2025-12-29: 5 km easy\n5 Jan: 5 km easy", 2, "5 Jan:", "Which year?"),
        ("9 June: 5 km easy\n10 June 2026: 5 km easy", 1, "9 June:", "Which year?"),
        ("2026-06-09: 5 km easy\n3/4/2026: 5 km easy", 2, "3/4/2026:", "Day or month first?"),
        ("2026-06-09: 5 km easy\n31 June: 5 km easy", 2, "31 June:", "no such date"),
        ("2026-06-09: 5 km easy\nWed: 5 km easy", 2, "Wed:", "Which date?"),
        ("Week of 2026-06-08\nSun: 5 km easy\nMon: 5 km easy", 3, "Mon:", "Which week?"),
        ("2026-06-09: 5 km easy\nfelt good", 2, "felt good", "Which day?"),
        ("2026-06-09: 5 km easy\n2026-06-10: 5 km esy", 2, "esy", "easy?"),
        ("Week of 2026-06-08, Mon: off, Tue 4 km\nWed: 5 km easy", 1, "Mon: off, Tue 4 km",
         "a line of its own"),
    ],
)  # fmt: skip
def test_what_is_not_certain_is_asked_about_where_it_stands(text, line, where, question) -> None:
    found = page(text)
    assert len(found.runs) == 1
    ((number, unclear),) = found.unclear
    assert number == line and text[unclear.start : unclear.end] == unclear.text == where
    assert question in unclear.question
    assert found.problem.startswith(f"1 piece not understood: line {line} '{where}': ")


@pytest.mark.parametrize(
    "heading",
    ["Week of Mon 2026-06-08, 62 km", "Week of 8 June 2026 to Sun 14 June, 62 km",
     "Week of 2026-06-08: thin week, sat out"],
)  # fmt: skip
def test_a_weeks_heading_may_say_more_than_its_date(heading: str) -> None:
    found = page(f"{heading}\nWed: 5 km easy")
    assert len(found.runs) == 1 and not found.unclear


def test_a_line_below_an_uncertain_day_is_not_put_on_the_day_before() -> None:
    text = "2026-06-09: 5 km easy\n31 June: 4 km easy\npm: 3 km easy\n2026-07-01: 2 km easy"
    assert runs(text) == [("2026-06-09 12", "5 km easy"), ("2026-07-01 12", "2 km easy")]
    assert len(page(text).unclear) == 2


def test_a_problem_names_the_first_few() -> None:
    text = "2026\n" + "\n".join(f"{day} June: 5 km easy, 2 km strds" for day in range(1, 8))
    problem = page(text).problem
    assert problem.startswith("7 pieces not understood: line 2 'strds': strides?; line 3 'strds'")
    assert problem.endswith("; and 3 more.")


@pytest.mark.parametrize(
    "text",
    ["Week of 8 June\nTue: 45 min easy\n", "9 June: 45 min easy\n", "Tue: 5 km easy\nWed: rest\n"],
)
def test_a_diary_without_a_year_is_refused_with_what_to_write(text) -> None:
    failed = read_bytes(text.encode())
    assert isinstance(failed, Failed)
    assert (failed.status, failed.format) == ("refused", "paper")
    assert "no year" in failed.reason and "first line" in failed.reason
    assert page("2026\nWeek of 8 June\nTue: 45 min easy\n").runs


def test_a_diary_without_a_run_is_passed_over_or_refused() -> None:
    resting = read_bytes(b"Week of 2026-06-08\nMon: rest\nTue: rest\n")
    assert isinstance(resting, Failed) and resting.status == "passed over"
    lost = read_bytes(b"2026-06-08\nWeek of 31 June\nMon: 5 km easy\nTue: 5 km easy\n")
    assert isinstance(lost, Failed) and lost.status == "refused" and "31 June" in lost.reason


@pytest.mark.parametrize(
    "text",
    [
        "Dear diary,\ntoday I ran.\n",
        "2026-06-09: fixed a crash\n2026-06-10: 5 new tests\n",
        "2026-06-09 07:00:00,5.2\n2026-06-10 08:00:00,5.3\n",
        "Sun: a star\nMon: its moon\n",
        "day,wind\n2026-06-09,8\n2026-06-10,9\n",
        "Notes of 9 June 2026\n2026-06-09: 5 km easy\nthen\nsome\nmore\nprose\n",
    ],
)
def test_other_text_is_passed_over(text) -> None:
    failed = read_bytes(text.encode())
    assert isinstance(failed, Failed) and failed.status == "passed over"
    assert failed.format == ""


def test_windows_text_and_its_line_ends() -> None:
    text = "Week of 2026-06-08\r\nTue: 10 × 100 m fast, 5 km easy\r\n"
    for data in (text.encode("cp1252"), text.encode("utf-8-sig")):
        found = read_bytes(data)
        assert isinstance(found, Page) and not found.unclear
        assert found.runs[0].notation == "10 × 100 m fast, 5 km easy"


def test_a_large_diary_is_read_quickly() -> None:
    session = "15 min easy, 10 x 100 m fast / 100 m jog, 800 m jog"
    days = [
        f"{d}.{m}.{y}: {session}" for y in range(2000, 2008) for m in (1, 7) for d in range(1, 29)
    ]
    began = time.perf_counter()
    assert len(page("\n".join(days)).runs) == len(days) == 448
    assert time.perf_counter() - began < 3.0


TYPED = st.text(
    st.sampled_from("0123456789 :.,;/x×*@()'\"#-kmhinsecyaodjrpt½²٣ſİK\u2028\n"), max_size=120
)
TOKENS = st.lists(
    st.sampled_from(
        ["10", "x", "100", "m", "km", "min", "/", "@", "(", ")", "in", "80 s", "1:30", "4:10/km",
         "pace", "5k", "easy", "fast", "rest", "race", "jog", ",", ";", "#", "half", "mile", "h",
         "Tue", "2026-06-09", "am", ":", "\n", "Week of", "9 June", "3/4/2026", "race pace"]
    ),
    max_size=25,
).map(" ".join)  # fmt: skip


@settings(deadline=None)
@given(st.one_of(st.text(max_size=200), TYPED, TOKENS))
def test_any_text_is_read_without_an_error(text) -> None:
    began = time.perf_counter()
    session = parse_session(text)
    for unclear in session.unclear:
        assert text[unclear.start : unclear.end].startswith(unclear.text[:60])
        assert unclear.question
    for piece in session.pieces:
        assert 0 <= piece.start < piece.end <= len(text)
    found = read_bytes(("Week of 2026-06-08\nMon: 5 km easy\nTue:" + text).encode())
    if isinstance(found, Page):
        assert len(found.runs) >= 1
    else:
        assert "could not be understood" not in found.reason.lower()
    assert time.perf_counter() - began < 2.0


LENGTHS = st.one_of(
    st.integers(1, 600).map(lambda n: (f"{n} min", 60.0 * n, None)),
    st.integers(5, 900).map(lambda n: (f"{n} s", float(n), None)),
    st.integers(1, 30).map(lambda n: (f"{n} km", None, KM * n)),
    st.integers(1, 20).map(lambda n: (f"{n} miles", None, MILE * n)),
    st.integers(60, 3000).map(lambda n: (f"{n} m", None, float(n))),
    st.tuples(st.integers(1, 3), st.integers(0, 59)).map(
        lambda t: (f"{t[0]}:{t[1]:02d} h", 3600.0 * t[0] + 60.0 * t[1], None)
    ),
)
PACES = st.one_of(
    st.just(("", None, None)),
    st.integers(150, 590).map(lambda n: (f" @ {n // 60}:{n % 60:02d}/km", KM / n, None)),
    st.integers(240, 900).map(lambda n: (f" @ {n // 60}:{n % 60:02d}/mile", MILE / n, None)),
    st.sampled_from(
        [("5k", 5000.0), ("10 km", 10_000.0), ("half marathon", 21_097.5), ("mile", MILE)]
    ).map(lambda race: (f" @ {race[0]} pace", None, race[1])),
)
RUN_WORDS = st.sampled_from(["", *(word for word in WORDS if word not in ("rest", "walk"))])


@st.composite
def printed(draw) -> tuple[str, Piece]:
    """A piece, and how it is written."""
    length, seconds, metres = draw(LENGTHS)
    pace, speed, race_m = draw(PACES)
    word = draw(RUN_WORDS)
    text = f"{length} {word}".strip() + pace
    work = Bout(seconds, metres, word, speed, race_m)
    count = draw(st.integers(1, 12))
    if count == 1:
        return text, Piece(work)
    text = f"{count} {draw(st.sampled_from('x×*'))} {text}"
    if draw(st.booleans()):
        return text, Piece(work, count)
    length, seconds, metres = draw(LENGTHS)
    word = draw(st.sampled_from(["", "jog", "easy", "walk", "rest"]))
    rest = f"{length} {word}".strip()
    text += draw(st.sampled_from([f" / {rest}", f" ({rest})"]))
    return text, Piece(work, count, Bout(seconds, metres, word))


@settings(deadline=None)
@given(st.lists(printed(), min_size=1, max_size=4), st.randoms(use_true_random=False))
def test_a_printed_session_is_read_back_the_same(written, random) -> None:
    text = random.choice([", ", ",", " ; "]).join(item for item, _ in written)
    session = parse_session(text)
    if all(unclear.question.startswith("More than a day") for unclear in session.unclear):
        wanted = [piece for _, piece in written]
        assert [piece for piece in session.pieces if piece in wanted] == list(session.pieces)
        assert len(session.pieces) + len(session.unclear) == len(wanted)
    else:
        pytest.fail(f"{text}: {session.unclear}")
