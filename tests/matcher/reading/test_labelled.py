from typing import Any

import pytest

from matcher.reading.labelled import read_value
from matcher.reading.table_headers import header

ROWS: list[tuple[str, str, dict[str, Any]]] = [
    ("HP", "1/2", {"power_hp": 0.5}),
    ("HP", "1/2-1/3-1/5", {"power_hp": 0.5}),
    ("Output (W)", "250", {"power_hp": 0.3353}),
    ("Power (W)", "250", {}),
    ("Volts", "208-230", {"volts": "208-230"}),
    ("V/Ph/Hz", "208-230/1/60", {"volts": "208-230", "phase": 1, "hertz": "60"}),
    ("Volts/Hz", "115/230-60", {"volts": "115/230", "hertz": "60"}),
    ("Phase", "3", {"phase": 3}),
    ("FLA", "8.6/4.3", {"amps": (8.6, 4.3)}),
    ("RPM", "1075/3 SPD", {"rpm": (1075,), "speeds": 3}),
    ("RPM", "300-1300", {"rpm_range": (300, 1300)}),
    ("Vitesse tr/min", "1 400", {"rpm": (1400,)}),
    ("Speeds", "3", {"speeds": 3}),
    ("Tours/min", "1350", {"rpm": (1350,)}),
    ("Umdr./min", "1350", {"rpm": (1350,)}),
    ("Typ", "PF 71", {"part_number": "PF 71"}),
    ("Typ", "VR 63-4", {"part_number": "VR 63-4"}),
    ("Volts", "\u200f115\u200e", {"volts": "115"}),
    ("Typ", "IP 55", {}),
    ("Protection", "IP54", {}),
    ("Amps", "-5", {}),
    ("Amps", "4.2-4.0", {"amps": (4.2, 4.0)}),
    ("RPM", "1e+300", {}),
    ("HP", "1E308 hp", {}),
    ("Rodamientos", "bolas", {"bearing": "ball"}),
    ("Speeds", "40", {}),
    ("Rotation (LE)", "CCW", {"turn": ("ccw", "lead_end")}),
    ("Rotation (LE)", "rev", {"turn": ("either", None)}),
    ("Rotation", "CW", {"turn": ("cw", None)}),
    ("Rev?", "Y", {"turn": ("either", None)}),
    ("Rev?", "N", {}),
    ("Shaft mm", "19x40", {"shaft_diameter_in": 0.748, "shaft_length_in": 1.5748}),
    ("Dia", "1/2", {"shaft_diameter_in": 0.5}),
    ("Dia", "5.6", {"body_diameter_in": 5.6}),
    ("Dia", "2.2", {}),
    ("Keyed?", "no", {"shaft_keyed": False}),
    ("Double shaft", "yes", {"shaft_ends": 2}),
    ("Amb F", "104", {"ambient_c": 40}),
    ("SF", "1.15", {"service_factor": 1.15}),
    ("SF", "9", {}),
    ("Overload", "none", {"protector": "none"}),
    ("Overload", "auto", {"protector": "auto"}),
    ("Cap", "7.5/370", {"capacitor_uf": 7.5, "capacitor_vac": 370}),
    ("Module", "no", {"module": "without"}),
    ("Module", "FD-M611", {"module_number": "FD-M611"}),
    ("Control", "PWM", {"control_signal": "pwm"}),
    ("Pins", "5, 16", {"plug_pins": (5, 16)}),
    ("Price", "$55", {"price": 55.0, "currency": "USD"}),
    ("Price (EUR)", "55", {"price": 55.0, "currency": "EUR"}),
    ("Price", "1.234,50 €", {"price": 1234.5, "currency": "EUR"}),
    ("Price", "0.00", {}),
    ("Price", "call", {}),
    ("Ship", "free", {"shipping": 0.0}),
    ("Ship", "free over $199", {}),
    ("Ship", "pickup", {}),
    ("Cond", "U", {"condition": "used"}),
    ("Returns", "none", {"return_days": 0}),
    ("Returns (days)", "14", {"return_days": 14}),
    ("Return ship", "buyer", {"return_shipping": "buyer"}),
    ("Warranty (mo)", "6", {"warranty_days": 180}),
    ("Warranty", "12", {}),
    ("Feedback %", "98.7", {"seller_rating_pct": 98.7}),
    ("Feedback", "4.8", {}),
    ("Qty", "3 pcs", {"quantity": 3}),
    ("Mfr", "Fosk & Dray", {"brand": "Fosk & Dray"}),
    ("Mfr", "n/a", {}),
    ("Model", "GS-11", {"part_number": "GS-11"}),
    ("Model", "GS-11, GS-12", {"part_number": "GS-11", "other_numbers": ("GS-12",)}),
    ("Model", "7", {}),
    ("Model", "blower", {}),
    ("Replaces", "SL-16, 7731-04", {"other_numbers": ("SL-16", "7731-04")}),
    ("Type", "3-phase", {"phase": 3}),
    ("Type", "PSC", {"motor_type": "psc"}),
    ("Flats", "round", {"shaft_flats": 0}),
    ("Key?", "3/16", {"shaft_keyed": True}),
    ("XP", "Class I Div 1", {"explosion_proof": True}),
    ("Prot", "impedance", {"protector": "impedance"}),
    ("Leads", "plug", {}),
    ("Leads (in)", "yes", {"leads": True}),
    ("Ship", "15 flat", {"shipping": 15.0}),
    ("Price in USD", "45", {"price": 45.0, "currency": "USD"}),
    ("Feedback", "99.2% (1,204)", {"seller_rating_pct": 99.2}),
    ("Category", "Blower wheels", {"item": "part"}),
    ("Category", "Blower motors", {}),
    ("HP", "1/3?", {}),
    ("HP", "unknown", {}),
]


@pytest.mark.parametrize(("label", "cell", "facts"), ROWS, ids=[f"{row[0]}: {row[1]}" for row in ROWS])
def test_labelled_value(label: str, cell: str, facts: dict[str, Any]) -> None:
    meant = header(label)
    assert meant is not None
    assert dict(read_value(meant, cell)) == facts


def test_decimal_commas_and_points_for_thousands() -> None:
    rpm, amps = header("Drehzahl U/min"), header("Strom A")
    assert rpm is not None
    assert amps is not None
    assert dict(read_value(rpm, "1.400", comma=True)) == {"rpm": (1400,)}
    assert dict(read_value(amps, "3,2/1,85", comma=True)) == {"amps": (3.2, 1.85)}


def test_a_label_allows_its_own_facts_alone_unless_more_is_asked_for() -> None:
    meant = header("FLA")
    assert meant is not None
    assert dict(read_value(meant, "3.1 A at 230 V")) == {"amps": (3.1,)}
    assert dict(read_value(meant, "3.1 A at 230 V", more=True)) == {"amps": (3.1,), "volts": "230"}
