"""The work held against each of several approved test sections: one answer for each."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import section_words
from detailbench.findings.agreements import ApprovedSection
from detailbench.findings.level_met import section_met
from detailbench.record.picture import JobPicture
from detailbench.record.things import Acceptance
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.work_parts.pages import in_line


class LevelsPart(QWidget):
    """A sentence and a yes or no for each section; they are entered with the answer."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self.asks = sentence(_("Look at each together; what is chosen here is entered with the answer."))
        self._rows: dict[str, ChoiceRow] = {}
        self._lines: list[QWidget] = []
        self._given = ""
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(context.dress.look.measure.space("thin"))
        self._column.addWidget(self.asks)
        self._column.addStretch(1)

    @property
    def chosen(self) -> dict[str, str]:
        """Agreement → yes or no, of those somebody answered."""
        return {id_: row.value for id_, row in self._rows.items() if row.value}

    def show_sections(
        self, picture: JobPicture, sections: tuple[ApprovedSection, ...], found: Acceptance | None
    ) -> None:
        """A row for each; what was entered before stays marked."""
        ids = [section.agreement.id for section in sections]
        if ids != list(self._rows):
            kept = self.chosen
            for line in self._lines:
                self._column.removeWidget(line)
                line.hide()
                line.deleteLater()
            self._rows, self._lines = {}, []
            for section in sections:
                title = _("as agreed, {panel}").format(panel=panel_name(section.trial.panel))
                row = in_line(ChoiceRow(title, (("yes", _("yes")), ("no", _("no"))), columns=2))
                row.set_value(kept.get(section.agreement.id, ""))
                self._rows[section.agreement.id] = row
                self._lines += [sentence(section_words(picture, section)), row]
            for line in self._lines:
                self._column.insertWidget(self._column.count() - 1, line)
        if found is not None and found.id != self._given:
            for section in sections:
                self._rows[section.agreement.id].set_value(section_met(picture, found, section))
        self._given = found.id if found is not None else ""
