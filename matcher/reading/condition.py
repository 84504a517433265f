"""The condition of what is for sale: new, opened, rebuilt, tested, used, for parts."""

from matcher.reading.days import DAYS
from matcher.reading.items import Items
from matcher.reading.things import things

_NEAR = 7  # items
_FAR = 14


def condition(items: Items, i: int, value: str) -> None:
    """Words for the condition; which of several counts is settled later."""
    before = items.word(i - 1) if i else ""
    if before in ("not", "no", "never", "isn't") and items.clause[i - 1] == items.clause[i]:
        return
    if items.word(i) in _DOES and (before in _WILL or _does_something(items, i + 1)):
        return
    if value == "for_parts" and items.said(i - 1, "after") in DAYS:
        return  # `1 yr parts only`: a warranty
    if _of_terms(items, i, value) or _is_supposed(items, i) or _of_module(items, i, value):
        return
    if _of_another_piece(items, i, value) or _is_verb(items, i):
        return
    if value == "new" and items.word(i)[:5] == "never" and _is_rebuilt(items, i):
        return
    tells = items.word(i) == "used" and before in ("it's", "its")  # `I put it in for a week, so it's used`
    taken = "origin" in items.roles[i] and items.word(i).split(" ")[0] in _TAKEN  # `pulled from a 3 ton unit`
    items.claim("condition", value, i, though_muted=tells or (taken and not _of_new(items, i)))


def _is_rebuilt(items: Items, i: int) -> bool:
    """`rebuilt, never installed since`: unused, but not new."""
    near = range(max(0, i - _FAR), min(len(items), i + _NEAR))
    return any(items.said(j, "cond") == "rebuilt" and items.segment[j] == items.segment[i] for j in near)


_TAKEN = frozenset({"pulled", "removed", "taken", "salvaged", "came"})
_SUPPOSES = frozenset({"if", "unless", "against", "only if", "in case", "should it be"})
_DOES = frozenset({"runs", "works", "pull", "run", "fonctionne", "tested at"})
_WILL = frozenset({"it", "to", "will", "can", "you", "ex", "ex-", "-", "that", "which", "and"})
_PLACES = frozenset(
    {
        "from",
        "off",
        "straight",
        "in",
        "as",
        "through",
        "without",
        "either",
        "both",
        "a",
        "the",
        "this",
        "any",
        "at",
    }
)


def _of_module(items: Items, i: int, value: str) -> bool:
    """`module dead`, `run cap 16uF 450V dead`: not the motor."""
    if value != "for_parts" or items.word(i)[-5:] == "parts":
        return False
    for j in range(i - 1, max(-1, i - 1 - _NEAR), -1):
        if items.clause[j] != items.clause[i] or "motor" in items.roles[j]:
            return False
        if not items.roles[j].keys().isdisjoint(("module", "cap")):
            return True
    return False


def _of_new(items: Items, i: int) -> bool:
    """`removed from a new unit`: it has hardly run."""
    return any(items.has(j, "newword") or items.said(j, "cond") == "new" for j in range(i + 1, i + 6))


def _of_another_piece(items: Items, i: int, value: str) -> bool:
    """`a second, dead, module`, `DOA return 10 days`: another thing's state, or a term of the sale."""
    if value == "new" and not items.has(i + 2, "motor") and items.clause[i + 1 : i + 2] == [items.clause[i]]:
        if "goods" in items.roles[i + 1]:
            return True  # `brand new capacitor included`
        fitted = not _FITTED.isdisjoint(items.roles[i + 1]) or items.word(i + 1) in things("of_a_motor")
        return items.word(i) == "brand new" and fitted  # `brand new bearings`
    if value != "for_parts":
        return False
    if items.word(i - 1) in ("that", "which", "with") and _of_origin(items, i):
        return True
    if any(items.word(j) in ("stayed behind", "stays behind") for j in range(max(0, i - _NEAR), i)):
        return True  # `Motor stayed behind, bearings shot`
    if items.word(i) in _HARMED and _is_piece_of_motor(items, i):
        return True
    k = i + 1 + (items.word(i + 1) == ",")
    doa = items.word(i) in ("doa", "dead on arrival")
    return "module" in items.roles[k] or (doa and not {"returns", "warranty"}.isdisjoint(items.roles[i + 1]))


def _of_origin(items: Items, i: int) -> bool:
    """`I took it off a 3/4 hp motor that burned up`: what it comes from, not what is sold."""
    for j in range(i - 2, max(-1, i - _FAR), -1):
        if items.segment[j] != items.segment[i]:
            return False
        if "origin" in items.roles[j] or items.word(j) in ("off", "off a", "off of", "took it off"):
            return True
    return False


_FITTED = frozenset({"bearing", "brglabel", "cap"})
_HARMED = frozenset({"broken", "cracked", "bent", "broke", "snapped"})


def _is_piece_of_motor(items: Items, i: int) -> bool:
    """`2 studs broken`, `one ear is cracked`, `broken fan blade`: a piece that is harmed, not the motor."""
    k = i - 1
    while items.word(k) in ("is", "are", "was", "got", "were", "off", "has", "slightly", "a bit"):
        k -= 1
    before = items.clause[k] == items.clause[i] and items.word(k).split(" ")[-1] in things("of_a_motor")
    j = i + 1 + (items.word(i + 1) in ("off", "mounting", "mount", "plastic"))
    if items.clause[j : j + 1] != [items.clause[i]] or items.has(j + 1, "motor"):
        return before  # `broken fan motor`
    return before or items.word(j).split(" ")[-1] in things("of_a_motor")


def _is_verb(items: Items, i: int) -> bool:
    """`bought four and used three`; not `used 2 years`."""
    counted = items.has(i + 1, "num") and not items.has(i + 2, "after")
    if items.word(i) == "used" and items.word(i + 1) in ("a", "an") and items.has(i + 2, "num"):
        return True  # `it used a 7.5/370`
    return items.word(i) == "used" and counted and items.word(i - 1) in ("and", "i", "we", "i've")


def _is_supposed(items: Items, i: int) -> bool:
    """`unless it is dead on arrival`, `only if defective`: a state that nobody says it is in."""
    return any(
        items.word(j) in _SUPPOSES and items.clause[j] == items.clause[i] for j in range(max(0, i - 3), i)
    )


def _does_something(items: Items, j: int) -> bool:
    """`runs counterclockwise`, `works from the thermostat`: how it works, not whether."""
    kinds = ("turn", "turnview", "look", "either", "num", "fact")
    if items.word(j - 1) == "pull" and items.word(j)[:4] == "from":
        return False
    if items.word(j) in ("about", "around", "roughly", "near"):
        return items.has(j + 1, "num")  # `runs about 1050 on high`
    if items.word(j) == "on":  # `runs on a 10/370`
        j += 1 + (items.word(j + 1) == "a")
    return items.word(j).split(" ")[0] in _PLACES or any(items.has(j, kind) for kind in kinds)


def _of_terms(items: Items, i: int, value: str) -> bool:
    """`90 days parts only`, `returns: unopened, 30 days`: the state in which the terms hold."""
    about = {"for_parts": ("warranty",), "new": ("returns", "restock")}.get(value, ())
    for j in range(i - 1, max(-1, i - 1 - _NEAR), -1):
        if items.segment[j] != items.segment[i]:
            break
        if any(kind in items.roles[j] for kind in about):
            return True
    return value == "for_parts" and items.word(i) == "parts only" and items.has(i + 1, "warranty")


_NOT_THE_MOTOR = frozenset(
    {
        "a",
        "my",
        "our",
        "the",
        "your",
        "with",
        "w/",
        "needs",
        "like",
        "than",
        "another",
        "some",
        "any",
        "for",
        "put",
        "as",
        "got",
        "when",
    }
)
_LIKENED = frozenset({"like", "than", "as", "almost", "nearly", "practically"})
_GOES_ON = frozenset(
    {
        "in",
        "with",
        "never",
        "old",
        "and",
        "-",
        "/",
        "surplus",
        "unused",
        "spare",
        "from",
        "condition",
        "without",
        "w/o",
        "no",
    }
)
_SAYS_SO = frozenset({"is", "cond", "condition", "fully", "all", "both", "are", "status", "state", "used"})


def new(items: Items, i: int, _value: str) -> None:
    """`New` said of the motor: alone, before a price or a stop; not `new bearings`, `a new unit`."""
    before, after = items.word(i - 1), items.word(i + 1)
    sold = any(items.has(i + 1, kind) for kind in ("money", "price", "warranty")) or (
        items.has(i + 1, "num") and items.said(i + 2, "after") in DAYS
    )
    if before in _LIKENED or (before in _NOT_THE_MOTOR and not sold):
        return
    if items.has(i + 1, "bearing") or (after == "in" and _is_year(items, i + 2)):
        return  # `new bearings`, `new in 2018`
    opens = i == 0 or items.clause[i - 1] != items.clause[i] or not before[:1].isalnum()
    opens = opens or (items.has(i - 1, "num") and items.has(i - 2, "money"))
    counted = "stock" in items.roles[i - 1] and items.has(i - 2, "num")  # `lot of 10 pcs new`
    closed = i + 1 >= len(items) or items.clause[i + 1] != items.clause[i] or after in _GOES_ON
    raw = items.raw(i + 1)
    names_it = items.has(i + 1, "motor") or (
        raw[:1].isupper() and not items.raw(i).isupper() and not items.roles[i + 1]
    )
    if (
        sold
        or (closed and (opens or before in _SAYS_SO))
        or (counted and raw[:1].isupper() and not items.roles[i + 1])
        or (opens and (names_it or items.source == "title"))
    ):
        items.claim("condition", "new", i)


def _is_year(items: Items, j: int) -> bool:
    """`2018`, `fall 2019`: when it was bought, not what it is."""
    j += not items.has(j, "num")
    return (
        items.has(j, "num") and len(items.numbers[j].text) == 4 and items.numbers[j].text[:2] in ("19", "20")
    )


HANDLERS = {"cond": condition, "newword": new}
