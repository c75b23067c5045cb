"""Reading the files of rulesets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel, ValidationError

from checker.mistakes import problems_of
from checker.problems import Place, Problem, Unreadable
from checker.ruleset.head import RulesetFile
from checker.ruleset.model import Rule, TopicFile
from checker.ruleset.places import HEAD, files_of, locate, roots_with, shipped, shown_folder
from checker.source import Document, read

LONGEST_TOPIC_LINES = 500
MOST_RULES = 12
Model = TypeVar("Model", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic file that was read."""

    name: str
    model: TopicFile
    document: Document


@dataclass(frozen=True, slots=True)
class RulesetFolder:
    """The files of one ruleset."""

    name: str
    path: Path
    head: RulesetFile
    head_document: Document
    topics: tuple[Topic, ...]

    def rules(self) -> Iterator[tuple[str, Rule, Topic, int]]:
        """Every rule with its full id, its topic and its number in the file."""
        for topic in self.topics:
            for index, rule in enumerate(topic.model.rules):
                yield self.full_id(topic, rule.id), rule, topic, index

    def full_id(self, topic: Topic, id_: str) -> str:
        """The id by which other sets and reports call a rule or table."""
        return f"{self.name}/{topic.name}.{id_}"


@dataclass(slots=True)
class Library:
    """Reads rulesets by name or folder, each once.

    roots: folders of rulesets in which names are looked up, the user's own before the shipped ones.
    """

    roots: tuple[Path, ...] = field(default_factory=lambda: (shipped(),))
    _read: dict[str, RulesetFolder] = field(default_factory=dict)

    def locate(self, name: str, asked_at: Place | None = None) -> Path:
        """The folder of a ruleset, by its name, or by a path to it. Raises Unreadable."""
        return locate(name, self.roots, asked_at)

    def folder(self, name: str, asked_at: Place | None = None) -> RulesetFolder:
        """Read a ruleset. Raises Unreadable with the problems of all its files."""
        path = self.locate(name, asked_at)
        key = str(path.resolve())
        if key not in self._read:
            self._read[key] = read_folder(path, shown_folder(path, self.roots))
            self.roots = roots_with(path, self._read[key].name, self.roots)
        return self._read[key]


def read_folder(path: Path, shown_as: str | None = None) -> RulesetFolder:
    """Read every file of a ruleset's folder. Raises Unreadable with all problems of all files."""
    shown = shown_as or path.as_posix()
    problems: list[Problem] = []
    head: tuple[RulesetFile, Document] | None = None
    topics: list[Topic] = []
    for file in files_of(path):
        try:
            document = read(file, shown_as=f"{shown}/{file.name}")
            if file.name == HEAD:
                head = (_checked(RulesetFile, document), document)
            else:
                topic = _checked(TopicFile, document)
                topics.append(Topic(file.stem, topic, document))
                if topic.topic != file.stem:
                    problems.append(
                        Problem(
                            document.place(("topic",)),
                            f"the topic is “{topic.topic}”, the file {file.name}",
                            f"topic: {file.stem}",
                        )
                    )
        except Unreadable as error:
            problems += error.problems
    if problems or head is None:
        raise Unreadable(problems or [Problem(Place(shown, 1, 1), f"there is no {HEAD}", "add it")])
    folder = RulesetFolder(head[0].ruleset, path, head[0], head[1], tuple(topics))
    problems += _double_ids(folder)
    if problems:
        raise Unreadable(problems)
    return folder


def _checked(model: type[Model], document: Document) -> Model:
    try:
        return model.model_validate(document.data)
    except ValidationError as error:
        raise Unreadable(problems_of(error, model, document)) from None


def _double_ids(folder: RulesetFolder) -> Iterator[Problem]:
    for topic in folder.topics:
        for section in ("rules", "tables"):
            seen: dict[str, int] = {}
            retired = {each.id: each for each in topic.model.retired}
            for index, item in enumerate(getattr(topic.model, section)):
                place = topic.document.place((section, index, "id"))
                if item.id in seen:
                    first = topic.document.place((section, seen[item.id], "id")).line
                    yield Problem(
                        place,
                        f"the id “{item.id}” is used twice, first on line {first}",
                        "give each its own id",
                    )
                elif item.id in retired:
                    now = retired[item.id].now
                    yield Problem(
                        place,
                        f"the id “{item.id}” is retired: {retired[item.id].why}",
                        f"see {now}" if now else "take a new id",
                    )
                seen.setdefault(item.id, index)
