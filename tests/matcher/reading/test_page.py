"""What a page gives, rule by rule: each case is the smallest page that shows it."""

from typing import Any

import pytest

from matcher.reading.page import read_page
from matcher.reading.page_tree import DEEPEST, tree

HEAD = "<h1>Gullstead GS-11 blower motor 1/2 HP</h1>"
OWN: dict[str, Any] = {"brand": "Gullstead", "part_number": "GS-11", "power_hp": 0.5}
PAID: dict[str, Any] = {"price": 55.0, "currency": "USD"}


def _data(offer: str = "", product: str = "") -> str:
    return (
        '<script type="application/ld+json">{"@context":"https://schema.org","@type":"Product",'
        f'"name":"Gullstead GS-11"{product},"offers":{{"@type":"Offer"{offer}}}}}</script>'
    )


NOTHING_FROM = [
    "<div><div class=x><a href=/1>Motor 3/4 HP 230V</a> $91</div><div class=x><a href=/2>Motor 1 HP</a> $99</div></div>",
    "<div class=x><a href=/1>Fan motor 3/4 HP 230 V</a> was $91</div>",
    "<ul><li><a href=/1>Fan motor 3/4 HP 230V</a><li><a href=/2>Fan motor 1 HP 460V</a></ul>",
    "<h2>You may also like</h2><p>Motor 3/4 HP 230 V, CWLE</p>",
    "<div><h3>Recently viewed</h3></div><div><p>Motor 3/4 HP</p></div>",
    "<section aria-label='Related items'><p>Motor 3/4 HP</p></section>",
    "<p><b>Customer reviews</b></p><p>Mine ran on 230 V at 3 amps</p>",
    "<div class='product-reviews'><p>Mine ran on 230 V</p></div>",
    "<div itemprop=review itemscope itemtype=http://schema.org/Review>230 V</div>",
    "<h2>Questions and answers</h2><dl><dt>Volts?</dt><dd>230</dd></dl>",
    "<div class='qa-list'><p>Is it 230 V?</p><p>Yes, 230 V</p></div>",
    "<article class='post reply'><p>I have a 230 V one</p></article>",
    "<p hidden>230 V</p>",
    "<p style='color:red; display : none'>230 V</p>",
    "<p aria-hidden=true>230 V</p>",
    "<template><p>230 V</p></template><noscript>230 V</noscript>",
    "<style>.gone, #off {display:none} @media print {.x{color:red}}</style><p class=gone>230 V</p><p id=off>3 phase</p>",
    "<div class='sr-only'>230 V</div><dialog>230 V</dialog>",
    "<select><option>115 V</option><option>230 V</option></select>",
    "<select><option selected disabled>Choose volts</option><option>230 V</option></select>",
    "<label><input type=radio> 230 V</label><input type=radio> 3 phase <br>",
    "<input type=checkbox id=a><label for=a>Capacitor 5 MFD 440 VAC</label>",
    "<ul class=swatches><li>115 V</li><li>230 V</li></ul>",
    "<button>3/4 HP</button>",
    "<nav>230 V motors</nav><footer>3 phase motors</footer><div class=breadcrumbs>1 HP</div>",
    "<div class='cookie-banner'>230 V</div><div role=dialog>Save $10 today</div>",
    "<p>List price: $80.00</p><p>Current bid: $20.00</p>",
    "<s>$80.00</s> <del>$81</del> <strike>$82</strike> <span class=old-price>$83</span>",
    "<style>.o{text-decoration: line-through}</style><b class=o>$80</b>",
    "<p>$55.00 - $75.00</p>",
    "<table><tr><td>Wheel size</td><td>10 x 8</td></tr><tr><td>Locked rotor amps</td><td>20</td></tr></table>",
]


@pytest.mark.parametrize("markup", NOTHING_FROM)
def test_gives_nothing(markup: str) -> None:
    [record] = read_page(f"<body>{HEAD}<p>Hz: 60</p>{markup}</body>", "p")
    assert record.facts.said() == OWN | {"hertz": "60"}
    assert record.conflicts == ()


GIVES = [
    ("<p><del>$80</del> <ins>$55</ins></p>", PAID),
    ("<p>Was $80.00 Now $55.00</p>", PAID),
    ("<p>Price: $55.00 (was $79)</p>", PAID),
    ("<button>Buy it now for $55.00</button>", PAID),
    ("<div><span>$</span><span>54</span><sup>99</sup></div>", {"price": 54.99, "currency": "USD"}),
    ("<dl><dt>Mounting</dt><dd>band</dd><dd>studs</dd></dl>", {"mounting": ["band", "studs"]}),
    ("<dl><div><dt>Volts</dt><dd>115</dd></div></dl>", {"volts": "115"}),
    ("<table><tr><th>Volts<td>115<tr><th>RPM<td>1075</table>", {"volts": "115", "rpm": [1075]}),
    ("<table><tr><td>Volts<td>115<td>RPM<td>1075</table>", {"volts": "115", "rpm": [1075]}),
    ("<table><tr><td>Shaft diameter<td>12.7<td>mm</table>", {"shaft_diameter_in": 0.5}),
    ("<table><tr><th>Volts<th>RPM<th>FLA<tr><td>115<td>1075<td>7.6</table>", {"volts": "115", "rpm": [1075], "amps": [7.6]}),
    ("<div><span class=k>Volts</span><span class=v>115</span></div>", {"volts": "115"}),
    ("<div><div>Volts</div><div>115</div><div>RPM</div><div>1075</div></div>", {"volts": "115", "rpm": [1075]}),
    ("<ul><li><b>Volts</b> 115</li><li><b>RPM:</b> 1075</li></ul>", {"volts": "115", "rpm": [1075]}),
    ("<p>Volts: 115<br>RPM: 1075", {"volts": "115", "rpm": [1075]}),
    ("<p>Shaft dia: 1<sup>1</sup>/<sub>8</sub> in.", {"shaft_diameter_in": 1.125}),
    ("<p>Amps&colon; 7&period;6 &amp; RPM 1075</p>", {"amps": [7.6], "rpm": [1075]}),
    ("<select><option>230 V</option><option selected>115 V</option></select>", {"volts": "115"}),
    ("<label><input type=radio> 230 V</label><label><input type=radio checked> 115 V</label>", {"volts": "115"}),
    ("<ul class=options><li>230 V</li><li class=is-active>115 V</li></ul>", {"volts": "115"}),
    ("<div role=radiogroup><a aria-checked=false>230 V</a><a aria-checked=true>115 V</a></div>", {"volts": "115"}),
    ("<h3>Seller's comments</h3><p>115 V</p><h3>Customer comments</h3><p>230 V</p>", {"volts": "115"}),
    ("<h2>Reviews</h2><p>230 V</p><h2>Specifications</h2><p>115 V</p>", {"volts": "115"}),
    ("<table><tr><td>Seller<td>harlan_m (99.1% positive feedback)</table>", {"seller_rating_pct": 99.1}),
]  # fmt: skip


@pytest.mark.parametrize(("markup", "facts"), GIVES, ids=[row[0] for row in GIVES])
def test_gives(markup: str, facts: dict[str, Any]) -> None:
    [record] = read_page(f"<body>{HEAD}{markup}</body>", "p")
    assert record.facts.said() == OWN | facts
    assert record.conflicts == ()


SAID_BY_DATA = [
    (_data(',"price":"55.00","priceCurrency":"USD"'), PAID),
    (_data(',"price":55,"priceCurrency":"CAD"'), {"price": 55.0, "currency": "CAD"}),
    (_data(',"priceSpecification":[{"price":"80","priceType":"https://schema.org/ListPrice"},{"price":"55","priceCurrency":"USD"}]'), PAID),
    (_data(',"itemCondition":"https://schema.org/RefurbishedCondition"'), {"condition": "rebuilt"}),
    (_data(',"itemCondition":{"@id":"schema:DamagedCondition"}'), {"condition": "for_parts"}),
    (_data(',"itemCondition":"Used - tested"'), {"condition": "used_tested"}),
    (_data(',"itemCondition":["https://schema.org/UsedCondition"]'), {"condition": "used"}),
    (_data(',"itemCondition":["UsedCondition","NewCondition"]'), {}),
    (_data(',"hasMerchantReturnPolicy":{"returnFees":["RestockingFees","ReturnFeesCustomerResponsibility"]}'), {"return_shipping": "buyer"}),
    (_data(',"shippingDetails":{"shippingRate":{"value":"9.5","currency":"USD"}}'), {"shipping": 9.5}),
    (_data(',"shippingDetails":[{"shippingRate":{"value":9}},{"shippingRate":{"value":30}}]'), {}),
    (_data(',"shippingDetails":{"doesNotShip":true,"shippingRate":{"value":9}}'), {}),
    (_data(',"hasMerchantReturnPolicy":{"merchantReturnDays":30,"returnFees":"https://schema.org/FreeReturn"}'), {"return_days": 30, "return_shipping": "seller"}),
    (_data(',"hasMerchantReturnPolicy":{"returnPolicyCategory":"https://schema.org/MerchantReturnNotPermitted"}'), {"return_days": 0}),
    (_data(',"hasMerchantReturnPolicy":{"merchantReturnDays":"2026-12-24","restockingFee":{"value":15}}'), {}),
    (_data(',"hasMerchantReturnPolicy":{"restockingFee":15,"returnFees":"RestockingFees"}'), {"restocking_pct": 15.0}),
    (_data(',"inventoryLevel":{"value":4}'), {"quantity": 4}),
    (_data("", ',"mpn":"GS-11","model":"GS-11B","sku":"0077"'), {"other_numbers": ["GS-11B"]}),
    (_data("", ',"additionalProperty":[{"name":"Volts","value":115},{"name":"Keyed","value":false}]'), {"volts": "115", "shaft_keyed": False}),
    (_data("", ',"additionalProperty":{"name":"Shaft diameter","value":12.7,"unitCode":"MMT"}'), {"shaft_diameter_in": 0.5}),
    (_data("", ',"additionalProperty":[{"name":"Body length","value":"5.5 in"},{"name":"Weight","value":"9 lb"}]'), {"body_length_in": 5.5}),
    (_data("", ',"isRelatedTo":{"@type":"Product","name":"Motor 230 V","offers":{"price":9}}'), {}),
    (_data("", ',"description":"115 V, 60 Hz"'), {"volts": "115", "hertz": "60"}),
    (_data(',"price":"0.00","priceCurrency":"USD"'), {}),
    ('<script type="application/ld+json">{"@type":"Product","name":"x",}</script>', {}),
    ('<script type="application/ld+json">{"@type":"FAQPage","mainEntity":[{"name":"230 V?"}]}</script>', {}),
]  # fmt: skip


@pytest.mark.parametrize(("script", "facts"), SAID_BY_DATA, ids=[str(i) for i in range(len(SAID_BY_DATA))])
def test_schema_org_data(script: str, facts: dict[str, Any]) -> None:
    [record] = read_page(f"<body>{script}{HEAD}</body>", "p")
    assert record.facts.said() == OWN | facts
    assert record.conflicts == ()


@pytest.mark.parametrize(
    ("script", "markup", "fields"),
    [
        (_data(',"price":"60","priceCurrency":"USD"'), "<p>$55.00</p>", ["price"]),
        (_data(',"price":"55","priceCurrency":"EUR"'), "<p>£55.00</p>", ["currency"]),
        (_data(',"itemCondition":"NewCondition"'), "<p>Condition: used</p>", ["condition"]),
        (_data(',"hasMerchantReturnPolicy":{"merchantReturnDays":30}'), "<p>No returns</p>", ["return_days"]),
        (_data(',"shippingDetails":{"shippingRate":{"value":9}}'), "<p>Free shipping</p>", ["shipping"]),
        (_data("", ',"mpn":"GS-12"'), "<p>Model: GS-11</p>", ["part_number"]),
        (_data("", ',"brand":"Oxmarrow"'), "<p>Brand: Gullstead</p>", ["brand"]),
        (_data("", ',"additionalProperty":{"name":"Volts","value":"230"}'), "<p>Volts: 115</p>", ["volts"]),
        (_data("", ',"additionalProperty":{"name":"HP","value":"1/3"}'), "", ["power_hp"]),
    ],
)
def test_data_and_text_that_contradict(script: str, markup: str, fields: list[str]) -> None:
    [record] = read_page(f"<body>{script}{HEAD}{markup}</body>", "p")
    assert [conflict.field for conflict in record.conflicts] == fields
    assert not {*record.facts.said()} & {*fields}


@pytest.mark.parametrize(
    ("offer", "markup", "facts"),
    [
        ('"price":"55.00","priceCurrency":"USD"', "<p>$55</p>", PAID),
        ('"price":"55","priceCurrency":"CAD"', "<p>$55.00</p>", {"price": 55.0, "currency": "CAD"}),
        ('"itemCondition":"UsedCondition"', "<p>Used, tested on the bench</p>", {"condition": "used_tested"}),
        ('"itemCondition":"UsedCondition"', "<p>For parts or repair</p>", {"condition": "for_parts"}),
        ('"price":"31","priceCurrency":"USD"', "<p>Current bid: US $31.00 (6 bids)</p>", {"currency": "USD"}),
    ],
)
def test_data_and_text_that_agree(offer: str, markup: str, facts: dict[str, Any]) -> None:
    [record] = read_page(f"<body>{_data(',' + offer)}{HEAD}{markup}</body>", "p")
    assert record.facts.said() == OWN | facts
    assert record.conflicts == ()


CARD = "<div class=c><h3>{0} motor 1/2 HP</h3><p>{1}</p></div>"
ONE, TWO = CARD.format("Gullstead GS-1", "$40"), CARD.format("Oxmarrow OX-2", "$30")
SEVERAL = {
    "results": f"<h1>Search results</h1><div>{ONE}{TWO}</div>",
    "results for a rating": (
        "<h1>Results for blower motor 1/2 hp</h1><p>2 from $30</p>"
        "<ul><li><a href=/1>Gullstead GS-1 motor 1/2 HP</a> $40"
        "<li><a href=/2>Oxmarrow OX-2 motor 1/2 HP</a> $30</ul>"
    ),
    "rows of cards": f"<div><div class=row>{ONE}</div><div class=row>{TWO}</div></div>",
    "layout by a table": (
        "<table><tr><td><a href=/1>Gullstead GS-1 motor 1/2 HP</a><td>$40"
        "<tr><td><a href=/2>Oxmarrow OX-2 motor 1/2 HP</a><td>$30</table>"
    ),
    "table": (
        "<h1>Stock</h1><table><tr><th>Brand<th>Model<th>HP<th>Ask $<tr><td>Gullstead<td>GS-1<td>1/2<td>40"
        "<tr><td>Oxmarrow<td>OX-2<td>1/2<td>30</table>"
    ),
    "headings alone": (
        "<h1>My motors</h1><h2>Gullstead GS-1 motor 1/2 HP</h2><p>$40</p>"
        "<h2>Oxmarrow OX-2 motor 1/2 HP</h2><p>$30</p>"
    ),
    "lines": "<p>Gullstead GS-1 motor 1/2 HP $40<br>Oxmarrow OX-2 motor 1/2 HP $30</p>",
    "data alone": (
        '<script type="application/ld+json">['
        '{"@type":"Product","name":"Gullstead GS-1 motor 1/2 HP","offers":{"price":40,"priceCurrency":"USD"}},'
        '{"@type":"Product","name":"Oxmarrow OX-2 motor 1/2 HP","offers":{"price":30,"priceCurrency":"USD"}}'
        "]</script><h1>Motors</h1>"
    ),
    "data by link": (
        '<script type="application/ld+json">{"@type":"ItemList","itemListElement":['
        '{"item":{"@type":"Product","url":"/i/1001","name":"x","brand":"Gullstead","mpn":"GS-1"}},'
        '{"item":{"@type":"Product","url":"/i/1002","name":"y","brand":"Oxmarrow","mpn":"OX-2"}}]}</script>'
        "<ul><li><a href=/i/1001>Blower motor 1/2 HP</a> $40<li><a href=/i/1002>Blower motor 1/2 HP</a> $30</ul>"
    ),
    "microdata": (
        "<div itemscope itemtype=http://schema.org/Product><b itemprop=name>Gullstead GS-1 motor 1/2 HP</b> $40</div>"
        "<div itemscope itemtype=http://schema.org/Product><b itemprop=name>Oxmarrow OX-2 motor 1/2 HP</b> $30</div>"
    ),
}


@pytest.mark.parametrize("page", SEVERAL.values(), ids=SEVERAL)
def test_a_page_of_several_gives_each_in_reading_order(page: str) -> None:
    found = read_page(f"<body>{page}</body>", "p.html")
    assert [record.id for record in found] == ["p.html#1", "p.html#2"]
    assert [record.facts.said() for record in found] == [
        {"brand": "Gullstead", "part_number": "GS-1", "power_hp": 0.5, "price": 40.0, "currency": "USD"},
        {"brand": "Oxmarrow", "part_number": "OX-2", "power_hp": 0.5, "price": 30.0, "currency": "USD"},
    ]


def test_marks_of_data_point_into_the_text_below_what_is_seen() -> None:
    script = _data(',"price":"55"')
    [record] = read_page(f"<body>{script}{HEAD}<p>115 V</p></body>", "p")
    mark = record.where["price"]
    assert record.text[slice(*mark.span)] == mark.said == "price: 55"
    assert record.where["volts"].said == "115 V"


def test_the_tree_is_never_deep_and_keeps_its_text() -> None:
    root = tree("<div>" * 5000 + "low" + "<b>" * 5000 + "down")
    assert max(sum(1 for _ in element.ancestors()) for element in root.walk()) <= DEEPEST + 1
    assert root.text() == "low down"


@pytest.mark.parametrize("opening", ["<b a={0}>", "<font a={0}>", "<i a={0}>"])
def test_unclosed_formatting_does_not_multiply(opening: str) -> None:
    page = "<p>" + "".join(opening.format(number) for number in range(1000)) + "</p>" + "<p>x" * 1000
    assert sum(1 for _ in tree(page).walk()) < 20_000


@pytest.mark.parametrize(
    ("markup", "facts"),
    [
        (
            "<h1>Fan motor 1/3 HP</h1><dl><dt>Brand</dt><dd>=CONCAT(A1,B2)</dd><dt>Volts</dt><dd>115</dd></dl>",
            {"power_hp": 0.3333, "volts": "115"},
        ),
        (
            '<h1>Fan motor 1/3 HP</h1><dl><dt>Model</dt><dd>=HYPERLINK("a.html","AW-4410")</dd></dl>',
            {"power_hp": 0.3333, "part_number": "AW-4410"},
        ),
        (
            "<h1>Fan motor 1/3 HP</h1><table><tr><td>Condition</td><td>open_box</td></tr></table>",
            {"power_hp": 0.3333, "condition": "open_box"},
        ),
    ],
)
def test_values_as_programs_write_them(markup: str, facts: dict[str, Any]) -> None:
    [record] = read_page(f"<html><body>{markup}</body></html>", "page.html")
    said = record.facts.said()
    assert said == {
        name: pytest.approx(v, abs=1e-3) if isinstance(v, float) else v for name, v in facts.items()
    }


SPEEDS = (
    "<tr><td>High (black)</td><td>1/2</td><td>1075</td><td>7.2</td></tr>"
    "<tr><td>Low (red)</td><td>1/4</td><td>825</td><td>3.9</td></tr>"
)
SUPPLIES = "<tr><td>115</td><td>7.2</td><td>60</td></tr><tr><td>230</td><td>3.6</td><td>60</td></tr>"


@pytest.mark.parametrize(
    ("table", "facts"),
    [
        (
            f"<tr><th>Speed</th><th>HP</th><th>RPM</th><th>Amps</th></tr>{SPEEDS}",
            {"power_hp": 0.5, "rpm": [1075, 825], "speeds": 2, "amps": [7.2, 3.9]},
        ),
        (
            f"<tr><th>Volts</th><th>Amps</th><th>Hz</th></tr>{SUPPLIES}",
            {"volts": "115/230", "amps": [7.2, 3.6], "hertz": "60"},
        ),
        (
            f"<tr><th>Model</th><th>HP</th><th>RPM</th><th>Amps</th></tr>{SPEEDS.replace('High', 'AW-4420')}",
            {},
        ),
        ("<tr><th>Volts</th><th>HP</th><th>Hz</th></tr><tr><td>115</td><td>1/2</td><td>60</td></tr>" * 2, {}),
    ],
    ids=["speeds", "supplies", "several motors", "no two supplies"],
)
def test_rows_of_one_motor(table: str, facts: dict[str, Any]) -> None:
    page = f"<html><body><h1>Ardwelm AW-4410 blower motor</h1><table>{table}</table><p>$95</p></body></html>"
    said = read_page(page, "page.html")[0].facts.said()
    given = {"brand", "part_number", "price", "currency"}
    assert {name: value for name, value in said.items() if name not in given} == facts


def test_products_that_a_heading_has_in_common_are_several() -> None:
    data = ",".join(
        f'{{"@type":"Product","url":"/p/{n}","name":"Halvane HV-{n}R rebuilt blower motor","offers":{{"price":"{n}"}}}}'
        for n in (44, 66)
    )
    cards = "".join(
        f'<li><h3><a href="/p/{n}">Halvane HV-{n}R rebuilt blower motor</a></h3><p>1/3 HP 115 V</p>${n}.00</li>'
        for n in (44, 66)
    )
    page = (
        f'<script type="application/ld+json">[{data}]</script><h1>Rebuilt blower motors</h1><ul>{cards}</ul>'
    )
    assert [record.facts.price for record in read_page(page, "p")] == [44.0, 66.0]


def test_two_labels_on_a_line_are_two_lines() -> None:
    page = "<h1>Blower motor 1/2 HP</h1><p>Make: Halvane — Mfr. no.: HV-44</p>"
    (record,) = read_page(page, "p")
    assert (record.facts.brand, record.facts.part_number) == ("Halvane", "HV-44")


def test_a_line_that_leads_to_other_goods_says_nothing() -> None:
    page = "<h1>Blower motor Halvane HV-44</h1><p>115 V, 1/2 HP</p><p>You may also like: Halvane HV-66, 230 V</p>"
    (record,) = read_page(page, "p")
    assert record.facts.volts == "115"
