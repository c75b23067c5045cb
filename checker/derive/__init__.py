"""Which facts follow from a plan, each declared with what it needs and which calculation makes it."""

from collections.abc import Mapping
from functools import lru_cache

from checker.derive.registry import Derivation, declared


@lru_cache(maxsize=1)
def derivations() -> Mapping[tuple[str, str], Derivation]:
    """Every derivation by kind and attribute, with every module of derivations imported."""
    from checker.derive import boundaries, ceilings, openings, stairs  # noqa: F401
    from checker.derive.envelope import assemblies, layers, moisture, surfaces  # noqa: F401
    from checker.derive.framing import bearing, details, members, roofs, spans, weights  # noqa: F401
    from checker.derive.heating import ducts, heaters, losses, ventilation  # noqa: F401

    return declared()


__all__ = ["Derivation", "derivations"]
