"""Closing a document of any kind: beside the window, with the workshop's key, copied out, checked, noted as left."""
