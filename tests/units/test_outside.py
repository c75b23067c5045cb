"""Units outside the table: known to pint, refused where a typing slip could pass for one."""

from __future__ import annotations

import pytest

from checker.units import Dimension, QuantityError
from checker.units.outside import parse_outside


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("1 furlong", Dimension.LENGTH, 201.168),
        ("3 hectare", Dimension.AREA, 30_000.0),
        ("2.5 chain", Dimension.LENGTH, 50.292),
    ],
)
def test_units_that_pint_knows(text: str, dimension: Dimension, value: float) -> None:
    """Surveyors' units: 1 furlong is 660 ft, 1 chain 66 ft, 1 hectare 10,000 m2 (definitions)."""
    assert parse_outside(text, dimension) == pytest.approx(value, rel=1e-4)


@pytest.mark.parametrize(
    "text", ["5 cfm", "5 pin", "7 im", "3 slug", "7-3/4 in", "2 foo", "1 furlong*furlong", "", "nan", "9e999 furlong"]
)
def test_slips_are_refused(text: str) -> None:
    """Neither a centifermi nor a picoinch is what anybody means by a length."""
    with pytest.raises(QuantityError):
        parse_outside(text, Dimension.LENGTH)
