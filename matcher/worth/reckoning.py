"""Was it worth it: what was spent, the hours, the quote avoided, and the energy of a year."""

from collections.abc import Mapping
from dataclasses import dataclass

from matcher.job import Fallback
from matcher.motor import Motor, Offer, Site
from matcher.worth.energy import Energy, Inputs, inputs
from matcher.worth.entries import values_in


@dataclass(frozen=True, slots=True)
class Worth:
    """The reckoning of one job; every sum in `currency`, `None` where it isn't known."""

    currency: str
    spent: float | None
    avoided: float | None
    hours: float | None
    energy: Energy | None
    assumed: tuple[str, ...]
    """What was taken for granted, each as a sentence."""
    missing: tuple[str, ...]
    """What would be needed to say more."""
    faults: Mapping[str, str]
    unproven: str = ""
    """Why nothing is saved yet, as the second half of a sentence; empty once the motor runs as it should."""

    @property
    def saved(self) -> float | None:
        """What the repair cost less than the quote; negative when it cost more."""
        return None if self.spent is None or self.avoided is None else self.avoided - self.spent

    @property
    def per_hour(self) -> float | None:
        """What each hour of one's own work saved."""
        return None if self.saved is None or not self.hours else self.saved / self.hours

    @property
    def says(self) -> tuple[str, ...]:
        """Return the reckoning as sentences, the answer first."""
        money = self.currency
        if self.unproven:
            return self._so_far()
        lines = []
        if self.saved is not None:
            word = "less" if self.saved >= 0 else "more"
            lines.append(
                f"It cost {abs(self.saved):,.2f} {money} {word} than the quote of {self.avoided:,.2f}."
            )
        elif self.spent is not None:
            lines.append(f"It cost {self.spent:,.2f} {money}.")
        if self.per_hour is not None:
            lines.append(f"That is {self.per_hour:,.2f} {money} for each of {self.hours:g} hours.")
        if self.energy is not None:
            lines.append(_energy_words(self.energy, money))
        return tuple(line.replace("  ", " ") for line in lines)

    def _so_far(self) -> tuple[str, ...]:
        """Say what was spent alone: a motor that isn't proved may still go back."""
        if self.spent is None:
            return ()
        quote = "" if self.avoided is None else f", against a quote of {self.avoided:,.2f}"
        spent = f"Spent so far: {self.spent:,.2f} {self.currency}".rstrip()
        return (f"Nothing is saved yet: {self.unproven}.", f"{spent}{quote}.")


def reckon(
    texts: Mapping[str, str],
    swap: tuple[Motor, Offer, Site] | None,
    fallback: Fallback | None = None,
    proof_watts: float | None = None,
    unproven: str = "",
) -> Worth:
    """Return the reckoning; `swap` is the old motor, the bought one and the place.

    While `unproven` says why the new motor isn't known to run as it should, nothing is called saved.
    """
    values, faults = values_in(texts)
    offer = swap[1] if swap else Offer()
    currency = offer.currency or (fallback.currency if fallback else "")
    assumed: list[str] = []
    missing: list[str] = []
    spent = _spent(values, offer, assumed, missing)
    avoided = _avoided(values, fallback, currency, missing)
    energy = _energy(values, swap, proof_watts, assumed, missing)
    return Worth(
        currency=currency,
        spent=spent,
        avoided=avoided,
        hours=values.get("hours"),
        energy=energy,
        assumed=tuple(assumed),
        missing=tuple(missing),
        faults=faults,
        unproven=unproven,
    )


def _spent(values: Mapping[str, float], offer: Offer, assumed: list[str], missing: list[str]) -> float | None:
    extras = values.get("extras", 0.0)
    if "paid" in values:
        return values["paid"] + extras
    if offer.price is None:
        missing.append("What was paid isn't known.")
        return None
    if offer.shipping is None:
        assumed.append("The listing doesn't say the shipping; it is left out.")
    else:
        assumed.append("Price and shipping as the listing says.")
    return offer.price + (offer.shipping or 0.0) + extras


def _avoided(
    values: Mapping[str, float], fallback: Fallback | None, currency: str, missing: list[str]
) -> float | None:
    if "quote" in values:
        return values["quote"]
    if fallback is None:
        missing.append("The quote that was avoided isn't known.")
        return None
    if fallback.currency != currency:
        missing.append(
            f"The quote is in {fallback.currency}, the motor in {currency}: enter it in {currency}."
        )
        return None
    return fallback.price


def _energy(
    values: Mapping[str, float],
    swap: tuple[Motor, Offer, Site] | None,
    proof_watts: float | None,
    assumed: list[str],
    missing: list[str],
) -> Energy | None:
    if swap is None:
        return None
    found: Inputs = inputs(values, proof_watts, swap)
    missing.extend(found.missing)
    for name, words in (("run_hours", "hours a year"), ("price_kwh", "price of a kWh")):
        if name not in values:
            missing.append(f"For the energy of a year: the {words}.")
    if found.old is None or found.new is None or "run_hours" not in values or "price_kwh" not in values:
        return None
    assumed.extend(found.assumed)
    return Energy(found.old, found.new, values["run_hours"], values["price_kwh"], found.is_measured)


def _energy_words(energy: Energy, money: str) -> str:
    word = "less" if energy.saved_kwh >= 0 else "more"
    how = "measured" if energy.is_measured else "reckoned"
    return (
        f"A year of {energy.hours:,.0f} hours takes {abs(energy.saved_kwh):,.0f} kWh {word} "
        f"({abs(energy.saved):,.2f} {money}): {energy.old_watts:,.0f} W before, "
        f"{energy.new_watts:,.0f} W now, {how}."
    )
