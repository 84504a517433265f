"""The record of one finished job as a page: plate, listing, verdict, measurements, proof, dates, money."""

from collections.abc import Iterator, Mapping
from contextlib import suppress
from datetime import date

from matcher.arrival.dates import date_in
from matcher.arrival.looks import BAD
from matcher.arrival.measured import in_words
from matcher.entry import spoken
from matcher.errors import BadValue
from matcher.finding import Finding
from matcher.judging.saying import DECISIONS, check, fact, outcome, unit, verdict
from matcher.motor import SITE_FIELDS, Motor, Offer
from matcher.printed import document, heading, paragraph, table
from matcher.record import Mark, Origin
from matcher.rest import Rest
from matcher.triage.bench import BenchTest, bench_tests

LONGEST = 3000
"""Characters of the listing's text that are printed."""


def record_page(rest: Rest, today: date) -> str:
    """Return the record of a job as one page that prints; all words are escaped."""
    name = rest.job.name or "a job without a name"
    return document(f"Record: {name}", _parts(rest, today))


def _parts(rest: Rest, today: date) -> Iterator[str]:
    yield paragraph(_head(rest, today), soft=True)
    yield from _bench(rest)
    yield heading("The old motor and its place")
    yield table(_plate(rest))
    if rest.job.plate_text.strip():
        yield paragraph(f"Plate as typed: {rest.job.plate_text.strip()[:LONGEST]}", soft=True)
    yield from _listing(rest)
    yield from _verdict(rest)
    yield from _arrival(rest)
    yield from _notes(rest)
    yield from _proof(rest)
    yield from _worth(rest)


def _head(rest: Rest, today: date) -> str:
    entries = rest.entries
    parts = [
        rest.job.place,
        f"begun {_day(rest.job.created[:10])}",
        f"bought {_day(entries.bought)}" if entries.bought else "",
        f"delivered {_day(entries.delivered)}" if entries.delivered else "",
        f"printed {_day(today.isoformat())}",
    ]
    return "  ·  ".join(filter(None, parts))


def _day(text: str) -> str:
    """Return a day in the words of the rest of the page; what is no day stays as it was typed."""
    with suppress(BadValue):
        if day := date_in("", text):
            return f"{day.day} {day:%b %Y}"
    return text


def _bench(rest: Rest) -> Iterator[str]:
    found = rest.bench.diagnosis
    if not rest.bench.answers:
        return
    yield heading("Which part failed")
    yield paragraph(" ".join([found.says, *found.why]))
    tests = {test.name: test for test in bench_tests()}
    answers = [f"{_asked(tests, name)} {text}" for name, text in rest.bench.answers.items()]
    yield paragraph(f"Bench tests: {'; '.join(answers)}.", soft=True)


def _asked(tests: Mapping[str, BenchTest], name: str) -> str:
    return tests[name].question if name in tests else f"{name.replace('_', ' ').capitalize()}:"


def _plate(rest: Rest) -> list[tuple[str, ...]]:
    """Return the facts of the old motor and its place, two pairs a row."""
    record = rest.job.old_motor()
    pairs = [
        (fact(name), in_words(name, record.facts), _origin(record.where.get(name)))
        for name in Motor.model_fields
        if getattr(record.facts, name) is not None and name != "seen_from"
    ]
    site = rest.wanted.site
    pairs += [
        (fact(name), f"{spoken(name, getattr(site, name))} {unit(name)}".strip(), "")
        for name in SITE_FIELDS
        if getattr(site, name) is not None
    ]
    cells = [(label, f"{value}{f' ({origin})' if origin else ''}") for label, value, origin in pairs]
    half = (len(cells) + 1) // 2
    right = [*cells[half:], ("", "")]
    return [(*cells[place], *right[place]) for place in range(half)]


def _origin(mark: Mark | None) -> str:
    return "" if mark is None or mark.origin in (Origin.READ, Origin.TYPED) else mark.origin.value


def _listing(rest: Rest) -> Iterator[str]:
    if rest.bought is None:
        return
    yield heading("The listing it was bought from")
    name, terms = rest.bought.title.strip() or _called(rest), _terms(rest)
    yield paragraph(f"{name} ({terms})" if name and terms else name or f"{terms[:1].upper()}{terms[1:]}")
    if rest.bought.source_name:
        yield paragraph(f"From: {rest.bought.source_name}", soft=True)
    if rest.bought.text.strip():
        text = rest.bought.text.strip()
        yield paragraph(text if len(text) <= LONGEST else f"{text[:LONGEST]} ...", soft=True)


def _called(rest: Rest) -> str:
    """Return maker and number of what was bought, for a listing without a title."""
    facts = rest.standing.candidate.facts if rest.standing else Offer()
    return " ".join(filter(None, [facts.brand, facts.part_number]))


def _terms(rest: Rest) -> str:
    offer = rest.standing.candidate.facts if rest.standing else Offer()
    money = offer.currency or ""
    known = [
        f"{fact(name)} {spoken(name, getattr(offer, name))} {money}".strip()
        for name in ("price", "shipping")
        if getattr(offer, name) is not None
    ]
    known += [
        f"{fact(name)} {in_words(name, offer)}"
        for name in ("condition", "return_shipping")
        if getattr(offer, name) is not None
    ]
    known += [_days(offer.return_days, "to return", "no returns")] if offer.return_days is not None else []
    known += (
        [_days(offer.warranty_days, "of warranty", "no warranty")] if offer.warranty_days is not None else []
    )
    return ", ".join(known)


def _days(number: int, what: str, none: str) -> str:
    return f"{number} days {what}" if number else none


def _verdict(rest: Rest) -> Iterator[str]:
    if rest.standing is None:
        return
    judged = rest.standing.after
    yield heading("Verdict, with what was measured")
    score = f", score {judged.score:g}" if judged.score is not None else ""
    yield paragraph(f"{verdict(judged.verdict, judged.minds).capitalize()}{score}. {judged.reason}")
    yield table([_finding(one) for one in judged.findings], ("Check", "Answer", "Why", "Rests on"))


def _finding(one: Finding) -> tuple[str, ...]:
    return check(one.check), outcome(one), one.why, one.source


def _arrival(rest: Rest) -> Iterator[str]:
    standing = rest.standing
    if standing is None or not (standing.values or rest.entries.looks):
        return
    yield heading("Measured on arrival")
    measured = Offer.model_validate(dict(standing.values))
    differing = {one.field for one in standing.differing}
    yield table(
        [
            (
                item.label,
                item.listed or item.doubt,
                in_words(item.field, measured),
                "differs" if item.field in differing else "",
            )
            for item in standing.items
            if item.field in standing.values
        ],
        ("Fact", "Listing", "Measured", ""),
    )
    bad = [look.bad for look in standing.looks if look.answer == BAD]
    if bad:
        yield paragraph(f"Found bad: {'; '.join(bad)}.")
    decided = DECISIONS.get(rest.entries.decision, "not decided")
    yield paragraph(f"{standing.window_says} Advice: {standing.advice.says.lower()}. Decision: {decided}.")
    if rest.entries.photos:
        yield paragraph(f"Pictures: {', '.join(rest.entries.photos)}", soft=True)


def _notes(rest: Rest) -> Iterator[str]:
    written = [line for line in (rest.sheet.blanks if rest.sheet else ()) if line.note]
    if written:
        yield heading("Written down at the swap")
        yield table([(line.text, line.note) for line in written])


def _proof(rest: Rest) -> Iterator[str]:
    if not rest.proof.results:
        return
    yield heading("Proof run")
    yield table(
        [(one.label, one.words, one.is_right, one.says, one.source) for one in rest.proof.results],
        ("", "", "", "", "Rests on"),
    )


def _worth(rest: Rest) -> Iterator[str]:
    if not rest.worth.says:
        return
    yield heading("Was it worth it")
    yield paragraph("\n".join(rest.worth.says))
    small = [*(f"Assumed: {line}" for line in rest.worth.assumed), *rest.worth.missing]
    if small:
        yield paragraph("\n".join(small), soft=True)
