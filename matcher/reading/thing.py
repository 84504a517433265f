"""What is for sale: a motor (said nothing), an electronic module alone, or a part of something."""

from collections.abc import Sequence

from matcher.reading.claim import Claim
from matcher.reading.items import Items
from matcher.reading.part_alone import is_part_alone, names_part
from matcher.reading.things import things

_MOTORS = frozenset(
    ["motor", "motors", "elektromotor", "moteur", "drehstrommotor", "moter", "mtr", "ventilatormotor"]
)
_MODULES = frozenset({"module", "modules", "modul", "brain"})
_RETROFIT = frozenset({"retrofit", "conversion", "upgrade"})
_KITS = frozenset({"kit", "kits"})
_CONTROLS = frozenset({"electronic control", "motor control", "electronic motor control"})
_FIRST = 3
_OF_MOTORS = frozenset({"power_hp", "rpm", "rpm_range", "enclosure", "bearing", "frame"})
_LINKS = frozenset(
    {"for", "with", "w/", "from", "off", "fits", "without", "w", "para", "für", "pour", "to", "w/o", "of"}
)


def kind_of_thing(parts: list[Items], claims: list[Claim]) -> list[Claim]:
    """Return the claims on `item` and `module` that follow from what the title (or text) is about."""
    head = parts[0]
    words = tuple(word for word in head.scan.words[:24] if word != "-")
    about = _about(words, title=head.source == "title", plate=head.plate)
    alone = [claim for claim in claims if claim.field == "module_alone"]
    claims[:] = [claim for claim in claims if claim.field != "module_alone"]
    of_module = _speaks_of_module(parts)
    if about == "motor" and head.source == "text" and not head.plate:
        no_motor = bool(alone) and not of_module
        about = "part" if is_part_alone(head, claims, no_motor=no_motor) else about
    if head.plate and about == "motor" and _is_control(head, claims):
        about = "module"
    if about == "part" and not (alone and of_module):
        return [Claim("item", "part", head.source, head.span(0, max(0, min(len(head), 4) - 1)), -1)]
    if about == "module" and not any(claim.value == "without" for claim in claims if claim.field == "module"):
        where = next(
            (i for i in range(len(head)) if "module" in head.roles[i] or "moduleonly" in head.roles[i]), 0
        )
        return _module(head.source, head.span(where, where))
    if alone and of_module:
        return _module(alone[0].source, alone[0].span)
    return []


def _is_control(head: Items, claims: Sequence[Claim]) -> bool:
    """Say whether a plate opens with the name of an electronic control and rates no motor."""
    named = any(head.word(i) in _CONTROLS for i in head.active[:_FIRST])
    return named and _OF_MOTORS.isdisjoint(claim.field for claim in claims)


def first_line(items: Items) -> int:
    """Return how many items the first line with words in it takes; in a long line, its first sentence."""
    i = 0
    while i < len(items) and items.word(i) == "\n":
        i += 1
    first = i
    while i < len(items) and items.segment[i] == items.segment[first]:
        i += 1
    return i


def _module(source: str, span: tuple[int, int]) -> list[Claim]:
    return [Claim("item", "module", source, span, -1), Claim("module", "module_only", source, span, -1, 2)]


def _speaks_of_module(parts: list[Items]) -> bool:
    """Say whether a module is named that isn't denied: not `no motor no module`."""
    return any(
        not _MODULES.isdisjoint(items.scan.words) and _names_module(items.scan.words) for items in parts
    )


def _names_module(words: Sequence[str]) -> bool:
    denied = {k + 1 for k, word in enumerate(words) if word in ("no", "without", "w/o", "nor")}
    return any(word in _MODULES and k not in denied for k, word in enumerate(words))


def _about(words: tuple[str, ...], *, title: bool, plate: bool) -> str:
    """Return `motor`, `module` or `part` by the first words, up to `for`, `with`."""
    stop = next(
        (
            k
            for k, word in enumerate(words)
            if word in _LINKS or (not title and not plate and word in ".\n;|")
        ),
        len(words),
    )
    head = words[:stop]
    for k, word in enumerate(head):
        denied = k and head[k - 1] in ("no", "less", "minus")
        if word in _MOTORS and not denied and not _names_another(words, k + 1):
            return "motor"
    if not _MODULES.isdisjoint(head) and _names_module(head):
        return "module"
    if (
        not title
        or not things("of_motors").isdisjoint(head)
        or not _RETROFIT.isdisjoint(head)
        or (things("part").isdisjoint(head) and _KITS.isdisjoint(head))
    ):
        return "motor"
    return "part"


def _names_another(words: tuple[str, ...], k: int) -> bool:
    """`motor mount`, `motor control module`: the word before tells what it is for."""
    if k < len(words) and (words[k] in _MODULES or words[k] == "control"):
        return True
    return names_part(words, k)
