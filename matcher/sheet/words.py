"""The words that a sheet's `{blanks}` are filled with, from the facts of this job."""

from matcher.judging.saying import TURNS, VIEWS, inches
from matcher.motor import Motor, Offer
from matcher.sheet.conditions import Swap, takes_capacitor
from matcher.trade.plate_at import plate_amps_at


def words_for(swap: Swap) -> dict[str, str]:
    """Return every word that `data/sheet_steps.tsv` may use."""
    old = swap.old
    return {
        "wheel": _wheel(swap),
        "leads": "plugs" if old.plug_pins or swap.ecm() else "leads",
        "plugs": _plugs(old),
        "taps": _taps(swap),
        "joined": _joined(swap),
        "old_turn": f"The plate says {_turn(old)}." if _turn(old) else "The plate doesn't say.",
        "new_turn": _turn(old) if old.seen_from and _turn(old) else "as written down above",
        "supply": _supply(swap),
        "shaft_wanted": inches(old.shaft_length_in) or "the old one's length",
        "capacitor": _capacitor(swap.new),
        "screw_seat": "key" if swap.new.shaft_keyed else "flat of the shaft",
        "amps": _amps(swap),
        "or_module": ", nor near a module" if swap.ecm() else "",
        "shaft_up": "; with the shaft up, fit the slinger or rain cap as on the old one"
        if swap.old.shaft_position == "up"
        else "",
        "closed": "Guard and panels on" if swap.site.outdoors or swap.on_base() else "Panels on",
    }


def _wheel(swap: Swap) -> str:
    if swap.on_base():
        return "pulley or coupling"
    if swap.has_blade():
        return "fan blade"
    return "wheels" if swap.old.shaft_ends == 2 else "wheel"


def _plugs(old: Motor) -> str:
    if not old.plug_pins:
        return ""
    return f" ({' and '.join(str(pins) for pins in old.plug_pins)} pins)"


def _taps(swap: Swap) -> str:
    used = swap.site.taps_in_use
    if used is not None:
        return f"{used} in use"
    return f"how many{f' of {swap.old.speeds}' if swap.old.speeds else ''} isn't known: count them"


def _joined(swap: Swap) -> str:
    """Say which wires meet, by what they do: colours differ from maker to maker."""
    speed = "supply to the one speed" if swap.new.speeds == 1 else "each speed in use to its own speed"
    capacitor = [", capacitor wires to the capacitor"] if takes_capacitor(swap.new) else []
    return "".join(["common to common, ", speed, *capacitor])


def _turn(old: Motor) -> str:
    if old.turn not in ("cw", "ccw"):
        return ""
    view = f"seen from {VIEWS[old.seen_from]}" if old.seen_from else "but not seen from which end"
    return f"{TURNS[old.turn]}, {view}"


def _supply(swap: Swap) -> str:
    volts = swap.site.measured_volts or swap.site.supply_volts
    return f"{volts:g} V" if volts else "the volts that you measured"


def _capacitor(new: Offer) -> str:
    if new.capacitor_uf is None:
        return "read it off the new plate"
    volts = f", {new.capacitor_vac} VAC" if new.capacitor_vac else ""
    return f"{new.capacitor_uf:g} uF{volts}"


def _amps(swap: Swap) -> str:
    figure = plate_amps_at(swap.new, swap.old, swap.site)
    if figure is not None:
        return f"{figure:g} A"
    return "the plate's figure for your volts"
