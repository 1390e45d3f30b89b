"""Price: lines, discount, tax. Exact decimals; each total is rounded once, half up, and the totals add up in print."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal, InvalidOperation, localcontext

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

SOURCE = Source("Own arithmetic with exact decimals, half up once per total", kind="own derivation")
DIGITS = 40  # enough that no product of typed figures is cut


@dataclass(frozen=True)
class Line:
    """One line: ``quantity`` × ``amount``, before discount."""

    says: str
    amount: Decimal
    quantity: Decimal = Decimal(1)

    @property
    def total(self) -> Decimal:
        return self.quantity * self.amount


@dataclass(frozen=True)
class Price:
    """Totals rounded to the currency's decimals: lines − discount = before tax (or with it, see ``tax_included``);
    net + tax = gross."""

    lines_total: Decimal
    discount: Decimal
    net: Decimal
    tax: Decimal
    gross: Decimal
    working: Working


def price(
    lines: Sequence[Line],
    *,
    discount_percent: Decimal = Decimal(0),
    discount: Decimal = Decimal(0),
    tax_percent: Decimal = Decimal(0),
    tax_included: bool = False,
    decimals: int = 2,
) -> Price:
    """The price. ``discount_percent`` comes off first, then ``discount``; ``tax_included``: the lines hold the tax.

    Raises BadInput for a percentage outside 0…100 (tax: below 0), or a discount beyond the lines.
    """
    for name, value in (("discount_percent", discount_percent), ("discount", discount), ("tax_percent", tax_percent)):
        if not value.is_finite() or value < 0:
            raise BadInput(_("{what} cannot be below zero.").format(what=opened(name)), field=name, given=str(value))
    if discount_percent > 100:
        raise BadInput(_("A discount is 100 percent at most."), field="discount_percent", given=str(discount_percent))
    for line in lines:
        if not (line.amount.is_finite() and line.quantity.is_finite()):
            raise BadInput(_("“{text}” is not an amount.").format(text=line.says), field="lines", given=line.says)
    step = Decimal(1).scaleb(-decimals)

    def rounded(value: Decimal) -> Decimal:
        return value.quantize(step, rounding=ROUND_HALF_UP)

    with localcontext() as context:
        context.prec = DIGITS
        exact = sum((line.total for line in lines), Decimal(0))
        after = exact * (100 - discount_percent) / 100 - discount
        if after < 0 <= exact:
            raise BadInput(_("The discount is more than the lines come to."), field="discount", given=str(discount))
        lines_total, charged = rounded(exact), rounded(after)
        if tax_included:
            gross = charged
            tax = rounded(gross * tax_percent / (100 + tax_percent))
            net = gross - tax
        else:
            net = charged
            tax = rounded(net * tax_percent / 100)
            gross = net + tax
    figures = {
        "lines_total": lines_total,
        "discount": lines_total - charged,
        "net": net,
        "tax": tax,
        "gross": gross,
    }
    working = Working(
        name="price",
        formula="charged = Σ quantity·amount·(1 − discount %) − discount; tax on the rounded net (or out of the "
        "rounded gross); half up once per total",
        inputs={
            "lines": [{"says": x.says, "amount": str(x.amount), "quantity": str(x.quantity)} for x in lines],
            "discount_percent": str(discount_percent),
            "discount": str(discount),
            "tax_percent": str(tax_percent),
            "tax_included": tax_included,
            "decimals": decimals,
        },
        results={name: str(value) for name, value in figures.items()},
        source=SOURCE,
        changes_with=_("lines, discount and the tax in force"),
    )
    return Price(working=working, **figures)


def amount(text: object, field: str) -> Decimal:
    """A decimal from its text, with a point. Raises BadInput."""
    try:
        value = Decimal(text) if isinstance(text, str) else None
    except InvalidOperation:
        value = None
    if value is None or not value.is_finite():
        given: Plain = text if isinstance(text, str) else str(text)
        raise BadInput(
            _("“{text}” is not an amount; write it like 123.45.").format(text=given), field=field, given=given
        )
    return value
