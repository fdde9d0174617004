"""English of the engine and of the store is known again, and worded in the language in use."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tercet import language
from tercet.engine import critical, judging, lactate, steady
from tercet.engine.efforts import Effort
from tercet.engine.shades import Thresholds, check_thresholds
from tercet.library.engine_words import PROBLEMS, REFUSALS, REMARKS, SOURCES, worded


@pytest.fixture
def loud(monkeypatch: pytest.MonkeyPatch) -> None:
    told = {(text, ""): f"<{text}>" for text in (*SOURCES, *PROBLEMS, *REFUSALS, *REMARKS)}
    monkeypatch.setattr(language, "_words", told)


@pytest.mark.parametrize(
    ("kept", "shown"),
    [
        ("10 km in 42:30", "<10 km in 42:30>"),
        ("step test: log-log, Dmax", "<step test: log-log, Dmax>"),
        ("heart rate in steady running", "<heart rate in steady running>"),
        (
            "a usual maximal heart rate, none was recorded, usual pace alone",
            "<a usual maximal heart rate, none was recorded>, <usual pace alone>",
        ),
        ("own words, usual pace alone", "own words, usual pace alone"),
        ("a test in June", "a test in June"),
        ("", ""),
    ],
)
def test_sources_are_known_again(loud: None, kept: str, shown: str) -> None:
    assert worded(kept) == shown


@pytest.mark.parametrize(
    "wrong",
    [
        Thresholds(),
        Thresholds(lt1_hr=150.0),
        Thresholds(lt1_hr=150.0, lt2_hr=140.0),
        Thresholds(lt1_hr=15.0, lt2_hr=140.0),
        Thresholds(lt1_speed=0.1, lt2_speed=4.0),
        Thresholds(lt1_hr=150.0, lt2_hr=180.0, hr_max=170.0),
    ],
)
def test_problems_of_thresholds_are_known_again(loud: None, wrong: Thresholds) -> None:
    with pytest.raises(ValueError) as caught:
        check_thresholds(wrong)
    assert worded(str(caught.value)) == f"<{caught.value}>"


def test_names_are_worded_inside(loud: None) -> None:
    text = "lt1_hr must be below lt2_hr: 150 and 140"
    assert worded(text, {"lt1_hr": "A", "lt2_hr": "B"}) == "<A must be below B: 150 and 140>"


def test_reasons_of_methods_are_known_again(loud: None) -> None:
    flat = lactate.step_test([2.5, 3.0, 3.5, 4.0, 4.5], [1.0, 1.1, 1.2, 1.3, 3.0])
    reasons = [item.reason for item in lactate.candidates(flat) if item.reason]
    assert reasons and all(worded(reason) == f"<{reason}>" for reason in reasons)
    for steps in ([2.5, 3.0], [2.5, 3.0, 3.0, 4.0, 4.5]):
        with pytest.raises(ValueError) as caught:
            lactate.step_test(steps, [1.0 + k for k in range(len(steps))])
        assert worded(str(caught.value)) == f"<{caught.value}>"


def test_refusals_of_recordings_are_known_again(loud: None) -> None:
    said = []
    for lengths in ((), (200.0,), (200.0, 300.0), (200.0, 205.0, 210.0, 215.0)):
        with pytest.raises(ValueError) as caught:
            critical.critical_speed([Effort(s, 5.0 * s, 0.9, 170.0) for s in lengths])
        said.append(str(caught.value))
    with pytest.raises(ValueError) as caught:
        steady.meeting(steady.pieces_of(()), 140.0)
    said.append(str(caught.value))
    assert len(set(said)) == 5 and all(worded(text) == f"<{text}>" for text in said)


def remarks() -> Iterator[str]:
    """What judging puts beside a judgement, its places filled."""
    places = {"by": "0.8 % faster"}
    for node in ast.walk(ast.parse(Path(judging.__file__).read_text("utf-8"))):
        if isinstance(node, ast.Call) and ast.unparse(node.func) == "remarks.append":
            told = node.args[0]
        elif isinstance(node, ast.Return) and isinstance(node.value, ast.List) and node.value.elts:
            told = node.value.elts[0]
        else:
            continue
        parts = told.values if isinstance(told, ast.JoinedStr) else [told]
        yield "".join(
            str(part.value) if isinstance(part, ast.Constant) else places.get(name(part), "7")
            for part in parts
        )


def name(part: ast.expr) -> str:
    return ast.unparse(part.value) if isinstance(part, ast.FormattedValue) else ""


def test_every_remark_of_a_judgement_is_known_again(loud: None) -> None:
    found = list(remarks())
    assert len(found) == 3 and all(worded(text) == f"<{text}>" for text in found)


def test_decimals_of_a_remark_are_written_in_the_language_in_use() -> None:
    language.use("de")
    try:
        said = worded("By its positions the watch's speed was taken 2.7 % faster.")
    finally:
        language.use(language.SOURCE)
    assert "2,7 %" in said
