"""Words that are a fact by themselves, and labels whose value is a letter, a code or a temperature."""

from collections.abc import Callable

from matcher.reading.items import Items
from matcher.units import fahrenheit_to_celsius

Handler = Callable[[Items, int, str], None]
_VALUES: dict[str, object] = {"true": True, "false": False, "0": 0, "1": 1, "2": 2, "3": 3}
_AFTER_LETTER = frozenset({"ins", "insulation", "class", "class insulation", "insul"})
# `Totally enclosed` in a title, `TEAO` on the tag: the fuller one counts.
_VAGUE = frozenset({"totally enclosed", "tot encl", "totally encl", "tot enclosed", "fully enclosed", "te"})
_TAKES_NO = ("phase", "mounting", "enclosure", "control_signal", "explosion_proof", "duty", "shaft_ends")


def denied(items: Items, i: int) -> bool:
    """Say whether `no`, `not`, `without` stands right before an item, in its clause."""
    j = i - 1
    if items.word(j) in ("a", "an", "any", "the", "its", "your"):
        j -= 1
    return (items.has(j, "no") or items.has(j, "not")) and items.clause[j] == items.clause[i]


_NEAR = 6
_NONE = frozenset({"no", "none", "n/a", "nil", "not"})
_CLOSE = frozenset({"(", "-"})
_ARMS = ("arm", "leg")


def absent(items: Items, i: int) -> bool:
    """Say whether its clause says that a thing isn't supplied: behind it, or before (`keeping the band`)."""
    clause = items.clause
    j, here = i + 1, clause[i]
    if items.word(j) in _CLOSE and j + 1 < len(items) and "mount" not in items.word(i):
        j, here = i + 2, clause[i + 2]
    while j <= i + _NEAR and j < len(items) and clause[j] == here:
        if "absent" in items.roles[j]:
            return True
        j += 1
    j = i - 1
    while j >= max(0, i - _NEAR) and clause[j] == clause[i]:
        if "withholds" in items.roles[j]:
            return True
        j -= 1
    return False


def _is_none(items: Items, i: int) -> bool:
    """`Thermostat input: none`."""
    return items.word(i + 1) in (":", "=") and items.word(i + 2) in _NONE


def _of_band(items: Items, i: int) -> bool:
    """`belly band with three arms`: the arms are the band's."""
    if not items.word(i).rstrip("s").endswith(_ARMS):
        return False
    near = range(max(0, i - _NEAR), i)
    return any(items.said(j, "fact") == "mounting=band" and items.clause[j] == items.clause[i] for j in near)


def fact(items: Items, i: int, value: str) -> None:
    """`belly band` -> mounting band; denied or absent ones give nothing."""
    field, _, said = value.partition("=")
    if field in _TAKES_NO and (denied(items, i) or _is_none(items, i)):
        return
    if field == "mounting":
        if not absent(items, i) and not _of_band(items, i):
            items.claim(field, tuple(said.split(",")), i)
        return
    vague = field == "enclosure" and items.word(i) in _VAGUE
    items.claim(field, _VALUES.get(said, said), i, strength=0 if vague else 1)


def weak(items: Items, i: int, value: str) -> None:
    """`stud`, `band`, `open`: facts only right behind their label (`Mount Stud`, `ENCL OPEN`)."""
    if value == "mounting=studs":
        fact(items, i, value)
        return
    if (
        items.plate
        and value == "enclosure=ODP"
        and items.word(i - 1) != "not"
        and items.word(i + 1) not in ("when", "before")
    ):
        fact(items, i, value)
        return
    label = items.skip(i - 1, -1)
    named = any(items.has(j, kind) for j in (label, i + 1) for kind in ("fill0", "encl"))
    if (
        named
        or alone(items, i)
        or (value[:8] == "mounting" and (_among_mountings(items, i) or _on_circle(items, i)))
    ):
        fact(items, i, value)


def alone(items: Items, i: int) -> bool:
    """Say whether an item is all of its clause."""
    opens = i == 0 or items.clause[i - 1] != items.clause[i] or not items.word(i - 1)[0].isalnum()
    return opens and (i + 1 >= len(items) or items.clause[i + 1] != items.clause[i])


def _among_mountings(items: Items, i: int) -> bool:
    """`belly band or stud`, `band/stud`: beside another kind of mounting."""
    for step in (-1, 1):
        if items.word(i + step) in ("or", "/", "and", "&"):
            roles = items.roles[i + 2 * step] if 0 <= i + 2 * step < len(items) else {}
            if "mounting" in roles.get("fact", "") or "mounting" in roles.get("weak", ""):
                return True
    return False


def _on_circle(items: Items, i: int) -> bool:
    """`studs, 3-3/8 bc`: a bolt circle in the same sentence says that they hold the motor."""
    return any(
        items.said(j, "subject") == "bolt"
        for j in range(max(0, i - 6), min(len(items), i + 8))
        if items.segment[j] == items.segment[i]
    )


_SOLD_APART = frozenset({"upgrade", "conversion", "kit", "kits", "option", "optional", "extra", "available"})


def bearing(items: Items, i: int, value: str) -> None:
    """`sleeve`, `ball`: not as a part that is sold apart or needed."""
    others = (items.said(i + 2, "bearing"), items.said(i - 2, "bearing"))
    wavers = "or" in (items.word(i + 1), items.word(i - 1)) and any(
        other not in (None, value) for other in others
    )
    if not (denied(items, i) or wavers or _reduces(items, i) or _is_extra(items, i)):
        items.claim("bearing", value, i)


def _is_extra(items: Items, i: int) -> bool:
    """`Ball bearing upgrade +$12`, `kit #BB56`: something sold apart, or a part of its number."""
    return items.word(i + 1) in _SOLD_APART or (items.is_glued(i) and items.has(i + 1, "num"))


def _reduces(items: Items, i: int) -> bool:
    """`5/16 to 1/2 bushing`, `1/2 in. sleeve`: it fits a bore to a thinner shaft."""
    if items.word(i) not in ("bushing", "bushings", "sleeve"):
        return False
    j = i - 2 if items.said(i - 1, "after") in ("in", "mm") else i - 1
    number = items.numbers.get(j)
    two = number is not None and (number.value is None or items.word(j - 1) in ("to", "x", "by"))
    return two or items.word(i + 1) == "to"


def protector(items: Items, i: int, value: str) -> None:
    """Thermal protection; `manual` or `auto` alone only beside a word for the protector."""
    word = items.word(i)
    if (
        word in ("auto", "automatic", "manual", "tp", "impedance", "zp")
        and not (alone(items, i) or any(items.has(j, "protlabel") for j in (i - 1, i - 2, i + 1)))
        and (word not in ("tp", "zp") or not items.plate)
    ):
        return
    if denied(items, i):
        value = "none"
    strength = 2 if value in ("manual", "impedance", "none") else 1
    items.claim("protector", value, i, strength=strength)


_BARE_FLATS = frozenset({"flat", "a flat", "with flat", "with a flat", "has a flat"})


def flats(items: Items, i: int, value: str) -> None:
    """Flats of the shaft, counted (`2 flats`, `Flats: 1`) or named."""
    counted = _counted_flats(items, i)
    if counted is not None:
        items.used[counted] = True
        items.claim("shaft_flats", int(items.numbers[counted].value or 0), i, counted, 2)
        return
    if value == "-" or (items.word(i) in ("round", "flat", "a flat") and not _of_shaft(items, i)):
        return
    value = "0" if denied(items, i) else value
    items.claim("shaft_flats", int(value), i, strength=1 if items.word(i) in _BARE_FLATS else 2)


def _counted_flats(items: Items, i: int) -> int | None:
    """Return the number that counts the flats: right before the word, or behind it and a colon."""
    places = [i - 1] if items.said(i, "after") == "flat" else []
    if items.word(i) in ("flats", "number of flats"):
        places.append(items.skip(i + 1, 1))
    for j in places:
        if items.has(j, "num") and items.clause[j] == items.clause[i] and not items.used[j]:
            return j if items.numbers[j].value in (0, 1, 2) else None
    return None


def _of_shaft(items: Items, i: int) -> bool:
    if items.has(i - 1, "num") and items.has(i - 2, "by"):
        return True  # `1/2 X 4 FLAT`
    near = range(max(0, i - 12), min(len(items), i + 4))
    return any(
        items.said(j, "subject") in ("shaft", "shaft_length")
        for j in near
        if items.segment[j] == items.segment[i]
    )


def insulation(items: Items, i: int, _value: str) -> None:
    """`INS CL B`, `Th.Cl. F`, `class F insulation`; never the class of a hazardous location."""
    j = items.skip(i + 1, 1)
    while items.has(j, "insclass") or (items.plate and items.word(j) == "."):
        j = items.skip(j + 1, 1)
    letter = "B" if items.plate and items.word(j) == "8" else items.word(j).upper()
    before = items.word(i - 1).upper()
    if (
        letter not in ("A", "B", "F", "H")
        and before in ("A", "B", "F", "H")
        and items.word(i) in _AFTER_LETTER
    ):
        items.claim("insulation_class", before, i - 1, i)
        return
    if letter in ("A", "B", "F", "H") and not (letter == "A" and items.raw(j) == "a"):
        items.claim("insulation_class", letter, i, j)
        items.used[j] = True


def ambient(items: Items, i: int, _value: str) -> None:
    """`AMB 40C`, `ambient 104 F`."""
    j = items.skip(i + 1, 1)
    if not items.has(j, "num") or (items.has(i - 2, "num") and _is_degrees(items, i - 1)):
        return  # `70C AMB. 5 MFD`
    value = items.numbers[j].value
    if value is not None and -60 <= value <= 250:
        items.used[j] = True
        _degrees(items, value, i, j)


def _is_degrees(items: Items, j: int) -> bool:
    return (items.said(j, "unit") or items.said(j, "after")) in ("c", "f")


def _degrees(items: Items, value: float, i: int, j: int) -> None:
    unit = items.said(j + 1, "after") or items.said(j + 1, "unit")
    end = j + 1 if unit in ("c", "f") else j
    if unit == "f" or (unit is None and value > 90):
        items.claim("ambient_c", round(fahrenheit_to_celsius(value)), i, end)
    elif value <= 90:
        items.claim("ambient_c", round(value), i, end)


_USUAL_AMBIENTS = frozenset({40, 50, 55, 60, 65, 70, 104, 122, 131, 140, 149, 158})


def celsius(items: Items, i: int) -> None:
    """`40C`, `104 F ambient`: degrees without a label, of a usual ambient temperature."""
    unit = items.said(i + 1, "unit") or items.said(i + 1, "after")
    if unit not in ("c", "f") or items.used[i] or items.numbers[i].value not in _USUAL_AMBIENTS:
        return
    value = items.numbers[i].value or 0.0
    named = items.has(items.skip(i + 2, 1), "amb")
    rise = items.word(items.skip(i - 1, -1)) in ("rise", "temp rise") or _is_rise(items, i + 2)
    if rise or (unit == "f" and not named and not (alone(items, i + 1) or _stands_alone(items, i))):
        return
    items.used[i] = True
    _degrees(items, value, i, i)


def _is_rise(items: Items, j: int) -> bool:
    """`40°C. RISE`: how much warmer than the air; in `40 C  RISE 80 C` the figure behind is."""
    if items.word(j) == ".":
        j += 1
    return items.word(j) == "rise" and not items.has(j + 1, "num")


def _stands_alone(items: Items, i: int) -> bool:
    """Say whether a figure and its unit are all of their clause."""
    opens = i == 0 or items.clause[i - 1] != items.clause[i] or not items.word(i - 1)[0].isalnum()
    return opens and (i + 2 >= len(items) or items.clause[i + 2] != items.clause[i])


def no_protection(items: Items, i: int, _value: str) -> None:
    """`Thermal prot: none`."""
    j = items.skip(i + 1, 1)
    if items.word(j) == "none":
        items.claim("protector", "none", i, j, 3)


def key(items: Items, i: int, _value: str) -> None:
    """`5/8 KEY`, `with 5 mm key`: a key in a sentence about the shaft."""
    if _of_shaft(items, i) and not denied(items, i):
        items.claim("shaft_keyed", True, i)


def position(items: Items, i: int, _value: str) -> None:
    """`Shaft pos.: up`: a label for the position, and the position."""
    j = items.skip(i + 1, 1)
    said = {"up": "up", "down": "down", "any": "any", "all": "any", "horizontal": "horizontal"}.get(
        items.word(j)
    )
    if said and items.word(j + 1) not in ("or", "/", "and"):
        items.claim("shaft_position", said, i, j)


HANDLERS: dict[str, Handler] = {
    "fact": fact,
    "weak": weak,
    "bearing": bearing,
    "protector": protector,
    "protlabel": no_protection,
    "flats": flats,
    "insclass": insulation,
    "amb": ambient,
    "key": key,
    "poslabel": position,
}
