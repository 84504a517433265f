import pytest

from matcher.reading.problem import Problem
from matcher.reading.table import read_table
from matcher.reading.table_layout import sniff
from matcher.reading.table_rows import QUOTED_LINES, split_line, split_rows


@pytest.mark.parametrize(
    ("line", "delimiter", "cells"),
    [
        ("a,b,c", ",", ["a", "b", "c"]),
        ('"a, b",c', ",", ["a, b", "c"]),
        ('"1/2"" shaft",c', ",", ['1/2" shaft', "c"]),
        ('1/2" shaft,c', ",", ['1/2" shaft', "c"]),
        ('"1/2" shaft",c', ",", ['1/2" shaft', "c"]),
        ('"a" ,"b"', ",", ["a", "b"]),
        ("a;;", ";", ["a", "", ""]),
        ("", ",", [""]),
        ('"",""', ",", ["", ""]),
    ],
)
def test_a_line_is_cut_into_cells(line: str, delimiter: str, cells: list[str]) -> None:
    assert split_line(line, delimiter) == (cells, False)


def _rows(text: str, width: int) -> list[tuple[int, str, bool]]:
    return [(row.line, row.cells[0], bool(row.fault)) for row in split_rows(text.split("\n"), ",", width)]


def test_a_quoted_cell_may_run_over_lines() -> None:
    assert _rows('"one\nand two",b,c\nnext,b,c', 3) == [(1, "one\nand two", False), (3, "next", False)]


def test_a_quote_that_never_closes_costs_its_own_row_alone() -> None:
    text = '"never,b,c\nnext,b,c\n"well, quoted",b,c\nlast 5",b,c'
    assert _rows(text, 3) == [
        (1, '"never', True),
        (2, "next", False),
        (3, "well, quoted", False),
        (4, 'last 5"', False),
    ]


def test_a_quote_closed_far_below_is_not_waited_for() -> None:
    text = '"never,b,c\n' + "x\n" * QUOTED_LINES + 'y",b,c'
    assert _rows(text, 3)[0] == (1, '"never', True)


@pytest.mark.parametrize(
    ("lines", "delimiter", "line"),
    [
        (["hp,volts,price", "1/2,115,5"], ",", 1),
        (["Our list, of May; all as is", "hp;volts;price", "1/2;115;5"], ";", 2),
        (["hp\tvolts\tprice", "1/2\t115\t5"], "\t", 1),
        (["sep=;", "hp;volts"], ";", 2),
        (["hp | volts | price", "1/2 | 115 | 5"], "|", 1),
    ],
)
def test_delimiter_and_header_are_found(lines: list[str], delimiter: str, line: int) -> None:
    layout = sniff(lines)
    assert layout is not None
    assert (layout.delimiter, layout.line) == (delimiter, line)


@pytest.mark.parametrize("lines", [[], ["just words"], ["1,2,3", "4,5,6"], ["", ""]])
def test_what_has_no_header_has_no_layout(lines: list[str]) -> None:
    assert sniff(lines) is None


def _read(text: str) -> tuple[list[tuple[str, dict[str, object]]], list[Problem]]:
    problems: list[Problem] = []
    found = [
        (record.id, record.facts.said()) for record in read_table(text.split("\n"), "t", problems.append)
    ]
    return found, problems


def test_numbers_count_data_rows_broken_ones_included() -> None:
    found, problems = _read("hp,volts\n1/2,115\n1/2,115,9\nShelf two,\n,\nTotal,\n1/3,230")
    assert [name for name, _ in found] == ["t#1", "t#3"]
    assert [problem.where for problem in problems] == ["t, line 3"]


def test_a_single_row_is_named_like_its_file() -> None:
    assert _read("hp,volts\n1/2,115")[0] == [("t", {"power_hp": 0.5, "volts": "115"})]


def test_a_column_named_id_names_the_records() -> None:
    assert [name for name, _ in _read("id,hp,volts\nA7,1/2,115\n,1/3,230")[0]] == ["A7", "t#2"]


def test_empty_cells_beyond_the_header_are_no_fault() -> None:
    found, problems = _read("hp,volts\n1/2,115,,\n1/3,230,, ")
    assert (len(found), problems) == (2, [])


def test_the_asked_price_goes_before_a_plain_one_and_others_never_count() -> None:
    found, _ = _read("item,list price,price,ask,bid\nmotor,90,80,70,5\nmotor,90,80,,5\nmotor,90,,,5")
    assert [facts.get("price") for _, facts in found] == [70.0, 80.0, None]


def test_a_second_table_below_has_its_own_header() -> None:
    found, _ = _read("hp,volts,price\n1/2,115,5\n\nmotor hp,rpm,amps\n1/3,1075,3")
    assert found[1] == ("t#2", {"power_hp": 0.3333, "rpm": [1075], "amps": [3.0]})


def test_a_row_and_its_title_that_contradict_make_a_conflict() -> None:
    [record] = read_table(["title,hp", "Motor 1/3 HP,1/2"], "t", lambda _: None)
    assert [conflict.field for conflict in record.conflicts] == ["power_hp"]
    assert record.facts.power_hp is None


@pytest.mark.parametrize("place", ["QZ-881", "B-1", "S-2-4", "R12", "A-3", "H7"])
def test_what_stands_alone_under_a_strange_header_is_no_number_of_the_maker(place: str) -> None:
    [(_, found)] = _read(f"Mfg.,Cat #,H.P.,Rack zz\nHalvorne,QX-766B,1/2,{place}")[0]
    assert found == {"brand": "Halvorne", "part_number": "QX-766B", "power_hp": 0.5}
    [(_, without)] = _read(f"Mfg.,H.P.,V,Rack zz\nHalvorne,1/2,115,{place}")[0]
    assert "part_number" not in without


def test_a_number_under_its_header_goes_before_one_in_the_text() -> None:
    [(_, found)] = _read("Mfg.,Cat #,H.P.,Wibble\nHalvorne,QX-766B,1/2,stand-in QZ-881 in store")[0]
    assert found["part_number"] == "QX-766B"


def test_without_any_header_lines_are_texts_and_that_is_told() -> None:
    found, problems = _read("GS-1 motor 1/2 HP 115V,$5\nGS-2 motor 1/3 HP 230V,$6")
    assert [facts["power_hp"] for _, facts in found] == [0.5, 0.3333]
    assert "no line names its columns" in problems[0].why


@pytest.mark.parametrize(
    ("low", "high", "facts"),
    [("300", "1300", {"rpm_range": [300, 1300]}), ("", "1050", {"rpm": [1050]}), ("300", "", {})],
)
def test_lowest_and_highest_speed_make_a_range(low: str, high: str, facts: dict[str, object]) -> None:
    [(_, found)] = _read(f"hp,min rpm,max rpm\n1/2,{low},{high}")[0]
    assert found == {"power_hp": 0.5} | facts


def test_a_view_in_a_column_of_its_own_belongs_to_the_turn() -> None:
    [(_, found)] = _read("hp,rotation,viewed from\n1/2,CW,lead end")[0]
    assert found == {"power_hp": 0.5, "turn": "cw", "seen_from": "lead_end"}


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        pytest.param(
            "Brand,Model,Electrical,,Price\n,,HP,Volts,USD\nArdwelm,AW-4410,1/3,208-230,45",
            {
                "part_number": "AW-4410",
                "power_hp": 0.3333,
                "volts": "208-230",
                "price": 45,
                "currency": "USD",
            },
            id="merged headers over a second line",
        ),
        pytest.param(
            "Brand,HP,Price\nArdwelm,1/3,45\nTessary,1/2,60",
            {"power_hp": 0.3333, "price": 45},
            id="a first row is no second header",
        ),
        pytest.param(
            "Parameter,Motor A,Motor B\nModel,AW-4410,TS-90\nHP,1/3,1/2\nVolts,230,115\nRPM,1075,825\nPrice,$45,$60",
            {"part_number": "AW-4410", "power_hp": 0.3333, "volts": "230", "rpm": [1075], "price": 45},
            id="labels down the side",
        ),
        pytest.param(
            "HP;1/3\nSpannung;230\nDrehzahl;1.390\nPreis;1.045,50 €",
            {"power_hp": 0.3333, "volts": "230", "rpm": [1390], "price": 1045.5},
            id="one motor, a label a line",
        ),
        pytest.param(
            'Model,Brand,HP\n"=HYPERLINK(""http://a.example/1"",""AW-4410"")",Ardwelm,1/3\n=B2&C2,Tessary,1/2',
            {"part_number": "AW-4410", "brand": "Ardwelm"},
            id="the text of a link",
        ),
        pytest.param(
            "Model,Brand,HP\n=B2&C2,=CONCAT(A1),=1/4\nAW-1,Ardwelm,1/2",
            {"part_number": None, "brand": None, "power_hp": None},
            id="a formula is nothing",
        ),
        pytest.param(
            "No.,Brand,HP\nAW-4410,Ardwelm,1/3", {"part_number": "AW-4410"}, id="`No.` beside a maker"
        ),
        pytest.param("No.,Brand,HP\n1045,Ardwelm,1/3", {"part_number": None}, id="rows that are counted"),
        pytest.param(
            "No.,Brand,Model,HP\nR-1045,Ardwelm,AW-4410,1/3",
            {"part_number": "AW-4410"},
            id="`No.` beside a model is a row's",
        ),
        pytest.param(
            "Model,New Price,Our $,Qty per\nAW-4410,189.00,79.50,2",
            {"price": 79.5, "currency": "USD", "quantity": None},
            id="several prices, a bill of materials",
        ),
        pytest.param(
            "Brand,Model,HP\nUnbranded,AW-4410,1/3", {"brand": None, "part_number": "AW-4410"}, id="no maker"
        ),
        pytest.param(
            "Titel;Leistung kW\nGebläsemotor VG 71-4;0,37",
            {"brand": None, "part_number": "VG 71-4", "power_hp": 0.4962},
            id="a word for the thing is no maker",
        ),
        pytest.param(
            "Model,RPM,Condition\nAW-4410,RPM var. 300-1300,open_box",
            {"rpm_range": [300, 1300], "condition": "open_box"},
            id="a range in words, a value as programs write it",
        ),
    ],
)
def test_kinds_of_tables(text: str, facts: dict[str, object]) -> None:
    said = _read(text)[0][0][1]
    for field, value in facts.items():
        assert said.get(field) == (pytest.approx(value, abs=1e-3) if isinstance(value, float) else value), (
            field
        )


@pytest.mark.parametrize(
    ("head", "cell", "facts"),
    [
        ("Mfr / Mod.", "Oxterby OX 211A14", ("Oxterby", "OX 211A14")),
        ("Make & Model", "Tessmoor TE 434B22", ("Tessmoor", "TE 434B22")),
        ("Make/Model", "Kestrow KE-50", ("Kestrow", "KE-50")),
        ("Mfr / Model", "Ravensip RA 182X47", ("Ravensip", "RA 182X47")),
        ("Model", "Mollinger MO 413A19", ("Mollinger", "MO 413A19")),
        ("Model", "GR 825X87", (None, "GR 825X87")),
        ("Model", "DB 33 115", (None, "DB 33 115")),
        ("Mfr / Model", "Oxterby Blower", (None, None)),
        ("Brand / Model", "Oxterby 1/2 HP", ("Oxterby", None)),
        ("Brand / Model", "Oxterby", ("Oxterby", None)),
    ],
)
def test_a_number_with_a_blank_fills_its_cell(
    head: str, cell: str, facts: tuple[str | None, str | None]
) -> None:
    (record,) = read_table([f"{head},HP,Volts", f"{cell},1/2,115"], "t", _refuse)
    assert (record.facts.brand, record.facts.part_number) == facts
    assert (record.facts.rpm, record.facts.frame, record.facts.enclosure) == (None, None, None)
    assert head not in record.title


def test_the_maker_of_another_column_is_no_part_of_the_number() -> None:
    lines = ["Make,Model,HP", "Oxterby,Oxterby OX 211A14,1/2", "Oxterby,Tessmoor TE 434B22,1/2"]
    found = [record.facts.part_number for record in read_table(lines, "t", _refuse)]
    assert found == ["OX 211A14", "Tessmoor TE 434B22"]


def test_a_header_may_run_over_lines() -> None:
    lines = ['"Part', 'Number","Motor', 'HP",Price', '"QD-7","1/2",40', '"QD-8","1/3",30']
    found = [record.facts.said() for record in read_table(lines, "t", _refuse)]
    assert found == [
        {"part_number": "QD-7", "power_hp": 0.5, "price": 40.0},
        {"part_number": "QD-8", "power_hp": 0.3333, "price": 30.0},
    ]


def test_a_second_line_of_headers_goes_on_with_the_first() -> None:
    lines = ["Model,Shaft,,Rotation", ",dia in,len in,(lead end)", "QD-7,1/2,5,CW"]
    (record,) = read_table(lines, "t", _refuse)
    assert record.facts.said() == {
        "part_number": "QD-7",
        "turn": "cw",
        "seen_from": "lead_end",
        "shaft_diameter_in": 0.5,
        "shaft_length_in": 5.0,
    }


def test_the_power_in_hp_is_the_rating_and_kilowatts_its_rounding() -> None:
    (record,) = read_table(["Model,HP,kW", "QD-7,1/4,0.18"], "t", _refuse)
    assert record.facts.power_hp == 0.25


def _refuse(problem: Problem) -> None:
    raise AssertionError(problem)


@pytest.mark.parametrize("words", ["Subtotal", "Shipping", "Sales tax", "MwSt", "Grand total"])
def test_sums_below_are_no_rows(words: str) -> None:
    found, problems = _read(f"Model,HP,Price\nAW-1,1/3,45\nAW-2,1/2,60\n,{words},105")
    assert [name for name, _ in found] == ["t#1", "t#2"]
    assert not problems


@pytest.mark.parametrize(
    ("table", "note"),
    [
        (
            "Cat No;H.P.;V;Wibble;Gronk;Blank\nAB-12;1/3;115;110,00;0;\nAB-13;1/2;230;;4;",
            (
                "these columns are not understood: Wibble, Gronk; no price was read in any row; rename what"
                " matters as price, quantity, hp ..."
            ),
        ),
        (
            "hp,volts,price,Wibble\n1/2,115,40,x\n1/3,230,,",
            "this column is not understood: Wibble; rename what matters as price, quantity, hp ...",
        ),
        ("hp,volts,price,Wibble\n1/2,115,40,\n1/3,230,,", ""),
        ("hp,volts,price,Wibble\n1/2,115,40,\n1/3,230,,belly band mount", ""),
        ("hp,volts,weight\n1/2,115,40\n1/3,230,41", ""),
    ],
    ids=[
        "without a price",
        "with one",
        "an empty column",
        "one that is read as text",
        "a known one that gives nothing",
    ],
)
def test_a_column_that_is_not_understood_is_named(table: str, note: str) -> None:
    found, problems = _read(table)
    assert len(found) == 2
    assert [problem.why for problem in problems] == ([note] if note else [])
    assert all(problem.is_note for problem in problems)


def test_of_many_strange_columns_the_first_are_named() -> None:
    known = [
        "hp",
        "volts",
        "rpm",
        "price",
        "brand",
        "model",
        "phase",
        "hz",
        "frame",
        "amps",
        "sf",
        "ins",
        "amb",
        "encl",
        "qty",
        "cond",
    ]
    strange = [f"{sign} wibble {'xyz ' * 12}" for sign in "abcdefghijklmno"]
    row = [
        "1/2",
        "115",
        "1075",
        "40",
        "Corvash",
        "CV-1",
        "1",
        "60",
        "48Y",
        "5",
        "1.15",
        "B",
        "40",
        "OAO",
        "1",
        "used",
    ]
    _, problems = _read("\n".join([",".join([*known, *strange]), *[",".join([*row, *["x"] * 15])] * 2]))
    (note,) = problems
    assert "and 3 more; " in note.why
    assert len(note.why) < 700


@pytest.mark.parametrize(
    ("sign", "cells", "facts"),
    [
        ("Ø", ("1", "3"), {"phase": 1}),
        ("Φ", ("3", "3"), {"phase": 3}),
        ("ø", ("1ø", ""), {"phase": 1}),
        ("Ø", ("1", "5/8"), {"shaft_diameter_in": 1.0}),
        ("Ø mm", ("1", "3"), {}),
        ("Ø", ("5.6", "5.6"), {"body_diameter_in": 5.6}),
    ],
)
def test_a_bare_diameter_sign_over_one_and_three_is_the_phase(
    sign: str, cells: tuple[str, str], facts: dict[str, object]
) -> None:
    rows = [f"motor QU-{k},460,{cell},1140" for k, cell in enumerate(cells, 900)]
    first, _ = read_table([f"Item,V,{sign},RPM", *rows], "list", lambda _problem: None)
    told = {"phase", "shaft_diameter_in", "body_diameter_in"}
    assert {field: value for field, value in first.facts.said().items() if field in told} == facts


@pytest.mark.parametrize(
    ("header", "cell", "field", "value"),
    [
        ("Net ea", "110.00", "price", 110.0),
        ("Yr Cost", "$46", "price", 46.0),
        ("O/H", "3", "quantity", 3),
        ("Mot Type", "PSC", "motor_type", "psc"),
        ("Net wt", "11", "price", None),
    ],
)
def test_a_counter_s_abbreviations_of_price_and_stock(
    header: str, cell: str, field: str, value: object
) -> None:
    found, _ = _read(f"Cat No;H.P.;V;{header}\nAB-12;1/3;115;{cell}\nAB-13;1/2;230;{cell}")
    assert found[0][1].get(field) == value
