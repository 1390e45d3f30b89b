"""What a document says, as plain values: no page size, no font, no ReportLab."""
