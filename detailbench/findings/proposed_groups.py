"""Finish groups as the readings propose them; a person confirms each by setting the group."""

from __future__ import annotations

from detailbench.findings.panels import odd
from detailbench.record.picture import JobPicture
from detailbench.thickness.finish_groups import Proposal, proposed_groups


def group_proposals(picture: JobPicture) -> Proposal | None:
    """From the readings as found; None while nothing was measured."""
    found = odd(picture)
    return None if found is None else proposed_groups(found)
