"""What the parts of a record and the fields of a run are called where two copies meet."""

from __future__ import annotations

from tercet.language import mark

#: What each part is called where a conflict is told.
PART_WORDS = {
    "threshold": mark("thresholds"),
    "block": mark("blocks"),
    "race": mark("races"),
    "planned": mark("planned sessions"),
    "test": mark("tests"),
}
FIELD_WORDS = {
    "note": mark("note"),
    "effort": mark("effort said"),
    "meant": mark("whether it was meant"),
    "kind": mark("kind"),
    "day": mark("start"),
    "corrections": mark("stretches shaded by hand"),
}
#: What was taken of one run and of several, by the field.
FIELD_COUNTS = {
    "note": (mark("{n} note"), mark("{n} notes")),
    "effort": (mark("{n} effort said"), mark("{n} efforts said")),
    "meant": (
        mark("whether {n} run was meant"),
        mark("whether {n} runs were meant"),
    ),
    "kind": (mark("{n} kind"), mark("{n} kinds")),
    "day": (mark("{n} start"), mark("{n} starts")),
    "corrections": (
        mark("stretches shaded by hand in {n} run"),
        mark("stretches shaded by hand in {n} runs"),
    ),
}
