"""What stands out: the faults with evidence, the weightiest first, silence otherwise."""

from __future__ import annotations

from datetime import date, timedelta

from tests.library.spans import MONDAY, figures, run, span, view_of

from tercet.library import figures as kept
from tercet.library import middle as middles
from tercet.library import next_week, season, standing
from tercet.library.figures import Span
from tercet.library.library import Library
from tercet.library.standing import Remark
from tercet.library.views import RaceView
from tercet.store import season_queries


def remarks(
    stretch: Span, told: dict[int, dict[str, list[float | None]]] | None = None,
    put_away: dict[str, float] | None = None, spacing: int = 2,
) -> dict[str, Remark]:  # fmt: skip
    found = middles.middle(stretch, figures(stretch.runs, told or {}))
    listed = standing.stands_out(stretch, found, stretch.runs, spacing, put_away or {})
    assert len(listed) <= 5
    assert [r.weight for r in listed] == sorted((r.weight for r in listed), reverse=True)
    return {remark.key: remark for remark in listed}


def calm_weeks(weeks: int = 4) -> list:
    """Four runs a week: easy but for one with short repetitions."""
    return [
        run(10 * week + k, 7 * week + day, 45, hard=6 if k == 1 else 0)
        for week in range(weeks)
        for k, day in enumerate((0, 2, 4, 6))
    ]


def test_silence_where_nothing_stands_out() -> None:
    assert remarks(span(calm_weeks())) == {}


def test_never_truly_easy_with_the_evidence() -> None:
    runs = [run(k, 2 * k, 38 if k else 45, 12 if k else 0) for k in range(10)]
    found = remarks(span(runs))
    assert found["never easy"].number == "1 of 10"
    assert len(found["never easy"].runs) == 9
    assert next(iter(found)) == "never easy"  # the weightiest


def test_moderate_that_was_meant_is_no_fault() -> None:
    runs = calm_weeks() + [run(100 + k, 7 * k + 1, 30, 30) for k in range(4)]
    assert "never easy" not in remarks(span(runs, meant=[100, 101, 102, 103]))


def test_never_truly_hard_but_not_in_a_taper() -> None:
    runs = [run(k, 2 * k, 45) for k in range(12)]
    found = remarks(span(runs))
    assert found["never hard"].number == "0:00"
    assert "never hard" not in remarks(span(runs, kind="taper"))


def test_short_of_easy_says_how_much_and_what_would_have_been_enough() -> None:
    runs = [run(k, 2 * k, 36, 10, 6) for k in range(12)]
    told = {k: {"LATE": [600.0, 3.5, 3.3]} for k in range(12)}
    found = remarks(span(runs, shares=(0.8, 0.05, 0.15)), told)["easy short"]
    # 12 runs of 52 minutes: 80 % of 10:24 is 8:19, run were 7:12.
    assert found.number == "69 %"
    assert found.text.startswith("1:07 too little easy. 2:00 of the middle was not meant")
    assert found.steps[0].to == "LATE"


def test_a_run_far_longer_than_the_month_before() -> None:
    runs = calm_weeks()
    runs[-1] = run(999, 27, 80, kilometres=12.0)
    found = remarks(span(runs))["longer"]
    assert found.number == "12.0 km"
    assert "50 % over" in found.title
    assert found.runs == (999,)
    assert "5,205" in found.text
    assert "predict" not in found.text


def test_hard_days_closer_than_the_runners_spacing() -> None:
    runs = [run(k, 3 * k, 40, 0, 10) for k in range(8)]
    assert "spacing" not in remarks(span(runs))
    found = remarks(span(runs), spacing=4)["spacing"]
    assert found.number == "7 times"
    assert len(found.runs) == 8


def test_no_day_off_for_two_weeks() -> None:
    runs = [run(k, k, 40, 0, 6 if k % 4 == 0 else 0) for k in range(16)]
    assert remarks(span(runs))["no rest"].number == "16"


def test_monotony_only_where_every_effort_was_said() -> None:
    week = [run(k, k, 40, effort=4) for k in range(6)]
    assert remarks(span(week, weeks=1))["monotony"].number == "2.4"  # six equal days, one off
    week[2] = run(2, 2, 40)
    assert "monotony" not in remarks(span(week, weeks=1))


def test_put_away_until_it_grows() -> None:
    runs = [run(k, 3 * k, 40, 0, 10) for k in range(8)]
    size = remarks(span(runs), spacing=4)["spacing"].size
    assert "spacing" not in remarks(span(runs), spacing=4, put_away={"spacing": size})
    assert "spacing" in remarks(span(runs), spacing=4, put_away={"spacing": size / 2})


def test_putting_away_is_kept_by_stretch_and_undone(library: Library) -> None:
    runs = [run(k, 3 * k, 40, 0, 10) for k in range(8)]
    remark = remarks(span(runs), spacing=4)["spacing"]
    library.call(standing.put_away, "1", remark)
    assert library.call(season_queries.put_away, "1") == {"spacing": 7.0}
    assert library.call(season_queries.put_away, "2") == {}
    library.call(standing.set_spacing, 3)
    assert library.call(season_queries.spacing) == 3
    library.call(standing.bring_back, "1")
    assert library.call(season_queries.put_away, "1") == {}


def test_next_week_from_the_block_and_the_last_runs(season_library: Library) -> None:
    view = season_library.call(season.season, date(2026, 5, 10))
    record = kept.spans(view)[0].runs
    told = next_week.next_week(view, tuple(r for r in record if r.day <= view.today), 2)
    assert told.first_day == date(2026, 5, 11)
    assert any("easy" in line for line in told.lines)
    assert any(line.startswith("No single run over") for line in told.lines)
    late = season_library.call(season.season, date(2027, 5, 10))
    assert next_week.next_week(late, record, 2).lines == ()


def test_next_week_never_asks_for_far_more_hard_running_than_lately() -> None:
    runs = [run(k, day, 60) for k, day in enumerate(d for d in range(28) if d % 7 < 5)]
    view = view_of(runs, end=MONDAY + timedelta(days=60))
    first, *others = next_week.next_week(view, tuple(runs), 2).lines
    assert first.startswith("About 3:45 (as lately)")  # three of the last four whole weeks
    assert first.endswith("at most 0:05 hard.")  # the block's share alone would ask for more
    assert any(line.startswith("No more hard running than a tenth over") for line in others)


def test_the_week_after_a_race_is_easy() -> None:
    """Common practice, no source: half a week, and a day without hard running for each mile."""
    runs = [run(k, day, 60, 0, 6) for k, day in enumerate(d for d in range(28) if d % 7 < 5)]
    runs[-1] = run(99, 27, 20, 0, 90, kilometres=23.0)
    half = RaceView(1, runs[-1].day, "Half", 21_097.5)
    told = next_week.next_week(view_of(runs, (half,)), tuple(runs), 2)
    assert told.lines[0].startswith("About half of lately, 2:04, all of it easy")
    assert "11 April, 13 days after Half" in told.lines[1]
    assert told.amounts is not None
    assert (told.amounts.moderate, told.amounts.hard) == (0.0, 0.0)
    assert told.amounts.not_before == half.day + timedelta(days=13)
    # A block that is planned keeps its volume, but not its hard running of that week.
    planned = view_of(runs, (half,), end=MONDAY + timedelta(days=60))
    told = next_week.next_week(planned, tuple(runs), 2)
    assert told.lines[0].endswith("easy, nothing moderate.")
    # A race that nobody ran, or of a month ago, changes nothing.
    unrun = RaceView(1, MONDAY + timedelta(days=26), "Half", 21_097.5)
    told = next_week.next_week(view_of(runs, (unrun,)), tuple(runs), 2)
    assert told.lines[0].startswith("As much as lately")


def test_a_first_run_is_no_measure_of_the_week_to_come() -> None:
    told = next_week.next_week(view_of([run(1, 0, 50)]), (run(1, 0, 50),), 2)
    assert not any("0:00" in line for line in told.lines)
    assert told.amounts is None


def test_the_stretch_of_a_day() -> None:
    blocks = [span(calm_weeks())]
    assert kept.span_at(blocks, MONDAY) is blocks[0]
    assert kept.span_at([], MONDAY) is None
