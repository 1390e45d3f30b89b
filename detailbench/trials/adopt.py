"""When a process may be adopted, and what may be said of it: only what was seen on this paint."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.trials.outcome import Cleared, Finish, Outcome
from detailbench.trials.rungs import Range, RungSeen

TEACHING = frozenset({Finish.CLEAR, Finish.EVEN_HAZE, Finish.TRAILS})


@dataclass(frozen=True)
class TrialSeen:
    """One trial of this paint in the order made: what was used (``key``), on top of what, and what came of it.

    ``beneath``: keys of the steps on whose place it stands, in order; empty on a fresh place. ``panel``: its panel.
    """

    key: str
    outcome: Outcome
    beneath: tuple[str, ...] = ()
    panel: str = ""

    @property
    def teaches(self) -> bool:
        """The finish can be judged, and on a fresh place also the marks."""
        if self.outcome.stopped is not None or self.outcome.finish not in TEACHING:
            return False
        return bool(self.beneath) or self.cleared is not None

    @property
    def cleared(self) -> bool | None:
        if self.outcome.cleared is Cleared.YES or (self.outcome.cleared is Cleared.NO and self.outcome.only_deep_left):
            return True
        return False if self.outcome.cleared is Cleared.NO else None

    @property
    def finish_clear(self) -> bool:
        return self.outcome.finish is Finish.CLEAR


def may_adopt(trials: Sequence[TrialSeen], steps: Sequence[str], names: Mapping[str, str] | None = None) -> str | None:
    """None where these steps, in order, were seen to work on this paint; else the sentence that says what is missing.

    The first step must have been seen to clear on a fresh place; each further one on top of those before it; the
    last must have finished clear. The latest trial that says something decides. A trial stopped for heat or colour
    after that stands against it. ``names``: what the sentence calls a key, where that is not the key itself.
    """
    called = _Names(names or {})
    if not steps:
        return _("No step is chosen.")
    first = _latest(trials, steps[0], ())
    if first is None:
        return _("{step}: not seen to clear on this paint yet.").format(step=called[steps[0]])
    stop = _stopped_since(trials, first, called)
    if stop is not None:
        return stop
    if not first.cleared:
        return _("{step}: last seen not to clear on this paint.").format(step=called[steps[0]])
    last = first
    for i in range(1, len(steps)):
        beneath = tuple(steps[:i])
        on_top = _latest(trials, steps[i], beneath)
        if on_top is None:
            return _("{step}: not seen on top of {beneath} on this paint yet.").format(
                step=called[steps[i]], beneath=", ".join(called[key] for key in beneath)
            )
        stop = _stopped_since(trials, on_top, called)
        if stop is not None:
            return stop
        last = on_top
    if not last.finish_clear:
        return _("{step}: last seen to finish with {finish}, not clear.").format(
            step=called[steps[-1]], finish=last.outcome.finish.label if last.outcome.finish else ""
        )
    return None


def confirming_due(trials: Sequence[TrialSeen], steps: Sequence[str]) -> str | None:
    """None where the whole process was seen on a second panel too, by the newest word of each panel, else the sentence
    that asks for it."""
    if may_adopt(trials, steps) is not None:
        return None
    if len(panels_seen_to_work(trials, steps)) >= 2:
        return None
    return _("One confirming trial of the whole process on a second panel is still to be made.")


def panels_seen_to_work(trials: Sequence[TrialSeen], steps: Sequence[str]) -> frozenset[str]:
    """The panels whose own trials alone would allow adopting these steps: the newest word of each counts."""
    panels = {t.panel for t in trials}
    return frozenset(p for p in panels if may_adopt([t for t in trials if t.panel == p], steps) is None)


def mildest_words(range_: Range, adopted: int, *, cut: bool = False) -> str | None:
    """What documents may say of an adopted combination (``cut``: of the first of two steps), or None.

    "The mildest that served" only where the next milder one was seen not to; "the mildest tried" where nothing
    milder was tried; None where a milder one was seen to serve as well, or this one is not known to any more. A cut
    serves where it clears, whatever finish it leaves: a refining step comes on top.
    """
    below = range_[:adopted]
    if not serves(range_[adopted], cut=cut) or any(serves(seen, cut=cut) for seen in below):
        return None
    if below and _seen_not_to_serve(below[-1], cut=cut):
        return _("the mildest that served")
    if any(seen.cleared is not None for seen in below):
        return _("the mildest tried that served")
    return _("the mildest tried")


def is_mildest_words(words: str) -> bool:
    """Whether what was kept with a process is one of the sentences above: it was true then, and is worked out anew."""
    own = (_("the mildest that served"), _("the mildest tried that served"), _("the mildest tried"))
    return words.strip() in own


def serves(seen: RungSeen, *, cut: bool) -> bool:
    """Whether a combination is known to serve on this paint: by itself, or for the cut."""
    return not seen.forbidden and (seen.cleared is True if cut else seen.works)


def _seen_not_to_serve(seen: RungSeen, *, cut: bool) -> bool:
    return seen.cleared is False or (not cut and seen.cleared is True and seen.finish_clear is False)


class _Names(dict[str, str]):
    """Names by key; a key without a name is called by itself."""

    def __missing__(self, key: str) -> str:
        return key


def _latest(trials: Sequence[TrialSeen], key: str, beneath: tuple[str, ...]) -> TrialSeen | None:
    return next((t for t in reversed(trials) if t.key == key and t.beneath == beneath and t.teaches), None)


def _stopped_since(trials: Sequence[TrialSeen], seen: TrialSeen, called: Mapping[str, str]) -> str | None:
    """The sentence of a later stop of the same step that stands against it (an edge or a pad does not)."""
    for trial in reversed(trials):
        if trial is seen:
            return None
        if trial.key == seen.key and trial.outcome.stopped is not None and trial.outcome.stopped.value in STANDING:
            return _("{step}: stopped since ({why}); look again before adopting it.").format(
                step=called[seen.key], why=trial.outcome.stopped.label
            )
    return None


STANDING = frozenset({"heat", "colour_on_pad"})
