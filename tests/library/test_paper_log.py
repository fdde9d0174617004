"""A page of a paper log while it is typed, without a window: read, kept, changed."""

from __future__ import annotations

from datetime import date

import pytest

from tercet import resources
from tercet.formats.paper import Shorthand, parse_session
from tercet.library import operations, paper_keep, paper_log, season
from tercet.library.library import Library
from tercet.library.paper_log import Draft
from tercet.library.paper_words import in_words
from tercet.store import paper_queries, queries

TODAY = date(2026, 11, 25)


@pytest.fixture
def judged_library(library: Library) -> Library:
    library.take_in([resources.samples() / "season.toml"])
    return library


def states(library: Library, draft: Draft) -> list[str]:
    return [row.state for row in library.call(paper_log.read, draft, TODAY).rows]


def test_the_same_page_kept_twice_adds_nothing(judged_library) -> None:
    draft = Draft("2026-06-09: 30 min easy\n2026-06-09: 30 min easy\n2026-06-10: 5 Q\n")
    assert states(judged_library, draft) == ["read", "read", "asked"]
    judged_library.call(paper_keep.keep, draft, TODAY)
    assert states(judged_library, draft) == ["here", "here", "asked"]
    # The text is the same; what is new is what a word means.
    more = Draft(draft.text, Shorthand({"Q": "easy"}, "km"))
    assert states(judged_library, more) == ["here", "here", "read"]
    changes = judged_library.call(paper_keep.keep, more, TODAY)
    assert changes.step == "Keep 1 run from paper" and changes.settings
    assert len(judged_library.call(queries.sessions)) == 3
    judged_library.call(operations.undo)
    judged_library.call(operations.undo)
    assert judged_library.call(queries.sessions) == []
    assert judged_library.call(paper_queries.shorthand) == ({}, "")


def test_what_is_left_out_is_not_kept_and_the_rest_of_its_line_is(judged_library) -> None:
    text = "2026-06-09: 30 min easy, 5 grumf\n2026-06-10: 3/4 x 1 mile hard\n"
    assert states(judged_library, Draft(text)) == ["asked", "asked"]
    view = judged_library.call(paper_log.read, Draft(text), TODAY)
    keys = [paper_log.piece_key(row.entry, item) for row in view.rows for item in row.entry.unclear]
    draft = Draft(text, left_out=keys)
    assert states(judged_library, draft) == ["read", "left out"]
    # What is left out of one line is still asked about in another.
    more = Draft(f"{text}2026-06-11: 3/4 x 1 mile hard\n", left_out=keys)
    assert states(judged_library, more) == ["read", "left out", "asked"]
    judged_library.call(paper_keep.keep, draft, TODAY)
    (row,) = judged_library.call(queries.sessions)
    assert row["easy_s"] == 1800


def test_seconds_come_from_the_thresholds_of_the_day(judged_library) -> None:
    view = judged_library.call(
        paper_log.read, Draft("2026-06-09: 10 km easy\n2026-06-10: 20 min 10 km pace\n"), TODAY
    )
    easy, race = view.rows
    assert easy.seconds[0] == pytest.approx(10_000 * 0.339 / 0.85) and easy.about
    assert race.running_s == 1200 and not race.about and "LT2" in race.basis
    assert view.judged and not view.estimated and view.basis == (race.basis,)


def test_changing_words_needs_one_run_and_a_run_from_paper(judged_library) -> None:
    judged_library.call(paper_keep.keep, Draft("2026-06-09 pm: 30 min easy\n"), TODAY)
    (row,) = judged_library.call(queries.sessions)
    change = paper_keep.change_words
    for text in ("2026-06-09: 5 grumf", "", "2026-06-09: 5 km easy\n2026-06-10: 5 km easy"):
        assert judged_library.call(change, row["id"], Draft(text), TODAY) is None
    assert judged_library.call(change, row["id"] + 1, Draft("2026-06-09: 1 h"), TODAY) is None
    line = judged_library.call(paper_keep.line_of, row["id"])
    assert line == "2026-06-09 pm: 30 min easy"
    # The run itself is no other run of the day.
    same = Draft(line, changing=row["id"])
    assert states(judged_library, same) == ["read"]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("15 min easy", "15 min easy"),
        ("1 h 40 easy", "1:40 h easy"),
        ("10 x 400 in 80 s (90 s rest)", "10 x 400 m in 1:20 / 90 s rest"),
        ("2 x (3 x 1 mile @ 5k pace) / 3 min", "2 x (3 x 1 mi at 5 km pace) / 3 min"),
        ("half marathon race in 1:35", "21.1 km race in 1:35"),
    ],
)
def test_pieces_in_plain_words(typed, said) -> None:
    assert in_words(parse_session(typed).pieces) == said


@pytest.mark.parametrize(
    ("typed", "unjudged_s", "asked"),
    [
        ("20 min stdy", 1200, "“stdy”: steady or easy?"),
        ("6 x 1 min on / 1 min off", 720, "hard"),
        ("10 km @ 4:30-4:40/km", 0, "@ 4:35/km"),
    ],
)
def test_what_nobody_answered_is_kept_unjudged_with_its_question(
    judged_library, typed: str, unjudged_s: int, asked: str
) -> None:
    draft = Draft(f"2026-06-09: 30 min easy, {typed}\n")
    (row,) = judged_library.call(paper_log.read, draft, TODAY).rows
    assert row.state == "guessed" and row.seconds[0] == 1800 and row.seconds[1:3] == (0, 0)
    judged_library.call(paper_keep.keep, draft, TODAY)
    (run,) = judged_library.call(queries.sessions)
    assert (run["easy_s"], run["moderate_s"], run["hard_s"]) == (1800, 0, 0)
    if unjudged_s:
        assert run["unjudged_s"] == unjudged_s
    else:
        assert run["distance_m"] == pytest.approx(10_000 + 1800 / (0.339 / 0.85), rel=1e-3)
    detail = judged_library.call(season.session_detail, run["id"])
    assert asked in detail.remarks[0] and detail.remarks[0].startswith("Not judged until you say")
    # the line to change holds what was typed, so the question stands there again
    line = judged_library.call(paper_keep.line_of, run["id"])
    assert typed in line
    answer = Draft(line, Shorthand({"stdy": "steady"}, ""), changing=run["id"])
    if "stdy" in typed:
        judged_library.call(paper_keep.change_words, run["id"], answer, TODAY)
        (run,) = judged_library.call(queries.sessions)
        assert (run["moderate_s"], run["unjudged_s"]) == (1200, 0)
        remarks = judged_library.call(season.session_detail, run["id"]).remarks
        assert not any("until you say" in remark for remark in remarks)


def test_a_guess_of_a_unit_is_not_taken_for_a_word(judged_library) -> None:
    (row,) = judged_library.call(paper_log.read, Draft("2026-06-09: 30 minn easy\n"), TODAY).rows
    assert "run" not in row.entry.notation and row.seconds[1:3] == (0, 0)
