"""Giving the car back."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import PANELS, TEXT, Quantity, quantity, word
from detailbench.cli.walking.step import Step, named, value


@dataclass(frozen=True, kw_only=True)
class Protect(Step):
    verb = "protect"
    does = "protection put on these panels, with the climate as far as it was measured"
    panels: tuple[str, ...] = value(PANELS)
    product: str = value(TEXT)
    kind: str = named(word(shown="coating|sealant|wax"), "sealant")
    batch: str = named(TEXT, "")
    air: Quantity | None = named(quantity("C"))
    humidity: Quantity | None = named(quantity("%"))
    surface: Quantity | None = named(quantity("C"))
    cure: Quantity | None = named(quantity("h"))


@dataclass(frozen=True, kw_only=True)
class Accept(Step):
    verb = "accept"
    does = "the owner's word on the work"
    answer: str = value(word(shown="accepted|with_remarks|not_accepted"))
    remarks: str = value(TEXT, "")
    light: str = named(TEXT, "")
    level: str = named(word("met", "not_met"), "")
    as_agreed: tuple[str, ...] = named(PANELS, ())
    not_as_agreed: tuple[str, ...] = named(PANELS, ())


@dataclass(frozen=True, kw_only=True)
class SignIt(Step):
    verb = "sign"
    does = "a signature, or how else the person answered"
    role: str = value(word(shown="owner|bearer|workshop"))
    signer: str = value(TEXT)
    way: str = value(word(shown="drawn|telephone|message|declined|absent"))
    moment: str = named(word("arrival", "supplement", "handover"), "handover")


@dataclass(frozen=True, kw_only=True)
class CloseTheReport(Step):
    verb = "close report"
    does = "close and seal the report of the job as it stands"


@dataclass(frozen=True, kw_only=True)
class PrintReport(Step):
    verb = "print"
    does = "write the newest closed document of this kind to a file"
    file: str = value(TEXT)
    of: str = named(word("arrival", "supplement", "report"), "report")


@dataclass(frozen=True, kw_only=True)
class VerifyFile(Step):
    verb = "verify"
    does = "a file is unchanged and closed with this workshop's key, as its record says"
    file: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class Leaves(Step):
    verb = "leaves"
    does = "the car is fetched"
