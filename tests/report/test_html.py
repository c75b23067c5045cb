"""The HTML page: what stands on it and where, that it is whole, accessible and closed to what a plan says."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from html.parser import HTMLParser
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import pytest

from checker import calc, facts
from checker.check import check
from checker.engine.image import Cache
from checker.facts import Calculation, Fact, Facts, Input, Item, Known, Ref
from checker.findings.finding import Because, Finding, MissingItem, Result
from checker.problems import Place
from checker.report.arrange import NOT_AN_APPROVAL, Reader, arrange
from checker.report.html import html_page
from checker.report.html.rows import change_of, file_name, source_of
from checker.ruleset.adopted import Adopted, AdoptedAssumption, AdoptedSet, Applied, Citation, Suspended

VOID = {"meta", "br", "link", "img", "hr", "input", "path"}
HOSTILE = "<script>alert('x')</script> \"quoted\" & 'single' </style>--> {{ 7 * 7 }}"
LONG = "W" * 180
FLIGHT = Ref("flight", "main")
STAIR = Ref("stair", "main")
PLAN = "ashgrove.yaml"
CODE = Citation("IRC", "2021", "R311.7.5.1", "model code", "read")
LOCAL = Applied(
    "local/fenwick", "us/stairs.riser-height", "require.riser_height.at_most", "7-3/4 in", "8 in", "Fenwick 12.4",
    "old towns",
    Place("local/fenwick/stairs.yaml", 4, 3),
)  # fmt: skip


@dataclass
class Tag:
    """An element of a page: its text is that of everything inside it."""

    name: str
    attributes: dict[str, str]
    text: str = ""
    inside: tuple[str, ...] = ()


@dataclass
class Read(HTMLParser):
    """A page taken apart; refuses tags that do not close in order."""

    tags: list[Tag] = field(default_factory=list)
    open: list[Tag] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = Tag(tag, {name: value or "" for name, value in attrs}, inside=tuple(each.name for each in self.open))
        assert len(found.attributes) == len(attrs), f"an attribute twice in {tag} {attrs}"
        self.tags.append(found)
        if tag not in VOID:
            self.open.append(found)

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        assert self.open, f"{tag} closes what is not open"
        assert self.open.pop().name == tag, f"{tag} closes something else"
        if tag in ("th", "td", "dt", "dd", "li"):
            self.handle_data(" ")

    def handle_data(self, data: str) -> None:
        for each in self.open:
            each.text += data

    def named(self, *names: str) -> list[Tag]:
        """The elements with one of these names, in order."""
        return [each for each in self.tags if each.name in names]

    def by_id(self, id_: str) -> Tag:
        """The element with this id."""
        return next(each for each in self.tags if each.attributes.get("id") == id_)


def read(page: str) -> Read:
    """Take a page apart."""
    parser = Read()
    parser.feed(page)
    parser.close()
    assert not parser.open, f"never closed: {[each.name for each in parser.open]}"
    return parser


def words(text: str) -> str:
    """A text with single spaces."""
    return " ".join(text.split())


def finding(number: int, **changes: object) -> Finding:
    """A finding on the flight, to be changed where a test looks."""
    plain = Finding(
        key=f"us/stairs.rule-{number}|flight main|after",
        rule=f"us/stairs.rule-{number}",
        title=f"Rule number {number}",
        trade="stairs",
        subject=FLIGHT,
        elements=(FLIGHT,),
        verdict="does not meet",
        severity="correction",
        says=f"Saying {number}.",
        cite=CODE,
        decides="building official",
        authority="building",
        sheet="stair details",
        due="application",
        place=Place(PLAN, 18, 9),
    )
    return replace(plain, **changes)  # type: ignore[arg-type]


def missing(name: str, severity: str, waiting: tuple[str, ...], *, due_now: bool = True) -> MissingItem:
    """A missing item of the flight."""
    due = "application" if due_now else "final"
    return MissingItem(
        Item(FLIGHT, name), f"Asks for {name} in `flights:`", f"{name}: … in", severity, ("sections",), ("building",),
        due, due_now, waiting, place=Place(PLAN, 18, 9),
    )  # fmt: skip


def built() -> Result:
    """A result with something in every part of the page."""
    riser = Item(FLIGHT, "riser_height")
    count = Item(FLIGHT, "risers")
    rise = Item(STAIR, "total_rise")
    by_count = Calculation(
        "checker.calc.stair.riser_height",
        (
            Input("total_rise_m", rise, 2.7),
            Input("riser_count", count, 13.0),
            Input("finish_m", None, 0.01905, "floor_finish"),
        ),
        0.2076923,
    )
    largest = Calculation("builtins.max", (Input("risers", riser, 0.2),), 0.2)
    elements = {
        FLIGHT: Known(
            FLIGHT,
            "new",
            "Attic flight",
            Place(PLAN, 18, 9),
            {
                "riser_height": Fact(0.2076923, "computed", calculation=by_count, rests_on=("floor_finish",)),
                "risers": Fact(13.0, "stated", Place(PLAN, 20, 9)),
                "largest_riser": Fact(0.21, "stated", Place(PLAN, 21, 9), computed=largest),
            },
        ),
        STAIR: Known(STAIR, "new", "", Place(PLAN, 11, 5), {"total_rise": Fact(2.7, "stated", Place(PLAN, 13, 5))}),
    }
    because = (
        Because(riser, 0.2076923, "8-3/16 in", "m", "computed", "from total rise, risers", None),
        Because(rise, 2.7, "8'-10 1/4\"", "m", "stated", "", Place(PLAN, 13, 5)),
        Because(Item(FLIGHT, "steep"), True, "yes", "", "inferred", "", None),
    )
    findings = (
        finding(1, severity="danger", remedy="Close the risers.", rests_on=("floor_finish",), margin="3/16 in over",
                because=because, amended_by=(LOCAL,), elements=(FLIGHT, STAIR), decides="licensed engineer"),
        finding(2, remedy="Add `risers: 14`.", caution="Mind the last step."),
        finding(3, verdict="excused", excused="pitch-cannot-be-reduced", excuse_cite="IEBC 2021, 503.1"),
        finding(4, severity="advice"),
        finding(5, in_scope=False, trade="rooms"),
        finding(6, verdict="cannot tell", severity="danger", needs=(Item(FLIGHT, "headroom"),), says="Needs headroom."),
        finding(7, verdict="cannot tell", beyond_table=True, says="Outside the table: 40 ft."),
        finding(8, verdict="cannot tell", due="final", due_now=False, needs=(Item(FLIGHT, "tread_slope"),)),
        finding(9, verdict="meets"),
        finding(10, verdict="meets", trade="guards", in_scope=False),
        finding(11, verdict="cannot tell", trade="rooms", in_scope=False),
    )  # fmt: skip
    items = (
        missing("headroom", "danger", (findings[5].key, findings[0].key, "us/gone.rule|flight main|after")),
        missing("tread_slope", "correction", (findings[7].key,), due_now=False),
    )
    assumption = AdoptedAssumption(
        "floor_finish", "Thickness of a floor finish", "length", 0.01905,
        Citation("common practice", "", "flooring trade", "common practice", "read"), "Boards are 3/4 in.",
        (replace(LOCAL, what="floor finish", base="1/2 in", now="3/4 in"),),
    )  # fmt: skip
    adopted = Adopted(
        "local/fenwick", "Town of Fenwick", "2024-05-01",
        (AdoptedSet("us", "Model code", "International Residential Code", "2021", "2023-01-01", True),
         AdoptedSet("local/fenwick", "Town of Fenwick", "Fenwick code", "3", "", False)),
        (), {}, {"floor_finish": assumption}, (LOCAL,),
        (Suspended("us/stairs.lit", "Light over the stair", "danger", "Fenwick 12.9", "no current in the old mill"),),
        {"stairs": "Measure finished surfaces."}, {("flight", "steep"): "steeper than usual"},
    )  # fmt: skip
    return Result(
        "Ashgrove 3, attic stair", PLAN, "us", "application", ("stairs",), adopted, Facts(elements), findings, items,
        {FLIGHT: "Attic flight", STAIR: "stair main"},
    )  # fmt: skip


def hostile() -> Result:
    """The same result with every text of plan and ruleset replaced by what would break a page."""
    result = built()
    bad = Citation(HOSTILE, HOSTILE, HOSTILE, "model code", "read")
    law = replace(LOCAL, what=HOSTILE, base=HOSTILE, now=HOSTILE, cite=HOSTILE, reason=HOSTILE, target=HOSTILE)
    findings = tuple(
        replace(
            each, title=HOSTILE, says=HOSTILE + " `" + HOSTILE + "`", remedy=HOSTILE, rule=HOSTILE, trade=HOSTILE,
            decides=HOSTILE, sheet=HOSTILE, cite=bad, amended_by=(law,), caution=HOSTILE, margin=HOSTILE,
            excused=each.excused and HOSTILE, excuse_cite=HOSTILE, due=HOSTILE, authority=HOSTILE,
            because=tuple(replace(one, shown=HOSTILE, origin=HOSTILE, how=HOSTILE) for one in each.because),
        )
        for each in result.findings
    )  # fmt: skip
    items = tuple(
        replace(each, asks=HOSTILE, write=HOSTILE, sheets=(HOSTILE,), authorities=(HOSTILE,), due=HOSTILE)
        for each in result.missing
    )
    adopted = replace(
        result.adopted, title=HOSTILE, date=HOSTILE, amendments=(law,), cautions={HOSTILE: HOSTILE},
        sets=tuple(replace(each, title=HOSTILE, document=HOSTILE, edition=HOSTILE) for each in result.adopted.sets),
        suspended=(Suspended(HOSTILE, HOSTILE, "danger", HOSTILE, HOSTILE),),
        assumptions={
            name: replace(each, title=HOSTILE, why=HOSTILE, cite=bad, amended_by=(law,))
            for name, each in result.adopted.assumptions.items()
        },
    )  # fmt: skip
    return replace(
        result, plan=HOSTILE, file=HOSTILE, findings=findings, missing=items, adopted=adopted, scope=(HOSTILE,),
        names={FLIGHT: HOSTILE, STAIR: LONG},
    )  # fmt: skip


def bare() -> Result:
    """A result with nothing in it."""
    whole = built()
    empty = replace(
        whole.adopted, sets=whole.adopted.sets[:1], assumptions={}, amendments=(), suspended=(), cautions={}, date=""
    )
    return replace(whole, adopted=empty, facts=Facts({}), findings=(), missing=(), scope=(), names={})


PAGES = [
    pytest.param(make(), reader, everything, id=f"{make.__name__}-{reader}{'-everything' * everything}")
    for make in (built, hostile, bare)
    for reader in ("contractor", "reviewer")
    for everything in (False, True)
]


@pytest.mark.parametrize(("result", "reader", "everything"), PAGES)
def test_a_page_is_whole(result: Result, reader: Reader, everything: bool) -> None:
    """Tags are balanced, ids unique, links lead somewhere, headings follow without a gap, nothing is fetched or run."""
    page = html_page(result, reader, everything=everything)
    tree = read(page)
    ids = [each.attributes["id"] for each in tree.tags if "id" in each.attributes]
    assert len(ids) == len(set(ids))
    links = [each.attributes["href"] for each in tree.named("a")]
    assert [link for link in links if link[0] != "#" or link[1:] not in ids] == []
    labels = {each.attributes["aria-labelledby"] for each in tree.tags if "aria-labelledby" in each.attributes}
    assert labels <= set(ids)
    levels = [int(each.name[1]) for each in tree.named("h1", "h2", "h3", "h4", "h5", "h6")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(later <= earlier + 1 for earlier, later in pairwise(levels))
    assert not tree.named("script", "link", "img", "iframe", "object", "embed", "base", "form")
    for each in tree.tags:
        assert not {name for name in each.attributes if name.startswith("on") or name in ("src", "style", "srcset")}
    style = tree.named("style")[0].text
    assert "url(" not in style
    assert "@import" not in style
    assert "://" not in style
    assert len(tree.named("style")) == 1
    assert page.count("undefined") == 0


@pytest.mark.parametrize(("result", "reader", "everything"), PAGES)
def test_landmarks_and_tables(result: Result, reader: Reader, everything: bool) -> None:
    """One of each landmark, a skip link first, a language; tables have a caption and every heading cell its scope."""
    tree = read(html_page(result, reader, everything=everything))
    assert tree.named("html")[0].attributes["lang"] == "en"
    for name in ("header", "nav", "main", "footer"):
        assert len(tree.named(name)) == 1, name
    assert tree.named("a")[0].attributes["href"] == "#" + tree.named("main")[0].attributes["id"]
    assert len(tree.named("caption")) == len(tree.named("table"))
    assert all(words(each.text) for each in tree.named("caption", "h1", "h2", "h3", "a", "th"))
    assert {each.attributes.get("scope") for each in tree.named("th")} <= {"col", "row", "colgroup", "rowgroup"}
    for each in tree.named("svg"):
        assert each.attributes["aria-hidden"] == "true"


def test_nothing_of_a_plan_becomes_markup() -> None:
    """Hostile text has the same tags as plain text, and stands on the page letter by letter."""
    for reader in ("contractor", "reviewer"):
        tree = read(html_page(hostile(), reader, everything=True))
        assert tree.named("h1")[0].text == HOSTILE
        assert tree.named("title")[0].text.startswith(HOSTILE)
        known = {each.name for each in read(html_page(built(), reader, everything=True)).tags}
        assert {each.name for each in tree.tags} <= known
    body = html_page(hostile(), "contractor", everything=True)
    assert "<script" not in body
    assert body.count("</style>") == 1
    assert "49" not in words(read(body).named("h1")[0].text)
    assert LONG in body


def test_signs_that_do_not_print_are_spelled_out() -> None:
    """Controls and reversed writing do not reach the reader's screen; line ends become spaces."""
    page = html_page(replace(built(), plan="one\x1b[31m\u202etwo\nthree"), "contractor")
    assert read(page).named("h1")[0].text == "one\\x1b[31m\\u202etwo three"
    assert not {"\x1b", "\u202e"} & set(page)


def test_the_opening_says_what_and_what_not() -> None:
    """Title, basis, sentence, notes and what this is not come before the findings."""
    result = built()
    arranged = arrange(result)
    head = words(read(html_page(result, "contractor")).named("header")[0].text)
    for said in (result.plan, *arranged.basis, arranged.sentence, *arranged.notes, NOT_AN_APPROVAL, PLAN, "2024-05-01"):
        assert words(said) in head


def test_groups_stand_in_order() -> None:
    """By consequence first, then the appendices; the contents list names them in the same order."""
    tree = read(html_page(built(), "contractor"))
    titles = [words(each.text) for each in tree.named("h2") if "main" in each.inside]
    assert titles == [
        "Dangers (1)", "Corrections (1)", "Missing (1)", "Excused (1)", "Advice (1)", "Outside this permit (1)",
        "Not due yet (1)", "No conflict found", "Checks that wait", "Calculations",
        "Assumptions", "Rules in force", "Cautions", "Before you hand it in",
    ]  # fmt: skip
    listed = [words(each.text) for each in tree.named("a") if "nav" in each.inside]
    assert listed == [title.split(" (")[0] for title in titles]
    whole = words(read(html_page(built(), "contractor", everything=True)).named("main")[0].text)
    assert "Meets (1)" in whole
    assert "What follows without a formula" in whole


def test_a_finding_says_everything() -> None:
    """From its number and severity in words to its reasons, citation, amendment, remedy, decider, sheet and place."""
    text = words(read(html_page(built(), "contractor")).by_id("finding-1").text)
    for said in (
        "1. Rule number 1, flight main (“Attic flight”)", "danger", "Saying 1. 3/16 in over",
        "riser height 8-3/16 in computed from total rise, risers –",
        "total rise of stair main 8'-10 1/4\" stated line 13",
        "steep yes inferred", "IRC 2021, R311.7.5.1 us/stairs.rule-1", "assumed floor finish",
        "riser height at most: 7-3/4 in → 8 in, by Fenwick 12.4", "mend Close the risers.", "licensed engineer",
        "stair details", "ashgrove.yaml, line 18; also stair main, line 11",
    ):  # fmt: skip
        assert said in text, said
    reasons = read(html_page(built(), "contractor"))
    assert any(each.attributes["href"] == "#sum-1" for each in reasons.named("a") if "article" in each.inside)
    assert words(reasons.by_id("sum-1").text).startswith("riser height")


def test_an_excused_finding_names_the_exception() -> None:
    """The exception, its citation and a word that is not that of a fault."""
    text = words(read(html_page(built(), "contractor")).by_id("finding-3").text)
    assert "pitch cannot be reduced — IEBC 2021, 503.1" in text
    assert "correction" not in text


def test_outside_the_permit_is_said_beside_the_finding() -> None:
    """A finding outside the scope says so itself, since links lead straight to it."""
    tree = read(html_page(built(), "contractor"))
    number = arrange(built()).numbers[built().findings[4].key]
    assert "correction, outside this permit" in words(tree.by_id(f"finding-{number}").text)


def test_a_plan_line_in_backquotes_is_set_as_code() -> None:
    """Backquoted words lose their quotes; a lone backquote stays."""
    page = html_page(built(), "contractor")
    assert "Add <code>risers: 14</code>." in page
    assert "Asks for headroom in <code>flights:</code>" in page
    lone = replace(built(), findings=(finding(1, says="A ` alone."),))
    assert "A ` alone." in html_page(lone, "contractor")


def test_no_line_ends_inside_a_measure() -> None:
    """Fractions, feet with inches, and a number with its unit hold together; other words may part."""
    said = "8-3/16 in, 8'-10 1/2\", 78 in, 2.5 m, 150 ft², 3.3 %, riser 1 of R311.7.5.1 and the 12-3 side; 5 inches"
    page = html_page(replace(built(), findings=(finding(1, says=said),)), "contractor")
    tree = read(page)
    kept = [each.text for each in tree.named("span") if each.attributes.get("class") == "unbroken"]
    assert kept[:6] == ["8-3/16 in", "8'-10 1/2\"", "78 in", "2.5 m", "150 ft²", "3.3 %"]
    assert said in words(tree.by_id("finding-1").text)
    assert "12-3 side; 5 inches" in page


def test_a_missing_item_leads_to_what_waits() -> None:
    """To the finding where it is listed, else to the check that waits; a rule that is nowhere is named."""
    tree = read(html_page(built(), "contractor"))
    cell = next(each for each in tree.named("td") if "Rule number 6" in each.text)
    assert words(cell.text) == "danger: Rule number 6, Rule number 1, us/gone.rule"
    targets = {
        words(each.text): each.attributes["href"]
        for each in tree.named("a")
        if each.inside[-1] == "td" and "Rule number" in each.text
    }
    assert targets == {"Rule number 6": "#waits-1", "Rule number 1": "#finding-1", "Rule number 8": "#waits-3"}
    assert words(tree.by_id("waits-2").text).startswith(
        "Rule number 7, flight main (“Attic flight”) correction Outside"
    )
    assert "due at final" in words(tree.by_id("waits-3").text)


def test_what_is_perhaps_needed_stands_last() -> None:
    """A line that hangs on other missing lines comes after them, under words that say so."""
    perhaps = replace(missing("nosing", "danger", ("us/a.b|flight main|after",)), perhaps=True)
    page = html_page(replace(built(), missing=(perhaps, *built().missing[:1])), "contractor")
    text = words(read(page).named("main")[0].text)
    assert "Missing (1, and perhaps 1)" in text
    assert 0 < text.index("headroom: … in") < text.index("These may settle it too") < text.index("nosing: … in")


def test_many_checks_are_named_once_each_and_counted() -> None:
    """Checks of one rule count once; what is left out is told."""
    keys = tuple(f"us/a.rule-{number % 9}|flight f{number}|after" for number in range(40))
    page = html_page(replace(built(), missing=(missing("headroom", "danger", keys),)), "contractor")
    text = words(read(page).named("main")[0].text)
    assert "us/a.rule-4, us/a.rule-5 and 3 more rules" in text
    assert "us/a.rule-6" not in text


def test_calculations_show_their_arithmetic() -> None:
    """What went in, the result, the function and the first source of its docstring; a stated value stands beside."""
    tree = read(html_page(built(), "contractor", everything=True))
    text = words(tree.by_id("sum-2").text)
    assert "total rise of stair main 8'-10 5/16\",risers 13,floor finish 3/4 in (assumed)" in text
    assert "8-3/16 in" in text
    assert text.endswith("US Army engineer course EN5156, Stairway Calculations. stair.riser_height")
    stated = words(tree.by_id("sum-1").text)
    assert stated.startswith("largest riser")
    assert "7-7/8 in" in stated
    assert "stated: 8-1/4 in" in stated
    follows = words(tree.by_id("follows").text)
    assert "flight main (“Attic flight”) plan line 18" in follows
    assert "largest riser riser height 7-7/8 in" in follows
    assert "builtins" not in follows


def test_only_what_findings_rest_on_is_worked_out_in_front_of_the_reader() -> None:
    """A page that listed every value computed would be a book; --all prints that book."""
    brief, whole = (html_page(built(), "contractor", everything=all_) for all_ in (False, True))
    assert brief.count('id="sum-') == 1
    assert whole.count('id="sum-') > 1


def test_every_calculation_has_a_source_to_print() -> None:
    """The first entry is found and whole for each function of the stair module, without its number."""
    names = re.findall(r"^def ([a-z]\w+)\(", Path(calc.__path__[0], "stair.py").read_text(encoding="utf-8"), re.M)
    sources = {name: source_of(f"checker.calc.stair.{name}") for name in names}
    assert len(sources) > 10
    assert all(source.endswith((".", ")")) and not source.startswith("[") for source in sources.values()), sources
    assert source_of("checker.facts.Facts") == ""
    assert facts.Facts.__doc__


def test_assumptions_and_rules_in_force() -> None:
    """Value, reason, citation and amendment of assumptions; sets, editions, amendments and what is not enforced."""
    tree = read(html_page(built(), "contractor"))
    assumption = words(tree.by_id("assumption-1").text)
    for said in (
        "Thickness of a floor finish", "used by finding 1", "3/4 in", "Boards are 3/4 in.", "flooring trade",
        "amended: floor finish: 1/2 in → 3/4 in, by Fenwick 12.4",
    ):  # fmt: skip
        assert said in assumption, said
    rules = words(tree.by_id("rules").text)
    for said in (
        "Model code us", "International Residential Code", "2021, the newest", "2023-01-01",
        "riser height at most us/stairs.riser-height", "Fenwick 12.4 old towns", "Light over the stair us/stairs.lit",
        "no current in the old mill",
    ):  # fmt: skip
        assert said in rules, said


def test_an_amendment_is_named_in_words() -> None:
    """The path of a changed limit reads as words, beside the title of its rule where that is in force."""
    assert change_of(LOCAL, {LOCAL.target: "Riser height"}).title == "Riser height"
    assert change_of(LOCAL, {}).title == ""
    assert change_of(replace(LOCAL, what="severity"), {}).what == "severity"
    assert change_of(LOCAL, {}).what == "riser height at most"


def test_counts_cautions_and_closing() -> None:
    """What raised no conflict by trade, what is not listed, cautions of trades and of a finding, who must be asked."""
    tree = read(html_page(built(), "contractor"))
    clear = words(tree.by_id("clear").text)
    assert "guards 1 stairs 1" in clear
    assert "1 point outside this permit’s scope is not listed." in clear
    assert words(tree.by_id("cautions").text) == "Cautions stairs Measure finished surfaces."
    assert "care Mind the last step." in words(tree.by_id("finding-2").text)
    assert "For a licensed engineer: rule number 1." in words(tree.by_id("closing").text)


def test_the_reviewer_gets_no_remedies_but_for_dangers() -> None:
    """By sheet and authority; the change that mends is the contractor's."""
    page = html_page(built(), "reviewer")
    assert "Close the risers." in page
    assert "risers: 14" not in page
    assert "Stair details · stairs · building" in words(read(page).named("nav")[0].text)


def test_a_page_is_the_same_every_time_and_names_no_folder() -> None:
    """No time, no order by chance, no path of a machine."""
    far = replace(built(), file="/home/someone/plans/ashgrove.yaml")
    assert html_page(built(), "contractor") == html_page(built(), "contractor")
    assert html_page(far, "contractor") == html_page(built(), "contractor")
    assert file_name("C:\\plans\\ashgrove.yaml") == "ashgrove.yaml"
    assert file_name("plans/ashgrove.yaml") == "plans/ashgrove.yaml"


def test_contrast_is_good() -> None:
    """Each ink against the paper and against a marked row, at least 4.5 to 1."""
    style = files("checker.report.html").joinpath("page.css").read_text(encoding="utf-8")
    colour = dict(re.findall(r"--(\w+): (#[0-9a-f]{6});", style.split("}")[0]))
    marked = re.search(r":target \{ background: (#[0-9a-f]{6})", style)
    assert marked is not None
    for ink in ("ink", "soft", "grave"):
        for ground in (colour["paper"], marked[1]):
            assert contrast(colour[ink], ground) >= 4.5, (ink, ground)


def contrast(one: str, other: str) -> float:
    """Contrast of two colours, as the web's accessibility guidelines define it."""
    lights = sorted((lightness(one), lightness(other)), reverse=True)
    return (lights[0] + 0.05) / (lights[1] + 0.05)


def lightness(colour: str) -> float:
    """Relative luminance of an sRGB colour."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_a_plan_read_from_a_file(tmp_path: Path) -> None:
    """From a plan with hostile names through the engine to a page that is whole, for both readers."""
    plan = tmp_path / "stair.yaml"
    title = HOSTILE.replace("'", "''")
    plan.write_text(
        f"""\
plan: '{title}'
rules: us
stairs:
  - id: main
    name: '{title}'
    status: new
    type: straight
    total_rise: 9 ft
    flights:
      - id: main
        name: {LONG}
        risers: 11
        total_rise: 9 ft
        going: 8 in
        handrails: []
""",
        encoding="utf-8",
    )
    result = check(plan, cache=Cache(tmp_path / "cache"), shown_as=plan.name)
    assert result.findings
    pages: list[tuple[Result, Reader]] = [(result, "contractor"), (result, "reviewer")]
    for each, reader in pages:
        test_a_page_is_whole(each, reader, everything=True)
        test_landmarks_and_tables(each, reader, everything=True)
        page = html_page(each, reader)
        assert str(tmp_path) not in page
        assert read(page).named("h1")[0].text == HOSTILE
        assert "riser height" in words(read(page).by_id("sums").text)
