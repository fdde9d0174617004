"""Bring the catalogues up to the source: ``python -m tests.language [code of a new language]``."""

from __future__ import annotations

import sys

from tests.language import CATALOGUES, lupdate

for name in sys.argv[1:]:
    lupdate(CATALOGUES / f"tercet_{name}.ts")
for catalogue in sorted(CATALOGUES.glob("tercet_*.ts")):
    lupdate(catalogue)
    text = catalogue.read_text(encoding="utf-8")
    sys.stdout.write(
        f"{catalogue.name}: {text.count('<message')} texts, "
        f"{text.count('unfinished')} to be translated\n"
    )
