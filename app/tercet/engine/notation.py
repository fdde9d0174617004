"""Sessions written in words: pieces of a training diary to seconds, metres and shades."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from tercet.engine import physiology
from tercet.engine.judgement import Evidence, Judgement, Repetition
from tercet.engine.scale import Shade, Thresholds, intensity, shade_of

Whole = NDArray[np.int64]
#: What a runner's word says of how hard it was (common practice, no source).
WORDS: Mapping[str, Shade] = MappingProxyType(
    {
        **dict.fromkeys(("easy", "jog", "recovery", "warm-up", "cool-down"), Shade.EASY),
        **dict.fromkeys(("steady", "moderate", "tempo", "threshold"), Shade.MODERATE),
        **dict.fromkeys(("hard", "fast", "strides", "sprint", "race"), Shade.HARD),
        **dict.fromkeys(("walk", "rest"), Shade.NOT_RUNNING),
    }
)
#: The typical easy speed as a share of LT1 speed, and hard as one of LT2 speed. [guess]
EASY_OVER_LT1, HARD_OVER_LT2 = 0.85, 1.08
#: Walking between repetitions. [m/s] [guess]
WALK_SPEED = 1.4
#: LT2 speed can be raced for about this long (common practice, no source). [s]
HOUR_S = 3600.0
#: Where the shades lie on the scale of intensity.
_BANDS = {Shade.EASY: (0.0, 0.999), Shade.MODERATE: (1.0, 1.999), Shade.HARD: (2.0, np.inf)}


@dataclass(frozen=True)
class Bout:
    """One stretch as it was written; what was not written is ``None`` or empty.

    ``word`` is a key of :data:`WORDS`. The pace may be written as a speed, or as the pace of a
    race over ``race_m``.
    """

    seconds: float | None = None  # [s]
    metres: float | None = None  # [m]
    word: str = ""
    speed: float | None = None  # [m/s]
    race_m: float | None = None  # [m]


@dataclass(frozen=True)
class Piece:
    """A stretch run ``count`` times, each followed by the recovery if there is one.

    In a set ``inner`` holds pieces that are run in turn instead of ``work``, which then says
    nothing. ``start`` and ``end`` say which characters of the text it was written with.
    """

    work: Bout = field(default_factory=Bout)
    count: int = 1
    recovery: Bout | None = None
    inner: tuple[Piece, ...] = ()
    start: int = field(default=0, compare=False)
    end: int = field(default=0, compare=False)

    def bouts(self) -> Iterator[tuple[int, Bout]]:
        """Every bout that was written, once, with how often it is run."""
        for part in self.inner:
            for times, bout in part.bouts():
                yield self.count * times, bout
        if not self.inner:
            yield self.count, self.work
        if self.recovery is not None:
            yield self.count, self.recovery


@dataclass(frozen=True)
class Stretch:
    """What a bout comes to; ``None`` where neither the text nor the thresholds tell.

    ``piece`` is the place of the piece whose repetition this is, ``None`` for all other running.
    ``speed`` is the pace that was written [m/s], ``None`` where a typical one was taken.
    """

    seconds: float | None
    metres: float | None
    shade: Shade
    piece: int | None = None
    speed: float | None = None


def typical_speed(shade: Shade, thresholds: Thresholds) -> float | None:
    """Speed at which this runner runs a shade when none was written.

    Parameters
    ----------
    shade : Shade
    thresholds : Thresholds

    Returns
    -------
    float or None
        [m/s] Easy 0.85 of LT1 speed, moderate the mean of LT1 and LT2, hard 1.08 of LT2, all
        three [guess]; unjudged running as easy. 1.4 for not running [guess]. None without
        speeds at LT1 and LT2.
    """
    if shade == Shade.NOT_RUNNING:
        return WALK_SPEED
    if thresholds.lt1_speed is None or thresholds.lt2_speed is None:
        return None
    if shade == Shade.MODERATE:
        return (thresholds.lt1_speed + thresholds.lt2_speed) / 2
    if shade == Shade.HARD:
        return HARD_OVER_LT2 * thresholds.lt2_speed
    return EASY_OVER_LT1 * thresholds.lt1_speed


def race_speed(
    thresholds: Thresholds,
    race: tuple[float, float] | None = None,
    *,
    metres: float | None = None,
    seconds: float | None = None,
) -> float | None:
    """Speed of a race over so many metres or seconds, by the power law.

    Parameters
    ----------
    thresholds : Thresholds
    race : (float, float) or None
        A known race: [s], [m]. Without it, LT2 speed is taken for the pace of one hour (common
        practice, no source).
    metres, seconds : float or None
        Length of the race asked for; metres go first. [m], [s]

    Returns
    -------
    float or None
        [m/s] None where nothing is known to reckon from.

    See Also
    --------
    tercet.engine.physiology.equivalent_time : the law and its source.
    """
    if race is None and thresholds.lt2_speed is not None:
        race = (HOUR_S, HOUR_S * thresholds.lt2_speed)
    if race is None:
        return None
    if metres is not None:
        return metres / physiology.equivalent_time(*race, metres)
    return None if seconds is None else physiology.speed_for_duration(*race, seconds)


def stretches(
    pieces: Sequence[Piece],
    thresholds: Thresholds | None,
    race: tuple[float, float] | None = None,
) -> list[Stretch]:
    """Turn written pieces into stretches in the order in which they were run.

    Parameters
    ----------
    pieces : sequence of Piece
    thresholds : Thresholds or None
        What is in force on the day.
    race : (float, float) or None
        A known race, see :func:`race_speed`. [s], [m]

    Returns
    -------
    list of Stretch
        A piece gives its work (a set: its pieces) and its recovery ``count`` times; the recovery
        also follows the last repetition, as it is written. What is run again with a set is a
        repetition too, unless it is easy or a rest by its word.

    Notes
    -----
    The shade comes from the first of these that is there:

    1. a pace, as a speed or as a race's: judged against LT1 and LT2 speed;
    2. the word (:data:`WORDS`); a race is judged by its own time and distance, else by
       :func:`race_speed`, and is hard by the word only where no speeds are known;
    3. the speed that time and distance make together, against LT1 and LT2 speed.

    What has none of them is unjudged. Where only seconds or only metres were written, the other
    follows from the pace, else from :func:`typical_speed`; without speeds at LT1 and LT2 it stays
    ``None``.
    """
    known = thresholds or Thresholds()
    numbers: dict[tuple[int, ...], int] = {(k,): k for k in range(len(pieces))}
    return [
        _stretch(bout, known, race, place)
        for k, piece in enumerate(pieces)
        for bout, place in _bouts(piece, (k,), numbers, again=False)
    ]


def _bouts(
    piece: Piece, path: tuple[int, ...], numbers: dict[tuple[int, ...], int], *, again: bool
) -> Iterator[tuple[Bout, int | None]]:
    """Bouts in the order run, each with its piece's number if it is a repetition."""
    repeated = again and WORDS.get(piece.work.word) not in (Shade.EASY, Shade.NOT_RUNNING)
    for _ in range(piece.count):
        for k, part in enumerate(piece.inner):
            yield from _bouts(part, (*path, k), numbers, again=again or piece.count > 1)
        if not piece.inner:
            counted = repeated or piece.count > 1
            yield piece.work, numbers.setdefault(path, len(numbers)) if counted else None
        if piece.recovery is not None:
            yield piece.recovery, None


def _stretch(
    bout: Bout, known: Thresholds, race: tuple[float, float] | None, place: int | None
) -> Stretch:
    own = bout.metres / bout.seconds if bout.metres and bout.seconds else None
    pace = bout.speed
    if pace is None and bout.race_m is not None:
        pace = race_speed(known, race, metres=bout.race_m)
    if bout.word == "race" and pace is None:
        pace = own or race_speed(known, race, metres=bout.metres, seconds=bout.seconds)
    shade = Shade.UNJUDGED
    if pace is not None and known.by_speed:
        shade = _shade_at(pace, known)
    elif bout.word:
        shade = WORDS[bout.word]
    elif own is not None and known.by_speed:
        shade = _shade_at(own, known)
    if bout.word == "rest" and bout.seconds is not None:
        return Stretch(bout.seconds, 0.0, shade, place)
    follow = pace if pace is not None else typical_speed(shade, known)
    seconds, metres = bout.seconds, bout.metres
    if follow is not None and seconds is None and metres is not None:
        seconds = metres / follow
    elif follow is not None and metres is None and seconds is not None:
        metres = seconds * follow
    return Stretch(seconds, metres, shade, place, own if own is not None else pace)


def _shade_at(speed: float, known: Thresholds) -> Shade:
    return Shade(int(shade_of(_scale(speed, known))))


def _scale(speed: float, known: Thresholds) -> float:
    if known.lt1_speed is None or known.lt2_speed is None:
        return float("nan")
    return float(intensity(speed, rest=0.0, lt1=known.lt1_speed, lt2=known.lt2_speed))


def judge_pieces(
    pieces: Sequence[Piece],
    thresholds: Thresholds | None,
    race: tuple[float, float] | None = None,
) -> Judgement:
    """Lay written pieces on the timer's line, second by second.

    Parameters
    ----------
    pieces, thresholds, race
        As for :func:`stretches`.

    Returns
    -------
    Judgement
        A stretch lasts whole seconds; what rounding leaves over goes to the next stretch of its
        shade, so that each shade's sum is right to half a second. Metres are exact. A stretch
        whose seconds are not known is left out, with its metres. Evidence is WORD wherever
        something was judged. The work of every piece run more than once is a repetition.
        ``speed`` is there only where a pace, or a time with its distance, was written;
        ``level_speed`` also holds the typical speeds, so that a session can be drawn.
    """
    known = thresholds or Thresholds()
    placed = [item for item in stretches(pieces, thresholds, race) if item.seconds]
    lengths = _whole_seconds(placed)
    count = int(lengths.sum())
    speed = np.array([item.speed for item in placed], dtype=np.float64)
    shades = np.array([item.shade for item in placed], dtype=np.uint8)
    metres = np.array([item.metres or 0.0 for item in placed], dtype=np.float64)
    scale = np.array([_point(item, known) for item in placed], dtype=np.float64)
    second = np.repeat(np.arange(len(placed)), lengths)
    judged = shades < Shade.NOT_RUNNING
    level = np.array([_level(item) for item in placed], dtype=np.float64)
    return Judgement(
        shades=shades[second],
        metres=(metres / np.maximum(lengths, 1))[second],
        evidence=np.where(judged, Evidence.WORD, Evidence.NONE).astype(np.uint8)[second],
        scale=scale[second],
        speed=speed[second],
        level_speed=level[second],
        heart_rate=np.full(count, np.nan),
        altitude=np.full(count, np.nan),
        last_second_s=1.0,
        repetitions=_repetitions(placed, lengths),
    )


def _whole_seconds(placed: Sequence[Stretch]) -> Whole:
    left = dict.fromkeys(Shade, 0.0)
    lengths = []
    for item in placed:
        wanted = (item.seconds or 0.0) + left[item.shade]
        length = max(round(wanted), 1)
        left[item.shade] = wanted - length
        lengths.append(length)
    return np.array(lengths, dtype=np.int64)


def _level(item: Stretch) -> float:
    """Speed that seconds and metres make together, NaN where it is not known or no running."""
    if item.shade == Shade.NOT_RUNNING or item.metres is None or not item.seconds:
        return float("nan")
    return item.metres / item.seconds


def _point(item: Stretch, known: Thresholds) -> float:
    """Where a stretch lies on the scale: by its speed, but never outside its shade's band."""
    speed = item.speed if item.speed is not None else typical_speed(item.shade, known)
    if item.shade not in _BANDS or speed is None:
        return float("nan")
    return float(np.clip(_scale(speed, known), *_BANDS[item.shade]))


def _repetitions(placed: Sequence[Stretch], lengths: Whole) -> tuple[Repetition, ...]:
    starts = np.concatenate(([0.0], np.cumsum(lengths)))
    at = [k for k, item in enumerate(placed) if item.piece is not None]
    found = []
    for n, k in enumerate(at):
        later = at[n + 1] if n + 1 < len(at) else None
        same = later is not None and placed[later].piece == placed[k].piece
        end = float(starts[k] + lengths[k])
        found.append(
            Repetition(
                start_s=float(starts[k]),
                duration_s=float(lengths[k]),
                distance_m=placed[k].metres or 0.0,
                level_speed=float(np.nan_to_num(_level(placed[k]))),
                shade=placed[k].shade,
                recovery_s=float(starts[later]) - end if same and later is not None else None,
            )
        )
    return tuple(found)
