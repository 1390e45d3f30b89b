"""Hands for the tests of findings: measure, check, polish on an invented car. Every name and figure is made up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pytest
from invented_shop import FOIL_UM, ZERO_UM, InventedShop

from detailbench.findings.agreements import allowed_to_sand
from detailbench.findings.panels import panel_seen
from detailbench.findings.permissions import permissions
from detailbench.findings.trial_story import range_combinations
from detailbench.findings.walking import panel_places
from detailbench.moves import agreeing, readings, shop, surface, trials, work
from detailbench.moves.move import Move
from detailbench.record.picture import JobPicture
from detailbench.record.things import ProcessStep
from detailbench.thickness.panel import Panel
from detailbench.thickness.permission import Permission


@dataclass
class Hands:
    """One job, and what is done in it."""

    shop: InventedShop
    job: str

    @property
    def picture(self) -> JobPicture:
        return self.shop.picture(self.job)

    def do(self, move: Move) -> str:
        return self.shop.bench.do(move).id

    def later(self, seconds: float = 4.0) -> None:
        self.shop.clock.forward(seconds=seconds)

    # measuring
    def session(self, gauge: str = "", temperature_c: float | None = 21.0) -> str:
        return self.do(readings.StartSession(self.job, gauge or self.shop.gauge, temperature_c))

    def check(
        self,
        session: str,
        foil_um: Sequence[float] = FOIL_UM,
        *,
        again: bool = False,
        zero: str = "",
        foil: str = "",
        zero_um: Sequence[float] = ZERO_UM,
    ) -> None:
        self.later()
        self.do(readings.RecordCheck(self.job, session, zero or self.shop.zero, zero_um, again=again))
        self.do(readings.RecordCheck(self.job, session, foil or self.shop.foil, foil_um))

    def checked_session(
        self, foil_um: Sequence[float] = FOIL_UM, *, gauge: str = "", temperature_c: float | None = 21.0
    ) -> str:
        session = self.session(gauge, temperature_c)
        self.check(session, foil_um)
        return session

    def read(self, panel: str, *values: float | None, place: int | None = None) -> None:
        for value in values:
            self.later()
            place_id = "" if place is None else self.place(panel, place)
            if value is None:
                self.do(readings.RecordReading(self.job, panel, no_value="nothing", place_id=place_id))
            else:
                self.do(readings.RecordReading(self.job, panel, value, place_id=place_id))

    def place(self, panel: str, number: int) -> str:
        if not panel_places(self.picture, panel):
            self.do(readings.ProposePlaces(self.job, panel))
        return next(p.id for p in panel_places(self.picture, panel) if p.number == number)

    def survey(
        self,
        panels: dict[str, Sequence[float]],
        foil_um: Sequence[float] = FOIL_UM,
        temperature_c: float | None = 21.0,
        gauge: str = "",
    ) -> str:
        """Wiped panels read between two good checks."""
        self.do(surface.SetState(self.job, tuple(panels), clean="wiped"))
        session = self.checked_session(foil_um, temperature_c=temperature_c, gauge=gauge)
        for panel, values in panels.items():
            self.read(panel, *values)
        self.check(session, foil_um, again=True)
        self.later()
        return session

    def figures(self, panel: str, moment: str = "as_found") -> Panel:
        found = panel_seen(self.picture, panel, moment).figures  # type: ignore[arg-type]
        assert found is not None
        return found

    def ruling(self, panel: str) -> Permission:
        return permissions(self.picture)[panel]

    # polishing
    def tried(self, panel: str = "roof", rung: int = 3, cleared: str = "yes", finish: str = "clear") -> str:
        """A judged trial; its combination."""
        group = self.shop.group(self.job, panel)
        combination = range_combinations(self.picture, group.id)[rung].id
        made = self.do(trials.RecordTrial(self.job, group.id, panel, combination))
        self.do(trials.JudgeTrial(self.job, made, cleared, finish))
        return combination

    def adopted(self, panel: str = "roof", rung: int = 3, **values: object) -> ProcessStep:
        group = self.shop.group(self.job, panel)
        combination = self.tried(panel, rung)
        self.confirmed(panel, rung)
        steps: list[dict[str, object]] = [{"combination_id": combination, **values}]
        if values.get("means") == "sanding":
            if not allowed_to_sand(self.picture, panel):
                asked = self.do(agreeing.AskOwner(self.job, "sanding", "may it be sanded?", panels=group.panels))
                self.do(agreeing.AnswerOwner(self.job, asked, "yes", "present"))
            steps.append({"combination_id": combination})
        by_hand = values.get("means") == "hand"  # while its trials are by machine
        why = "gentler by hand" if by_hand else ""
        self.do(work.AdoptProcess(self.job, group.id, steps, override=why))
        return self.picture.steps[-len(steps)]

    def confirmed(self, panel: str = "roof", rung: int = 3) -> None:
        """The same on a second panel of the finish group, where it has one."""
        others = [p for p in self.shop.group(self.job, panel).panels if p != panel]
        for other in others[:1]:
            self.tried(other, rung)

    def polish(self, panel: str, step: ProcessStep, minutes: float = 20.0) -> None:
        self.do(work.StartStep(self.job, panel, step.id))
        self.later(60 * minutes)
        self.do(work.FinishStep(self.job, panel))
        self.later()

    def do_anyway(self, panel: str, step: ProcessStep) -> None:
        """The same with every rule set aside."""
        self.do(work.StartStep(self.job, panel, step.id, override="owner agreed by telephone"))
        self.later(600)
        self.do(work.FinishStep(self.job, panel))
        self.later()

    def leave_below(self, um: float) -> None:
        self.do(shop.SetSetting("leave_below_um", um))


@pytest.fixture
def hands(invented: InventedShop) -> Hands:
    """A job begun in an invented shop."""
    return Hands(invented, invented.job())
