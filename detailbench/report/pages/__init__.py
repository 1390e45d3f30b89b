"""Setting a document's content on pages: ReportLab draws, pikepdf describes the file. Nothing else imports them."""
