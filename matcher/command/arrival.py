"""`samespin arrival`: check a delivered motor and tell the last safe day to send it back."""

import json
import sys
from pathlib import Path

import click

from matcher.arrival.checklist import Item
from matcher.arrival.standing import Standing, stand
from matcher.command.inputs import LISTINGS, MOTOR, refuse_same_dash


@click.command()
@click.option(
    "--old",
    required=True,
    type=MOTOR,
    help="The old motor, JSON or TOML; - for standard input.",
)
@click.option(
    "--new",
    required=True,
    type=LISTINGS,
    help="The listing it came from; - for standard input.",
)
@click.option("--id", "wanted_id", help="Which listing, when the file holds several.")
@click.option("--bought", default="", help="Day of purchase, such as 2030-04-01.")
@click.option("--delivered", default="", help="Day of delivery.")
@click.option("--today", "today_text", default="", help="Count the days left from this day instead of today.")
@click.option("--transit-days", default="", help="Days on the way back; 5 unless you know better.")
@click.option("--sent", is_flag=True, help="The terms only ask to send it within the days.")
@click.option("--bad", "bad", multiple=True, help="Something that looks bad: parcel, spins, play, leads, ...")
@click.option("--photo", "photos", multiple=True, help="Name of a picture that the note offers.")
@click.option("--note", "only_note", is_flag=True, help="Only the note to the seller.")
@click.option("--json", "as_lines", is_flag=True, help="All of it as one JSON line.")
@click.argument("measured", nargs=-1, metavar="[FIELD=VALUE]...")
def command(  # noqa: PLR0913, PLR0917 - one option each
    old: Path,
    new: Path,
    wanted_id: str | None,
    bought: str,
    delivered: str,
    today_text: str,
    transit_days: str,
    sent: bool,
    bad: tuple[str, ...],
    photos: tuple[str, ...],
    only_note: bool,
    as_lines: bool,
    measured: tuple[str, ...],
) -> None:
    """Judge a delivered motor again with what was measured on it, such as shaft_diameter_in=1/2."""
    from matcher.arrival.dates import date_in
    from matcher.arrival.section import Entries
    from matcher.command import complain
    from matcher.command.chosen import chosen
    from matcher.command.pairs import pairs_in
    from matcher.old_file import load_wanted
    from matcher.today import today

    refuse_same_dash(old, new)
    entries = Entries(
        bought=bought,
        delivered=delivered,
        transit_days=transit_days,
        counted="sent" if sent else "back",
        measured=pairs_in(measured, "measurement"),
        looks=dict.fromkeys(_known_looks(bad), "bad"),
        photos=photos,
    )
    day = date_in("today", today_text) or today()
    record, had_problems = chosen(new, wanted_id)
    standing = stand(load_wanted(old), record, entries, day)
    for name, fault in standing.faults.items():
        complain(f"{name}: {fault}" if name in entries.measured and name not in fault else fault)
    if as_lines:
        click.echo(json.dumps(as_json(standing)))
    else:
        click.echo(standing.note if only_note else "\n".join(_lines(standing)), nl=not only_note)
    sys.exit(1 if had_problems or standing.faults else 0)


def _known_looks(names: tuple[str, ...]) -> tuple[str, ...]:
    from matcher.errors import UnknownField
    from matcher.tables import rows

    known = [row["name"] for row in rows("arrival_looks")]
    for name in names:
        if name not in known:
            raise UnknownField(f"--bad {name!r:.40}: choose {', '.join(known)}")
    return names


def as_json(standing: Standing) -> dict[str, object]:
    """Return a delivery as one JSON object."""
    window = standing.window
    return {
        "id": standing.candidate.id,
        "send_by": window.send_by.isoformat() if window else None,
        "window_ends": window.window_ends.isoformat() if window else None,
        "days_left": window.days_left if window else None,
        "window_says": standing.window_says,
        "advice": standing.advice.what,
        "why": list(standing.advice.why),
        "verdict_before": standing.before.verdict,
        "verdict": standing.after.verdict,
        "differs": [
            {"field": one.field, "listed": one.listed, "said": one.said, "measured": one.measured}
            for one in standing.differing
        ],
        "checklist": [_item(standing, place) for place in range(len(standing.items))],
        "looks": [
            {"name": look.name, "question": look.question, "answer": look.answer} for look in standing.looks
        ],
        "note": standing.note,
        "faults": dict(standing.faults),
    }


def _item(standing: Standing, place: int) -> dict[str, object]:
    item = standing.items[place]
    return {
        "field": item.field,
        "old": item.old,
        "listed": item.listed,
        "said": item.said,
        "measured": standing.values.get(item.field),
        "doubt": item.doubt,
        "hard": item.hard,
        "checks": list(item.checks),
        "how": item.how,
    }


def _lines(standing: Standing) -> list[str]:
    lines = [
        standing.window_says,
        "",
        f"{standing.advice.says}.",
        *(f"  {why}" for why in standing.advice.why),
    ]
    lines += ["", "To measure (listing; old motor):"]
    for item in standing.items:
        mark = "x" if item.field in standing.values else " "
        lines.append(f"  [{mark}] {item.label}: {_listed(item)}; old {item.old or 'not known'}. {item.how}")
    lines += ["", "To look at:", *(f"  [ ] {look.question} {look.how}" for look in standing.looks)]
    return lines


def _listed(item: Item) -> str:
    """Return what the listing says of a fact with its own words, or why it doesn't count."""
    if not item.said:
        return item.listed or item.doubt
    return f'{item.listed} ("{" ".join(item.said.split())[:60]}")'
