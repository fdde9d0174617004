"""The season file: what it holds, and one plain line for each thing that is wrong with it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet import resources
from tercet.library.season_file import SeasonFileError, parse, speed_of

PAIR = "[[thresholds]]\nfrom = 2026-04-13\nlt1_speed = 2.95\nlt2_speed = 3.6\n"
BLOCK = '[[blocks]]\nname = "Base"\nstart = 2026-04-13\nend = 2026-05-10\n'


def test_the_samples_file() -> None:
    season = parse((resources.samples() / "season.toml").read_text("utf-8"))
    assert (season.runner, season.zone) == ("Ines Aldana", "Europe/Madrid")
    assert [entry.start for entry in season.thresholds] == [date(2026, 4, 13), date(2026, 7, 6)]
    first = season.thresholds[0].values
    assert (first.lt1_hr, first.lt2_hr, first.hr_rest, first.hr_max) == (146, 167, 48, 186)
    assert first.lt1_speed == pytest.approx(1000 / 339)
    assert first.lt2_speed == pytest.approx(1000 / 278)
    assert [block.name for block in season.blocks] == ["Groundwork", "Support", "Specific", "Taper"]
    assert season.blocks[1].easy_target == 0.82
    assert [(race.day, race.distance_m) for race in season.races] == [
        (date(2026, 7, 26), 10_000), (date(2026, 9, 27), 21_097.5),
    ]  # fmt: skip
    assert not any(entry.estimated for entry in season.thresholds)


@pytest.mark.parametrize(
    ("value", "speed"),
    [
        (3.1, 3.1),
        (3, 3.0),
        ("5:00/km", 1000 / 300),
        ("5:20 / km", 1000 / 320),
        ("5:20.5/km", 1000 / 320.5),
        ("8:02.80/mile", 1609.344 / 482.8),  # 5:00/km to the printed digit
        ("8:35 /mi", 1609.344 / 515),
        (" 12:00km ", 1000 / 720),
    ],
)
def test_speeds_and_paces(value: object, speed: float) -> None:
    assert speed_of(value) == pytest.approx(speed)


@pytest.mark.parametrize(
    "value", ["", "5:20", "5/km", "5:75/km", "0:00/km", "fast", True, "3.1 m/s", "-5:20/km", None]
)
def test_what_is_no_speed(value: object) -> None:
    with pytest.raises(ValueError, match=r"no speed|no pace"):
        speed_of(value)


@given(st.integers(90, 1800))
def test_a_pace_is_a_speed_turned_round(seconds: int) -> None:
    assert 1000 / speed_of(f"{seconds // 60}:{seconds % 60:02d}/km") == pytest.approx(seconds)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[[thresholds]\n", "not readable as TOML"),
        ("", r"holds no \[\[thresholds\]\]"),
        ("[runner]\nname = 'Ines'\n", "holds no"),
        ("runner = 3\n" + PAIR, r"runner should be a \[table\]"),
        ("thresholds = 3\n", r"thresholds should be \[\[...\]\]"),
        ("thresholds = [3]\n", "entry 1: not a table"),
        (PAIR.replace("2.95", "3.7"), "entry 1: lt1_speed must be below lt2_speed"),
        (PAIR + PAIR.replace("3.6", '"quick"'), 'entry 2: "quick" is no speed'),
        (PAIR.replace("from = 2026-04-13\n", ""), "from is missing"),
        (PAIR.replace("2026-04-13", '"spring"'), '"spring" is no date'),
        (PAIR + "lt3_hr = 170\n", "unknown name lt3_hr"),
        (PAIR + 'hr_max = "high"\n', "hr_max should be a number"),
        (PAIR + "hr_max = true\n", "hr_max should be a number"),
        (PAIR.replace("3.6", "nan"), "lt2_speed must lie between"),
        (PAIR.replace("lt2_speed = 3.6\n", ""), "belong together"),
        ("[[thresholds]]\nfrom = 2026-04-13\nhr_max = 190\n", "give LT1 and LT2"),
        ("[[thresholds]]\nfrom = 2026-04-13\nlt1_power = 232\n", "lt1_power and lt2_power belong"),
        (BLOCK.replace("2026-05-10", "2026-04-01"), "entry 1"),
        (BLOCK + 'kind = "fast"\n', 'kind = "fast" is none of'),
        (BLOCK + "easy_target = 90\n", "easy_target should lie between 0.5 and 1"),
        (BLOCK + BLOCK.replace("Base", "Second"), '"Base" and "Second" overlap on 2026-04-13'),
        ("[[races]]\nname = 'x'\n", "day is missing"),
        ("[[races]]\nday = 2026-07-26\ndistance_m = -5\n", "distance_m should be a positive"),
    ],
)
def test_what_is_wrong_is_said_in_one_line(text: str, words: str) -> None:
    with pytest.raises(SeasonFileError, match=words) as error:
        parse(text)
    assert "\n" not in str(error.value)


def test_what_is_left_out_has_a_usual_value() -> None:
    season = parse(BLOCK + "[[races]]\nday = 2026-07-26\n")
    block, race = season.blocks[0], season.races[0]
    assert (block.kind, block.easy_target) == ("base", 0.9)
    assert (race.name, race.distance_m) == ("Race", None)
    assert season.zone == season.runner == ""


def test_a_date_with_a_clock_is_its_day() -> None:
    season = parse(PAIR.replace("2026-04-13", "2026-04-13T06:30:00"))
    assert type(season.thresholds[0].start) is date


PLAN = """
[[blocks]]
name = "Peak"
kind = "specific"
start = 2026-06-01
end = 2026-07-05
easy_target = 0.80
moderate_target = 0.05
weekly = "5:30"
growth = 0.08
longest = "1:50"

[[races]]
day = 2026-08-02
name = "Half"
distance_m = 21097.5
goal = "1:24:00"
main = true

[[planned]]
day = 2026-06-16
notation = "20 min easy, 10 x 200 m fast / 200 m jog"
"""


def test_a_plan_with_its_targets_and_goal() -> None:
    season = parse(PLAN)
    block, race, planned = season.blocks[0], season.races[0], season.planned[0]
    assert (block.moderate_target, block.hard_target) == (0.05, pytest.approx(0.15))
    assert block.volume is not None
    assert (block.volume.first_s, block.volume.growth, block.longest) == (19_800.0, 0.08, 6600.0)
    assert (race.goal_s, race.main) == (5040.0, True)
    assert planned.notation.startswith("20 min easy")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('weekly = "5:30"', "weekly = 5.5", "no time such as h:mm"),
        ("moderate_target = 0.05", "moderate_target = 0.3", "make more than 1"),
        ('goal = "1:24:00"', 'goal = "soon"', "no time such as h:mm:ss"),
        ('notation = "20 min easy', 'text = "20 min easy', "notation is missing"),
        ("growth = 0.08", "growth = 8", "between 0 and 1"),
        ('weekly = "5:30"', 'measure = "miles"', '"time" or "metres"'),
    ],
)
def test_what_is_wrong_with_a_plan_is_named(old: str, new: str, told: str) -> None:
    with pytest.raises(SeasonFileError, match=told):
        parse(PLAN.replace(old, new))
