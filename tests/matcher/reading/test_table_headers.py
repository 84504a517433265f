import pytest

from matcher import tables
from matcher.motor import OFFER_FIELDS
from matcher.reading.table_headers import SAID, columns, folded, header, known_words

MEANT = [
    ("Hp", "power", "hp", ""),
    ("Motor HP", "power", "hp", ""),
    ("HP rating", "power", "hp", ""),
    ("motor_hp", "power", "hp", ""),
    ("Power kW", "power", "kw", ""),
    ("Leistung [kW]", "power", "kw", ""),
    ("Puissance (kW)", "power", "kw", ""),
    ("P (kW)", "power", "kw", ""),
    ("W out", "output", "w", ""),
    ("V", "volts", "v", ""),
    ("Voltage (V)", "volts", "v", ""),
    ("Voltge", "volts", "", ""),
    ("Tension V", "volts", "v", ""),
    ("FLA", "amps", "", ""),
    ("A", "amps", "a", ""),
    ("Full-load A", "amps", "a", ""),
    ("Speed rpm", "rpm", "rpm", ""),
    ("Drehzahl U/min", "rpm", "rpm", ""),
    ("n [min-1]", "rpm", "rpm", ""),
    ("Min RPM", "rpm_low", "rpm", ""),
    ("No. of speeds", "speeds", "", ""),
    ("Rot.", "rotation", "", ""),
    ("Ø shaft mm", "shaft_diameter", "mm", ""),
    ("Welle Ø (mm)", "shaft_diameter", "mm", ""),
    ("shaft_dia_in", "shaft_diameter", "in", ""),
    ("ShaftDia", "shaft_diameter", "", ""),
    ("Shaft mm", "shaft", "mm", ""),
    ("Dia", "diameter", "", ""),
    ("Motor Ø mm", "body_diameter", "mm", ""),
    ("Amb F", "ambient", "f", ""),
    ("Max amb °C", "ambient", "c", ""),
    ("Cap. µF", "capacitor", "uf", ""),
    ("Cap. VAC", "capacitor_volts", "v", ""),
    ("Ask", "asking", "", ""),
    ("Asking USD", "asking", "", "USD"),
    ("Price (EUR)", "price", "", "EUR"),
    ("Price/ea", "price", "", ""),
    ("$", "price", "", "USD"),
    ("List price", "other_price", "", ""),
    ("List $", "other_price", "", ""),
    ("Bid", "other_price", "", ""),
    ("MSRP", "other_price", "", ""),
    ("Price incl. shipping", "other_price", "", ""),
    ("S/H", "shipping", "", ""),
    ("Versand EUR", "shipping", "", "EUR"),
    ("Ship weight", "nothing", "", ""),
    ("Qty on hand", "quantity", "", ""),
    ("O/H", "quantity", "", ""),
    ("QOH", "quantity", "", ""),
    ("Net ea", "price", "", ""),
    ("Net each USD", "price", "", "USD"),
    ("Qté", "quantity", "", ""),
    ("Cond", "condition", "", ""),
    ("Zustand", "condition", "", ""),
    ("Returns (days)", "returns", "d", ""),
    ("Return ship", "return_shipping", "", ""),
    ("Restock %", "restocking", "pct", ""),
    ("Warranty (mo)", "warranty", "mo", ""),
    ("Mfr", "brand", "", ""),
    ("Manufactuer", "brand", "", ""),
    ("Part no", "part_number", "", ""),
    ("MPN", "part_number", "", ""),
    ("Nº de pieza", "part_number", "", ""),
    ("SKU", "nothing", "", ""),
    ("LRA", "nothing", "", ""),
    ("Wheel dia", "nothing", "", ""),
    ("Input W", "nothing", "", ""),
    ("Start cap", "nothing", "", ""),
    ("Module?", "module", "", ""),
    ("V/Ph/Hz", "supply", "", ""),
    ("Notes", "text", "", ""),
    ("Item", "title", "", ""),
]


@pytest.mark.parametrize(("words", "column", "unit", "currency"), MEANT, ids=[row[0] for row in MEANT])
def test_header_is_understood(words: str, column: str, unit: str, currency: str) -> None:
    found = header(words)
    assert found is not None
    assert (found.column.name, found.unit, found.currency) == (column, unit, currency)


@pytest.mark.parametrize(
    ("words", "view"),
    [
        ("Rotation (LE)", "lead_end"),
        ("Rot LE", "lead_end"),
        ("Rotation facing shaft", "shaft_end"),
        ("Rotation", ""),
    ],
)
def test_header_names_the_end_a_turn_is_seen_from(words: str, view: str) -> None:
    found = header(words)
    assert found is not None
    assert (found.column.name, found.view) == ("rotation", view)


@pytest.mark.parametrize("words", ["Price 2", "Lens size", "Weight of price", "1075", "", "x" * 300])
def test_unknown_header_means_nothing(words: str) -> None:
    assert header(words) is None


def test_a_unit_that_the_column_cannot_have_makes_a_header_unknown() -> None:
    assert header("Shaft diameter kW") is None


def test_every_column_of_the_table_is_sound() -> None:
    fields = {*OFFER_FIELDS}
    for name, column in columns().items():
        hows = {"read", "text", "loose", "number", "count", "money", "yes_no", "free", "nothing"}
        assert column.how in hows, name
        assert set(column.fields) <= fields, name
        assert bool(column.fields) == (column.how not in {"free", "nothing"}), name
        assert set(column.units) <= set(SAID), name
        for meant in (column.yes, column.no):
            assert not meant or meant.partition("=")[0] in fields, name


def test_every_row_of_headers_names_a_column_and_no_word_means_two() -> None:
    meanings: dict[str, set[str]] = {}
    for row in tables.rows("reading/headers"):
        assert row["column"] in columns(), row["column"]
        assert row["source"]
        for words in row["words"].split("|"):
            meanings.setdefault(folded(words), set()).add(row["column"])
    assert {words: found for words, found in meanings.items() if len(found) > 1} == {}
    # `No.` gives nothing but beside a maker, where the layout makes a loose number of it.
    assert {column for found in meanings.values() for column in found} | {"loose_number"} == set(columns())
    assert len(known_words()) == len(meanings)
