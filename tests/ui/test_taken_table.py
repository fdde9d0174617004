"""The list of an import's files fills by stages."""

from tercet.library.intake import Taken
from tercet.ui.recordings_pane import RecordingsPane
from tercet.ui.taken_table import AT_ONCE


class _Report:
    stopped, words = False, "said"

    def __init__(self, taken: list[Taken]) -> None:
        self.taken = taken


def test_a_long_list_is_whole_in_the_end_and_what_needs_a_look_comes_first(qtbot) -> None:
    pane = RecordingsPane()
    qtbot.addWidget(pane)
    new = [Taken(f"runs/{k:03}.fit", "new") for k in range(2 * AT_ONCE + 50)]
    pane.end(_Report([*new, Taken("runs/zz.fit", "refused", "It is empty.")]))  # type: ignore[arg-type]
    table = pane.table
    assert table.rowCount() == AT_ONCE  # the event loop goes on between the stages
    qtbot.waitUntil(lambda: table.rowCount() == len(new) + 1)
    assert [table.item(0, k).text() for k in range(3)] == ["zz.fit", "Not read", "It is empty."]
    assert table.item(len(new), 0).text() == "249.fit"
    # Another choice while the list still fills leaves nothing of the earlier one.
    pane.filter.setCurrentIndex(0)
    pane.end(_Report(new))  # type: ignore[arg-type]
    pane.end(_Report(new[:3]))  # type: ignore[arg-type]
    qtbot.wait(20)
    assert table.rowCount() == 3
