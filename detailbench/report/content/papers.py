"""The documents of the job: closed when, by whom, with which hash, and how each left the shop."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.delivered import to_whom_missing
from detailbench.record.things import Delivery, Document
from detailbench.report.content.figures import moment_with_offset, number, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Recorded, Text, joined, said, typed
from detailbench.report.content.wording import ended, person_words


def kind_words(kind: str) -> str:
    """A kind of document by name."""
    words = {"arrival": _("Arrival record"), "supplement": _("Supplement"), "handover": _("Handover report")}
    return words.get(kind, kind)


def arrival_text(g: Gathered) -> Text:
    """The arrival record as every later document repeats it: closed, delivered to whom, on when, by which way, hash."""
    found = [d for d in g.picture.documents if d.kind == "arrival"]
    if not found:
        return (_("No arrival record was closed in this job."),)
    return ended(document_text(g, found[-1]))


def document_texts(g: Gathered, printing: str) -> tuple[Text, ...]:
    """Every document closed so far; ``printing``: the kind of the one being printed, which replaces its last."""
    out = [document_text(g, d, printing) for d in g.picture.documents]
    if printing != "arrival" and not any(d.kind == "arrival" for d in g.picture.documents):
        out.insert(0, (_("No arrival record was closed in this job."),))
    return tuple(out) or ((_("None was closed before this one."),),)


def document_text(g: Gathered, document: Document, printing: str = "") -> Text:
    """One document in one line."""
    replaced = any(d.replaces == document.id for d in g.picture.documents)
    newest = [d for d in g.picture.documents if d.kind == printing][-1:]
    after: Text = (_("replaced by a later one"),) if replaced else ()
    if not replaced and newest == [document] and g.key_fingerprint:
        after = (_("replaced by this one"),)
    return joined(
        [
            said(
                _("{kind} closed {at} by {who}"),
                kind=kind_words(document.kind),
                at=moment_with_offset(document.entered_at, recorded(document, "entered_at")),
                who=person_words(g.picture.shop, document.entered_by),
            ),
            said(_("{n} page") if document.pages == 1 else _("{n} pages"), n=of_thing(document, "pages", 0)),
            *deliveries(g, document),
            said(_("SHA-256 {sha}"), sha=hash_figure(document.sha256, Recorded("document", (document.id,), "sha256"))),
            after,
        ],
        "; ",
    )


def deliveries(g: Gathered, document: Document) -> tuple[Text, ...]:
    """How it left the shop, every time; or that no delivery is noted."""
    found = [d for d in g.picture.deliveries if d.document_id == document.id]
    return tuple(_delivery(g, d) for d in found) or ((_("that it was delivered is not noted"),),)


def _delivery(g: Gathered, d: Delivery) -> Text:
    ways = {
        "mail": _("delivered by mail{to} on {at}"),
        "message": _("delivered by message{to} on {at}"),
        "print": _("delivered in print{to} on {at}"),
        "handed": _("handed over as a file{to} on {at}"),
    }
    to = typed(g.picture.said(d.id, "to"))
    at = moment_with_offset(d.stated_at or d.entered_at, recorded(d, "stated_at" if d.stated_at else "entered_at"))
    text = said(ways[d.way], to=said(_(" to {to}"), to=to) if to else (), at=at)
    note = said(" ({note})", note=typed(d.note)) if d.note else ()
    nobody = (_(", to whom is not noted"),) if to_whom_missing(g.picture, d) else ()
    return (*text, *nobody, *said(_(", noted by {who}"), who=person_words(g.picture.shop, d.entered_by)), *note)


def hash_figure(value: str, trace: Recorded) -> Figure:
    """A hash in groups of eight, so that it can be read out and wraps."""
    return Figure(" ".join(value[i : i + 8] for i in range(0, len(value), 8)), value, trace)


def journal_text(g: Gathered) -> Text:
    """How many entries the journal held, and its last hash."""
    shop = g.picture.shop
    return said(
        _(
            "Every entry and every change stands in the workshop's journal. "
            "When this was printed it held {n} entries; its hash was {hash}."
        ),
        n=number(shop.head, Recorded("shop", ("",), "head"), 0),
        hash=hash_figure(shop.chain_head, Recorded("shop", ("",), "chain_head")) if shop.chain_head else "–",
    )
