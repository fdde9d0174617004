"""A runner's own words: put into plain ones, kept apart from what was typed, never silently."""

from __future__ import annotations

from datetime import date, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.formats.test_paper import TOKENS, TYPED

from tercet.engine.notation import Bout, Piece
from tercet.formats.paper import Shorthand, parse_session, read_lines, resolve

OWN = Shorthand({"T": "threshold", "j": "jog", "E": "easy", "stdy": "steady"}, "miles")
TODAY = date(2026, 11, 25)


def test_own_words_are_read_as_what_they_mean() -> None:
    found = resolve("8 E, 3 x 1 mi @ T (400j), 10 min STDY # T", OWN)
    assert found.notation == "8 miles easy, 3 x 1 mi @ threshold (400 jog), 10 min steady # T"
    assert found.session.pieces == parse_session(found.notation).pieces
    assert not found.session.unclear and not found.guesses
    assert parse_session("8 E").unclear and resolve("20 min t", OWN).session.unclear


def test_places_stay_those_of_what_was_typed() -> None:
    text = "20 min E, 3/4 x 1 mi @ T, 5 min j"
    found = resolve(text, OWN)
    assert [text[p.start : p.end] for p in found.session.pieces] == ["20 min E", "5 min j"]
    (unclear,) = found.session.unclear
    assert text[unclear.start : unclear.end] == unclear.text == "3/4 x"


def test_a_word_of_the_notation_keeps_its_meaning() -> None:
    own = Shorthand({"m": "easy", "min": "hard", "easy": "hard", "wu": "hard"})
    assert resolve("20 min easy, 400 m jog, 5 min wu", own).notation == (
        "20 min easy, 400 m jog, 5 min wu"
    )


@pytest.mark.parametrize(
    ("bare", "text", "read"),
    [
        ("miles", "8 easy", "8 miles easy"),
        ("km", "8 easy", "8 km easy"),
        ("min", "45 easy", "45 min easy"),
        ("miles", "45 easy", ""),
        ("min", "5 easy", ""),
        ("miles", "20 wu", ""),
        ("min", "20 wu", "20 min wu"),
        ("", "8 easy", ""),
    ],
)
def test_a_number_alone_has_the_usual_unit_where_that_is_plausible(bare, text, read) -> None:
    found = resolve(text, Shorthand(bare=bare))
    assert bool(found.session.unclear) == (not read)
    assert found.notation == (read or text)


def test_a_likely_reading_is_taken_only_where_it_is_shown_as_a_guess() -> None:
    text = "50 min easy, last 12 min stedy"
    assert resolve(text).session.unclear and not resolve(text).guesses
    found = resolve(text, guess=True)
    (guess,) = found.guesses
    assert text[guess.start : guess.end] == guess.text == "stedy"
    assert (guess.reading, guess.kind) == ("steady", "word") and guess.others
    assert found.session.pieces[1] == Piece(Bout(720, word="steady"), start=0, end=0)
    assert resolve("20 min grumf", guess=True).session.unclear


@settings(deadline=None)
@given(st.one_of(TYPED, TOKENS))
def test_any_text_is_resolved_and_its_plain_form_gives_the_same(text) -> None:
    text = text.replace("\n", " ")
    for guess in (False, True):
        found = resolve(text, OWN, guess=guess)
        assert parse_session(found.notation).pieces == found.session.pieces
        for item in (*found.session.pieces, *found.session.unclear, *found.guesses):
            assert 0 <= item.start < item.end <= len(text)


@settings(deadline=None)
@given(TOKENS)
def test_a_reading_put_in_its_place_is_not_asked_about_again(text) -> None:
    text = text.replace("\n", " ")
    session = parse_session(text)
    for unclear in session.unclear:
        for reading in unclear.readings:
            answered = text[: unclear.start] + reading + text[unclear.end :]
            again = parse_session(answered)
            same = [
                u
                for u in again.unclear
                if (u.start, u.question) == (unclear.start, unclear.question)
            ]
            assert not same or len(again.unclear) < len(session.unclear), (text, answered)


# Lines


def lines(text: str, **more: object):
    return read_lines(text, OWN, guess=True, today=TODAY, **more)


def test_a_page_with_letters_for_days() -> None:
    found = lines(
        "Week of 4 Nov 2019\nM off, calf\nT am: 5 E\nW 7 mi easy\nTh 20 min T\n\n"
        "F 6 + 4 (am pm)\nS 10 km race 39:30\nSu 14 mi easy\n"
    )
    kinds = [(e.number, e.kind, e.start, e.notation) for e in found]
    assert kinds == [
        (1, "heading", None, ""),
        (2, "rest", datetime(2019, 11, 4, 12), ""),
        (3, "run", datetime(2019, 11, 5, 7), "5 miles easy"),
        (4, "run", datetime(2019, 11, 6, 12), "7 mi easy"),
        (5, "run", datetime(2019, 11, 7, 12), "20 min threshold"),
        (7, "run", datetime(2019, 11, 8, 7), "6 miles"),
        (7, "run", datetime(2019, 11, 8, 18), "4 miles"),
        (8, "run", datetime(2019, 11, 9, 12), "10 km race 39:30"),
        (9, "run", datetime(2019, 11, 10, 12), "14 mi easy"),
    ]
    assert found[1].note == "calf"
    assert lines("T 5 miles easy")[0].kind == "other"  # no week above: a letter is no day


def test_the_year_is_asked_once_with_those_whose_weekday_fits() -> None:
    text = "Tue 9 June: 5 km easy\nWed 10 June: 6 km easy\n"
    first, second = lines(text)
    assert first.start is None and second.start is None
    (asked,) = first.unclear
    assert asked.question == "Which year?"
    assert asked.readings == ("2026-06-09: ", "2020-06-09: ", "2015-06-09: ")
    answered = asked.readings[1] + text[asked.end :]
    assert [e.start for e in lines(answered)] == [
        datetime(2020, 6, 9, 12),
        datetime(2020, 6, 10, 12),
    ]
    assert "asked above" in second.unclear[0].question and not second.unclear[0].readings


def test_a_heading_without_a_year_is_asked_about() -> None:
    text = "Week of 8 June\nTue: 5 km easy\n"
    heading, tuesday = lines(text)
    (asked,) = heading.unclear
    assert asked.readings[0] == "Week of 2026-06-08" and tuesday.start is None
    answered = asked.readings[0] + text[asked.end :]
    assert lines(answered)[1].start == datetime(2026, 6, 9, 12)


@settings(deadline=None)
@given(st.lists(st.one_of(TYPED, TOKENS), max_size=6).map("\n".join))
def test_any_page_is_read_and_every_place_lies_in_it(text) -> None:
    for entry in lines(text):
        for item in (*entry.unclear, *entry.guesses):
            assert text[item.start : item.end].startswith(item.text[:60])
            assert item.text
        assert entry.kind in ("heading", "rest", "run", "other")
