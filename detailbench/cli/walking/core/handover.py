"""Giving the car back."""

from __future__ import annotations

import math

from detailbench.basics.errors import BadFile, Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import handover as h
from detailbench.findings.agreements import approved_section
from detailbench.findings.processes import group_of
from detailbench.moves.documents import copy_out, newest_document
from detailbench.moves.handover import CarLeaves, RecordAcceptance, RecordProtection, Sign
from detailbench.seal.verdict import Outcome, Verdict
from detailbench.seal.verifying import verify_pdf


def strokes_for(name: str) -> list[list[tuple[float, float]]]:
    """An invented scribble, the same for the same name: one wave per letter."""
    count = max(len(name), 2)
    return [
        [((i + 0.5) / (count * 8), 0.5 + 0.3 * math.sin(i * (1 + ord(name[i // 8 % len(name)]) % 5) / 4))
         for i in range(count * 8)]
    ]  # fmt: skip


def protect(step: h.Protect, hand: Hand) -> None:
    hand.do(
        RecordProtection(
            hand.job,
            hand.panels(step.panels),
            step.product,
            kind=step.kind,
            batch=step.batch,
            air_c=amount(step.air),
            humidity_percent=amount(step.humidity),
            surface_c=amount(step.surface),
            cure_h=amount(step.cure),
        )
    )


LEVEL = {"": "", "met": "yes", "not_met": "no"}


def accept(step: h.Accept, hand: Hand) -> None:
    level, sections = LEVEL[step.level], _of_sections(step, hand)
    hand.do(RecordAcceptance(hand.job, step.answer, step.remarks, step.light, level, sections))


def _of_sections(step: h.Accept, hand: Hand) -> dict[str, str]:
    """Agreement of the approved section of each named panel's finish group → yes or no."""
    out = {}
    for panels, met in ((step.as_agreed, "yes"), (step.not_as_agreed, "no")):
        for panel in hand.panels(panels) if panels else ():
            group = group_of(hand.picture, panel)
            found = approved_section(hand.picture, group.id) if group is not None else None
            if found is None:
                raise Refused(_("The owner approved no test section to hold the work against."), rule="no_section")
            out[found.agreement.id] = met
    return out


def sign(step: h.SignIt, hand: Hand) -> None:
    strokes = strokes_for(step.signer) if step.way == "drawn" and step.signer else []
    hand.do(Sign(hand.job, step.role, way=step.way, name=step.signer, strokes=strokes, moment=step.moment))


def print_report(step: h.PrintReport, hand: Hand) -> None:
    kind = {"arrival": "arrival", "supplement": "supplement", "report": "handover"}[step.of]
    copy_out(hand.bench.store, newest_document(hand.bench.store, hand.job, kind), hand.out / step.file)


def verdict_of(hand: Hand, content: bytes) -> Verdict:
    """What a check of these bytes says, against what the record knows: of the document they begin with, else of the
    newest one."""
    files, documents = hand.bench.store.files, hand.picture.documents
    known = next((d for d in documents if content.startswith(files.read(d.sha256))), None)
    document = known or newest_document(hand.bench.store, hand.job, "")
    return verify_pdf(content, recorded_sha256=document.sha256, expected_fingerprint=document.key_fingerprint)


def verify(step: h.VerifyFile, hand: Hand) -> None:
    try:
        content = (hand.out / step.file).read_bytes()
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=step.file, why=error.strerror), name=step.file
        ) from error
    found = verdict_of(hand, content)
    if found.outcome != Outcome.UNCHANGED:
        raise Refused(" ".join(found.sentences), rule="not_unchanged")
    hand.said = " ".join(found.sentences)


def leaves(_step: h.Leaves, hand: Hand) -> None:
    hand.do(CarLeaves(hand.job))


ACTS = {
    h.Protect: protect,
    h.Accept: accept,
    h.SignIt: sign,
    h.PrintReport: print_report,
    h.VerifyFile: verify,
    h.Leaves: leaves,
}
