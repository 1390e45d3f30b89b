"""Documents closed, and how each left the shop."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.steps import handover as h
from detailbench.cli.walking.steps import papers as p
from detailbench.moves.delivering import CorrectDelivery, NoteDelivery
from detailbench.moves.documents import CloseDocument, newest_document, open_key

KINDS = {"arrival": "arrival", "supplement": "supplement", "report": "handover"}


def _close(hand: Hand, kind: str) -> None:
    if hand.passphrase is None:
        raise Refused(
            _("A document is closed with the workshop's key: give its passphrase in a file (--passphrase-file)."),
            rule="passphrase",
        )
    key = open_key(hand.folder, hand.bench.shop(), hand.passphrase, hand.clock)
    hand.do(CloseDocument(hand.job, key, kind))


def close_arrival(_step: p.CloseArrival, hand: Hand) -> None:
    _close(hand, "arrival")


def close_supplement(_step: p.CloseSupplement, hand: Hand) -> None:
    _close(hand, "supplement")


def close_report(_step: h.CloseTheReport, hand: Hand) -> None:
    _close(hand, "handover")


def deliver(step: p.Deliver, hand: Hand) -> None:
    document = newest_document(hand.bench.store, hand.job, KINDS[step.document])
    hand.do(NoteDelivery(hand.job, document.id, step.way, step.to, step.at, step.note))


def correct_delivery(step: p.CorrectLastDelivery, hand: Hand) -> None:
    of_kind = {d.id for d in hand.picture.documents if d.kind == KINDS[step.document]}
    noted = [d for d in hand.picture.deliveries if d.document_id in of_kind]
    if not noted:
        raise Refused(_("No delivery of that document is noted yet."), rule="no_delivery")
    hand.do(
        CorrectDelivery(
            hand.job, noted[-1].id, way=step.way, to=step.to, at=step.at, note=step.note, never_left=step.never_left
        )
    )


ACTS = {
    p.CloseArrival: close_arrival,
    p.CloseSupplement: close_supplement,
    h.CloseTheReport: close_report,
    p.Deliver: deliver,
    p.CorrectLastDelivery: correct_delivery,
}
