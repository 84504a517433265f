"""`samespin triage`: find out which part failed from bench tests."""

import json
import sys
from collections.abc import Iterable
from pathlib import Path

import click

from matcher.cautions import cautions_for
from matcher.command.inputs import MOTOR
from matcher.motor import Motor, Wanted
from matcher.triage import BenchTest, Diagnosis, bench_for, bench_tests, diagnose, site_with


@click.command()
@click.option(
    "--old",
    type=MOTOR,
    help="The failed motor, JSON or TOML, - for standard input; without it an ordinary motor is taken.",
)
@click.option("--ecm", is_flag=True, help="Without --old: the motor has an electronic module.")
@click.option(
    "--tolerance", type=click.FloatRange(0, 50, min_open=True), help="Per cent printed on the capacitor."
)
@click.option("--tests", "only_tests", is_flag=True, help="Only list the tests that this motor takes.")
@click.option("--json", "as_lines", is_flag=True, help="The answer as one JSON line.")
@click.argument("answers", nargs=-1, metavar="[TEST=ANSWER]...")
def command(
    old: Path | None,
    ecm: bool,
    tolerance: float | None,
    only_tests: bool,
    as_lines: bool,
    answers: tuple[str, ...],
) -> None:
    """Say which part failed from bench tests such as grinds=yes capacitor_uf=6.1; --tests lists them."""
    from matcher.command import complain
    from matcher.command.pairs import pairs_in

    wanted = _wanted(old) if old else None
    motor = wanted.motor if wanted else Motor(motor_type="ecm" if ecm else None)
    if only_tests:
        if not as_lines:
            click.echo("\n".join(f"! {line}" for line in cautions_for("bench", motor)))
        for test in bench_for(motor):
            click.echo(json.dumps(_test(test)) if as_lines else "\n".join(_test_lines(test)))
        return
    given = pairs_in(answers, "answer")
    found = diagnose(motor, given, tolerance / 100 if tolerance else None)
    foreign = _not_for(motor, given)
    for line in foreign:
        complain(line)
    if as_lines:
        site = site_with(wanted.site, found).said() if wanted else {}
        click.echo(json.dumps(_answer(found) | {"site": site}))
    else:
        click.echo("\n".join(_lines(found)))
    sys.exit(1 if foreign else 0)


def _not_for(motor: Motor, given: Iterable[str]) -> list[str]:
    """Return a line for each answer to a test that this kind of motor doesn't take."""
    taken = {test.name for test in bench_for(motor)}
    kinds = {test.name: test.kind for test in bench_tests()}
    why = {
        "ecm": "it is for a motor with an electronic module (--ecm, or say so in --old)",
        "ac": "it is for an ordinary motor without a module",
    }
    return [
        f"{name}: left out; {why.get(kinds[name], 'this motor has no such part')}"
        for name in given
        if name not in taken
    ]


def _wanted(old: Path) -> Wanted:
    from matcher.old_file import load_wanted  # only those who name a file pay for the readers

    return load_wanted(old)


def _answer(found: Diagnosis) -> dict[str, object]:
    return {
        "part": found.part,
        "settled": found.settled,
        "says": found.says,
        "why": list(found.why),
        "suspected": found.suspected,
        "motor_health": found.motor_health,
        "module_health": found.module_health,
        "next_test": _test(found.next_test) if found.next_test else None,
        "sources": list(found.sources),
    }


def _test(test: BenchTest) -> dict[str, object]:
    return {
        "name": test.name,
        "question": test.question,
        "how": test.how,
        "answers": [*test.choices, "skip"] if test.choices else [f"{test.numbers} reading(s)", "skip"],
        "unit": test.unit,
        "live": test.live,
        "minutes": test.minutes,
        "source": test.source,
    }


def _lines(found: Diagnosis) -> list[str]:
    lines = [found.says, *(f"  {why}" for why in found.why)]
    if found.next_test:
        lines += _test_lines(found.next_test)[1:]
    elif found.settled:
        lines.append(f"  motor: {found.motor_health}, module: {found.module_health}")
    return lines


def _test_lines(test: BenchTest) -> list[str]:
    answer = " or ".join(test.choices) if test.choices else f"{test.numbers} reading(s) in {test.unit}"
    warning = "  Under voltage: only if you are qualified to measure there." if test.live else ""
    lines = [test.question, f"  {test.how}", f"  answer: {test.name}={answer}, or skip"]
    return [*lines, warning] if warning else lines
