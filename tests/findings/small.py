"""A small ruleset, a county that amends it, and plans that draw every verdict from it."""

from __future__ import annotations

from pathlib import Path

from checker.check import check_read
from checker.engine.image import Cache
from checker.findings.finding import Finding, MissingItem, Result
from checker.plan.reader import plan_from_text
from tests.ruleset.writing import conclusion, rule, topic, write_set

EXCEPT = """\
    except:
      - id: pitch-kept
        cite: House rules 12
        known: from memory
        when: {status: {is: [altered, replaced]}, stair: {space_limits_pitch: {is: true}}}
"""
RISE = (
    "    when: {stair: {type: {is: straight}}}\n"
    "    require: {riser_height: {at_most: 7-3/4 in}}\n"
    "    remedy: Add a riser to the {riser_height} ones.\n"
    "    caution: Measure from finish to finish.\n" + EXCEPT.rstrip()
)
STAIRS = topic(
    "stairs",
    "cautions: [{trade: stairs, says: Cover the well.}]",
    "tables:\n"
    "  - id: widths\n"
    "    title: Widths\n"
    "    keys: {rise: {form: interval, of: length}}\n"
    "    values: {width: length}\n"
    "    cite: House rules 9\n"
    "    basis: standard\n"
    "    known: read\n"
    "    rows:\n"
    "      - {when: {rise: [0 in, 120 in]}, gives: {width: 36 in}}\n"
    "      - {when: {rise: [120 in, 150 in]}, gives: {width: 40 in}}\n"
    "rules:",
    rule("rise", RISE, says="Each riser is {riser_height}; the limit is {limit}."),
    rule(
        "width",
        "    require: {width: {at_least: {table: base/stairs.widths, by: {rise: total_rise}, column: width}}}",
        says="The flight is {width} wide; {limit} is needed.",
    ),
    rule("open", "    require: {open_risers: {is: false}}", severity="danger", says="The risers are open."),
    rule(
        "even",
        "    require: {riser_variation: {at_most: 3/8 in}}",
        says="Risers differ by {riser_variation}.",
        due="final",
    ),
    rule("comfort", "    require: {step_length: {at_most: 25 in}}", severity="advice", says="A step is {step_length}."),
    conclusion("steepish", "steepish", "{riser_height: {over: 8 in}}"),
    rule(
        "steep",
        "    when: {steepish: {is: true}}\n    require: {count: {of: handrails, at_least: 2}}",
        severity="danger",
        says="A steep flight has two handrails.",
    ),
)
GUARDS = topic(
    "guards",
    "rules:",
    rule(
        "opening",
        "    require: {largest_opening: {at_most: 4 in}}",
        kind="guard",
        severity="danger",
        says="A ball of {largest_opening} passes; the limit is {limit}.",
    ).replace("trade: stairs", "trade: guards"),
    rule(
        "height",
        "    require: {height: {at_least: 36 in}}",
        kind="guard",
        says="The guard is {height} high; {limit} is needed.",
    ).replace("trade: stairs", "trade: guards"),
)
AMENDED = """\
  - rule: base/guards.height
    sets: {require.height.at_least: 42 in}
    cite: County 4-2
    known: read
  - {rule: base/stairs.comfort, suspend: true, reason: A matter of taste., cite: County 4-3, known: read}
"""
PLAN = """\
plan: A small house
permit: {{date: "2025-01-01"{permit}}}
stairs:
  - id: main
    status: {status}
    type: straight
    total_rise: 109 in
    flights:
      - {{id: main, status: {status}, risers: 14{flight}}}
{more}"""


def write_small(root: Path) -> Path:
    """Write the ruleset and the county; gives the county's folder."""
    write_set(root, stairs=STAIRS, guards=GUARDS)
    more = 'adopts: [{set: base, edition: "2023", from: "2024-01-01"}]\n'
    changes = topic("changes", "amendments:", AMENDED)
    return write_set(root, "county", editions='["2025"]', title="County", short="County", more=more, changes=changes)


def small_plan(flight: str = "", *, status: str = "new", permit: str = "", more: str = "") -> str:
    """The text of a plan with one stair of 109 in in 14 risers of 7-25/32 in and a bit."""
    return PLAN.format(
        flight=f", {flight}" if flight else "", status=status, permit=f", {permit}" if permit else "", more=more
    )


class Checker:
    """Checks plans against the small ruleset."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.county = write_small(root)
        self.base = root / "base"
        self.cache = Cache(root / "cache")

    def check(self, text: str, *, rules: Path | None = None, explain_all: bool = False) -> Result:
        """Check a plan; rules: the base set if None."""
        read = plan_from_text(text, "plan.yaml")
        return check_read(read, str(rules or self.base), explain_all=explain_all, cache=self.cache)


def finding(result: Result, rule_id: str, subject: str = "main") -> Finding:
    """The finding of one rule on one element."""
    (found,) = [each for each in result.findings if each.rule.endswith(f"/{rule_id}") and each.subject.id == subject]
    return found


def missing(result: Result, name: str) -> MissingItem:
    """The missing item of an attribute or link."""
    (found,) = [each for each in result.missing if each.item.name == name]
    return found
