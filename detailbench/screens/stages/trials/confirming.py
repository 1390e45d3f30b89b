"""The confirming trial: the whole process once more on a second panel, before it is adopted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.panels import outline_of
from detailbench.findings.trial_story import outcome_of, panels_serving, stack_beneath, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Trial
from detailbench.screens.stages.trials.draft import Draft, draft_of, place_of, with_combination
from detailbench.screens.stages.trials.hand import TrialHand


def typical_panel(picture: JobPicture, panels: Sequence[str]) -> str:
    """A large one of these panels that lies flat, else the largest."""
    drawn = outline_of(picture).panels
    return max(panels, key=lambda key: (drawn[key].lie == "horizontal", drawn[key].area_m2))


def confirming_draft(picture: JobPicture, group: FinishGroup, steps: Sequence[str]) -> Draft | None:
    """The next trial that is missing on a second panel: the first step on a fresh place of a panel where nothing of the
    process was made yet, or the next step on top of what stands there. None where there is no second panel."""
    made = [(t, tuple(b.combination_id for b in (*stack_beneath(picture, t), t))) for t in trials_of(picture, group.id)]
    whole = {t.panel for t, stack in made if stack == tuple(steps)}
    begun = [
        (t, len(stack))
        for t, stack in made
        if t.panel not in whole and 0 < len(stack) < len(steps) and stack == tuple(steps[: len(stack)])
        if (kept := outcome_of(picture, t.id)) is not None and not kept.stopped and kept.cleared != "no"
    ]
    shown = next((t for t, stack in reversed(made) if stack == tuple(steps)), None)
    if shown is None:
        return None
    like = _made_like(picture, shown)
    if begun:
        trial, n = max(begun, key=lambda found: (found[1], found[0].seq))
        draft = draft_of(like[n])
        return replace(draft, panel=trial.panel, on_top_of=trial.id, at=place_of(picture, trial), spot="confirming")
    # where it was made and is last seen not to work, it may be seen again on a fresh place
    seen = panels_serving(picture, group, steps)
    panels = [p for p in group.panels if p not in whole] or [p for p in group.panels if p not in seen]
    if not panels:
        return None
    draft = with_combination(picture.shop, draft_of(like[0]), steps[0])
    return replace(draft, panel=typical_panel(picture, panels), on_top_of="", at=None, spot="confirming", prime=True)


def confirming_words(hand: TrialHand, draft: Draft) -> str:
    """What was set up on the sheet, and why."""
    said = {
        "name": hand.draft_name(),
        "panel": panel_name(draft.panel),
        "n": hand.number(draft.on_top_of) if draft.on_top_of else 0,
    }
    text = (
        _("To confirm it on a second panel: {name} on {panel}, on top of trial {n}. Space starts it.")
        if draft.on_top_of
        else _("To confirm it on a second panel: {name} on {panel}, on a fresh place. Space starts it.")
    )
    return text.format(**said)


def _made_like(picture: JobPicture, trial: Trial) -> tuple[Trial, ...]:
    """The trials of a process as it was shown, in order: their technique is the one to confirm."""
    return (*stack_beneath(picture, trial), trial)
