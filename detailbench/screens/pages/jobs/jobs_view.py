"""What the Jobs page shows: the jobs on the left, a new one on the right, or the first steps of an empty workshop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import area, button, rule
from detailbench.screens.pages.jobs.first_steps import FirstSteps
from detailbench.screens.pages.jobs.job_list import JobList
from detailbench.screens.pages.jobs.new_job import NewJobForm
from detailbench.screens.stages.work_parts.pages import Faces

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.work_parts.turns_part import TurnsPart

KEY = "jobs"
JOB_STAGES = ("arrival", "wash", "marks", "thickness", "trials", "work", "handover", "history")


class JobsView(QWidget):
    """Redrawn only while it is in front: reading every job costs time that the stages need."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        area(self, "surface")
        self._context = context
        self._stale = True
        self._greeted = False
        m = context.dress.look.measure
        self.jobs = JobList(context)
        self.new = NewJobForm(context)
        self.steps = FirstSteps(context)
        self.first_steps = button(_("First steps of a new workshop"), self.show_steps, role="quiet")
        right = QVBoxLayout()
        self.beside = Faces()
        self.beside.addWidget(self.new)
        right.addWidget(self.beside, 1)
        self.turns: TurnsPart | None = None  # built when asked for: it needs what the record is read with
        self.goes_on = button(_("How the chosen job goes on"), self._turn_beside, role="quiet")
        right.addWidget(self.goes_on)
        right.addWidget(self.first_steps)
        both = QWidget()
        row = QHBoxLayout(both)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addWidget(self.jobs, 6)
        row.addWidget(rule(upright=True))
        row.addLayout(right, 5)
        self.faces = QStackedWidget()
        self.faces.addWidget(both)
        self.faces.addWidget(self.steps)
        column = QVBoxLayout(self)
        column.setContentsMargins(m.space("wide"), m.space("gap"), m.space("wide"), m.space("gap"))
        column.addWidget(self.faces)
        self.jobs.opened.connect(context.open_job)
        self.jobs.again.connect(self._again)
        self.jobs.list.chosen.connect(lambda _key: self._show_turns())
        self.new.begun.connect(context.open_job)
        self.steps.done.connect(self.show_jobs)
        context.changed.connect(lambda _changes, _who: self._changed())
        context.job_opened.connect(self._changed)
        context.stage_opened.connect(self._front)
        self._changed()

    def show_steps(self) -> None:
        self.faces.setCurrentWidget(self.steps)
        self.steps.redraw()
        self.steps.take_focus()

    def show_jobs(self) -> None:
        self._greeted = True
        self.faces.setCurrentIndex(0)
        self.redraw()
        self.take_focus()

    def redraw(self) -> None:
        """Show what there is now."""
        self._stale = False
        shop = self._context.shop
        if shop is not None and not self._greeted:
            self._greeted = True
            self._one_person_enters()
            if not shop.jobs and not shop.people:
                self.show_steps()
            else:
                self.take_focus()
        self.jobs.redraw()
        self._show_turns()
        self.steps.redraw()

    def _show_turns(self) -> None:
        """How the chosen job goes on, where the new one stands else."""
        shop = self._context.shop
        self.goes_on.setVisible(shop is not None and bool(shop.jobs))
        if self.turns is not None:
            self.turns.redraw()

    def _turn_beside(self) -> None:
        """From the new job to how the chosen one goes on, and back."""
        if self.turns is None:
            from detailbench.screens.stages.work_parts.turns_part import TurnsPart

            self.turns = TurnsPart(self._context, self._chosen_job)
            self.beside.addWidget(self.turns)
        to_turns = self.beside.currentWidget() is self.new
        self.beside.setCurrentWidget(self.turns if to_turns else self.new)
        self.goes_on.setText(_("Back to a new job") if to_turns else _("How the chosen job goes on"))
        self.goes_on.setAccessibleName(self.goes_on.text())
        self._show_turns()

    def _chosen_job(self) -> JobPicture | None:
        """The job chosen in the list."""
        bench, key = self._context.bench, self.jobs.list.key
        return bench.job(key) if bench is not None and key else None

    def _one_person_enters(self) -> None:
        """Where only one person works nobody has to be asked who is entering."""
        bench, shop = self._context.bench, self._context.shop
        people = [p for p in shop.people if not p.retired] if shop is not None else []
        if bench is not None and not bench.person and len(people) == 1:
            bench.person = people[0].id
            self._context.changed.emit(None, self)

    def _changed(self) -> None:
        self._stale = True
        if self._context.open_stage == KEY:
            self.redraw()

    def _front(self, key: str) -> None:
        if key != KEY:
            if self._context.picture is None and key in JOB_STAGES:
                self._context.notice(_("No job is open yet: open or begin one under Jobs."), "plain")
            return
        if self._stale:
            self.redraw()
        self.take_focus()

    def take_focus(self) -> None:
        """To where one would type next."""
        shop = self._context.shop
        if self.faces.currentWidget() is self.steps:
            self.steps.take_focus()
        elif shop is not None and shop.jobs:
            self.jobs.typed.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.new.take_focus()

    def _again(self, job_id: str) -> None:
        from detailbench.record.picture import one

        shop = self._context.shop
        if shop is not None:
            if self.beside.currentWidget() is not self.new:
                self._turn_beside()
            self.new.for_car(one(shop.cars, one(shop.jobs, job_id).car_id))
