"""What the drawing of a proof run shows: system curve, fan curve, and the points where they meet."""

from dataclasses import dataclass

from matcher.airflow.curve import FanCurve, Point, SystemCurve, operating_point
from matcher.airflow.proof import Proof
from matcher.airflow.result import figure

SHUT_OFF = 1.5
"""Static of the sketched fan at no flow, in times the measured static; the shape alone, no maker's figure."""
STEPS = 40
LAW = (
    "Other speeds by the fan laws, ducts unchanged: flow goes with speed, static with its square, "
    "power with its cube."
)


@dataclass(frozen=True, slots=True)
class Curve:
    """One line to draw: points of CFM and in. w.c."""

    points: tuple[Point, ...]
    label: str
    is_sketch: bool = False
    """Drawn from its shape alone, not from a table."""


@dataclass(frozen=True, slots=True)
class Spot:
    """One working point with its words."""

    point: Point
    label: str
    is_measured: bool


@dataclass(frozen=True, slots=True)
class Chart:
    """Everything to draw, and how far the axes reach."""

    curves: tuple[Curve, ...]
    spots: tuple[Spot, ...]
    most_cfm: float
    most_in_wc: float
    notes: tuple[str, ...]


def chart_of(proof: Proof) -> Chart | None:
    """Return what to draw, `None` while airflow or static isn't known."""
    if not proof.cfm or not proof.static_in_wc:
        return None
    here = (proof.cfm, proof.static_in_wc)
    system = SystemCurve.through(*here)
    fan, is_sketch = _fan(proof, here)
    spots = [Spot(here, _spot_words(proof.rpm, here), is_measured=True)]
    curves = [Curve(fan.points, _fan_words(proof.rpm, is_sketch=is_sketch), is_sketch)]
    for other in proof.others:
        point = (other.cfm, other.static_in_wc or 0.0)
        ratio = other.rpm / proof.rpm if proof.rpm else 1.0
        curves.append(Curve(fan.at_speed_ratio(ratio).points, f"{other.rpm:.0f} rpm", is_sketch))
        spots.append(Spot(point, _spot_words(other.rpm, point), is_measured=False))
    most_cfm = 1.15 * max(flow for curve in curves for flow, _ in curve.points)
    curves.insert(0, Curve(_system_points(system, most_cfm), "ducts, filter, coil"))
    most_in_wc = 1.1 * max([*(static for curve in curves[1:] for _, static in curve.points), here[1] * 1.6])
    return Chart(
        tuple(curves), tuple(spots), most_cfm, most_in_wc, _notes(fan, system, here, is_sketch=is_sketch)
    )


def _fan(proof: Proof, here: Point) -> tuple[FanCurve, bool]:
    if proof.fan_table:
        return FanCurve.of(proof.fan_table), False
    flow, static = here
    reach = (SHUT_OFF / (SHUT_OFF - 1)) ** 0.5  # where the sketch comes down to no static
    points = [
        (flow * reach * step / STEPS, _sketch(static, reach * step / STEPS)) for step in range(STEPS + 1)
    ]
    return FanCurve.of(points), True


def _sketch(static: float, share: float) -> float:
    """Return a parabola through the measured point that starts at `SHUT_OFF` times its static."""
    return static * max(0.0, SHUT_OFF - (SHUT_OFF - 1) * share**2)


def _system_points(system: SystemCurve, most_cfm: float) -> tuple[Point, ...]:
    flows = [most_cfm * step / STEPS for step in range(STEPS + 1)]
    return tuple((flow, system.static_in_wc(flow)) for flow in flows)


def _fan_words(rpm: float | None, *, is_sketch: bool) -> str:
    speed = f"{rpm:.0f} rpm" if rpm else "the fan"
    return f"{speed} (shape only)" if is_sketch else speed


def _spot_words(rpm: float | None, point: Point) -> str:
    speed = f"{rpm:.0f} rpm: " if rpm else ""
    return f"{speed}{figure(point[0])} CFM at {figure(point[1])} in."


def _notes(fan: FanCurve, system: SystemCurve, here: Point, *, is_sketch: bool) -> tuple[str, ...]:
    if is_sketch:
        return (
            LAW,
            "The fan's curve is sketched through the measured point; enter its table for the real one.",
        )
    meeting = operating_point(fan, system)
    if meeting is None:
        return (LAW, "The measured system doesn't meet the fan's table: another speed, or a reading is off.")
    apart = 100 * abs(meeting[0] - here[0]) / here[0]
    words = (
        f"By its table the fan would give {figure(meeting[0])} CFM here, {figure(apart)} % off the measured."
    )
    return (LAW, words)
