"""The second look: the next day or after a wash, wiped, under the same lamp."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.second_look import FOUND, found_words
from detailbench.findings.states import READY, State, states
from detailbench.moves.move import Done
from detailbench.moves.panels import lamp_of_the_shop, on_this_car
from detailbench.record.things import SecondLook
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class RecordSecondLook:
    """What was found when these panels were looked at again. ``found``: still_clear, marks_back, haze, trails, smear or
    cannot_tell. The state each panel is in now is kept with it; a look at panels that were not wiped is kept and
    said."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: tuple[str, ...]
    found: str
    words: str = ""
    lamp_id: str = ""

    def make(self, w: Writer) -> Done:
        if not self.panels:
            raise BadInput(_("Choose the panels."), field="panels")
        if self.found not in FOUND:
            raise BadInput(_("“{found}” is nothing a second look finds.").format(found=self.found), field="found")
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        lamp_of_the_shop(picture, self.lamp_id)
        now = states(picture)
        by_state: dict[State, list[str]] = {}
        for panel in dict.fromkeys(self.panels):
            by_state.setdefault(now.get(panel, State()), []).append(panel)
        made = [
            w.add(
                SecondLook,
                job_id=self.job_id,
                panels=tuple(panels),
                found=self.found,
                lamp_id=self.lamp_id,
                words=self.words.strip(),
                **state.as_fields(),
            )
            for state, panels in by_state.items()
        ]
        unwiped = [panel_name(p) for state, panels in by_state.items() if state.clean not in READY for p in panels]
        note = _("Not wiped before the look: {panels}.").format(panels=", ".join(unwiped)) if unwiped else ""
        says = _("second look: {found}").format(found=found_words(self.found))
        return Done(self.job_id, says, made[-1].id, note)
