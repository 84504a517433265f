"""The run capacitor: `CAP 7.5/370`, `10/370 capacitor`, `cap. 5 x 440`; start capacitors have no field."""

from matcher.reading.items import Items
from matcher.reading.quantities import CAPACITOR_VOLTS, NOTHING, Given, are_two_sizes

_SIZES = (0.5, 100.0)


def label(items: Items, i: int, value: str) -> None:
    """A word for the capacitor: take the size (and voltage) behind it, or right before it."""
    if value == "start" or (items.word(i - 1) in ("start", "starting") and i):
        _spend_start(items, i)
        return
    j = items.skip(i + 1, 1)
    while items.has(j, "cap") or (j < len(items) and items.word(j) in ("run", "(")):
        j += 1
    if items.has(j, "num") and not _pair(items, j):
        _single(items, j)
    elif not items.has(j, "num") and i and items.has(i - 1, "num"):
        _pair(items, i - 1)


def _spend_start(items: Items, i: int) -> None:
    j = items.skip(i + 1, 1)
    if items.has(j, "num"):
        items.used[j] = True


def _pair(items: Items, j: int) -> bool:
    """`7.5/370`, `7.5-370`, `7.5 x 370`, `7.5 @ 370`."""
    number = items.numbers[j]
    if items.has(j + 1, "by") and are_two_sizes(number):
        items.used[j] = True
        return True  # `45/5 x 370`: a dual one, and which size is the motor's, nothing says
    if len(number.atoms) == 2 and _plausible(number.atoms[0], number.atoms[1]):
        _claim(items, number.atoms[0], number.atoms[1], j, j)
        return True
    k = j + 1
    if (
        items.has(k, "by")
        or items.has(k, "fill")
        or (k < len(items) and items.word(k) in ("/", "@", "-", ","))
    ):
        k += 1
        if items.has(k, "num") and number.value is not None and items.numbers[k].value in CAPACITOR_VOLTS:
            _claim(items, number.value, items.numbers[k].value or 0.0, j, k)
            return True
    return False


def bare_pair(items: Items, i: int) -> Given | None:
    """`C 4 / 370` on a plate: a capacitor's size and voltage behind its letter."""
    if not items.plate or items.raws[i - 1] != "C" or items.words[i + 1] != "/":
        return None
    size, volts = items.numbers[i].value, items.words[i + 2]
    if volts not in ("370", "440") or size is None or not _plausible(size, float(volts)):
        return None
    items.used[i + 2] = True
    return {"capacitor_uf": size, "capacitor_vac": int(volts)}


def _single(items: Items, j: int) -> None:
    """A bare figure behind the label of a plate: `CAP 7.5  370 VAC`, `CAP 5 VAC 370`."""
    number = items.numbers[j]
    k = j + 2 if items.word(j + 1) == "vac" else j + 1
    if are_two_sizes(number) or number.value is None or items.has(k, "unit") or items.has(k, "after"):
        return
    if items.has(k, "num") and items.numbers[k].value in CAPACITOR_VOLTS and number.value <= _SIZES[1]:
        _claim(items, number.value, items.numbers[k].value or 0.0, j, k)


def _plausible(size: float, volts: float) -> bool:
    return _SIZES[0] <= size <= _SIZES[1] and volts in CAPACITOR_VOLTS


def _claim(items: Items, size: float, volts: float, j: int, k: int) -> None:
    if items.used[j] or items.used[k]:
        return
    items.used[j] = items.used[k] = True
    items.claim("capacitor_uf", size, j, k)
    items.claim("capacitor_vac", int(volts), j, k)


def microfarad(items: Items, i: int, j: int, given: Given) -> Given:
    """A run capacitor with its voltage; a start capacitor gives nothing."""
    behind = max(i, j)
    if near_start(items, i):
        k = behind + 2 if items.word(behind + 1) in ("at", "@", "x", "/", ",") else behind + 1
        if items.has(k, "num"):
            items.used[k] = True  # its voltage
        return NOTHING
    _its_voltage(items, behind)
    return NOTHING if _is_dual(items, i) else given


def _is_dual(items: Items, i: int) -> bool:
    """`40+5 uF`: a compressor's capacitor and a fan's in one can; which is the motor's, nothing says."""
    return items.word(i - 1) == "+" and items.has(i - 2, "num")


def _its_voltage(items: Items, behind: int) -> None:
    """`15 uF 370`, `4 uF/370`: the bare figure behind a capacitor's size is its voltage."""
    k = behind + 1
    if items.word(k) in ("/", "@", ",", "at", "x", "-") or items.has(k, "fill"):
        k += 1
    if not items.has(k, "num") or items.used[k] or items.numbers[k].value not in CAPACITOR_VOLTS:
        return
    if items.said(k + 1, "unit") in (None, "v"):
        items.used[k] = True
        items.claim(
            "capacitor_vac", int(items.numbers[k].value or 0), k, k + 1 if items.has(k + 1, "unit") else k
        )


def near_start(items: Items, i: int) -> bool:
    """Say whether a capacitor's size in this clause is a start capacitor's."""
    if i and items.word(i - 1) in ("start", "starting", "run", "running"):
        return items.word(i - 1)[:1] == "s"  # `caps: start 400 MFD, run 25 MFD`
    for j in range(i, max(-1, i - 8), -1):
        if items.segment[j] != items.segment[i] or (
            items.clause[j] != items.clause[i] and items.has(j, "unit")
        ):
            break
        if "cap" in items.roles[j]:
            return items.roles[j]["cap"] == "start"
    return items.said(i + 2, "cap") == "start"


def is_capacitors(items: Items, i: int) -> bool:
    """Volts near a microfarad figure or a capacitor, of a size that capacitors have and supplies don't."""
    number = items.numbers[i]
    if not number.atoms or not CAPACITOR_VOLTS.issuperset(number.atoms):
        return False
    low, high = max(0, i - 7), min(len(items), i + 6)
    return any(
        "cap" in items.roles[j] or items.said(j, "unit") == "uf"
        for j in range(low, high)
        if items.segment[j] == items.segment[i]
    )


HANDLERS = {"cap": label}
