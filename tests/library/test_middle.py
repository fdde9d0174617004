"""Where the middle came from: minutes by cause, habits in words, and the runner's own word."""

from __future__ import annotations

import pytest
from tests.library.spans import figures, run, span

from tercet.engine.causes import Cause
from tercet.library import figures as kept
from tercet.library import middle as middles
from tercet.library import season
from tercet.library.library import Library


def test_causes_of_the_stored_season_add_up_to_its_moderate_seconds(
    season_library: Library,
) -> None:
    view = season_library.call(season.season)
    whole = kept.spans(view)[0]
    figures_read = season_library.call(kept.read)
    assert not figures_read.untold
    found = middles.middle(whole, figures_read)
    assert found.moderate_s > 0
    assert sum(part.seconds for part in found.causes) == pytest.approx(found.moderate_s, abs=2)
    quick = middles.totals(whole, figures_read)
    assert quick == pytest.approx({part.cause: part.seconds for part in found.causes})
    by_shade = figures_read.spread_of(whole.runs).sum()
    assert by_shade == pytest.approx(
        sum(sum(r.seconds[:3]) for r in whole.runs), abs=len(whole.runs)
    )


def test_most_minutes_first_and_what_was_meant_last() -> None:
    runs = [run(1, 5, 40, 20), run(2, 12, 40, 12), run(3, 14, 30, 30, name="Tempo")]
    told = {
        1: {"START": [1200, 3.6, 3.5]},
        2: {"CLIMB": [720, 3.0, 2.7]},
        3: {"LATE": [1800, 4, 3]},
    }
    found = middles.middle(span(runs, meant=[3]), figures(runs, told))
    assert [part.cause for part in found.causes] == [Cause.START, Cause.CLIMB, Cause.MEANT]
    assert found.meant_s == 1800
    assert found.causes[0].slower == (3.6, 3.5)


def test_the_runners_own_word_goes_before_name_and_plan() -> None:
    runs = [run(1, 5, 40, 20)]
    told = {1: {"START": [1200, 3.6, 3.5]}}
    said = middles.middle(span(runs), figures(runs, told, meant={1: True}))
    assert [part.cause for part in said.causes] == [Cause.MEANT]
    unsaid = middles.middle(span(runs, meant=[1]), figures(runs, told, meant={1: False}))
    assert [part.cause for part in unsaid.causes] == [Cause.START]


def test_habits_weekday_company_and_starting_place() -> None:
    late = {"LATE": [600.0, 3.4, 3.3]}
    noted = ["With the club, windy", "with the club again", "", "with heavy legs"]
    runs = [run(k + 1, 5 + 7 * k, 40, 10, note=note) for k, note in enumerate(noted)]
    others = [run(10 + k, 1 + 7 * k, 40) for k in range(8)]
    places = {k + 1: "43.301 -8.402" for k in range(4)} | {
        10 + k: "43.351 -8.402" for k in range(8)
    }
    every = figures([*runs, *others], dict.fromkeys(range(1, 5), late), places)
    found = middles.middle(span([*runs, *others]), every).causes[0]
    assert found.habit == (
        "Mostly Saturdays; “with the club” in 2 of 3 notes; 4 of 4 from one starting place"
    )


def test_one_place_for_every_run_is_no_habit() -> None:
    runs = [run(k + 1, 1 + 3 * k, 40, 10) for k in range(4)]
    told = {k: {"LATE": [600.0, None, None]} for k in range(1, 5)}
    found = middles.middle(span(runs), figures(runs, told, dict.fromkeys(range(1, 5), "1.0 2.0")))
    assert found.causes[0].habit == ""
    assert found.causes[0].slower is None


def test_saying_what_was_meant_is_one_step_to_undo(season_library: Library) -> None:
    view = season_library.call(season.season)
    whole = kept.spans(view)[0]
    number = next(r.id for r in whole.runs if r.seconds[1] > 60)
    season_library.call(kept.set_meant, number, True)
    assert season_library.call(kept.read).meant == {number: True}
    assert season_library.undo_names()[0] == "Say what was meant"
