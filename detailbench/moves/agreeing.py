"""What is put to the owner and answered. An answer is never rewritten: a later question names the one it replaces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from typing import ClassVar

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.agreement_words import ABOUT, ANSWERS, CHANNELS, about_words, answer_words, newer_counts
from detailbench.findings.agreements import YES, asked_again, newest_about, section_note, section_to_show
from detailbench.findings.limits import limits_in_force, unread
from detailbench.findings.processes import group_of
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Agreement, LimitSeen, OwnerLimit, Person
from detailbench.record.writing import Writer

MOST_PRICE = Decimal(10_000_000)
LEVELLED = ("test_section", "level")


@dataclass(frozen=True)
class AskOwner:
    """A question put to the owner. What it is about is found where it is not named: the newest closed supplement, the
    trial of the panel's finish group, the newest mishap; and an earlier question about the same is replaced. ``level``:
    the level put to the owner, in words; the job is held against it at handover."""

    undoable: ClassVar[bool] = True
    job_id: str
    about: str
    question: str
    price: Decimal | None = None
    panels: tuple[str, ...] = ()
    limit_id: str = ""
    document_id: str = ""
    trial_id: str = ""
    mishap_id: str = ""
    replaces: str = ""
    level: str = ""

    def make(self, w: Writer) -> Done:
        if self.about not in ABOUT:
            raise BadInput(_("Nothing is asked of the owner about “{about}”.").format(about=self.about), field="about")
        if not self.question.strip():
            raise BadInput(_("Write what the owner is asked."), field="question")
        price = None if self.price is None else a_price(self.price)
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        if self.about == "sanding" and not self.panels:
            raise BadInput(_("Name the panels the owner is asked about."), field="panels")
        if self.level.strip() and self.about not in LEVELLED:
            raise BadInput(_("A level goes with a test section, or with a question about the level."), field="level")
        subject = self._subject(picture)
        replaces = self.replaces
        if replaces:
            self._replaces_its_like(one(picture.agreements, replaces), subject)
        elif subject:
            earlier = newest_about(picture, self.about, next(iter(subject.values())))
            replaces = earlier.id if earlier is not None else ""
        asked = w.add(
            Agreement,
            job_id=self.job_id,
            about=self.about,
            question=self.question.strip(),
            price=price,
            panels=self.panels,
            replaces=replaces,
            level=self.level.strip(),
            **subject,
        )
        says = _("owner asked: {about}").format(about=about_words(self.about))
        return Done(self.job_id, says, asked.id, section_note(picture, asked))

    def _replaces_its_like(self, earlier: Agreement, subject: Mapping[str, str]) -> None:
        """Raise BadInput where the earlier question was about something else: its answer would stand no more."""
        if earlier.about != self.about or (self.about == "limit" and earlier.limit_id != subject["limit_id"]):
            raise BadInput(_("That question was about something else: it stays as it is."), field="replaces")

    def _subject(self, picture: JobPicture) -> dict[str, str]:
        """The field that names what it is about, with its id; empty where it is about nothing that has one."""
        if self.about == "limit":
            limits = limits_in_force(picture)
            if self.limit_id:
                return {"limit_id": one(picture.limits, self.limit_id).id}
            if len(limits) == 1:
                return {"limit_id": limits[0].id}
            raise BadInput(_("Choose which of the owner's limits is asked about."), field="limit_id")
        if self.about == "supplement":
            closed = [d for d in picture.documents if d.kind == "supplement"]
            if self.document_id:
                if one(picture.documents, self.document_id) not in closed:
                    raise BadInput(_("That document is no supplement."), field="document_id")
                closed = [one(picture.documents, self.document_id)]
            if not closed:
                raise Refused(_("Close the supplement first: the owner answers what was closed."), rule="not_closed")
            return {"document_id": closed[-1].id}
        if self.about == "test_section":
            group = group_of(picture, self.panels[0]) if self.panels else None
            shown = section_to_show(picture, group, self.panels[0] if self.panels else "")
            trial = one(picture.trials, self.trial_id) if self.trial_id else shown
            if trial is None:
                raise Refused(_("No trial was judged yet that could be shown to the owner."), rule="no_trial")
            return {"trial_id": trial.id}
        if self.about == "mishap":
            mishaps = (one(picture.mishaps, self.mishap_id),) if self.mishap_id else picture.mishaps
            if not mishaps:
                raise Refused(_("No mishap was entered yet."), rule="no_mishap")
            return {"mishap_id": mishaps[-1].id}
        return {}


@dataclass(frozen=True)
class AnswerOwner:
    """The answer, how it came, from whom and when. A plain yes about an owner's limit lifts it; any other answer to
    the question that replaced that one puts it back. ``at``: when it was given, where that is not now; ``proof``: a
    picture of what was written or signed (or the id of one already kept)."""

    undoable: ClassVar[bool] = True
    job_id: str
    agreement_id: str
    answer: str
    channel: str = ""
    party_id: str = ""
    remark: str = field(default="", repr=False)
    message: str = field(default="", repr=False)
    at: datetime | None = None
    evidence_id: str = ""
    proof: bytes = field(default=b"", repr=False)
    proof_name: str = field(default="", repr=False)

    def make(self, w: Writer) -> Done:
        self._check()
        picture = w.job(self.job_id)
        asked = one(picture.agreements, self.agreement_id)
        if asked.answer != "open":
            raise Refused(_("That was answered: ask again, and the new question replaces it."), rule="answered")
        if self.answer != "withdrawn" and asked_again(picture, asked):
            raise Refused(_("That was asked again since: answer the newer question."), rule="asked_again")
        moment_of_telling(self.at, w.now)
        needs_a_person(w)
        if self.evidence_id:
            one(picture.shop.evidence, self.evidence_id)
        owners = [p for p in picture.parties if p.role == "owner"]
        party = one(picture.parties, self.party_id).id if self.party_id else (owners[-1].id if owners else "")
        w.change(
            asked,
            answer=self.answer,
            channel=self.channel,
            party_id=party,
            answered_at=self.at or w.now,
            answered_to=w.person_id,
            evidence_id=self._kept_proof(w) if self.proof else self.evidence_id,
        )
        for name, text in (("remarks", self.remark), ("message", self.message)):
            if text.strip():
                w.personal(asked.id, name, text.strip())
        counts = newer_counts(w.job(self.job_id), asked.id) if self.answer in YES else ""
        note = " ".join(filter(None, (self._limit(w, picture, asked), counts)))
        says = _("owner's answer about {about}: {answer}").format(
            about=about_words(asked.about), answer=answer_words(self.answer)
        )
        return Done(self.job_id, says, asked.id, note)

    def _check(self) -> None:
        if self.answer not in ANSWERS:
            raise BadInput(
                _("The answer is yes, yes with a remark, no, or withdrawn."), field="answer", given=self.answer
            )
        if self.channel not in CHANNELS and not (self.answer == "withdrawn" and not self.channel):
            raise BadInput(
                _("Say how it was answered: present, by telephone or by message."), field="channel", given=self.channel
            )
        if self.answer == "yes_with_remark" and not self.remark.strip():
            raise BadInput(_("Type the owner's remark first."), field="remark")

    def _kept_proof(self, w: Writer) -> str:
        """The proof's id. Raises BadFile for what is no picture."""
        from detailbench.photos.intake import look_at  # the picture library is loaded with the first picture

        seen = look_at(self.proof, self.proof_name, HandClock(w.now))
        return w.keep_file(
            self.proof,
            seen.media_type,
            came_as=self.proof_name,
            taken_at=seen.taken_at,
            offset_source=seen.offset_source or "",
            width_px=seen.width_px,
            height_px=seen.height_px,
        ).id

    def _limit(self, w: Writer, picture: JobPicture, asked: Agreement) -> str:
        """Lift the limit, or put it back; a sentence where neither was done and one might think so."""
        if not asked.limit_id:
            return ""
        limit = one(picture.limits, asked.limit_id)
        if self.answer == "yes":
            w.change(limit, lifted_by=asked.id)
            return ""
        notes = []
        if self.answer in ("no", "yes_with_remark") and limit.lifted_by:
            w.change(limit, lifted_by="")
            notes.append(_("The owner's limit is in force again."))
        if self.answer == "yes_with_remark":
            notes.append(_("A yes with a remark lifts nothing: ask again with the remark as part of the question."))
        return " ".join(notes)


@dataclass(frozen=True)
class AcknowledgeLimits:
    """Who is entering has read the owner's limits of kind *other*; once a day for each person."""

    undoable: ClassVar[bool] = True
    job_id: str

    def make(self, w: Writer) -> Done:
        needs_a_person(w)
        waiting: tuple[OwnerLimit, ...] = unread(w.job(self.job_id), w.person_id, w.now.date())
        if not waiting:
            return Done(self.job_id, _("nothing to acknowledge: the owner's limits were read today"))
        for limit in waiting:
            w.add(LimitSeen, job_id=self.job_id, limit_id=limit.id, day=w.now.date())
        return Done(self.job_id, _("owner's limits read"), waiting[-1].id)


def needs_a_person(w: Writer) -> None:
    """Raise Refused while nobody was chosen: what binds is entered under a name."""
    if not w.person_id:
        raise Refused(_("Choose who you are first: this is kept with a name."), rule="no_person")
    w.get(Person, w.person_id)


def moment_of_telling(at: datetime | None, now: datetime) -> None:
    """Raise BadInput for a stated moment that has no offset or has not come yet."""
    if at is None:
        return
    if at.tzinfo is None:
        raise BadInput(_("That moment needs its offset."), field="at", given=at.isoformat())
    if at > now:
        raise BadInput(_("That moment has not come yet."), field="at", given=at.isoformat())


def a_price(price: Decimal) -> Decimal:
    """The price. Raises BadInput for one that nobody pays."""
    if not price.is_finite() or not 0 <= price <= MOST_PRICE:
        raise BadInput(_("A price is a sum from nothing upwards."), field="price", given=str(price))
    return price
