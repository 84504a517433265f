"""What the contract says of facts that hang together, once each is settled by itself."""

from collections.abc import Callable, Sequence

from matcher.reading.items import Items
from matcher.reading.settle import Contradicted, Settled

GIVEN = -2
"""The clause of claims that a label made, outside the running text."""

_MOST_AMPS = 24.0
"""Full-load amperes that no motor of up to 1 hp draws."""
_ELECTRONIC = ("module", "control_signal")
_OF_OFFERS = frozenset(
    [
        "price",
        "currency",
        "shipping",
        "condition",
        "return_days",
        "return_shipping",
        "restocking_pct",
        "warranty_days",
        "quantity",
        "seller_rating_pct",
    ]
)
"""What is said of a sale; no plate says it."""
_OF_PARTS = _OF_OFFERS | {"item", "brand", "part_number", "other_numbers"}


def _said(settled: Settled, field: str) -> object:
    return settled[field][0] if field in settled else None


def _drop(settled: Settled, conflicts: Contradicted, *fields: str) -> None:
    for field in fields:
        settled.pop(field, None)
        conflicts.pop(field, None)


def _view(settled: Settled, conflicts: Contradicted) -> None:
    """A contradicted turn takes its view along."""
    if "turn" in conflicts:
        settled.pop("seen_from", None)


def _part(settled: Settled, conflicts: Contradicted) -> None:
    """A wheel or a band has a price and a condition; what is said of motors is said of others."""
    if _said(settled, "item") == "part":
        _drop(settled, conflicts, *((settled.keys() | conflicts.keys()) - _OF_PARTS))


def _module(settled: Settled, conflicts: Contradicted) -> None:
    """A module sold alone: its number is the module's, the power is that of the motors it drives."""
    if (
        _said(settled, "module") == "module_only"
        and "module_number" not in settled
        and "part_number" in settled
    ):
        settled["module_number"] = settled.pop("part_number")
    if _said(settled, "item") == "module":
        _drop(settled, conflicts, "power_hp")


def _speeds(settled: Settled, conflicts: Contradicted) -> None:
    """Two speeds at two frequencies aren't speeds; a range leaves no rated speed."""
    if _said(settled, "hertz") == "50/60" and "speeds" in settled and settled["speeds"][1].strength == 0:
        del settled["speeds"]
    if "rpm_range" in settled:
        _drop(settled, conflicts, "rpm")


def _torque(settled: Settled, conflicts: Contradicted) -> None:
    """`ecm_torque` implies 24 V taps."""
    if _said(settled, "motor_type") == "ecm_torque" and "control_signal" not in conflicts:
        settled.setdefault("control_signal", ("taps_24v", settled["motor_type"][1]))


def _position(_settled: Settled, conflicts: Contradicted) -> None:
    """`Shaft down or horizontal` names no one position and contradicts nothing."""
    if len({claim.source for claim in conflicts.get("shaft_position", ())}) == 1:
        del conflicts["shaft_position"]


def _two_shafts(settled: Settled, conflicts: Contradicted) -> None:
    """Two shafts of different lengths contradict nothing, and have no one length."""
    if _said(settled, "shaft_ends") == 2:
        for field in ("shaft_length_in", "shaft_diameter_in"):
            if len({claim.source for claim in conflicts.get(field, ())}) == 1:
                del conflicts[field]


def _others(settled: Settled, _conflicts: Contradicted) -> None:
    """The motor's own number isn't among its other numbers."""
    numbers = _said(settled, "other_numbers")
    if isinstance(numbers, tuple):
        others = tuple(number for number in numbers if number != _said(settled, "part_number"))
        settled["other_numbers"] = (others, settled["other_numbers"][1])
        if not others:
            del settled["other_numbers"]


def _lost_points(settled: Settled, conflicts: Contradicted) -> None:
    """`AMPS 78` on a motor of 1/2 hp: a scan loses points; common practice is some 15 A for 1 hp at 115 V."""
    amps, power = _said(settled, "amps"), _said(settled, "power_hp")
    if isinstance(amps, tuple) and isinstance(power, float) and power <= 1 and max(amps) > _MOST_AMPS:
        _drop(settled, conflicts, "amps")


_RULES: tuple[Callable[[Settled, Contradicted], None], ...] = (
    _view,
    _part,
    _speeds,
    _torque,
    _module,
    _position,
    _two_shafts,
    _others,
)


_BETWEEN = frozenset({"and", "or", "plus", "&", "one", "a", "an", "also", ","})
_CAPACITORS = ("capacitor_uf", "capacitor_vac")


def _several(conflicts: Contradicted, parts: Sequence[Items]) -> None:
    """`One 5 uF and one 7.5 uF`: two capacitors in one breath contradict nothing, and tell nothing."""
    for field in _CAPACITORS:
        first, second = [*sorted(conflicts.get(field, ()), key=lambda claim: claim.span), None, None][:2]
        if first and second and first.source == second.source:
            text = next(items.scan.text for items in parts if items.source == first.source)
            between = text[first.span[1] : second.span[0]].lower().replace(",", " , ").split()
            if between and _BETWEEN.issuperset(between):
                del conflicts[field]


def tidy(settled: Settled, conflicts: Contradicted, parts: Sequence[Items]) -> None:
    """Bring the settled facts and the contradictions of one record into agreement."""
    if "rpm_range" in settled and "rpm" in settled and _is_driven(parts):
        del settled["rpm_range"]
    for rule in _RULES:
        rule(settled, conflicts)
    if conflicts:
        _several(conflicts, parts)
    if parts[0].plate:
        _lost_points(settled, conflicts)
        # A shop that rewound a motor says so on a label of its own.
        kept = {"condition"} if _said(settled, "condition") == "rebuilt" else set()
        _drop(settled, conflicts, *(_OF_OFFERS - kept))
    electronic = [field for field in _ELECTRONIC if field in settled or field in conflicts]
    if electronic and not _is_electronic(settled, parts):
        for field in electronic:
            if field not in settled or settled[field][1].clause != GIVEN:
                _drop(settled, conflicts, field)


def _is_driven(parts: Sequence[Items]) -> bool:
    """Say whether a frequency drive is named: the range beside a rated speed is what the drive made of it."""
    return any("vfd" in items.roles[i] for items in parts for i in items.active)


def _is_electronic(settled: Settled, parts: Sequence[Items]) -> bool:
    """Say whether anything speaks for an electronically commutated motor; `motor only` alone doesn't."""
    return (
        str(_said(settled, "motor_type")).startswith("ecm")
        or not settled.keys().isdisjoint({"program_number", "module_number", "rpm_range"})
        or any("module" in items.roles[i] for items in parts for i in items.active)
        or ("module" not in settled and _said(settled, "control_signal") != "thermostat")
    )
