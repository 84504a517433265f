"""`samespin airflow`: work out airflow, static pressure and what another speed would do."""

import json
import sys
from collections.abc import Mapping
from pathlib import Path

import click

from matcher.airflow.proof import Proof, prove
from matcher.command.inputs import MOTOR, refuse_same_dash
from matcher.errors import BadValue
from matcher.motor import Offer, Wanted

JSON = click.option("--json", "as_lines", is_flag=True, help="One JSON line.")
NUMBER = float


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
def command() -> None:
    """Work out airflow, static pressure and what another speed would do."""


@command.command()
@click.option("--watts", type=NUMBER, help="Electric heat: measured input in watts.")
@click.option("--volts", type=NUMBER, help="Electric heat: volts at the elements ...")
@click.option("--amps", type=NUMBER, help="... and their amps.")
@click.option("--phase", type=click.Choice(["1", "3"]), default="1", help="Phases of the elements.")
@click.option("--output", type=NUMBER, help="A furnace's output in Btu/h.")
@click.option("--rise", type=NUMBER, required=True, help="Supply less return air in degrees F.")
@click.option("--altitude", type=NUMBER, default=0.0, help="Feet above the sea.")
@JSON
def heat(  # noqa: PLR0913, PLR0917 - one option each
    watts: float | None,
    volts: float | None,
    amps: float | None,
    phase: str,
    output: float | None,
    rise: float,
    altitude: float,
    as_lines: bool,
) -> None:
    """Airflow from the heat rise: --watts 9600 --rise 25 --altitude 5000."""
    from matcher.airflow.air import density_ratio
    from matcher.airflow.heat_rise import airflow_cfm, electric_heat_btu_h

    if output is None and watts is None and (volts is None or amps is None):
        raise click.UsageError("give --watts, or --volts and --amps, or --output")
    heat_btu_h = (
        output
        if output is not None
        else electric_heat_btu_h(watts=watts, volts=volts, amps=amps, phase=int(phase))
    )
    cfm = airflow_cfm(heat_btu_h, rise, altitude)
    _tell(
        {
            "cfm": round(cfm, 1),
            "heat_btu_h": round(heat_btu_h, 1),
            "rise_f": rise,
            "density_ratio": round(density_ratio(altitude), 4),
        },
        f"{cfm:,.0f} CFM: {heat_btu_h:,.0f} Btu/h over {rise:g} F, density {density_ratio(altitude):.3f}.",
        as_lines=as_lines,
    )


@command.command()
@click.option("--rpm", type=NUMBER, required=True, help="Speed now.")
@click.option("--to", "other", type=NUMBER, required=True, multiple=True, help="Another; may be repeated.")
@click.option("--cfm", type=NUMBER, required=True, help="Airflow now.")
@click.option("--static", "static_in_wc", type=NUMBER, help="Static now, inches of water.")
@click.option("--hp", type=NUMBER, help="Shaft power now.")
@click.option("--amps", type=NUMBER, help="Motor current now.")
@JSON
def fan(  # noqa: PLR0913, PLR0917 - one option each
    rpm: float,
    other: tuple[float, ...],
    cfm: float,
    static_in_wc: float | None,
    hp: float | None,
    amps: float | None,
    as_lines: bool,
) -> None:
    """What the same fan in the same ducts would do at other speeds: --rpm 1075 --to 825 --cfm 1000."""
    from matcher.airflow.entry import measured
    from matcher.airflow.fan_laws import FanPoint, at_speed

    flow = measured("the airflow", cfm, low=0, high=200_000, unit="CFM", above=True)
    now = FanPoint(rpm, flow, static_in_wc, hp, amps)
    for speed in other:
        point = at_speed(now, speed)
        figures = {
            "rpm": point.rpm,
            "cfm": round(point.cfm, 1),
            "static_in_wc": _rounded(point.static_in_wc),
            "hp": _rounded(point.power_hp),
            "amps": _rounded(point.amps),
        }
        units = {"cfm": "CFM", "static_in_wc": "in. w.c.", "hp": "hp", "amps": "A near full load"}
        said = [f"{figures[name]:g} {unit}" for name, unit in units.items() if figures[name] is not None]
        _tell(figures, f"{speed:g} rpm: {', '.join(said)}", as_lines=as_lines)


@command.command()
@click.option("--supply", "supply_in_wc", type=NUMBER, required=True, help="Supply side, inches of water.")
@click.option("--return", "return_in_wc", type=NUMBER, required=True, help="Return side; a minus is fine.")
@JSON
def static(supply_in_wc: float, return_in_wc: float, as_lines: bool) -> None:
    """Total external static from its two sides: --supply 0.2 --return -0.3."""
    proof = prove({"supply_static": f"{supply_in_wc:f}", "return_static": f"{return_in_wc:f}"}, Offer())
    _tell_proof(proof, as_lines=as_lines)


@command.command()
@click.option("--old", type=MOTOR, help="The old motor and its place; - for standard input.")
@click.option("--new", type=MOTOR, help="The new motor, like --old.")
@click.option("--entries", "only_entries", is_flag=True, help="Only list what can be entered.")
@JSON
@click.argument("entries", nargs=-1, metavar="[ENTRY=VALUE]...")
def proof(
    old: Path | None, new: Path | None, only_entries: bool, as_lines: bool, entries: tuple[str, ...]
) -> None:
    """Hold a whole proof run against its limits: rise_f=25 heater_watts=9600 tons=3 amps=2.9 volts=231."""
    from matcher.command.pairs import pairs_in
    from matcher.old_file import load_wanted

    if only_entries:
        _list_entries()
        return
    refuse_same_dash(old, new)
    wanted = load_wanted(old) if old else Wanted()
    motor = load_wanted(new).motor if new else wanted.motor
    given = pairs_in(entries, "entry")
    found = prove(given, Offer.model_validate(dict(motor)), wanted.motor, wanted.site)
    if not (found.results or found.faults or as_lines):  # JSON says by its empty list that nothing follows
        raise BadValue(_lacking(list(given)))
    _tell_proof(found, as_lines=as_lines)


def _lacking(given: list[str]) -> str:
    """Say what a proof run from which nothing follows still needs."""
    first = f"nothing follows from {', '.join(given)} alone" if given else "nothing was entered"
    return (
        f"{first}; an airflow needs rise_f with heater_watts or furnace_output, a static supply_static and"
        " return_static; `samespin airflow proof --entries` lists all"
    )


def _list_entries() -> None:
    from matcher.airflow.entries import proof_entries

    for entry in proof_entries():
        unit = f" ({entry.unit})" if entry.unit else f" ({' or '.join(entry.choices)})"
        click.echo(f"{entry.name}{unit}: {entry.how}")


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 4)


def _tell(figures: Mapping[str, object], line: str, *, as_lines: bool) -> None:
    click.echo(json.dumps(figures) if as_lines else line)


def _tell_proof(proof: Proof, *, as_lines: bool) -> None:
    from matcher.command import complain

    for fault in proof.faults.values():
        complain(fault)
    if as_lines:
        click.echo(json.dumps(as_json(proof)))
    else:
        for result in proof.results:
            click.echo(f"{result.outcome:5} {result.says}")
        for line in proof.reminders if proof.results else ():
            click.echo(f"      {line}")
    sys.exit(1 if proof.faults else 0)


def as_json(proof: Proof) -> dict[str, object]:
    """Return a proof run as one JSON object."""
    return {
        "outcome": proof.outcome,
        "cfm": _rounded(proof.cfm),
        "static_in_wc": _rounded(proof.static_in_wc),
        "results": [
            {
                "name": result.name,
                "value": round(result.value, 4),
                "unit": result.unit,
                "outcome": result.outcome,
                "says": result.says,
                "source": result.source,
            }
            for result in proof.results
        ],
        "other_speeds": [
            {
                "rpm": point.rpm,
                "cfm": round(point.cfm, 1),
                "static_in_wc": _rounded(point.static_in_wc),
                "amps": _rounded(point.amps),
                "watts": _rounded(point.watts),
            }
            for point in proof.others
        ],
        "reminders": list(proof.reminders),
        "faults": dict(proof.faults),
    }
