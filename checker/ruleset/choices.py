"""The choices that rules are made of: severities, bases, who decides, sheets."""

from __future__ import annotations

from typing import Literal

Severity = Literal["danger", "correction", "advice"]
SEVERITIES: tuple[Severity, ...] = ("danger", "correction", "advice")
Basis = Literal["model code", "regulation", "standard", "common practice"]
Certainty = Literal["read", "from memory"]
Decider = Literal[
    "building official",
    "zoning officer",
    "electrical inspector",
    "mechanical inspector",
    "plumbing inspector",
    "gas inspector",
    "fire official",
    "health department",
    "worker-safety authority",
    "licensed engineer",
    "licensed designer",
    "contractor",
]
AUTHORITY_OF: dict[str, str] = {
    "building official": "building",
    "zoning officer": "zoning",
    "electrical inspector": "electrical",
    "mechanical inspector": "building",
    "plumbing inspector": "plumbing",
    "gas inspector": "gas",
    "fire official": "building",
    "health department": "building",
    "worker-safety authority": "worker safety",
    "licensed engineer": "building",
    "licensed designer": "building",
    "contractor": "building",
}
Sheet = Literal[
    "application form",
    "site plan",
    "floor plans",
    "sections",
    "elevations",
    "stair details",
    "guard details",
    "window and door schedule",
    "roof plan",
    "framing plans",
    "foundation plan",
    "energy sheet",
    "mechanical plan",
    "electrical plan",
    "plumbing plan",
    "gas plan",
    "hazard survey",
    "work plan",
]
