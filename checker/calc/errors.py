"""What a calculation says when a value is outside the range in which it holds."""

from __future__ import annotations


class OutOfRange(ValueError):
    """A value outside the range in which a calculation holds.

    The text gives the name of the value, the value itself and the legal range.
    """

    def __init__(self, name: str, value: object, legal: str) -> None:
        super().__init__(name, value, legal)
        self.name = name
        self.value = value
        self.legal = legal

    def __str__(self) -> str:
        shown = f"{self.value:.12g}" if isinstance(self.value, float) else repr(self.value)
        return f"{self.name} is {shown}: it must be {self.legal}"
