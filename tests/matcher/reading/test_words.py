"""Wordings and what they must be read as: one table a family under `words/`, the `-` rows give nothing.

To add a wording, add a row to its family's table here and the words to `data/reading/words/`.
"""

import json
from pathlib import Path

import pytest

from matcher.reading import read_listing, read_plate

TABLES = sorted((Path(__file__).parent / "words").glob("*.tsv"))
FIELDS = {
    "electrical": "power_hp volts phase hertz amps service_factor",
    "speed": "rpm rpm_range speeds",
    "rotation": "turn seen_from",
    "shaft": "shaft_diameter_in shaft_length_in shaft_flats shaft_keyed shaft_ends shaft_position",
    "body": "body_diameter_in body_length_in mounting bolt_circle_in frame enclosure bearing insulation_class "
    "ambient_c duty protector explosion_proof",
    "control": "motor_type module control_signal plug_pins leads lead_length_in",
    "capacitor": "capacitor_uf capacitor_vac",
    "identity": "brand part_number other_numbers module_number program_number",
    "parted": "brand part_number other_numbers module_number program_number volts amps rpm speeds turn frame "
    "enclosure shaft_diameter_in",
    "money": "price currency shipping",
    "terms": "condition return_days return_shipping restocking_pct warranty_days quantity seller_rating_pct",
    "thing": "item",
    "elsewhere": "power_hp volts phase hertz amps rpm speeds shaft_diameter_in body_diameter_in capacitor_uf",
    "corrections": "power_hp volts phase hertz amps rpm speeds turn seen_from bearing capacitor_uf",
    "several": "power_hp volts rpm turn bearing brand part_number shaft_diameter_in mounting motor_type price",
    "damage": "power_hp volts phase hertz amps rpm speeds enclosure turn seen_from ambient_c bearing "
    "insulation_class duty mounting capacitor_uf capacitor_vac",
    "plate": "brand part_number other_numbers power_hp volts phase hertz amps rpm rpm_range speeds turn seen_from "
    "shaft_diameter_in shaft_length_in frame enclosure bearing insulation_class ambient_c service_factor duty "
    "protector capacitor_uf capacitor_vac",
}
PLATES = {"damage", "plate"}


def rows() -> list[object]:
    found: list[object] = []
    for table in TABLES:
        lines = [line for line in table.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
        for line in lines[1:]:
            text, facts = line.split("\t")
            plain = text.replace("\\n", "\n").replace("\\t", "\t")  # a plate has several lines
            found.append(pytest.param(table.stem, plain, facts, id=f"{table.stem}: {text}"))
    return found


def due(facts: str) -> dict[str, object]:
    if facts == "-":
        return {}
    pairs = (pair.split("=", 1) for pair in facts.split("; "))
    return {field: json.loads(value) for field, value in pairs}


@pytest.mark.parametrize(("family", "text", "facts"), rows())
def test_words(family: str, text: str, facts: str) -> None:
    read = read_plate if family in PLATES else read_listing
    said = read(text).facts.said()
    got = {field: value for field, value in said.items() if field in FIELDS[family].split()}
    wanted = due(facts)
    assert got.keys() == wanted.keys(), (got, wanted)
    for field, value in wanted.items():
        assert got[field] == (pytest.approx(value, abs=1e-4) if isinstance(value, float) else value), field
