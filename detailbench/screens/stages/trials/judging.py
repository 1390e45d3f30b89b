"""An outcome half entered: what was seen, under which lamps, what was counted, in words."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.moves.trials import JudgeTrial


@dataclass(frozen=True)
class Judging:
    """Fields as in TrialOutcome; ``lamp_id`` empty: the lamp the trial was set up with. Lamps and counts support what
    was seen; without it they are not entered. A note goes in with a stop too."""

    cleared: str = ""
    finish: str = ""
    stopped: str = ""
    only_deep_left: bool = False
    note: str = ""
    lamp_id: str = ""
    second_lamp_id: str = ""
    counted_before: int | None = None
    counted_left: int | None = None

    @property
    def ready(self) -> bool:
        return bool(self.stopped) or bool(self.cleared and self.finish)

    def move(self, job_id: str, trial_id: str, lamp_id: str) -> JudgeTrial:
        """What enters it; ``lamp_id``: what the trial was set up with."""
        seen = bool(self.cleared and self.finish)
        return JudgeTrial(
            job_id,
            trial_id,
            self.cleared,
            self.finish,
            self.stopped,
            self.only_deep_left,
            note=self.note,
            lamp_id=(self.lamp_id or lamp_id) if seen else "",
            second_lamp_id=self.second_lamp_id if seen else "",
            counted_before=self.counted_before if seen else None,
            counted_left=self.counted_left if seen else None,
        )
