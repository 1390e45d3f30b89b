"""An outcome half entered: what was seen, under which lamps, what was counted."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.moves.trials import JudgeTrial


@dataclass(frozen=True)
class Judging:
    """Fields as in TrialOutcome. Lamps and counts support what was seen; without it they are not entered."""

    cleared: str = ""
    finish: str = ""
    stopped: str = ""
    only_deep_left: bool = False
    second_lamp_id: str = ""
    counted_before: int | None = None
    counted_left: int | None = None

    @property
    def ready(self) -> bool:
        return bool(self.stopped) or bool(self.cleared and self.finish)

    def move(self, job_id: str, trial_id: str, lamp_id: str) -> JudgeTrial:
        """What enters it; ``lamp_id``: judged under."""
        seen = bool(self.cleared and self.finish)
        return JudgeTrial(
            job_id,
            trial_id,
            self.cleared,
            self.finish,
            self.stopped,
            self.only_deep_left,
            lamp_id=lamp_id if seen else "",
            second_lamp_id=self.second_lamp_id if seen else "",
            counted_before=self.counted_before if seen else None,
            counted_left=self.counted_left if seen else None,
        )
