"""detailbench: the bench book of a paint-correction detailer."""

__version__ = "0.1.0"
