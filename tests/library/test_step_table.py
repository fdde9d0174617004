"""Step tests as people type and paste them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.library import step_table

ROWS = [
    ["10.0", "128", "1.1", "4"],
    ["11.0", "137", "1.0", "4"],
    ["12.0", "146", "1.3", "4"],
    ["13.0", "155", "1.8", "4"],
    ["14.0", "164", "2.9", "4"],
    ["15.0", "172", "4.9", "4"],
    ["16.0", "180", "8.4", "2:00"],
]


@pytest.mark.parametrize("parted", ["\t", ";", " | ", "  "])
def test_pasted_text_becomes_rows(parted: str) -> None:
    text = "speed heart rate lactate step\n" + "\n".join(parted.join(row) for row in ROWS)
    assert step_table.rows_of(text) == ROWS


def test_units_commas_and_a_pace_beside_the_speed_do_no_harm() -> None:
    assert step_table.rows_of("10,0 km/h\t6:00\t128\t1,1 mmol") == [["10,0", "128", "1,1", ""]]
    assert step_table.rows_of("10.0,128,1.1,4") == [["10.0", "128", "1.1", "4"]]
    assert step_table.rows_of("\n  \nRuhe\n") == []


def test_rows_become_a_test() -> None:
    test = step_table.test_of([*ROWS, ["", "", "", ""]], "0,9")
    assert test.speeds[0] == pytest.approx(10 / 3.6)
    assert test.speeds[-1] == pytest.approx(15.5 / 3.6)  # half the last step was run
    assert test.lactates[-1] == 8.4 and test.resting == 0.9
    paces = step_table.test_of([["6:00", "", "1.1", ""], *[[*row[:3], ""] for row in ROWS[1:]]])
    assert paces.speeds[0] == pytest.approx(1000 / 360)


@pytest.mark.parametrize(
    ("row", "column", "text", "words"),
    [
        (2, 0, "fast", 'Step 3: "fast" is no speed: write 12.5'),
        (1, 2, "", "Step 2: .* is no lactate: write 1.8"),
        (0, 1, "12a", "Step 1: .* is no heart rate"),
        (4, 3, "x", "Step 5: .* is no length"),
    ],
)
def test_a_cell_that_cannot_be_read_is_named(row: int, column: int, text: str, words: str) -> None:
    rows = [list(line) for line in ROWS]
    rows[row][column] = text
    with pytest.raises(step_table.CellError, match=words) as caught:
        step_table.test_of(rows)
    assert (caught.value.row, caught.value.column) == (row, column)


def test_a_test_that_cannot_be_is_refused_in_words() -> None:
    with pytest.raises(ValueError, match=r"^3 steps are too few.*\.$"):
        step_table.test_of(ROWS[:3])
    with pytest.raises(ValueError, match="every step its length"):
        step_table.test_of([*ROWS[:6], [*ROWS[6][:3], ""]])


@given(st.text())
def test_no_text_breaks_the_reading(text: str) -> None:
    for row in step_table.rows_of(text):
        assert len(row) == 4
        for cell in row:
            assert cell == "" or cell[0].isdigit()
