"""The sample season of an invented runner: what she runs on which day, and in which format."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta

from tests.simulator.noise import clipped_normal, stream
from tests.simulator.record import Simulated, simulate
from tests.simulator.runner import Runner
from tests.simulator.sessions import prescribe

RUNNER_NAME = "Ines Aldana"
ZONE = "Europe/Madrid"  # +02:00 all summer; the island itself is invented
FIRST_DAY = date(2026, 4, 13)
BETTER_FROM = date(2026, 7, 6)
DIARY_WEEK = date(2026, 6, 8)
RACES = (
    (date(2026, 7, 26), "Corvaleta Harbour 10", 10000.0),
    (date(2026, 9, 27), "Corvaleta Half", 21097.5),
)
#: name, kind, weeks, easy share wanted
BLOCKS = (
    ("Groundwork", "base", 12, 0.90),
    ("Support", "support", 5, 0.82),
    ("Specific", "specific", 5, 0.80),
    ("Taper", "taper", 2, 0.80),
)

SPRING = Runner(
    hr_rest=48, hr_max=186, lt1_hr=146, lt2_hr=167, gain=25.5, tau_s=43.0, cadence=168.0,
    lt1_speed=1000 / 339, lt2_speed=1000 / 278,
)  # fmt: skip
SUMMER = replace(
    SPRING, hr_rest=47, lt1_hr=147, lt2_hr=168, lt1_speed=1000 / 331, lt2_speed=1000 / 270
)

#: A line a week: day, kind, size (minutes of a steady run, repetitions of others), then formats.
#: Without one a run is plain FIT; "gz" packs it, "both" writes it as FIT and as GPX.
WEEKS = (
    "Tue easy_strides=6, Wed easy=42, Fri easy=40, Sat recovery=28, Sun long=80 gz",
    "Tue reps_100=10, Wed easy=45, Thu easy_strides=6, Sat easy=40, Sun long=85",
    "Tue easy_strides=8, Wed easy=48, Thu hill_sprints=6 gz, Sat recovery=30 tcx, Sun long=90 gz",
    "Tue easy_strides=6, Wed easy=40, Fri easy=38 gpx, Sat recovery=26, Sun long=75 gz",
    "Tue reps_200=12, Wed easy=48, Thu easy_strides=8, Sat easy=42, Sun long=90 gz",
    "Tue hill_sprints=8, Wed easy_crept=50, Thu reps_100=14, Fri easy=35, Sat recovery=30,"
    " Sun long=95 gz",
    "Tue reps_200=14 gz, Wed easy=50 tcx gz, Thu easy_strides=8, Fri easy=38, Sat recovery=30,"
    " Sun long=95 tcx gz",
    "Tue easy_strides=8, Wed easy=42, Thu treadmill_easy=40, Sat recovery=28, Sun long=80 gz",
    "",
    "Tue reps_300=8, Wed easy=50, Thu hill_sprints=8 gz, Fri easy=40, Sat recovery=30,"
    " Sun long=100 gz",
    "Tue reps_200=16, Wed easy=50 gpx, Thu easy_strides=8, Sat ride=75 gz, Sun long=100 gz",
    "Tue reps_100=12, Wed easy=42, Thu easy_strides=6, Fri easy=35, Sat recovery=25,"
    " Sun long=85 gpx gz",
    "Tue reps_400=8, Wed easy=48, Thu easy_strides=8, Sat fartlek=9 gz, Sun long=100 gz",
    "Tue reps_1000=5, Wed easy=50, Thu easy=36 tcx, Fri three_minutes=6 gz, Sat recovery=28,"
    " Sun long=105 gz",
    "Tue thirty_thirty=20, Wed easy=45, Thu easy=38 both, Fri recovery=25, Sun race_10k",
    "Tue recovery=30, Wed easy=48, Thu reps_1000=5 gz, Sat easy_strides=6, Sun long=105 gz",
    "Tue reps_400=10, Wed easy=50, Thu easy_strides=8, Fri tempo=22, Sat recovery=30,"
    " Sun long=110 gz",
    "Tue reps_2000=4, Wed easy_crept=50, Thu easy_strides=6, Sat tempo=24, Sun long_race_pace=3 gz",
    "Tue tempo=26 gz, Wed easy_crept=52, Thu easy=45, Fri recovery=30, Sat progression=52,"
    " Sun long=105 gz",
    "Tue reps_1000=6 gz, Wed easy_crept=50, Thu easy=40 gpx, Fri recovery=30, Sat easy=45,"
    " Sun long_race_pace=4 gz",
    "Tue reps_2000=4 gz, Wed easy=48, Thu easy_strides=6, Sat recovery=32, Sun long=100 gz",
    "Tue three_minutes=6, Wed easy_crept=52 tcx gz, Thu easy=42, Fri recovery=30,"
    " Sat progression=50, Sun long_race_pace=4 gz",
    "Tue reps_1000=5 gz, Wed easy=42, Thu easy_strides=6, Sat recovery=28, Sun easy=65",
    "Tue reps_400=5, Wed easy=35, Thu recovery=25, Sat easy_strides=5, Sun race_half gz",
)

_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_BY_MINUTES = {
    "easy", "easy_crept", "recovery", "long", "treadmill_easy", "tempo", "progression", "ride",
}  # fmt: skip
#: Her loops: terrain, number, metres, name.
_HOME = ("level", 1, 5400.0, "harbour loop")
_HABIT = {
    "Wed": ("rolling", 2, 8100.0, "lighthouse loop"),
    "Sun": ("rolling", 3, 11300.0, "island loop"),
}
_WORDS = {
    "easy": "Easy", "easy_crept": "Easy", "easy_strides": "Easy and strides", "long": "Long run",
    "recovery": "Recovery jog", "treadmill_easy": "Treadmill", "ride": "Ride",
    "hill_sprints": "Hill sprints", "tempo": "Tempo", "progression": "Progression",
    "fartlek": "Fartlek", "thirty_thirty": "30/30", "three_minutes": "3 min", "reps_100": "100s",
    "reps_200": "200s", "reps_300": "300s", "reps_400": "400s", "reps_1000": "1000s",
    "reps_2000": "2000s", "long_race_pace": "Long, race pace", "race_10k": "Harbour 10",
    "race_half": "Corvaleta Half",
}  # fmt: skip


@dataclass(frozen=True)
class Planned:
    """One activity of the sample season; ``start`` is her local clock, naive."""

    start: datetime
    kind: str
    size: float | None
    formats: tuple[str, ...]  # "fit", "tcx", "gpx", each written once
    packed: bool
    seed: int

    @property
    def stem(self) -> str:
        """File name without its ending."""
        return self.start.strftime("%Y-%m-%d-%H%M")

    @property
    def name(self) -> str:
        """What she calls it."""
        steady = self.kind in {"easy", "easy_crept", "recovery", "long"}
        return f"{_WORDS[self.kind]}, {self.loop[3]}" if steady else _WORDS[self.kind]

    @property
    def loop(self) -> tuple[str, int, float, str]:
        """Where she runs it."""
        day = _DAYS[self.start.weekday()]
        habit = _HABIT.get(day, _HOME)
        return _HOME if self.kind.startswith(("race", "reps", "hill")) else habit


def plan() -> list[Planned]:
    """Every recorded activity, in order."""
    out: list[Planned] = []
    for week, line in enumerate(WEEKS):
        for entry in filter(None, line.split(", ")):
            day, what, *words = entry.split()
            kind, _, size = what.partition("=")
            when = FIRST_DAY + timedelta(days=7 * week + _DAYS.index(day))
            rng = stream(20260413, 1000 + (when - FIRST_DAY).days)
            race = kind.startswith("race")
            hour = 9 if race else 8 if day in ("Sat", "Sun") else 18 if day != "Thu" else 6
            minute = 20 if race else int(rng.integers(2, 58))
            formats = tuple(f for f in ("fit", "tcx", "gpx") if f in words) or ("fit",)
            out.append(
                Planned(
                    datetime(when.year, when.month, when.day, hour, minute, int(rng.integers(60))),
                    kind,
                    float(size) if size else None,
                    ("fit", "gpx") if "both" in words else formats,
                    "gz" in words,
                    int(rng.integers(1, 2**31)),
                )
            )
    return out


def run(planned: Planned) -> Simulated:
    """Simulate one activity of the plan."""
    rng = stream(planned.seed, 300)
    size = {}
    if planned.size is not None:
        size = {"minutes" if planned.kind in _BY_MINUTES else "reps": planned.size}
    session = prescribe(planned.kind, rng, **size)
    terrain, loop, metres, _ = planned.loop
    day = planned.start.date()
    season = (day - FIRST_DAY).days / 168.0
    warmth = 13.0 + 40.0 * season * (1.0 - season) + (2.0 if planned.start.hour > 12 else -2.0)
    dense = planned.kind.startswith(("reps", "hill", "thirty", "three", "tempo", "fartlek"))
    given: dict[str, object] = {
        "terrain": terrain,
        "loop": loop,
        "loop_m": metres,
        "temperature": round(clipped_normal(rng, warmth, 2.5, 6.0, 31.0), 1),
        "sampling": "1s" if dense else "smart",
    }
    if session.indoor:
        given = {"sampling": "smart"}
    if "gpx" in planned.formats:
        given |= {"gps_gaps": 0, "altitude": "gps"}
    if session.race:
        given |= {"hr_source": "strap", "hr_fault": "", "timer": "running", "ground": 1.0}
    if planned.kind in {"easy_crept", "long_race_pace", "tempo", "progression"}:
        given |= {"ground": 1.0, "soft_share": 0.0}
    return simulate(
        SPRING if day < BETTER_FROM else SUMMER,
        session,
        planned.seed,
        start=planned.start.replace(tzinfo=UTC) - timedelta(hours=2),
        utc_offset_s=7200,
        **given,
    )
