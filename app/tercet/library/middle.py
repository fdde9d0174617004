"""Where the middle came from: a stretch's moderate minutes by cause, with runs and habits."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from tercet import language
from tercet.engine.causes import Cause
from tercet.language import mark, tr
from tercet.library.figures import Figures, Span
from tercet.library.views import SessionView

#: What the screens call each cause.
NAMES = {
    Cause.START: mark("Too fast from the start"),
    Cause.LATE: mark("Crept up late"),
    Cause.CLIMB: mark("Climbed"),
    Cause.DRIFT: mark("Heart rate drifted"),
    Cause.AROUND: mark("Around repetitions"),
    Cause.MEANT: mark("Meant"),
}
#: Less than this of one cause in a run is not listed. [s]
LEAST_S = 15.0
#: A habit is told if so many runs and this share of the minutes have it.
HABIT_RUNS, HABIT_SHARE = 2, 0.6
#: A starting place is told if it is this much commoner than among all runs of the stretch.
COMMONER = 1.5
_COMPANY = re.compile(
    r"\b(?:with|together with)\s+(?:(?:the|my|our|a)\s+)?\w+|\b(?:group|club) run\b", re.I
)
#: What one runs with that is no company.
_THINGS = re.compile(
    r"\bwith\s+(?:(?:the|my|our|a)\s+)?"
    r"(wind|strides?|hills?|heart|legs?|pain|cold|pack|poles|music|shoes|watch|strap|no|some)\b",
    re.I,
)


@dataclass(frozen=True)
class CauseRun:
    """A run's part in a cause; speeds in m/s, NaN where not known."""

    session: SessionView
    seconds: float
    speed: float
    easy_speed: float


@dataclass(frozen=True)
class CauseView:
    """One cause: its seconds, its runs (most seconds first), and the habit behind it."""

    cause: Cause
    seconds: float
    runs: tuple[CauseRun, ...]
    habit: str

    @property
    def name(self) -> str:
        """What the screens call it."""
        return tr(NAMES[self.cause])

    @property
    def slower(self) -> tuple[float, float] | None:
        """Speed and easy speed of the run that would have had to slow most; None if unknown."""
        known = [
            (run.speed, run.easy_speed)
            for run in self.runs
            if run.seconds >= 60 and math.isfinite(run.easy_speed) and run.easy_speed > 0.3
        ]
        return max(known, key=lambda pair: 1 / pair[1] - 1 / pair[0]) if known else None


@dataclass(frozen=True)
class Middle:
    """A stretch's moderate running; the seconds of the causes and ``untold_s`` add up to it."""

    moderate_s: float
    causes: tuple[CauseView, ...]  # most seconds first, what was meant last
    untold: int  # runs judged before causes were kept
    untold_s: float

    @property
    def meant_s(self) -> float:
        """Seconds that were meant."""
        return sum(view.seconds for view in self.causes if view.cause == Cause.MEANT)


def middle(span: Span, figures: Figures) -> Middle:
    """Sum up where a stretch's moderate running came from."""
    rows: dict[Cause, list[CauseRun]] = {}
    untold = [run for run in span.runs if run.id in figures.untold and run.seconds[1] > 0]
    for run in span.runs:
        if run.id not in figures.told:
            continue
        for cause, part in figures.parts(run, run.id in span.meant).items():
            entry = CauseRun(run, part.seconds, part.speed, part.easy_speed)
            rows.setdefault(cause, []).append(entry)
    views = []
    for cause, found in rows.items():
        shown = [entry for entry in found if entry.seconds >= LEAST_S] or found
        shown.sort(key=lambda entry: -entry.seconds)
        views.append(
            CauseView(
                cause,
                math.fsum(entry.seconds for entry in found),
                tuple(shown),
                habit(cause, shown, span.runs, figures),
            )
        )
    views.sort(key=lambda view: (view.cause == Cause.MEANT, -view.seconds))
    return Middle(
        math.fsum(run.seconds[1] for run in span.runs),
        tuple(views),
        len(untold),
        math.fsum(run.seconds[1] for run in untold),
    )


def totals(span: Span, figures: Figures) -> dict[Cause, float]:
    """A stretch's moderate seconds by cause and nothing else, for many stretches at once."""
    out: dict[Cause, float] = {}
    for run in span.runs:
        told = figures.told.get(run.id)
        if told is None:
            continue
        meant = figures.meant.get(run.id, run.id in span.meant)
        for name, (seconds, *_) in told.items():
            cause = Cause.MEANT if meant else Cause[name]
            out[cause] = out.get(cause, 0.0) + (seconds or 0.0)
    return out


def inside(words: str) -> str:
    """A name within a sentence, without the capital that it has alone; German nouns keep theirs."""
    return words if language.code() == "de" else words[:1].lower() + words[1:]


def habit(
    cause: Cause, found: Sequence[CauseRun], every: Sequence[SessionView], figures: Figures
) -> str:
    """Say in words what most of a cause's minutes have in common, or nothing."""
    if cause == Cause.MEANT:
        kinds = Counter(entry.session.name for entry in found)
        names = [name for name, _ in kinds.most_common() if name != tr("Run")]
        return ", ".join(names[:3])
    said = []
    if len(found) >= HABIT_RUNS:
        total = math.fsum(entry.seconds for entry in found)
        days: Counter[int] = Counter()
        for entry in found:
            days[entry.session.day.weekday()] += round(entry.seconds)
        day, seconds = days.most_common(1)[0]
        often = sum(entry.session.day.weekday() == day for entry in found)
        if often >= HABIT_RUNS and seconds >= HABIT_SHARE * total:
            said.append(tr(DAYS[day]))
        said += _company(found)
        said += _place(found, every, figures)
    text = "; ".join(said)
    return text[:1].upper() + text[1:]


DAYS = (
    mark("mostly Mondays"),
    mark("mostly Tuesdays"),
    mark("mostly Wednesdays"),
    mark("mostly Thursdays"),
    mark("mostly Fridays"),
    mark("mostly Saturdays"),
    mark("mostly Sundays"),
)


def _company(found: Sequence[CauseRun]) -> list[str]:
    """Words of company that notes share."""
    words: Counter[str] = Counter()
    noted = 0
    for entry in found:
        note = entry.session.note
        noted += bool(note)
        words.update(
            {" ".join(m.group().lower().split()) for m in _COMPANY.finditer(note)
             if not _THINGS.match(m.group())}
        )  # fmt: skip
    if not words:
        return []
    word, often = words.most_common(1)[0]
    return (
        [tr("“{word}” in {n} of {whole} notes", word=word, n=often, whole=noted)]
        if often >= HABIT_RUNS
        else []
    )


def _place(found: Sequence[CauseRun], every: Sequence[SessionView], figures: Figures) -> list[str]:
    """Whether the runs began at one place more often than others did; the place is not told."""
    places = {run.id: figures.places[run.id] for run in every if run.id in figures.places}
    if not places:
        return []
    here = [places[entry.session.id] for entry in found if entry.session.id in places]
    for place, _ in Counter(here).most_common(1):
        near = [other for other in here if _near(place, other)]
        usual = sum(_near(place, other) for other in places.values()) / len(places)
        share = len(near) / len(found)
        if len(near) >= HABIT_RUNS and share >= HABIT_SHARE and share >= COMMONER * usual:
            return [tr("{n} of {whole} from one starting place", n=len(near), whole=len(found))]
    return []


def _near(a: str, b: str) -> bool:
    """Within about 200 m, by degrees rounded to about 100 m."""
    (a_lat, a_lon), (b_lat, b_lon) = (tuple(map(float, p.split())) for p in (a, b))
    return abs(a_lat - b_lat) <= 0.0021 and abs(a_lon - b_lon) <= 0.0031
