"""Names and lists of values in rules: whether they are stated is all that a rule can ask of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.check import check_read
from checker.engine.image import Cache
from checker.plan.reader import plan_from_text
from tests.ruleset.writing import write_set

ASKS = """\
topic: names
about: Names.

lumber:
  - {{id: pine, bending: 900 psi, shear: 150 psi, bearing: 500 psi, stiffness: 1400 ksi, stiffness_low: 510 ksi, edition: X, cite: X, basis: common practice, known: read}}

rules:
  - id: named
    title: Named
    trade: {trade}
    for: {kind}
    asks: {{{name}: {{stated: true}}}}
    cite: common practice, no source
    basis: common practice
    known: read
    severity: correction
    says: It is stated.
    decides: building official
    sheet: framing plans
    due: application
    examples:
      - meets: {{{name}: {value}}}
      - cannot tell: {{}}
"""  # noqa: E501
PLANS = {
    "member": "framing: {members: [{id: a, status: new%s}]}",
    "flight": "stairs: [{id: s, status: new, flights: [{id: a%s}]}]",
}


@pytest.mark.parametrize(
    ("kind", "trade", "name", "value"),
    [("member", "framing", "lumber", "pine"), ("flight", "stairs", "measured_risers", "[7 in, 7 in]")],
)
def test_whether_it_is_stated(tmp_path: Path, kind: str, trade: str, name: str, value: str) -> None:
    folder = write_set(tmp_path, "names", names=ASKS.format(kind=kind, trade=trade, name=name, value=value))
    found = []
    for said in ("", f", {name}: {value}"):
        plan = f"plan: A\nrules: {folder}\n{PLANS[kind] % said}\n"
        result = check_read(plan_from_text(plan), cache=Cache(tmp_path / "cache"))
        found += [each.verdict for each in result.findings if each.rule == "names/names.named"]
    assert found == ["cannot tell", "meets"]
