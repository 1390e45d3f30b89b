"""The card of the trials: the finish group above, six pages below."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout

from detailbench.basics.texts import _
from detailbench.findings.processes import process_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.screens.context import Context
from detailbench.screens.look.parts import label
from detailbench.screens.stages.trials.adopt_page import AdoptPage
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.confirming import typical_panel
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.place_page import PlacePage
from detailbench.screens.stages.trials.range_page import RangePage
from detailbench.screens.stages.trials.run_page import RunPage
from detailbench.screens.stages.trials.sheet_page import SheetPage
from detailbench.screens.stages.trials.story_page import StoryPage
from detailbench.screens.stages.trials.waiting_part import WaitingPart
from detailbench.screens.stages.work_parts.pages import Pages
from detailbench.screens.stages.work_parts.seen_card import Drawn, SeenCard


class TrialsCard(SeenCard):
    """Follows the selected panel: its finish group is the one that is tried."""

    def __init__(self, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.group = label("", "strong", wrap=True)
        self.waits = WaitingPart(context, hand)
        self.pages = Pages(context.dress, in_a_row=6)
        self.range = RangePage(context, hand, advising)
        self.range.other.clicked.connect(self.next_group)
        self.place = PlacePage(context, hand)
        self.sheet = SheetPage(context, hand, advising)
        self.run = RunPage(context, hand, advising)
        self.story = StoryPage(context, hand)
        self.adopt = AdoptPage(context, hand)
        for key, title, page in (
            ("range", _("Range"), self.range),
            ("place", _("Place"), self.place),
            ("sheet", _("Sheet"), self.sheet),
            ("run", _("Trial"), self.run),
            ("story", _("Story"), self.story),
            ("adopt", _("Adopt"), self.adopt),
        ):
            self.pages.add(key, title, page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.group)
        column.addWidget(self.waits)
        column.addWidget(self.pages, 1)
        hand.page_wanted.connect(self.pages.turn)
        hand.changed.connect(self.redraw)
        context.job_opened.connect(self.redraw)
        context.place_chosen.connect(self._place_chosen)
        self.pages.turned.connect(self.redraw)

    def draw(self) -> None:
        """Draw what is shown anew."""
        group, picture = self._hand.group, self._context.picture
        if picture is None or group is None:
            self.group.setText(_("No finish group here"))
        else:
            self.group.setText(group_words(picture, group))
        self.group.setAccessibleName(self.group.text())
        self.waits.redraw()
        pages: dict[str, Drawn] = {
            "range": self.range, "place": self.place, "sheet": self.sheet, "run": self.run, "story": self.story,
            "adopt": self.adopt,
        }  # fmt: skip
        pages[self.pages.page].redraw()

    def next_group(self) -> None:
        """Go to the typical panel of the next finish group."""
        picture, group = self._context.picture, self._hand.group
        if picture is None or not picture.groups:
            return
        ids = [g.id for g in picture.groups]
        at = ids.index(group.id) if group is not None and self._context.selected_panel else -1
        self._context.select_panel(typical_panel(picture, picture.groups[(at + 1) % len(ids)].panels))

    def _place_chosen(self, panel: str, x_mm: float, y_mm: float) -> None:
        if self.isVisible() and self.pages.page in ("place", "sheet"):
            self._hand.take_place(panel, x_mm, y_mm)


def group_words(picture: JobPicture, group: FinishGroup) -> str:
    """The group's name, how many panels, and whether a process is adopted."""
    words = {1: _("{name}: 1 panel")}.get(len(group.panels), _("{name}: {n} panels"))
    adopted = _("process adopted") if process_of(picture, group.id) is not None else _("no process yet")
    return words.format(name=_(group.name), n=len(group.panels)) + f", {adopted}"
