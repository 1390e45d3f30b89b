"""The file around the pages: title, language, producer, output intent. Nothing after this rewrites it."""

from __future__ import annotations

import io

import pikepdf

from detailbench.basics.shelf import resource
from detailbench.report.content.blocks import DocumentContent


def finished(pages: bytes, content: DocumentContent) -> tuple[bytes, int]:
    """The pages as a described file, and how many there are. The same pages and content give the same bytes."""
    with pikepdf.open(io.BytesIO(pages)) as pdf:
        for key in list(pdf.docinfo.keys()):
            del pdf.docinfo[key]
        at = content.printed_at.replace(microsecond=0)
        with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=True) as meta:
            meta["dc:title"] = content.title
            meta["dc:language"] = [content.language]
            meta["pdf:Producer"] = content.program
            meta["xmp:CreatorTool"] = content.program
            meta["xmp:CreateDate"] = at.isoformat()
            meta["xmp:ModifyDate"] = at.isoformat()
            meta["xmp:MetadataDate"] = at.isoformat()
        pdf.Root.Lang = pikepdf.String(content.language)
        pdf.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)
        pdf.Root.OutputIntents = pikepdf.Array([_intent(pdf)])
        out = io.BytesIO()
        pdf.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.disable)
        return out.getvalue(), len(pdf.pages)


def _intent(pdf: pikepdf.Pdf) -> pikepdf.Object:
    profile = pdf.make_stream(resource("icc", "sRGB.icc").read_bytes(), N=3)
    return pdf.make_indirect(
        pikepdf.Dictionary(
            Type=pikepdf.Name.OutputIntent,
            S=pikepdf.Name.GTS_PDFA1,
            OutputConditionIdentifier=pikepdf.String("sRGB"),
            Info=pikepdf.String("sRGB"),
            DestOutputProfile=profile,
        )
    )
