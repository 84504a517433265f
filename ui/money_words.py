"""Sums of money as people write them."""


def money(value: float | None, currency: str | None = "") -> str:
    """Return a sum, `214.00 USD`; empty when not known."""
    return "" if value is None else f"{value:,.2f} {currency or ''}".rstrip()


def presumed_money(value: float | None, currency: str | None = "", *, presumed: bool = False) -> str:
    """Return a sum; one that counts a shipping cost which nobody named has a `~` before it."""
    words = money(value, currency)
    return f"~{words}" if words and presumed else words


def whole_money(value: float) -> str:
    """Return a sum without cents, `1,150`."""
    return f"{value:,.0f}"


def per_cent(share: float | None) -> str:
    """Return a share of 0 .. 1 in per cent."""
    return "" if share is None else f"{share:.0%}"
