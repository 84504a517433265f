"""The electronic module: supplied or not, its plugs, how it is told what to do."""

from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS

NOT_ALONE = frozenset({"leads"})


def module_only(items: Items, i: int, _value: str) -> None:
    """`module only`, `no motor`: the module is sold alone."""
    items.claim("module", "module_only", i, strength=2)


def signal(items: Items, i: int, value: str) -> None:
    """`serial control`: the bare word counts beside an electronic motor's words, never before a number."""
    if items.word(i) == "serial" and not any(items.has(j, "signal_word") for j in (i + 1, i - 1)):
        return
    items.claim("control_signal", value, i)


def pins(items: Items, i: int, _value: str = "") -> None:
    """`5 pin and 16 pin sockets`, `4-pin plug`: collected to one list."""
    number = items.numbers.get(i)
    if number is None or items.said(i + 1, "after") != "pin":
        return
    if number.value is None or number.value % 1 or not 1 <= number.value <= 40:
        return
    word = items.word(i + 1)
    if word not in ("pin", "pins", "pin plug", "polig", "poliger") and not _plug_near(items, i):
        return
    items.used[i] = True
    items.claim("plug_pins", tuple(int(atom) for atom in number.atoms), i, i + 1)
    _earlier(items, i)


def _earlier(items: Items, i: int) -> None:
    """`5 and 16 pin`, `5 & 16-pin`: the figure before counts too."""
    if i >= 2 and items.word(i - 1) in ("and", "&", "+", "/") and items.has(i - 2, "num"):
        before = items.numbers[i - 2].value
        if before and before % 1 == 0 and not items.used[i - 2]:
            items.used[i - 2] = True
            items.claim("plug_pins", (int(before),), i - 2, i + 1)


def _plug_near(items: Items, i: int) -> bool:
    return any(items.has(j, "plug") for j in range(max(0, i - 3), min(len(items), i + 5)))


def leads(items: Items, i: int, _value: str) -> None:
    """Loose leads: said as such, or with a length; a wiring legend doesn't count."""
    word = items.word(i)
    if word in ("lead", "wires", "leads", "lead wire") and not _has_length(items, i) and word != "leads":
        return
    if _in_legend(items, i):
        return
    items.claim("leads", True, i)


def _has_length(items: Items, i: int) -> bool:
    near = [*range(i + 1, min(len(items), i + 4)), *range(max(0, i - 3), i)]
    return any(
        items.said(j + 1, "after") in LENGTHS and items.clause[j] == items.clause[i]
        for j in near
        if "num" in items.roles[j]
    )


def _in_legend(items: Items, i: int) -> bool:
    """Say whether the segment tells how to reverse or connect."""
    for j in range(max(0, i - 14), min(len(items), i + 8)):
        if items.segment[j] == items.segment[i] and (
            "either" in items.roles[j]
            or "view" in items.roles[j]
            or items.word(j) in ("interchange", "swap", "connect", "join", "switch", "line")
        ):
            return True
    return False


HANDLERS = {"moduleonly": module_only, "signal": signal, "leads": leads}
