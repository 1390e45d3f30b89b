"""What the selected panel's readings say: figures, odd places, twin and family, what may be worked, what came off."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number, format_thickness, format_thickness_interval
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.panels import PanelSeen
from detailbench.findings.since_last import SinceLast, since_last
from detailbench.record.picture import JobPicture
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import caption, label, rule, sentence, set_kind
from detailbench.screens.stages.thickness.clear_part import ClearPart
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.gloss_part import GlossPart
from detailbench.screens.stages.thickness.odd_place import OddPlacePart
from detailbench.screens.stages.thickness.proposal_part import ProposalPart
from detailbench.screens.stages.thickness.reference_part import ReferencePart
from detailbench.screens.stages.thickness.seen_part import SeenPart
from detailbench.screens.stages.work_parts.last_words import last_thickness_words

RULINGS = {"may be worked": "", "careful": "flagged", "held back": "stop"}


def ruling_words(ruling: str) -> str:
    return {"may be worked": _("may be worked"), "careful": _("careful"), "held back": _("held back")}[ruling]


class PanelPart(QWidget):
    """Facts as text, a *why?* beside each figure; scrolls in itself where they are many."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        context = desk.context
        m = context.dress.look.measure
        self.none = sentence()
        self.mean = label("", "figure")
        self.why_mean = WhyButton(self._panel_working, context.show_working, _("the panel's figures"))
        self.facts = sentence()
        self.bound = sentence()
        self.why_bound = WhyButton(self._panel_working, context.show_working, _("how thin the rest may be"))
        self.confirmed = sentence()
        self.odd = OddPlacePart(desk)
        self.compared = sentence()
        self.why_compared = WhyButton(self._odd_working, context.show_working, _("the comparison"))
        self.proposal = ProposalPart(desk)
        self.could_be_seen = SeenPart(desk)
        self.gloss = GlossPart(desk)
        self.beside = ReferencePart(desk)
        self.ruling = label("", "notice", wrap=True)
        self.reasons = sentence()
        self.why_ruling = WhyButton(self._ruling_working, context.show_working, _("what may be worked"))
        self.room = sentence()
        self.why_room = WhyButton(self._room_working, context.show_working, _("the room left"))
        self.clear = ClearPart(desk)
        self.change = label("", wrap=True)
        self.why_change = WhyButton(self._change_working, context.show_working, _("what came off"))
        self.since = label("", wrap=True)
        self.why_since = WhyButton(self._since_working, context.show_working, _("what changed since last time"))
        self.last = sentence()
        self._compared_with: tuple[JobPicture, Mapping[str, SinceLast]] | None = None
        self._inside = QWidget()
        column = QVBoxLayout(self._inside)
        column.setContentsMargins(0, 0, m.space("thin"), 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.none)
        column.addLayout(_beside(self.mean, self.why_mean))
        column.addWidget(self.facts)
        column.addLayout(_beside(self.bound, self.why_bound))
        column.addWidget(self.confirmed)
        column.addWidget(self.odd)
        self._heads = []
        worked = (
            (self.ruling, self.why_ruling),
            (self.reasons, None),
            (self.room, self.why_room),
            (self.clear, None),
        )
        for head, rows in (
            (_("since last time"), ((self.since, self.why_since),)),  # what a car that comes back is looked at for
            (_("last time"), ((self.last, None),)),
            (_("beside its twin and its family"), ((self.compared, self.why_compared),)),
            (_("a finish group of its own?"), ((self.proposal, None),)),
            (_("what may be worked"), worked),
            (_("in shuts and underneath"), ((self.beside, None),)),
            (_("what came off"), ((self.change, self.why_change),)),
            (_("gloss"), ((self.gloss, None),)),
            (_("what change could be seen"), ((self.could_be_seen, None),)),
        ):
            title, line = caption(head), rule()
            self._heads.append((title, line, rows[0][0]))
            column.addWidget(line)
            column.addWidget(title)
            for part, why in rows:
                if why is None:
                    column.addWidget(part)
                else:
                    column.addLayout(_beside(part, why))
        column.addStretch(1)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self._inside)
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(scroll)
        desk.changed.connect(self.redraw)

    def _seen(self) -> PanelSeen | None:
        survey = self._desk.survey
        return survey.latest(self._desk.panel) if survey is not None and self._desk.panel else None

    def _panel_working(self) -> Working | None:
        seen = self._seen()
        return seen.figures.working if seen is not None and seen.figures is not None else None

    def _odd_working(self) -> Working | None:
        survey = self._desk.survey
        return survey.odd.working if survey is not None and survey.odd is not None else None

    def _ruling_working(self) -> Working | None:
        survey = self._desk.survey
        found = survey.permissions.get(self._desk.panel) if survey is not None else None
        return found.working if found is not None else None

    def _room_working(self) -> Working | None:
        survey = self._desk.survey
        found = survey.permissions.get(self._desk.panel) if survey is not None else None
        return found.room.working if found is not None and found.room is not None else None

    def _change_working(self) -> Working | None:
        survey = self._desk.survey
        found = survey.changes.get(self._desk.panel) if survey is not None else None
        return found.change.working if found is not None and found.change is not None else None

    def _since_last(self) -> SinceLast | None:
        survey = self._desk.survey
        if survey is None or survey.picture.last is None or not self._desk.panel:
            return None
        if self._compared_with is None or self._compared_with[0] is not survey.picture:
            self._compared_with = (survey.picture, since_last(survey.picture))
        return self._compared_with[1].get(self._desk.panel)

    def _since_working(self) -> Working | None:
        found = self._since_last()
        compared = found.compared if found is not None else None
        return compared.change.working if compared is not None and compared.change is not None else None

    def showEvent(self, event: object) -> None:
        super().showEvent(event)  # type: ignore[arg-type]
        self.redraw()

    def redraw(self) -> None:
        """Only while it is open: the rulings of all panels take their time."""
        if not self.isVisible():
            return
        seen = self._seen()
        self._figures(seen)
        self._compared()
        self.proposal.redraw()
        self.could_be_seen.redraw()
        self.gloss.redraw()
        self.beside.redraw()
        self._ruling()
        self.clear.redraw()
        self._change()
        self._since()
        self.odd.show_panel(seen)
        for title, line, first in self._heads:
            shown = not first.isHidden()
            title.setVisible(shown)
            line.setVisible(shown)

    def _figures(self, seen: PanelSeen | None) -> None:
        figures = seen.figures if seen is not None else None
        self.none.setVisible(figures is None)
        if not self._desk.panel:
            self.none.setText(_("Choose a panel."))
        elif seen is None or not seen.taken:
            self.none.setText(_("Not measured yet."))
        else:
            self.none.setText(_("Not measurable: the gauge gave no value here."))
        for part in (self.mean, self.why_mean, self.facts, self.bound, self.why_bound, self.confirmed):
            part.setVisible(figures is not None)
        if figures is None or seen is None:
            return
        when = _("after the work") if seen.moment == "polished" else _("as found")
        self.mean.setText(format_thickness(figures.mean_um, digits=1))
        self.mean.setAccessibleName(_("mean {value}").format(value=self.mean.text()))
        facts = [
            _("mean of {n} places, {when}").format(n=format_number(figures.places), when=when)
            if figures.places != 1
            else _("1 place, {when}").format(when=when),
            _("lowest {low}, highest {high}").format(
                low=format_thickness(figures.lowest_um, digits=1), high=format_thickness(figures.max_um, digits=1)
            ),
        ]
        if figures.interval_um is not None:
            interval = format_thickness_interval(*figures.interval_um, digits=1)
            facts.append(_("95\u00a0% interval of the mean {interval}").format(interval=interval))
        self.facts.setText("\n".join([", ".join(facts), *figures.sentences]))
        self.bound.setText(figures.bound_sentence)
        if seen.confirmed:
            self.confirmed.setText(_("Confirmed: the readings lie between two good gauge checks."))
        else:
            self.confirmed.setText(
                _("Not confirmed yet: a good gauge check before and after is needed. Until then nothing is released.")
            )
        set_kind(self.confirmed, "" if seen.confirmed else "flagged")

    def _compared(self) -> None:
        survey = self._desk.survey
        found = survey.finding(self._desk.panel) if survey is not None and self._desk.panel else None
        text = found.sentence if found is not None else ""
        self.compared.setText(text)
        self.compared.setVisible(bool(text))
        self.why_compared.setVisible(bool(text))
        odd = found is not None and found.verdict in ("differs", "look again")
        set_kind(self.compared, "flagged" if odd else "")

    def _ruling(self) -> None:
        survey, panel = self._desk.survey, self._desk.panel
        found = survey.permissions.get(panel) if survey is not None and panel else None
        for part in (self.ruling, self.why_ruling, self.reasons):
            part.setVisible(found is not None)
        room = found.room if found is not None else None
        for each in (self.room, self.why_room):
            each.setVisible(room is not None)
        if found is None:
            return
        self.ruling.setText(ruling_words(found.ruling))
        set_kind(self.ruling, RULINGS[found.ruling])
        lines = [r.sentence for r in found.reasons if room is None or r.sentence != " ".join(room.sentences[1:])]
        if room is None and not any(found.clear_coat in line for line in lines):  # a reason may tell it already
            lines.append(found.clear_coat)
        self.reasons.setText("\n".join(lines))
        self.reasons.setVisible(bool(self.reasons.text()))
        if room is not None:
            self.room.setText("\n".join(room.sentences))
            set_kind(self.room, "stop" if room.refused else "")

    def _change(self) -> None:
        survey, panel = self._desk.survey, self._desk.panel
        found = survey.changes.get(panel) if survey is not None and panel else None
        self.change.setVisible(found is not None)
        self.why_change.setVisible(found is not None and found.change is not None)
        if found is None:
            return
        lines = [found.change.sentence if found.change is not None else found.why_none]
        lines += list(found.pairing.remarks)
        reasons = {n.sentence for n in found.pairing.not_comparable}
        pairs, out = len(found.pairing.pairs), len(found.pairing.not_comparable)
        lines.append(
            _("{pairs} like pairs, {out} places not comparable").format(
                pairs=format_number(pairs), out=format_number(out)
            )
        )
        lines += sorted(reasons - set(lines))
        self.change.setText("\n".join(line for line in lines if line))

    def _since(self) -> None:
        survey, found = self._desk.survey, self._since_last()
        last = ""
        if survey is not None and self._desk.panel:
            last = last_thickness_words(survey.picture, self._desk.panel)
        self.last.setText(last)
        self.last.setVisible(bool(last))
        self.since.setVisible(found is not None)
        self.why_since.setVisible(found is not None and self._since_working() is not None)
        if found is not None:
            screen_only = found.compared is not None and found.change_um is not None and not found.for_print
            remarks = list(found.compared.pairing.remarks) if screen_only and found.compared is not None else []
            self.since.setText("\n".join([found.sentence, *remarks]))


def _beside(part: QWidget, why: WhyButton) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addWidget(part, 1)
    row.addWidget(why, 0, Qt.AlignmentFlag.AlignTop)
    return row
