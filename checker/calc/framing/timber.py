"""What a ruleset says of wood: a design standard with its factors, and lumber with its reference values.

TimberStandard, Lumber, SizeFactor, DepthValues, Combination, Section
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

Method = Literal["allowable stress", "limit states"]
LoadKind = Literal["dead", "live", "snow", "roof live", "wind"]
"""Live is the occupancy of floors and attics; roof live, that of work on a roof."""
LOAD_KINDS: tuple[LoadKind, ...] = ("dead", "live", "snow", "roof live", "wind")


@dataclass(frozen=True, slots=True)
class SizeFactor:
    """Size factors of members up to a depth and from a thickness, of one class of lumber."""

    up_to_depth_m: float
    bending: float
    tension: float = 1.0
    compression: float = 1.0
    shear: float = 1.0
    from_thickness_m: float = 0.0
    """The factor holds for members at least this thick (narrower face)."""


@dataclass(frozen=True, slots=True)
class DepthValues:
    """Reference values of lumber whose values are published by depth, for members up to a depth. [Pa]"""

    up_to_depth_m: float
    bending_pa: float
    tension_pa: float
    compression_pa: float


@dataclass(frozen=True, slots=True)
class Lumber:
    """Reference design values of a species and grade, or of an engineered product. [Pa]

    In limit states the values are specified strengths; `stiffness_low_pa` is Emin of the one, E05 of the other.
    """

    name: str
    bending_pa: float
    shear_pa: float
    bearing_pa: float
    stiffness_pa: float
    stiffness_low_pa: float
    tension_pa: float | None = None
    compression_pa: float | None = None
    sizes: str = ""
    """Class of size factors in the standard; none for values that need no such factor."""
    by_depth: tuple[DepthValues, ...] = ()
    """Where bending, tension and compression are published by depth."""
    specific_gravity: float | None = None
    standard: str = ""
    """Edition that published the values."""


@dataclass(frozen=True, slots=True)
class Combination:
    """A combination of loads with the share of each kind that it counts, and its duration factor."""

    name: str
    factors: Mapping[LoadKind, float]
    duration: float


@dataclass(frozen=True, slots=True)
class TimberStandard:
    """A published method for members of wood with its factors.

    method: allowable stress (NDS) or limit states (CSA O86); strength: combinations of loads for strength with
    their duration factors; service: loads that count for deflection, live and total; repetitive: factor for
    members side by side; wet: factors in wet service by property; resistance: phi by property (limit states).
    """

    name: str
    method: Method
    strength: tuple[Combination, ...]
    live_deflection: tuple[Combination, ...]
    total_deflection: tuple[Combination, ...]
    size_factors: Mapping[str, tuple[SizeFactor, ...]]
    repetitive: float
    repetitive_spacing_m: float
    repetitive_count: int
    built_up: float = 1.0
    """Factor on bending of members built up of this many plies or more (`built_up_plies`)."""
    built_up_plies: int = 3
    wet: Mapping[str, float] = field(default_factory=dict)
    resistance: Mapping[str, float] = field(default_factory=dict)
    creep: float = 1.5
    """Factor on deflection under lasting load."""
    wet_exempt: Mapping[str, float] = field(default_factory=dict)
    """By property, the reference value times size factor up to which no wet factor is taken. [Pa]"""


@dataclass(frozen=True, slots=True)
class Section:
    """A member's rectangular section: one ply and how many of them stand side by side."""

    ply_width_m: float
    depth_m: float
    plies: int = 1

    @property
    def width_m(self) -> float:
        """Width of all plies. [m]"""
        return self.ply_width_m * self.plies

    @property
    def area_m2(self) -> float:
        """Area of all plies. [m2]"""
        return self.width_m * self.depth_m

    @property
    def modulus_m3(self) -> float:
        """Section modulus about the strong axis. [m3]"""
        return self.width_m * self.depth_m**2 / 6.0

    @property
    def inertia_m4(self) -> float:
        """Second moment of area about the strong axis. [m4]"""
        return self.width_m * self.depth_m**3 / 12.0
