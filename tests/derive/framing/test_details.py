"""Holes and notches, heavy things on joists, and posts, from plan lines."""

from __future__ import annotations

import pytest

from checker.facts import Facts
from tests.derive.framing import INCH, POUND, PSF, PSI, frame, member
from tests.derive.test_envelope import lacking, number, value

JOISTS = 'role: floor joist, size: 2x10, lumber: "spf no. 2", spacing: 16 in, span: 12 ft, carries: rooms'
TUB = "id: tub, status: new, sort: tub, empty_weight: 300 lb, water: 45 gal, people: 1, footprint: 13 ft2, joists: j"


def cut(lines: str, of: str = "size: 2x10, span: 12 ft") -> Facts:
    """The facts of a joist with one cut."""
    return frame(members=member(f"role: floor joist, {of}, cuts: [{{id: c, {lines}}}]"))


def tub(lines: str = "joists_under: 3", joists: str = JOISTS, tub_: str = TUB) -> Facts:
    """The facts of a tub on joists."""
    return frame(members=member(joists), heavy_things=f"{{{tub_}, {lines}}}")


# Holes and notches.


@pytest.mark.parametrize(
    ("lines", "name", "wanted"),
    [
        ("form: hole, depth: 3 in", "depth_share", 3 / 9.25),
        ("form: notch, depth: 1-1/2 in", "depth_share", 1.5 / 9.25),
        ("form: notch, length: 3 in", "length_share", 3 / 9.25),
        ("form: notch, from_support: 4 ft", "support_share", 1 / 3),
        ("form: hole, from_support: 18-1/2 in", "support_depths", 2.0),
        ("form: notch, depth: 1-1/2 in", "depth_left", 7.75 * INCH),
        ("form: hole, depth: 12 in", "depth_left", 0.0),
    ],
)
def test_shares_of_a_cut(lines: str, name: str, wanted: float) -> None:
    assert number(cut(lines), "cut", "c", name) == pytest.approx(wanted)


@pytest.mark.parametrize(
    ("lines", "of", "name", "line"),
    [
        ("form: hole", "size: 2x10", "depth_share", ("cut", "c", "depth")),
        ("depth: 2 in", "span: 12 ft", "depth_share", ("member", "j", "size")),
        ("from_support: 2 ft", "size: 2x10", "support_share", ("member", "j", "span")),
        ("depth: 2 in", "size: 2x10", "support_depths", ("cut", "c", "from_support")),
    ],
)
def test_what_a_share_lacks(lines: str, of: str, name: str, line: tuple[str, str, str]) -> None:
    assert lacking(cut(lines, of), "cut", "c", name) == {line}


# Heavy things.


def test_a_tub_is_full_and_has_somebody_in_it() -> None:
    """300 lb of iron, 45 gal of 8.345 lb and a person of 175 lb, on 13 square feet."""
    found = tub()
    pounds = 300 + 45 * 3.785411784 / 0.45359237 + 175
    assert number(found, "heavy-thing", "tub", "weight") / POUND == pytest.approx(pounds)
    assert pounds == pytest.approx(850.6, abs=0.1)
    assert number(found, "heavy-thing", "tub", "pressure") / PSF == pytest.approx(pounds / 13)


@pytest.mark.parametrize(
    ("lines", "line"),
    [
        ("water: 45 gal, people: 1", "empty_weight"),
        ("empty_weight: 300 lb, people: 1", "water"),
        ("empty_weight: 300 lb, water: 45 gal", "people"),
        ("empty_weight: 300 lb, holds_water: true, people: 1", "water"),
    ],
)
def test_what_a_weight_lacks(lines: str, line: str) -> None:
    found = frame(heavy_things=f"{{id: tub, status: new, {lines}}}")
    assert lacking(found, "heavy-thing", "tub", "weight") == {("heavy-thing", "tub", line)}


def test_a_stove_has_neither_water_nor_people() -> None:
    found = frame(heavy_things="{id: s, status: new, sort: stove, empty_weight: 400 lb, holds_water: false}")
    assert number(found, "heavy-thing", "s", "weight") / POUND == pytest.approx(400)


def test_joists_with_a_tub_by_hand() -> None:
    """A third of it in the middle of 12 ft, with 50 psf at 16 in, both as floor load."""
    found = tub()
    third = number(found, "heavy-thing", "tub", "weight") / POUND / 3
    moment = (50 * 16 / 12 * 144 / 8 + third * 12 / 4) * 12
    strength, modulus = 875 * 1.1 * 1.15, 1.5 * 9.25**2 / 6
    assert number(found, "heavy-thing", "tub", "joist_bending_use") == pytest.approx(moment / modulus / strength)
    needed = number(found, "heavy-thing", "tub", "joist_bending_needed") / PSI
    assert needed == pytest.approx(moment / modulus / 1.1 / 1.15)
    shear = 50 * 16 / 12 * 6 + third / 2
    assert number(found, "heavy-thing", "tub", "joist_shear_use") == pytest.approx(1.5 * shear / (1.5 * 9.25) / 135)


def test_more_joists_under_it_work_less() -> None:
    uses = [number(tub(f"joists_under: {count}"), "heavy-thing", "tub", "joist_bending_use") for count in (1, 2, 3, 6)]
    assert uses == sorted(uses, reverse=True)
    assert len(set(uses)) == 4
    plain = number(tub(), "member", "j", "bending_use")
    assert uses[-1] > plain
    assert uses[0] - plain == pytest.approx(6 * (uses[-1] - plain))


def test_midspan_is_the_worst_place_for_bending_and_the_support_for_shear() -> None:
    places = ("1 ft", "3 ft", "5 ft", "6 ft")
    found = [tub(f"joists_under: 3, from_support: {place}") for place in places]
    bending = [number(of, "heavy-thing", "tub", "joist_bending_use") for of in found]
    shear = [number(of, "heavy-thing", "tub", "joist_shear_use") for of in found]
    assert bending == sorted(bending)
    assert len(set(bending)) == 4
    assert shear == sorted(shear, reverse=True)
    assert number(tub(), "heavy-thing", "tub", "joist_bending_use") == pytest.approx(bending[-1])


def test_joists_of_lumber_that_nobody_knows() -> None:
    found = tub(joists=JOISTS.replace('lumber: "spf no. 2", ', ""))
    assert lacking(found, "heavy-thing", "tub", "joist_bending_use") == {("member", "j", "lumber")}
    known = number(tub(), "heavy-thing", "tub", "joist_bending_needed")
    assert number(found, "heavy-thing", "tub", "joist_bending_needed") == pytest.approx(known)


@pytest.mark.parametrize(
    ("lines", "tub_", "line"),
    [
        ("along_joists: true", TUB, ("heavy-thing", "tub", "joists_under")),
        ("joists_under: 3", TUB.replace(", joists: j", ""), ("heavy-thing", "tub", "joists")),
        ("joists_under: 3", TUB.replace(", people: 1", ""), ("heavy-thing", "tub", "people")),
    ],
)
def test_what_the_joists_under_a_tub_lack(lines: str, tub_: str, line: tuple[str, str, str]) -> None:
    assert line in lacking(tub(lines, tub_=tub_), "heavy-thing", "tub", "joist_bending_use")


# Posts.


BEAM = "role: beam, carries: rooms, tributary_width: 12 ft, span: 12 ft, held_by: [p]"
POST = 'role: post, size: 4x4, lumber: "spf no. 2", span: 8 ft, held_by: []'


def test_a_post_carries_the_ends_of_its_beams() -> None:
    """600 plf over 12 ft: 3,600 lb each; a stated load outranks them."""
    beams = f"{member(BEAM, 'a')}, {member(BEAM, 'b')}"
    found = frame(members=f"{beams}, {member(POST, 'p')}")
    assert number(found, "member", "p", "post_load") / POUND == pytest.approx(7200)
    stated = frame(members=f"{beams}, {member(f'{POST}, axial_load: 5000 lb', 'p')}")
    assert number(stated, "member", "p", "post_load") / POUND == pytest.approx(5000)


def test_a_post_that_holds_nothing_asks_for_its_load() -> None:
    assert lacking(frame(members=member(POST, "p")), "member", "p", "post_load") == {("member", "p", "axial_load")}


def column(slenderness: float, along: float, low: float) -> float:
    """Column stability factor by NDS 3.7.1, with 0.8 for sawn lumber."""
    critical = 0.822 * low / slenderness**2
    half = (1 + critical / along) / 1.6
    return float(half - (half * half - critical / along / 0.8) ** 0.5)


def test_a_post_by_hand() -> None:
    """4 x 4 of 1150 psi × 1.15, Emin 510 ksi, 8 ft between head and foot."""
    found = frame(members=member(f"{POST}, axial_load: 6000 lb", "p"))
    along = 1150 * 1.15
    allowed = along * column(96 / 3.5, along, 510_000) * 3.5**2
    assert number(found, "member", "p", "post_use") == pytest.approx(6000 / allowed, rel=1e-6)


def test_a_longer_post_works_harder_and_two_plies_less() -> None:
    rows = [
        (POST.replace("8 ft", span), id_) for span, id_ in (("4 ft", "a"), ("8 ft", "b"), ("12 ft", "c"))
    ]  # fmt: skip
    rows.append(('role: post, size: 2x4, plies: 2, lumber: "spf no. 2", span: 4 ft', "d"))
    found = frame(members=", ".join(member(f"{lines}, axial_load: 4000 lb", id_) for lines, id_ in rows))
    short, middle, long, built = (number(found, "member", id_, "post_use") for id_ in "abcd")
    assert short < middle < long
    assert built > short


def test_a_post_of_unknown_lumber_asks_for_it() -> None:
    found = frame(members=member("role: post, size: 4x4, span: 8 ft, axial_load: 4000 lb", "p"))
    assert lacking(found, "member", "p", "post_use") == {("member", "p", "lumber")}
    assert value(found, "member", "p", "bending_use") is None
