"""Words of the thresholds page: problems, cautions, and the guide to tests without devices."""

from __future__ import annotations

from tercet.language import mark, tr
from tercet.library.engine_words import worded

NAMES = (
    ("lt1_hr", mark("LT1 heart rate")),
    ("lt2_hr", mark("LT2 heart rate")),
    ("hr_rest", mark("resting heart rate")),
    ("hr_max", mark("highest heart rate")),
    ("lt1_speed", mark("LT1 pace")),
    ("lt2_speed", mark("LT2 pace")),
    ("top_speed", mark("top speed")),
    ("lt1_power", mark("LT1 power")),
    ("lt2_power", mark("LT2 power")),
)
MAXIMAL = mark(
    "Step tests and trials are run to the limit. With heart disease, heart medicines, chest pain, "
    "faintness, illness, or after a long break, see a doctor first, and stop if any of these comes."
)
CAUTION = mark(
    "Estimates and formulas can be well off for one person. With heart disease, heart medicines, "
    "pain, illness, or after a long break, ask a doctor before training hard; stop if you feel "
    "chest pain, faintness or unusual breathlessness."
)
GUIDE = (
    (
        mark("The talk test"),
        mark(
            "Run at an even pace for some minutes, then say two or three whole sentences aloud. If "
            "they come easily, as at a table, you are below LT1. If you can say them but would "
            "rather not, and breathe in the middle of a sentence, you are at LT1 or between the "
            "lines. If only single words come, you are above LT2."
        ),
    ),
    (
        mark("How hard was it, from 0 to 10"),
        mark(
            "About half an hour after a run, ask how hard the whole of it was: 0 rest, 2 easy, "
            "3 moderate, 5 hard, 7 very hard, 10 the hardest there is. Easy runs that are "
            "regularly said to be 4 or more are no easy runs, whatever the pace says. The "
            "number is kept with each session."
        ),
    ),
    (
        mark("Half an hour alone"),
        mark(
            "Warm up for a quarter of an hour, then run thirty minutes as evenly and as fast as "
            "you can keep up, alone, on level ground. The mean pace is near LT2; the mean heart "
            "rate of the last twenty minutes is near LT2 by heart rate. Run easily before and "
            "after, so that the trial is recognised."
        ),
    ),
    (
        mark("Three and twelve minutes"),
        mark(
            "On one day, well warmed up, run three minutes as far as you can, rest for half an "
            "hour with some easy running, then twelve minutes as far as you can. The two "
            "together give critical speed, a little above LT2."
        ),
    ),
    (
        mark("Before a hard test"),
        mark(
            "Step tests and trials are run to the limit. With heart disease, heart medicines, "
            "chest pain, faintness, illness, or after a long break, see a doctor first, and "
            "stop if any of these comes. A physician or a coach who knows you has the last word."
        ),
    ),
)


def problem_in_words(problem: str) -> str:
    """An error of the engine in the words of the page."""
    problem = worded(problem, {name: tr(word) for name, word in NAMES})
    return f"{problem[:1].upper()}{problem[1:].rstrip('.')}."
