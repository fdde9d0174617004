"""English that the engine gives and the store keeps, such as where lines are from, in words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from tercet import language
from tercet.language import mark, tr

#: Where thresholds are from, as they are kept.
SOURCES = (
    mark("highest heart rate recorded"),
    mark("a usual maximal heart rate, none was recorded"),
    mark("maximal heart rate"),
    mark("one race"),
    mark("heart rate in steady running"),
    mark("usual pace alone"),
    mark("best efforts recorded"),
    mark("30 min trial"),
    mark("3 and 12 min trials"),
    mark("season file"),
    mark("highest heart rate {beats} /min"),
    mark("age {years}"),
    mark("step test: {lt1_method}, {lt2_method}"),
    mark("{race} in {time}"),
)
#: What is wrong with thresholds or with a step test.
PROBLEMS = (
    mark("{first} must be below {second}: {low} and {high}"),
    mark("{first} must not exceed {second}: {low} and {high}"),
    mark("{first} must lie between {low} and {high} m/s: {value}"),
    mark("{first} must lie between {low} and {high} beats/min: {value}"),
    mark("{first} must lie between {low} and {high} W: {value}"),
    mark("{first} and {second} belong together: give both or neither"),
    mark("give LT1 and LT2 as heart rate, as speed, or as power"),
    mark("every step needs its speed and its lactate"),
    mark("{n} steps are too few: {fewest} at least tell a curve"),
    mark("step {n}: no running speed"),
    mark("step {n}: lactate must lie between 0.1 and 30 mmol/L"),
    mark("step {n}: heart rate must lie between 25 and 250 beats/min"),
    mark("step {n} is not faster than the one before"),
    mark("every step needs its length, or none"),
    mark("lactate rises by less than {rise} mmol/L: the test ended too early to tell"),
    mark("{level} mmol/L was not reached"),
    mark("already above {level} mmol/L in the first step"),
    mark("no step rises by {rise} mmol/L"),
    mark("lactate rises only in the last step"),
    mark("lactate ends no higher than it began"),
    mark("the curve has no bend below its chord"),
    mark("the lines in logarithms do not bend upwards"),
)
#: Why recordings do not tell the lines.
REFUSALS = (
    mark("There was no hard effort of 2 to 20 minutes."),
    mark("{n} hard effort of 2 to 20 minutes: {fewest} are needed, short and long ones."),
    mark("{n} hard efforts of 2 to 20 minutes: {fewest} are needed, short and long ones."),
    mark("The hard efforts all lasted about as long: a short and a long one are needed."),
    mark("The hard efforts do not agree on one line: not all were all out."),
    mark("Fewer than {n} runs with ten minutes of steady running."),
    mark("No steady running came near that heart rate."),
    mark("Heart rates: Fewer than {n} runs with ten minutes of steady running."),
    mark("Heart rates: there was no steady running near LT2."),
    mark(
        "No field test was recognised in it: neither half an hour at one even speed with easier "
        "running before and after, nor one trial of about 3 and one of about 12 minutes."
    ),
)
#: What stands beside a judgement.
REMARKS = (
    mark("By its positions the watch's speed was taken {share} % faster."),
    mark("By its positions the watch's speed was taken {share} % slower."),
    mark("Too short a way to know its hills: left out."),
    mark("Above LT1 by heart rate for {n} min of easy running (warmth, fatigue?)."),
)
#: Classes of a distribution.
CLASSES = (mark("polarised"), mark("pyramidal"), mark("threshold"), mark("high-intensity"))
#: Places that hold words and not figures.
_WORDS = ("race", "first", "second", "lt1_method", "lt2_method")


def worded(text: str, names: Mapping[str, str] = MappingProxyType({})) -> str:
    """A kept source or a problem in the language in use; what is not known stays as it is.

    ``names`` words what a problem calls by its name in the program.
    """
    for source in (*SOURCES, *PROBLEMS, *REFUSALS, *REMARKS):
        found = _pattern(source).fullmatch(text)
        if found is not None:
            told = {name: _part(part, names) for name, part in found.groupdict().items()}
            return tr(source, **told)
    # An estimate keeps what it rests on as a list; a source may hold a comma of its own.
    parts = text.split(", ")
    for count in range(len(parts) - 1, 0, -1):
        first = ", ".join(parts[:count])
        if any(_pattern(source).fullmatch(first) for source in SOURCES):
            return f"{worded(first)}, {worded(', '.join(parts[count:]))}"
    return tr(text) if text else ""


def _part(text: str, names: Mapping[str, str]) -> str:
    whole, point, decimals = text.partition(".")
    if point and decimals.isdigit() and whole.lstrip("-").isdigit():
        return language.number(float(text), len(decimals))
    return names.get(text) or tr(text)


@cache
def _pattern(source: str) -> re.Pattern[str]:
    """What a text looks like that was made from this source."""

    def place(found: re.Match[str]) -> str:
        name = found[1]
        return f"(?P<{name}>{'.+' if name in _WORDS else '[-0-9.:]+'})"

    return re.compile(re.sub(r"\\\{(\w+)\\\}", place, re.escape(source)))
