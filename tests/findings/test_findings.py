"""What a check finds: verdicts and their words, limits and margins, what is missing, scope, stage and status."""

from __future__ import annotations

import pytest

from checker.findings.finding import Finding
from tests.findings.small import Checker, finding, missing, small_plan

GUARD = "open_edges: [{id: well, status: new, guards: [{id: well, height: 38 in, largest_opening: 5 in}]}]\n"
SOUND = "open_risers: false, width: 36 in, measured_risers: [7.7 in, 7.8 in], going: 9 in, riser_height: 7.75 in"
SPACE = ("    type: straight\n", "    type: straight\n    space_limits_pitch: true\n")


def _names(found: Finding) -> list[str]:
    return [item.name for item in found.needs]


def test_what_does_not_meet_says_value_limit_and_margin(small: Checker) -> None:
    found = finding(small.check(small_plan("riser_height: 7-25/32 in")), "stairs.rise")
    assert found.verdict == "does not meet"
    assert found.says == "Each riser is 7-25/32 in; the limit is 7-3/4 in."
    assert (found.limit, found.margin) == ("7-3/4 in", "1/32 in over")
    assert found.remedy == "Add a riser to the 7-25/32 in ones."
    assert found.caution == "Measure from finish to finish."
    assert (found.decides, found.authority, found.sheet, found.due) == (
        "building official",
        "building",
        "stair details",
        "application",
    )
    assert str(found.place) == "plan.yaml:9:9"
    assert found.key == "base/stairs.rise|flight main|after"
    assert [(each.kind, each.id) for each in found.elements] == [("flight", "main"), ("stair", "main")]


def test_the_reasons_say_where_each_value_comes_from(small: Checker) -> None:
    found = finding(small.check(small_plan()), "stairs.rise")
    assert [(each.item.name, each.shown, each.unit, each.origin, each.how) for each in found.because] == [
        ("riser_height", "7-13/16 in", "m", "computed", "from total rise 9'-1\", risers 14"),
        ("type", "straight", "", "stated", ""),
    ]
    assert [each.place and each.place.line for each in found.because] == [None, 6]


def test_in_metric_the_same_is_said_in_millimetres(small: Checker) -> None:
    text = "units: metric\n" + small_plan("riser_height: 7-25/32 in")
    found = finding(small.check(text), "stairs.rise")
    assert found.says == "Each riser is 198 mm; the limit is 197 mm."
    assert found.margin == "0.794 mm over"


def test_what_meets_exactly_has_no_margin(small: Checker) -> None:
    result = small.check(small_plan(SOUND))
    found = finding(result, "stairs.rise")
    assert (found.verdict, found.limit, found.margin, found.remedy) == ("meets", "7-3/4 in", "", "")
    assert found.because == ()
    assert finding(small.check(small_plan(SOUND), explain_all=True), "stairs.rise").because != ()


def test_what_cannot_be_told_says_what_it_needs(small: Checker) -> None:
    found = finding(small.check(small_plan()), "stairs.width")
    assert (found.verdict, found.says, _names(found)) == ("cannot tell", "Needs width.", ["width"])
    assert (found.limit, found.margin, found.remedy) == ("36 in", "", "")


def test_what_is_needed_of_another_element_is_named_with_it(small: Checker) -> None:
    found = finding(small.check(small_plan().replace("    type: straight\n", "")), "stairs.rise")
    assert found.verdict == "cannot tell"
    assert found.says == (
        "Does not meet if it applies, which hangs on type of stair main. "
        "Each riser is 7-13/16 in; the limit is 7-3/4 in."
    )
    assert [item.name for item in found.needs_to_apply] == ["type"]


def test_what_may_be_excused_says_what_that_hangs_on(small: Checker) -> None:
    found = finding(small.check(small_plan(status="replaced")), "stairs.rise")
    assert found.verdict == "cannot tell"
    assert found.says == (
        "Does not meet unless an exception holds, which hangs on space limits pitch of stair main. "
        "Each riser is 7-13/16 in; the limit is 7-3/4 in."
    )
    assert [item.name for item in found.needs_for_excuse] == _names(found) == ["space_limits_pitch"]


def test_what_is_excused_says_by_which_exception(small: Checker) -> None:
    found = finding(small.check(small_plan(status="replaced").replace(*SPACE)), "stairs.rise")
    assert found.verdict == "excused"
    assert (found.excused, found.excuse_cite) == ("pitch-kept", "House rules 12 (from memory)")
    assert found.says == "But for the exception: Each riser is 7-13/16 in; the limit is 7-3/4 in."
    assert not found.is_fault


def test_what_does_not_apply_says_nothing_of_it(small: Checker) -> None:
    result = small.check(small_plan().replace("straight", "spiral"))
    found = finding(result, "stairs.rise")
    assert found.verdict == "does not apply"
    assert not found.is_fault
    assert found.remedy == ""


def test_what_is_only_existing_is_not_judged(small: Checker) -> None:
    result = small.check(small_plan(status="existing"))
    assert result.findings == ()
    assert result.exit_status == 0


def test_outside_a_table_is_said_as_such_and_nothing_is_missing(small: Checker) -> None:
    result = small.check(small_plan("width: 35 in").replace("109 in", "160 in"))
    found = finding(result, "stairs.width")
    assert (found.verdict, found.beyond_table, found.needs) == ("cannot tell", True, ())
    assert found.says.startswith("Outside the table: ")
    assert "width" not in [each.item.name for each in result.missing]


def test_a_table_s_row_gives_the_limit(small: Checker) -> None:
    result = small.check(small_plan("width: 36 in").replace("109 in", "120 in"))
    found = finding(result, "stairs.width")
    assert (found.limit, found.margin) == ("40 in", "4 in under")


def test_a_conclusion_stands_among_the_reasons_as_inferred(small: Checker) -> None:
    result = small.check(small_plan("riser_height: 9 in, handrails: [{id: left}]"))
    found = finding(result, "stairs.steep")
    assert found.verdict == "does not meet"
    assert ("steepish", "yes", "inferred") in [(each.item.name, each.shown, each.origin) for each in found.because]
    assert not [each for each in result.findings if each.rule.endswith("steepish")]


def test_a_missing_item_is_one_line_with_every_check_that_waits(small: Checker) -> None:
    result = small.check(small_plan().replace("    total_rise: 109 in\n", ""))
    item = missing(result, "riser_height")
    assert item.waiting == (
        "base/stairs.comfort|flight main|after",
        "base/stairs.rise|flight main|after",
        "base/stairs.steep|flight main|after",
    )
    assert (item.asks, item.write) == ("Height of each riser, nosing to nosing", "riser_height: … in")
    assert (item.severity, item.due_now, item.sheets, item.authorities) == (
        "danger",
        True,
        ("stair details",),
        ("building",),
    )
    assert str(item.place) == "plan.yaml:8:9"


def test_missing_items_are_asked_in_the_plan_s_units(small: Checker) -> None:
    result = small.check("units: metric\n" + small_plan())
    assert missing(result, "width").write == "width: … mm"


def test_missing_items_come_due_first_gravest_first(small: Checker) -> None:
    result = small.check(small_plan())
    assert [(each.item.name, each.severity, each.due_now) for each in result.missing] == [
        ("open_risers", "danger", True),
        ("width", "correction", True),
        ("going", "advice", True),
        ("riser_variation", "correction", False),
    ]


def test_what_is_needed_only_if_a_check_applies_is_needed_perhaps(small: Checker) -> None:
    result = small.check(small_plan().replace("    total_rise: 109 in\n", "").replace("    type: straight\n", ""))
    assert not missing(result, "type").perhaps
    handrails = missing(result, "handrails")
    assert handrails.perhaps
    assert handrails.waiting == ("base/stairs.steep|flight main|after",)
    perhaps = [each.perhaps for each in result.missing if each.due_now]
    assert perhaps == sorted(perhaps)


@pytest.mark.parametrize(("stage", "due"), [("application", False), ("rough-in", False), ("final", True)])
def test_what_is_not_due_yet_is_no_fault(small: Checker, stage: str, due: bool) -> None:
    flight = SOUND.replace("measured_risers: [7.7 in, 7.8 in], ", "")
    result = small.check(small_plan(flight, permit=f"stage: {stage}"))
    assert [(each.item.name, each.due_now) for each in result.missing] == [("riser_variation", due)]
    assert result.exit_status == (3 if due else 0)


def test_outside_the_scope_what_does_not_meet_is_listed_apart(small: Checker) -> None:
    result = small.check(small_plan(more=GUARD.replace("5 in", "3 in"), permit="scope: [guards]"))
    found = finding(result, "stairs.rise")
    assert (found.in_scope, found.listed, found.is_fault) == (False, True, False)


def test_outside_the_scope_what_cannot_be_told_is_counted_only(small: Checker) -> None:
    result = small.check(small_plan(permit="scope: [guards]"))
    width = finding(result, "stairs.width")
    assert (width.verdict, width.listed) == ("cannot tell", False)
    assert not finding(result, "stairs.comfort").listed
    assert [each.item.name for each in result.missing] == ["open_risers"]


def test_a_danger_is_listed_and_a_fault_whatever_the_scope(small: Checker) -> None:
    result = small.check(small_plan(SOUND, more=GUARD, permit="scope: [stairs]"))
    found = finding(result, "guards.opening", "well")
    assert (found.in_scope, found.listed, found.is_fault) == (False, True, True)


def test_scope_and_stage_change_no_verdict(small: Checker) -> None:
    plans = [
        small_plan("width: 35 in", more=GUARD, permit=permit)
        for permit in ("", "scope: [stairs]", "scope: [guards]", "scope: [zoning]", "stage: final")
    ]
    verdicts = [
        {each.key: each.verdict for each in small.check(plan).findings if not each.rule.startswith("built-in/")}
        for plan in plans
    ]
    assert all(each == verdicts[0] for each in verdicts)


def test_work_outside_the_scope_is_a_finding_of_its_own(small: Checker) -> None:
    result = small.check(small_plan(SOUND, more=GUARD, permit="scope: [stairs]"))
    found = finding(result, "outside-the-scope", "well")
    assert found.rule == "built-in/outside-the-scope"
    assert found.says == "The plan changes open edge well and 1 more, but “guards” is not in the permit's scope."
    assert found.remedy == "Add guards to `permit: scope:`, or take the change out."
    assert found.is_fault
    whole = small.check(small_plan(SOUND, more=GUARD))
    assert "built-in/outside-the-scope" not in [each.rule for each in whole.findings]


def test_a_stated_value_is_held_against_the_plan_s_own_numbers(small: Checker) -> None:
    result = small.check(small_plan("riser_height: 7-1/2 in").replace("109 in", "110-5/8 in"))
    found = finding(result, "stated-against-computed")
    assert found.says == (
        "The plan states riser height 7-1/2 in; its own numbers give 7-7/8 in (from total rise 9'-2 5/8\", risers 14)."
    )
    assert found.remedy == "State the one that is right and leave the other out."
    assert (found.verdict, found.severity, str(found.place)) == ("does not meet", "correction", "plan.yaml:9:59")
    assert finding(result, "stairs.rise").verdict == "meets"


def test_a_stated_value_that_agrees_is_no_finding(small: Checker) -> None:
    result = small.check(small_plan("riser_height: 7-13/16 in"))
    assert not [each for each in result.findings if each.rule.startswith("built-in/")]


def test_numbers_that_make_no_sense_are_a_finding(small: Checker) -> None:
    window = (
        "openings:\n  windows:\n    - {id: w, status: new, type: double-hung, width: 2 in, height: 4 ft, "
        "frame_deduction: 3 in}\n"
    )
    found = finding(small.check(small_plan(SOUND, more=window)), "numbers-make-no-sense", "w")
    assert found.says.startswith("Clear width cannot be worked out: ")
    assert found.says.endswith(".")
    assert not found.says.endswith("..")


def test_an_amended_finding_keeps_base_and_amendment(small: Checker) -> None:
    result = small.check(small_plan(SOUND, more=GUARD.replace("5 in", "3 in")), rules=small.county)
    found = finding(result, "guards.height", "well")
    assert (found.verdict, found.limit, found.margin) == ("does not meet", "42 in", "4 in under")
    assert str(found.cite) == "House rules 7"
    assert [(each.base, each.now, each.cite) for each in found.amended_by] == [("36 in", "42 in", "County 4-2")]
    base = small.check(small_plan(SOUND, more=GUARD.replace("5 in", "3 in")))
    assert finding(base, "guards.height", "well").verdict == "meets"


def test_a_suspended_rule_finds_nothing(small: Checker) -> None:
    result = small.check(small_plan("going: 12 in"), rules=small.county)
    assert "base/stairs.comfort" not in [each.rule for each in result.findings]
    assert [each.rule for each in result.adopted.suspended] == ["base/stairs.comfort"]


@pytest.mark.parametrize(
    ("flight", "status"),
    [
        pytest.param(SOUND, 0, id="sound"),
        pytest.param(SOUND.replace("going: 9 in", "going: 12 in"), 0, id="advice that is not met"),
        pytest.param(SOUND.replace("going: 9 in, ", ""), 0, id="advice that is missing"),
        pytest.param(SOUND.replace("width: 36 in, ", ""), 3, id="correction that is missing"),
        pytest.param(SOUND.replace("open_risers: false, ", ""), 3, id="danger that is missing"),
        pytest.param(SOUND.replace("width: 36 in", "width: 35 in"), 1, id="correction"),
        pytest.param(SOUND.replace("open_risers: false", "open_risers: true"), 1, id="danger"),
        pytest.param("width: 35 in", 1, id="correction, and more that is missing"),
    ],
)
def test_the_exit_status_tells_the_gravest(small: Checker, flight: str, status: int) -> None:
    assert small.check(small_plan(flight).replace("109 in", "108-1/2 in")).exit_status == status


def test_what_more_checks_wait_for_is_asked_first(small: Checker) -> None:
    plan = small_plan("open_risers: false, going: 9 in, measured_risers: [7 in], riser_height: 7.8 in")
    second = "      - {id: up, status: new, riser_height: 7.8 in, open_risers: false}\n"
    plan = plan.replace("    type: straight\n", "").replace("    flights:\n", f"    flights:\n{second}")
    asked = [each for each in small.check(plan).missing if each.severity == "correction"]
    corrections = [(each.item.name, len(each.waiting)) for each in asked]
    assert corrections[0] == ("type", 2)
    assert {waiting for _, waiting in corrections[1:]} == {1}
