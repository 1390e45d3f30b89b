"""Closed documents, how they left the shop, acceptance, drawn signatures."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.record.thing import JobThing


@dataclass(frozen=True, kw_only=True)
class Document(JobThing):
    """A document as it was closed. ``chain_head``: the journal's hash then; ``replaces``: an earlier document's id."""

    table = "document"
    kind: str
    evidence_id: str
    sha256: str
    pages: int
    key_fingerprint: str
    chain_head: str
    replaces: str = ""


@dataclass(frozen=True, kw_only=True)
class Delivery(JobThing):
    """A closed document left the shop. ``way``: mail, message, print or handed; whom it went to is personal (``to``).
    When it left is ``stated_at``, else ``entered_at``."""

    table = "delivery"
    document_id: str
    way: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class History(JobThing):
    """Where an imported job comes from: its journal as it was, kept as a file; ``head``: that journal's last hash."""

    table = "history"
    evidence_id: str
    head: str
    entries: int


@dataclass(frozen=True, kw_only=True)
class Forgetting(JobThing):
    """The personal data of this job was deleted; ``entered_at`` says when. How many values, how many files."""

    table = "forgetting"
    values_gone: int = 0
    files_gone: int = 0


@dataclass(frozen=True, kw_only=True)
class Acceptance(JobThing):
    """The owner's word at handover: accepted, with_remarks or not_accepted. Remarks are personal data (``remarks``).
    Of each approved test section the owner was asked whether the work is as agreed: ``met_ids`` and ``not_met_ids`` are
    the agreements of those found met and not met. ``level_met``: yes where every one asked about is met, no where one
    is not, empty where nobody said; without either, of several sections it was not said of which."""

    table = "acceptance"
    answer: str
    light: str = ""
    level_met: str = ""
    met_ids: tuple[str, ...] = ()
    not_met_ids: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Signature(JobThing):
    """``role``: owner, bearer or workshop; ``way``: drawn, telephone, message, declined or absent. The strokes
    (JSON list of lists of [x, y] in 0…1) and the signer's name are personal data (``strokes``, ``name``)."""

    table = "signature"
    role: str
    way: str = "drawn"
    moment: str = "handover"
    statement: str = ""
