"""A document as a PDF: plain bytes, not yet sealed."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import partial

from reportlab import rl_config
from reportlab.platypus import Flowable, NextPageTemplate

from detailbench.report.content.blocks import DocumentContent
from detailbench.report.pages.finish import finished
from detailbench.report.pages.flow import last_section, section
from detailbench.report.pages.frame import NumberedCanvas, document
from detailbench.report.pages.front_page import front_page
from detailbench.report.pages.letters import register
from detailbench.report.pages.look import paper


@dataclass(frozen=True)
class DocumentPdf:
    """The file, and how many pages it has. The last page carries the boxes for the seal and the owner's signature."""

    pdf: bytes
    pages: int


def document_pdf(content: DocumentContent, *, page_size: str = "A4") -> DocumentPdf:
    """Set ``content`` on pages, A4 or Letter (else BadInput). The same content gives the same bytes."""
    page = paper(page_size)
    register()
    rl_config.useA85 = 0  # photographs go in as the bytes they are
    story: list[Flowable] = front_page(content.front, page)
    appendix = () if content.appendix is None else (content.appendix,)
    for number, each in enumerate((*content.sections, *appendix), 1):
        story += section(each, page, number)
    story += [NextPageTemplate("signing"), *last_section(content.signing, page, len(content.sections) + 2)]
    buffer = io.BytesIO()
    document(buffer, content, page).build(story, canvasmaker=partial(NumberedCanvas, content=content, paper=page))
    return DocumentPdf(*finished(buffer.getvalue(), content))
