"""Sums of money as people write them."""


def money(value: float | None, currency: str | None = "") -> str:
    """Return a sum, `214.00 USD`; empty when not known."""
    return "" if value is None else f"{value:,.2f} {currency or ''}".rstrip()


def whole_money(value: float) -> str:
    """Return a sum without cents, `1,150`."""
    return f"{value:,.0f}"


def per_cent(share: float | None) -> str:
    """Return a share of 0 .. 1 in per cent."""
    return "" if share is None else f"{share:.0%}"
