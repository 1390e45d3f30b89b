"""The wash as it was noted: what each panel went through, and what a step makes of its state.

What a step sets is common practice, no source: washed after a contact wash; decontaminated once iron, tar and clay were
each done or left out with a reason; bare after a panel wipe, by the word of who enters it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.findings.limits import panel_list
from detailbench.findings.states import CLEANER, READY, State, state_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import WashStep
from detailbench.record.words_kept import choices

KINDS = choices("wash_step", "kind")
DECONTAMINATION = frozenset({"iron", "tar", "clay"})
COATED = frozenset({"earlier_coating", "protected"})


@dataclass(frozen=True)
class Becomes:
    """These panels are so from a step on; an empty field leaves that one as it was."""

    panels: tuple[str, ...]
    clean: str = ""
    cover: str = ""


def kind_words() -> dict[str, str]:
    """The steps of a wash in their usual order, by key."""
    return {
        "pre_rinse": _("pre-rinse"),
        "contact_wash": _("contact wash"),
        "iron": _("iron remover"),
        "tar": _("tar remover"),
        "clay": _("clay"),
        "rinse": _("rinse"),
        "dry": _("dry"),
        "panel_wipe": _("panel wipe"),
    }


def steps_of(picture: JobPicture, panel: str) -> tuple[WashStep, ...]:
    """A panel's steps since it was last said to be dirty, in the order of entry."""
    dirty = [n.seq for n in picture.state_notes if n.clean == "dirty" and panel in n.panels]
    since = dirty[-1] if dirty else 0
    return tuple(s for s in picture.wash_steps if panel in s.panels and s.seq > since)


def decided(steps: Iterable[WashStep]) -> frozenset[str]:
    """The kinds that were done or left out with a reason."""
    return frozenset(s.kind for s in steps)


def last_product(picture: JobPicture, kind: str) -> str:
    """What was used last for this kind of step, in this job or the one before; empty where nothing was named."""
    for job in (picture, picture.last):
        for step in reversed(job.wash_steps if job is not None else ()):
            if step.kind == kind and step.product:
                return step.product
    return ""


def becomes(
    picture: JobPicture, kind: str, panels: Sequence[str], *, left_out: bool = False, cover_off: bool = False
) -> tuple[Becomes, ...]:
    """What the step makes of the panels' state, those that become alike together. ``cover_off``: what lay on the paint
    was taken off before the panel wipe."""
    found: dict[tuple[str, str], list[str]] = {}
    for panel in dict.fromkeys(panels):
        change = _of_panel(picture, kind, panel, left_out=left_out, cover_off=cover_off)
        if change != ("", ""):
            found.setdefault(change, []).append(panel)
    return tuple(Becomes(tuple(keys), *change) for change, keys in found.items())


def _of_panel(picture: JobPicture, kind: str, panel: str, *, left_out: bool, cover_off: bool) -> tuple[str, str]:
    now = state_of(picture, panel)
    if kind == "panel_wipe":
        if left_out:
            return "", ""
        stays = now.cover in COATED and not cover_off and not polished_since_coated(picture, panel)
        clean, cover = "wiped", now.cover if stays else "bare"
        return "" if now.clean == clean else clean, "" if now.cover == cover else cover
    before = steps_of(picture, panel)
    washed = any(s.kind == "contact_wash" and not s.why_not for s in before) or CLEANER.index(now.clean) >= 1
    washed = washed or (kind == "contact_wash" and not left_out)
    clean = "dirty" if not washed else "washed"
    if washed and decided(before) | {kind} >= DECONTAMINATION:
        clean = "decontaminated"
    return clean if CLEANER.index(clean) > CLEANER.index(now.clean) else "", ""


def polished_since_coated(picture: JobPicture, panel: str) -> bool:
    """Whether a step was finished on the panel after what lies on it was last noted."""
    own = [n for n in picture.state_notes if panel in n.panels]
    coated = [n.seq for n in own if n.cover in COATED]
    return bool(coated) and any(n.work == "polished" and n.seq > coated[-1] for n in own)


def wipe_says(picture: JobPicture, panels: Sequence[str], *, cover_off: bool = False) -> str:
    """What a person should hear about a panel wipe of these panels as they are now; empty: nothing."""
    now = {p: state_of(picture, p) for p in dict.fromkeys(panels)}
    said = []
    dirty = [p for p, state in now.items() if state.clean == "dirty"]
    if dirty:
        said.append(_("No wash is noted on {panels}: bare stands by your word.").format(panels=panel_list(dirty)))
    kept = [p for p, s in now.items() if s.cover in COATED and not cover_off and not polished_since_coated(picture, p)]
    if kept:
        said.append(
            _("A panel wipe takes no coating off: {panels} stays covered, not bare.").format(panels=panel_list(kept))
            if len(kept) == 1
            else _("A panel wipe takes no coating off: {panels} stay covered, not bare.").format(
                panels=panel_list(kept)
            )
        )
    word = [p for p, s in now.items() if p not in kept and _by_word_alone(picture, p, s)]
    if word:
        said.append(
            _("Decontamination is not noted on {panels}: bare stands by your word.").format(panels=panel_list(word))
        )
    last = _put_on_last_time(picture, [p for p, s in now.items() if s.cover == "not_known"])
    if last:
        said.append(_("Last time {what} was put on there: bare stands by your word.").format(what=last))
    return " ".join(said)


def _by_word_alone(picture: JobPicture, panel: str, state: State) -> bool:
    decontaminated = state.clean in READY or decided(steps_of(picture, panel)) >= DECONTAMINATION
    return state.cover == "not_known" and state.clean != "dirty" and not decontaminated


def _put_on_last_time(picture: JobPicture, panels: Sequence[str]) -> str:
    if picture.last is None:
        return ""
    found = [p.product for p in picture.last.protections if any(panel in p.panels for panel in panels)]
    return f"“{found[-1]}”" if found else ""
