"""What the wash or the work brought to light, and whether the owner knows and has answered."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreements import ANSWERED
from detailbench.findings.stop import Stop
from detailbench.marks.catalogue import kind as kind_of
from detailbench.marks.intents import Intent
from detailbench.marks.severity import depth_words
from detailbench.record.picture import JobPicture
from detailbench.record.things import Agreement, Document, Mark, SupplementItem

TOLD_BELOW_DEPTH = 3  # a mark deeper than this is the owner's to know before a machine starts
SHOWN = 3  # items named in a stop


@dataclass(frozen=True)
class ItemSeen:
    """An item, the first closed supplement that lists it, and the owner's newest answer to one that does."""

    item: SupplementItem
    document: Document | None
    answer: Agreement | None

    @property
    def answered(self) -> bool:
        return self.answer is not None


def supplements(picture: JobPicture) -> tuple[Document, ...]:
    """The closed supplements, oldest first."""
    return tuple(d for d in picture.documents if d.kind == "supplement")


def items(picture: JobPicture) -> tuple[ItemSeen, ...]:
    """Every item, in the order of entry. A supplement lists what was entered before it was closed."""
    closed = supplements(picture)
    said = [a for a in picture.agreements if a.about == "supplement" and a.answer in ANSWERED]
    out = []
    for item in picture.supplement:
        listing = [d for d in closed if d.seq > item.seq]
        ids = {d.id for d in listing}
        answers = [a for a in said if a.document_id in ids]
        out.append(ItemSeen(item, listing[0] if listing else None, answers[-1] if answers else None))
    return tuple(out)


def not_closed(picture: JobPicture) -> tuple[SupplementItem, ...]:
    """Items no closed supplement lists yet."""
    return tuple(seen.item for seen in items(picture) if seen.document is None)


def unanswered(picture: JobPicture) -> tuple[SupplementItem, ...]:
    """Items the owner has not answered."""
    return tuple(seen.item for seen in items(picture) if not seen.answered)


def is_listed(picture: JobPicture, item: SupplementItem) -> bool:
    """Whether a closed supplement lists it: it can be struck out no more."""
    return any(d.seq > item.seq for d in supplements(picture))


def supplement_stops(picture: JobPicture) -> tuple[Stop, ...]:
    """No machine starts while something found is unanswered; a person may set that aside with name and reason."""
    waiting = unanswered(picture)
    if not waiting:
        return ()
    named = "; ".join(item_words(item) for item in waiting[:SHOWN])
    if len(waiting) > SHOWN:
        named = _("{items}; {n} more").format(items=named, n=len(waiting) - SHOWN)
    if not_closed(picture):
        text = _("The supplement is not closed and not answered: {items}.")
    else:
        text = _("The owner has not answered the supplement: {items}.")
    return (Stop("supplement", text.format(items=named.rstrip("."))),)


def offered(picture: JobPicture) -> tuple[Mark, ...]:
    """Marks that ask to be told and are in no item yet: to be referred, or deeper than felt and seen wet, where no
    closed arrival record can have listed them. Offered, never added by themselves."""
    taken = {item.mark_id for item in picture.supplement}
    closed = [d.seq for d in picture.documents if d.kind == "arrival"]
    since = closed[-1] if closed else 0
    return tuple(m for m in picture.marks if m.id not in taken and m.seq > since and _asks(m))


def _asks(mark: Mark) -> bool:
    return mark.intent == Intent.REFER or (mark.depth is not None and mark.depth > TOLD_BELOW_DEPTH)


def mark_words(mark: Mark) -> str:
    """A mark as an item says it: ``single scratch, severity 3, felt, still seen wet``."""
    words = _("{kind}, severity {n}").format(kind=kind_of(mark.kind).name, n=mark.severity)
    return words if mark.depth is None else f"{words}, {depth_words(mark.depth)}"


def item_words(item: SupplementItem) -> str:
    """An item with its panel."""
    return f"{panel_name(item.panel)}: {item.words}" if item.panel else item.words
