"""A paper template from the shell: where to measure on a job's car."""

from __future__ import annotations

from argparse import Namespace

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.cli.records import job_named, open_to_read
from detailbench.findings.settings import setting
from detailbench.moves.documents import write_whole


def print_template(words: Namespace) -> int:
    """The template of a job's car to a new file."""
    if words.draft:
        raise BadInput(_("A template is never closed: leave --draft away."))
    store = open_to_read(words)
    try:
        from detailbench.report.pages.template import template_pdf

        picture = store.job(job_named(store.shop(), words.job).id)
        size = words.paper or str(setting(picture.shop, "page_size"))
        written = write_whole(words.to, template_pdf(picture, page_size=size))
    finally:
        store.close()
    print(_("Written: {file}").format(file=written))
    return 0
