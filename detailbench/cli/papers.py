"""Documents from the shell: write one to a file, check one."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from detailbench import __version__
from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import BadFile, BadInput, RecordTrouble
from detailbench.basics.texts import _
from detailbench.cli.records import job_named, open_to_read
from detailbench.cli.templates import print_template
from detailbench.findings.settings import setting
from detailbench.moves.documents import copy_out, newest_document, write_whole
from detailbench.record.past import put_right
from detailbench.record.store import DATABASE, Store
from detailbench.seal.verifying import verify_pdf


def print_document(words: Namespace) -> int:
    """The newest closed document of a kind of a job, or a draft of it, to a new file."""
    if words.kind == "template":
        return print_template(words)
    store = open_to_read(words)
    kind = "handover" if words.kind == "report" else words.kind
    try:
        job = job_named(store.shop(), words.job)
        if words.draft:
            from detailbench.report import content_of, document_pdf

            with store.reading() as connection:
                past = put_right(connection, job.id)
            content = content_of(kind)(
                store.job(job.id),
                now=SystemClock().now(),
                version=__version__,
                read_file=store.files.read,
                key_fingerprint="",
                past=past,
            )
            size = words.paper or str(setting(store.shop(), "page_size"))
            written = write_whole(words.to, document_pdf(content, page_size=size).pdf)
        elif words.paper:
            raise BadInput(_("A closed document stays on the paper it was closed on; add --draft for another."))
        else:
            written = copy_out(store, newest_document(store, job.id, kind), words.to)
    finally:
        store.close()
    print(_("Written: {file}").format(file=written))
    return 0


def verify(words: Namespace) -> int:
    """Say in plain words what can be said about a file; the exit code says which."""
    try:
        content = words.file.read_bytes()
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=words.file, why=error.strerror), name=str(words.file)
        ) from error
    sha256, fingerprint = words.sha256, words.fingerprint
    if words.workshop is not None:
        sha256, fingerprint = _from_record(words.workshop, content, sha256, fingerprint)
    verdict = verify_pdf(content, recorded_sha256=sha256, expected_fingerprint=fingerprint)
    for sentence in verdict.sentences:
        print(sentence)
    return int(verdict.outcome)


def _from_record(
    folder: Path, content: bytes, sha256: str | None, fingerprint: str | None
) -> tuple[str | None, str | None]:
    """Hash and fingerprint as this workshop recorded them for the document the file claims to be: the one whose
    bytes it begins with, else the only one, else none."""
    if not (folder / DATABASE).is_file():
        raise RecordTrouble(_("There is no workshop in {folder}.").format(folder=folder))
    store = Store(folder, SystemClock().now(), read_only=True)
    try:
        documents = store.shop().documents
        if not documents:
            raise RecordTrouble(_("This workshop has closed no document yet."))
        known = next((d for d in documents if content.startswith(store.files.read(d.sha256))), None)
        if known is None:
            named = verify_pdf(content)
            print(_("This file is not among the documents this workshop closed, byte for byte."))
            known = next((d for d in documents if d.sha256 == named.sealed_sha256), documents[-1])
    finally:
        store.close()
    return sha256 or known.sha256, fingerprint or known.key_fingerprint
