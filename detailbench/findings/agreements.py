"""What was put to the owner: what is open, what is in force, what was agreed as level and price."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from detailbench.basics.texts import _
from detailbench.findings.processes import group_of, process_of
from detailbench.findings.trial_story import outcome_of, trials_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Agreement, FinishGroup, Photo, Trial

YES = ("yes", "yes_with_remark")
ANSWERED = (*YES, "no")
PAIR = 2


@dataclass(frozen=True)
class ApprovedSection:
    """The trial the owner agreed to as the level of a finish group (None where its panel is in none): ``level`` in
    words, ``price`` or None."""

    agreement: Agreement
    trial: Trial
    level: str
    price: Decimal | None
    group: FinishGroup | None = None


def _replaced(picture: JobPicture) -> set[str]:
    """Agreements a later one has taken the place of: asked again, and that question was not taken back."""
    return {a.replaces for a in picture.agreements if a.replaces and a.answer != "withdrawn"}


def asked_again(picture: JobPicture, agreement: Agreement) -> bool:
    """A later question has taken its place."""
    return agreement.id in _replaced(picture)


def open_agreements(picture: JobPicture) -> tuple[Agreement, ...]:
    """Asked, neither answered nor taken back nor asked again; in the order asked."""
    replaced = _replaced(picture)
    return tuple(a for a in picture.agreements if a.answer == "open" and a.id not in replaced)


def _standing(picture: JobPicture) -> tuple[Agreement, ...]:
    """Answered yes and not answered anew."""
    over = {a.replaces for a in picture.agreements if a.replaces and a.answer in ANSWERED}
    return tuple(a for a in picture.agreements if a.answer in YES and a.id not in over)


def in_force(picture: JobPicture) -> tuple[Agreement, ...]:
    """Answered yes, with or without a remark. An earlier yes stands until the question that replaces it is answered; of
    the test sections of one finish group only the newest yes counts, as a group is brought to one level."""
    overtaken = sections_overtaken(picture)
    return tuple(a for a in _standing(picture) if a.id not in overtaken)


def sections_overtaken(picture: JobPicture) -> dict[str, Agreement]:
    """Id of an approved test section's agreement → the newer one of the same finish group that counts instead."""
    last: dict[str, Agreement] = {}
    over: dict[str, str] = {}
    answered = sorted(_standing(picture), key=lambda a: (a.answered_at or a.entered_at, a.seq))
    for agreement in (a for a in answered if a.about == "test_section"):
        trial = next((t for t in picture.trials if t.id == agreement.trial_id), None)
        if trial is None:
            continue
        group = group_of(picture, trial.panel)
        key = group.id if group is not None else trial.panel
        if key in last:
            over[last[key].id] = key
        last[key] = agreement
    return {id_: last[key] for id_, key in over.items()}


def newest_about(picture: JobPicture, about: str, subject: str = "") -> Agreement | None:
    """The newest agreement about this that was not taken back, whatever its answer. ``subject``: the id of the limit,
    document, trial or mishap it is about; empty: any."""
    found = [a for a in picture.agreements if a.about == about and a.answer != "withdrawn"]
    return next((a for a in reversed(found) if not subject or subject_of(a) == subject), None)


def subject_of(agreement: Agreement) -> str:
    """The id of what it is about, or empty."""
    return agreement.limit_id or agreement.document_id or agreement.trial_id or agreement.mishap_id


def approved_section(picture: JobPicture, group_id: str = "") -> ApprovedSection | None:
    """The approved test section of a finish group; where none is named, the one agreed last."""
    found = approved_sections(picture)
    if not group_id:
        agreed = {s.agreement.id: (s.agreement.answered_at or s.agreement.entered_at, s.agreement.seq) for s in found}
        return max(found, key=lambda s: agreed[s.agreement.id], default=None)
    return next((s for s in found if s.group is not None and s.group.id == group_id), None)


def approved_sections(picture: JobPicture) -> tuple[ApprovedSection, ...]:
    """Every approved test section in force, one for a finish group, in the order asked. A trial goes with its panel."""
    out = []
    for agreement in in_force(picture):
        trial = next((t for t in picture.trials if t.id == agreement.trial_id), None)
        if agreement.about == "test_section" and trial is not None:
            level = agreement.level or agreement.question
            out.append(ApprovedSection(agreement, trial, level, agreement.price, group_of(picture, trial.panel)))
    return tuple(out)


def section_photos(picture: JobPicture, trial_id: str) -> tuple[Photo, ...]:
    """The photos of a test section, in the order entered."""
    return tuple(p for p in picture.photos if p.trial_id == trial_id and p.shows == "test_section")


def section_note(picture: JobPicture, asked: Agreement) -> str:
    """What is still missing of what the handover will be held against; empty where nothing is, or it is about
    something else."""
    if asked.about != "test_section":
        return ""
    missing = []
    if not asked.level:
        missing.append(_("No level is put into words."))
    if len(section_photos(picture, asked.trial_id)) < PAIR:
        missing.append(_("No pair of photos of the section is kept, untouched half beside polished half."))
    return " ".join(missing)


def section_to_show(picture: JobPicture, group: FinishGroup | None, panel: str = "") -> Trial | None:
    """Which trial is put to the owner: the newest whose section was photographed, else the last the adopted process
    rests on, else the last judged one: not one that was stopped, and of a typical place, where there is such a one.
    Without a group: of the newest process, else of the job. ``panel``: where its section is looked for first."""
    here = trials_of(picture, group.id) if group is not None else picture.trials
    photographed = [t for t in here if section_photos(picture, t.id)]
    if photographed:
        return max(photographed, key=lambda t: (t.panel == panel, t.seq))
    process = process_of(picture, group.id) if group is not None else next(reversed(picture.processes), None)
    if process is not None and process.trial_ids:
        rests = [one(picture.trials, id_) for id_ in process.trial_ids]
        # a confirming place only says the same again, and the worst one is no level
        return next((t for t in reversed(rests) if t.spot == "typical"), rests[-1])
    judged = [(t, kept) for t in here if (kept := outcome_of(picture, t.id)) is not None]
    rank = {t.id: (not kept.stopped, t.panel == panel, t.spot == "typical", t.seq) for t, kept in judged}
    return max((t for t, _kept in judged), key=lambda t: rank[t.id], default=None)


def allowed_to_sand(picture: JobPicture, panel: str, since_seq: int = 0) -> bool:
    """The newest answer about sanding that names this panel is a plain yes, and the question was put after
    ``since_seq``: a yes from before a limit knows nothing of it."""
    named = [a for a in picture.agreements if a.about == "sanding" and panel in a.panels and a.answer in ANSWERED]
    newest = max(named, key=lambda a: (a.answered_at or a.entered_at, a.seq), default=None)
    return newest is not None and newest.answer == "yes" and newest.seq > since_seq


def price_agreed(picture: JobPicture) -> Decimal | None:
    """The prices in force together; None where none was agreed."""
    prices = [a.price for a in in_force(picture) if a.price is not None]
    return sum(prices, Decimal(0)) if prices else None
