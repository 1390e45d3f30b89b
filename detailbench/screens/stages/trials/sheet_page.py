"""The technique sheet with its figures, live: the strokes, the pad and the lamp, what one change would do."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import parts
from detailbench.findings.technique import TechniqueFigures, technique_figures, working_time_words
from detailbench.findings.technique_bounds import MOST_PASSES, MOST_SECONDS, section_unfit, technique_unfit
from detailbench.record.picture import one
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import label, sentence, set_kind
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.draft import WORDS
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.pad_part import PadPart
from detailbench.screens.stages.trials.unfit_told import UnfitTold
from detailbench.screens.stages.trials.what_if_part import WhatIfPart
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber
from detailbench.trials.technique import force_label


class SheetPage(QWidget):
    """Three faces: dial, force, section, passes and seconds with what they come to; pad and lamp; what if."""

    def __init__(self, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__()
        self._context, self._hand, self._advising = context, hand, advising
        m = context.dress.look.measure
        self._told = UnfitTold(context, hand)
        self._shown_panel = ""
        self.name = label("", "strong", wrap=True)
        self.dial = in_line(ChoiceRow(_("dial"), (), columns=5))
        self.force = in_line(ChoiceRow(_("force"), tuple((w, force_label(w)) for w in WORDS)))
        self.wide = StepNumber(_("section width"), "mm", step=10, least=10, check=self._side("section_w_mm"))
        self.high = StepNumber(_("section height"), "mm", step=10, least=10, check=self._side("section_h_mm"))
        self.passes = StepNumber(_("passes"), step=1, least=1, whole=True, most=MOST_PASSES)
        self.seconds = StepNumber(_("passes take"), "s", step=5, least=1, most=MOST_SECONDS)
        self.pad = PadPart(context, hand)
        self.what_if = WhatIfPart(context, hand)
        faces = (("strokes", _("strokes")), ("pad", _("pad, lamp")), ("if", _("what if")))
        self.face = in_line(ChoiceRow(_("sheet"), faces))
        self.speed = FigureLine(_("pad speed"), context)
        self.load = FigureLine(_("load × path"), context)
        self.arm = FigureLine(_("arm speed"), context)
        self.times = FigureLine(_("against your usual"), context)
        self.mind = sentence()
        strokes, column = page_column(context.dress)
        numbers = QGridLayout()
        numbers.setSpacing(m.space("thin"))
        for i, part in enumerate((self.wide, self.high, self.passes, self.seconds)):
            numbers.addWidget(part, 3 * (i // 2), i % 2)
            numbers.addWidget(part.says, 3 * (i // 2) + 1 + i % 2, 0, 1, 2)  # two to a row: its sentence below both
        figures = QGridLayout()
        figures.setHorizontalSpacing(m.space("gap"))
        figures.setVerticalSpacing(0)
        for i, line in enumerate((self.speed, self.arm, self.load, self.times)):
            figures.addWidget(line, i // 2, i % 2)
        for piece in (self.dial, self.force):
            column.addWidget(piece)
        column.addLayout(numbers)
        column.addLayout(figures)
        column.addWidget(self.mind)
        column.addStretch(1)
        self.faces = Faces()
        for face in (strokes, self.pad, self.what_if):
            self.faces.addWidget(face)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(m.space("thin"))
        whole.addWidget(self.name)
        whole.addWidget(self.face)
        whole.addWidget(self.faces, 1)
        self.face.set_value("strokes")
        self.face.chosen.connect(lambda key: self.faces.setCurrentIndex(list(self.face.buttons).index(key)))
        hand.page_wanted.connect(self._wanted)
        self.dial.chosen.connect(lambda key: hand.set_draft(dial=key))
        self.force.chosen.connect(lambda key: hand.set_draft(force_n=None, force_word=key))
        self.wide.committed.connect(lambda v: hand.set_draft(section_w_mm=v))
        self.high.committed.connect(lambda v: hand.set_draft(section_h_mm=v))
        self.passes.committed.connect(lambda v: hand.set_draft(passes=max(round(v), 1)))
        self.seconds.committed.connect(lambda v: hand.set_draft(seconds=v))

    def _side(self, name: str) -> Callable[[float], str]:
        """What speaks against a side of the section, and which one stays set."""

        def against(side: float) -> str:
            picture, draft = self._context.picture, self._hand.draft
            if picture is None or draft is None:
                return ""
            unfit = section_unfit(picture, draft.panel, {**draft.technique(), name: side})
            kept = getattr(draft, name)
            if not unfit or kept is None:
                return unfit
            return unfit + " " + _("{value} stays set.").format(value=format_quantity(kept, "mm"))

        return against

    def _wanted(self, page: str) -> None:
        """What was set up for somebody is shown where it changed, whatever lay open here before."""
        if page == "sheet":
            self.face.set_value("strokes")
            self.faces.setCurrentIndex(0)

    def redraw(self) -> None:
        """Draw anew from what is set up."""
        draft, shop = self._hand.draft, self._context.shop
        for part in (self.dial, self.force, self.wide, self.high, self.passes, self.seconds):
            part.setEnabled(draft is not None)
        self.pad.show_draft(draft)
        if draft is None or shop is None:
            self.name.setText(_("Choose a panel of this group on the map first."))
            return
        confirms = draft.spot == "confirming"
        said = _("Confirming trial on {panel}: {name}") if confirms else "{name}"
        self.name.setText(said.format(panel=panel_name(draft.panel), name=self._hand.draft_name()))
        self.name.setAccessibleName(_("combination: {name}").format(name=self._hand.draft_name()))
        machine, _pad, _product = parts(shop, one(shop.combinations, draft.combination_id))
        dials = [(position, _(position)) for position, _per_min in machine.dials]
        if list(self.dial.buttons) != [key for key, _text in dials]:
            self.dial.set_choices(dials)
        self.dial.set_value(draft.dial)
        self.dial.setVisible(bool(dials))
        self.force.set_value("" if draft.force_n is not None else draft.force_word)
        for field, value in (
            (self.wide, draft.section_w_mm),
            (self.high, draft.section_h_mm),
            (self.passes, draft.passes),
            (self.seconds, draft.seconds),
        ):
            if draft.panel != self._shown_panel:
                field.forget()
            field.set_value(value, same=True)
        self._shown_panel = draft.panel
        picture = self._context.picture
        if picture is None:
            return
        unfit = technique_unfit(picture, draft.panel, one(shop.combinations, draft.combination_id), draft.technique())
        if unfit is not None and unfit[0] in (places := self._places()):
            places[unfit[0]].say(unfit[1])
        # nothing is worked out from a section that cannot be
        fits = not section_unfit(picture, draft.panel, draft.technique())
        set_up = draft if fits else replace(draft, section_w_mm=None, section_h_mm=None)
        found = technique_figures(picture, set_up.setup())
        self._show_figures(found)
        self.what_if.show_changes(found.changes, found.no_load)
        figures = self._advising.figures
        rungs = figures.rungs if figures is not None else ()
        self.what_if.show_taken(next((r for r in rungs if r.combination_id == draft.combination_id), None))

    def _places(self) -> dict[str, StepNumber]:
        """Where what cannot be is said."""
        return {"section_w_mm": self.wide, "section_h_mm": self.high, "passes": self.passes, "seconds": self.seconds}

    def _show_figures(self, found: TechniqueFigures) -> None:
        unknown = _("not known")
        if found.speed is not None:
            self.speed.show_value(format_quantity(found.speed.speed_m_s, "m/s", 1), found.speed.working)
        else:
            self.speed.show_value(unknown)
        if found.arm is not None:
            self.arm.show_value(format_quantity(100 * found.arm.speed_m_s, "cm/s", 1), found.arm.working)
        else:
            self.arm.show_value(unknown)
        if found.load is not None and found.load_path_j_m2 is not None:
            self.load.show_value(format_quantity(found.load_path_j_m2 / 1000, "kJ/m²", 0), found.load.working)
        elif found.load is not None:
            self.load.show_value(_("hand-led: not computed"), found.load.working)
        else:
            self.load.show_value(unknown)
        if found.times is not None:
            self.times.show_value(_("{n} × your usual").format(n=format_number(found.times, 1)))
        else:
            self.times.show_value(_("your usual is not set") if found.no_times else unknown)
        missing = () if found.hand_led else (found.no_load, found.no_arm)
        limit = _("Stop at {t} and let it cool.").format(t=format_quantity(found.limit_c, "°C"))
        told = (found.too_warm, *missing, working_time_words(found), found.weight_note, limit)
        self.mind.setText(" ".join(text for text in dict.fromkeys(told) if text))
        flagged = found.too_warm or found.beyond_s > 0 or any(missing)
        set_kind(self.mind, "flagged" if flagged else "")
