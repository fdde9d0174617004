"""A stored run judged again from its streams, without the readers of files that made them."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from tercet import engine
from tercet.domain import DatedThresholds, Stream
from tercet.engine.corrections import Correction, apply_corrections
from tercet.engine.known import NOTHING, Known
from tercet.store import packing

if TYPE_CHECKING:
    from tercet.library.written import Said


def engine_streams(streams: Mapping[str, Stream]) -> dict[str, tuple[Any, Any]]:
    """Streams as the engine takes them."""
    return {name: (stream.time, stream.values) for name, stream in streams.items()}


def stored_judgement(
    packed: dict[str, bytes],
    stops: str,
    entry: DatedThresholds | None,
    words: Said | None = None,
    corrections: Sequence[Correction] = (),
    beside: Known = NOTHING,
) -> engine.Judgement:
    """Judge stored streams, or the words of a run without, again by (other) thresholds.

    The runner's corrections are put over the judgement, whatever it has become.
    """
    if words is not None:
        from tercet.library import written

        return apply_corrections(written.judge(words, entry), corrections)
    clock, streams = packing.unpack_streams(packed)
    spans = [(float(a), float(b)) for a, b in json.loads(stops)]
    judged = engine.judge(
        engine_streams(streams),
        clock,
        entry.values if entry is not None else None,
        stops=spans,
        beside=beside,
    )
    return apply_corrections(judged, corrections)
