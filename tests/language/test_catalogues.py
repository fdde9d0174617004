"""Every language shipped says all the source says, with the same places to be filled."""

from __future__ import annotations

import shutil
import string
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.language import CATALOGUES, lupdate

SHIPPED = sorted(CATALOGUES.glob("tercet_*.ts"))


def places(text: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}


def faults(catalogue: Path) -> list[str]:
    """What is not translated, or fills other places than the English text does."""
    found = []
    for message in ElementTree.parse(catalogue).iter("message"):
        source = message.findtext("source") or ""
        translation = message.find("translation")
        text = "" if translation is None else translation.text or ""
        if translation is None or not text or translation.get("type"):
            found.append(f"not translated: {source}")
        elif "{" in source and not needed(source) <= places(text) <= places(source):
            found.append(f"other places: {source} -> {text}")
        elif shortcut(source) != shortcut(text):
            found.append(f"shortcut letter lost: {source} -> {text}")
    return found


def needed(source: str) -> set[str]:
    """Places a translation must fill; a number may be said as a word, as in 'one run'."""
    return places(source) - {"n"}


def shortcut(text: str) -> int:
    """How many letters are underlined to be pressed with Alt."""
    return text.replace("&&", "").replace("& ", "").count("&")


@pytest.mark.parametrize("catalogue", SHIPPED, ids=lambda path: path.stem)
def test_a_language_shipped_is_complete(catalogue: Path, tmp_path: Path) -> None:
    brought_up = tmp_path / catalogue.name
    shutil.copy(catalogue, brought_up)
    lupdate(brought_up)
    assert not faults(brought_up), "\n".join(faults(brought_up))


def test_the_check_bites(tmp_path: Path) -> None:
    catalogue = tmp_path / "tercet_xx.ts"
    catalogue.write_text(
        """<TS><context><name></name>
        <message><source>a</source><translation type="unfinished"></translation></message>
        <message><source>{b} of {c}</source><translation>{b}</translation></message>
        <message><source>&amp;d</source><translation>d</translation></message>
        <message><source>{n} e</source><translation>one</translation></message>
        </context></TS>""",
        "utf-8",
    )
    assert [fault.partition(":")[0] for fault in faults(catalogue)] == [
        "not translated",
        "other places",
        "shortcut letter lost",
    ]
