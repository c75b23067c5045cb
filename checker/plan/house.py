"""The permit, the site and its lot lines, the house, its levels, exterior walls and eaves."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Element, Ident, Says, Single, Text, Worked
from checker.plan.fields import (
    AirChanges,
    Airflow,
    Area,
    Count,
    CountFromOne,
    Date,
    Fraction,
    Holds,
    Length,
    LinkTo,
    Named,
    Number,
    Pressure,
    Temperature,
    Time,
    Volume,
    WindSpeed,
    Year,
)

Trade = Literal[
    "permit",
    "zoning",
    "stairs",
    "guards",
    "rooms",
    "openings",
    "alarms",
    "fire",
    "envelope",
    "heating",
    "framing",
    "roof",
    "electrical",
    "plumbing",
    "gas",
    "hazards",
    "order of work",
]
Stage = Literal["application", "before work", "rough-in", "final"]
STAGES: tuple[Stage, ...] = ("application", "before work", "rough-in", "final")
Route = Literal[
    "residential code",
    "residential code, existing-building appendix",
    "existing-building code, prescriptive",
    "existing-building code, work area level 1",
    "existing-building code, work area level 2",
    "existing-building code, work area level 3",
    "existing-building code, performance",
    "provincial code",
    "provincial code, existing-buildings part",
]


class Permit(Single):
    """What is applied for."""

    kind: ClassVar[str] = "permit"
    meaning: ClassVar[str] = "the permit applied for: its date, its route through the code, its scope and stage"

    date: Date | None = None
    """Date of the application, as quoted text: it picks the edition in force."""
    route: Route | None = None
    """Which code the permit goes by, with which of its provisions for existing buildings."""
    scope: list[Trade] | None = None
    """The trades that this permit is for; without it, all."""
    stage: Stage | None = None
    """How far the work is; what is not due yet is no fault. Without it, the application is taken."""
    share_altered: Fraction | None = None
    """Part of the floor area that the work alters."""
    value_of_work: Number | None = None
    """Price of the work in the currency of the place."""
    exterior_work_only: bool | None = None
    """Whether the work touches only outside surfaces: roofing, siding, windows and doors, a porch or deck."""
    plumbing_or_mechanical_only: bool | None = None
    """Whether the work is only to plumbing or mechanical systems."""


class LotLine(Element):
    """One side of the lot."""

    kind: ClassVar[str] = "lot-line"
    meaning: ClassVar[str] = "one side of the lot"
    trade: ClassVar[str] = "zoning"
    has_status: ClassVar[bool] = False

    side: Literal["front", "rear", "side", "street side", "alley"] | None = None
    """Which side of the lot it is, as zoning names it."""
    setback_required: Length | None = None
    """Distance that zoning asks a building to keep from this line."""


class Site(Single):
    """The lot and the design data of the place."""

    kind: ClassVar[str] = "site"
    meaning: ClassVar[str] = "the lot and the design data of the place"
    trade: ClassVar[str] = "zoning"
    ORDERED: ClassVar[tuple[tuple[str, str], ...]] = (("heating_design_temperature", "coldest_months_temperature"),)
    SAME_LENGTH: ClassVar[tuple[tuple[str, str], ...]] = (("bin_temperatures", "bin_hours"),)
    MONTHLY: ClassVar[tuple[str, ...]] = ("monthly_temperatures", "monthly_humidities")

    lot_lines: Annotated[list[LotLine] | None, Holds("site")] = None
    """The sides of the lot."""
    lot_area: Area | None = None
    """Area of the lot."""
    zoning_district: Text | None = None
    """Zoning district by name."""
    height_limit: Length | None = None
    """Greatest height of a building that zoning allows here."""
    storeys_limit: Number | None = None
    """Most storeys that zoning allows here."""
    coverage_limit: Fraction | None = None
    """Largest part of the lot that zoning lets buildings cover."""
    zoning_approval: Literal["not asked", "asked", "granted", "refused"] | None = None
    """Where the zoning sign-off stands."""
    flood_hazard_area: bool | None = None
    """Whether the lot lies in a mapped flood hazard area."""
    frost_depth: Length | None = None
    """Depth below grade that frost reaches."""
    ground_snow_load: Pressure | None = None
    """Ground snow load."""
    snow_load_ss: Pressure | None = None
    """In Canada, snow load Ss of the ground."""
    rain_load_sr: Pressure | None = None
    """In Canada, rain load Sr that goes with it."""
    wind_speed: WindSpeed | None = None
    """Basic design wind speed."""
    wind_exposure: Literal["B", "C", "D"] | None = None
    """Exposure to wind: B among houses and trees, C open, D at the water."""
    seismic_category: Literal["A", "B", "C", "D0", "D1", "D2", "E"] | None = None
    """Seismic design category."""
    climate_zone: Literal["0", "1", "2", "3", "4", "4 marine", "5", "6", "7", "8"] | None = None
    """Climate zone of the energy code by the county; marine zone 4 is a zone of its own."""
    moisture_regime: Literal["dry", "moist", "marine"] | None = None
    """Moisture regime of the climate zone."""
    degree_days_18c: Number | None = None
    """Heating degree days below 18 °C, in Celsius degree days."""
    heating_design_temperature: Temperature | None = None
    """Outdoor temperature at the winter design condition."""
    coldest_months_temperature: Temperature | None = None
    """Mean outdoor temperature of the three coldest months."""
    ground_temperature: Temperature | None = None
    """Temperature of the ground surface in winter: the yearly mean of the air less its swing."""
    altitude: Length | None = None
    """Height above sea level."""
    monthly_temperatures: list[Temperature] | None = None
    """Mean outdoor temperature of each month, from January."""
    monthly_humidities: list[Fraction] | None = None
    """Mean outdoor relative humidity of each month, from January."""
    bin_temperatures: list[Temperature] | None = None
    """Outdoor temperatures in the middle of each bin of the heating season."""
    bin_hours: list[Number] | None = None
    """Hours a year in each of those bins."""
    design_data_from: Text | None = None
    """The authority that gave the design data."""
    design_data_stated: bool | None = None
    """Whether the design data come from the authority rather than from a guess."""


class HouseSays(Says):
    """What can be said of the house in one state."""

    air_changes_50_measured: AirChanges | None = None
    """Air changes at 50 Pa, measured by a test on site."""
    air_changes_50_target: AirChanges | None = None
    """Air changes at 50 Pa that the work is to reach."""
    tightness: Annotated[Text | None, Named("archetype")] = None
    """Without a test or a target, a class of tightness by its name in the ruleset's archetypes."""


class House(Single, HouseSays):
    """The building as a whole."""

    kind: ClassVar[str] = "house"
    meaning: ClassVar[str] = "the building as a whole"

    year_built: Year | None = None
    """Year in which the house was first built."""
    dwelling_units: CountFromOne | None = None
    """Number of dwelling units."""
    sprinklered: bool | None = None
    """Whether an automatic sprinkler system protects the whole house."""
    attached_garage: bool | None = None
    """Whether a garage is attached."""
    garage_opens_to_house: bool | None = None
    """Whether a door leads from the garage into the house."""
    fuel_burning_appliance: bool | None = None
    """Whether anything in the house burns gas, oil, wood or another fuel."""
    height_above_grade: Length | None = None
    """Height from mean grade to the highest point that zoning measures."""
    storeys: Number | None = None
    """Number of storeys above grade as zoning counts them."""
    lot_coverage: Fraction | None = None
    """Part of the lot that buildings cover after the work."""
    lived_in_during_work: bool | None = None
    """Whether anyone lives in the house while the work goes on."""
    bedrooms: Count | None = None
    """Number of bedrooms after the work."""
    conditioned_area: Area | None = None
    """Floor area that is heated after the work."""
    heated_volume: Volume | None = None
    """Volume of air inside the insulation after the work."""
    test_planned: bool | None = None
    """Whether an air-leakage test is planned when the envelope is closed."""
    duct_test_planned: bool | None = None
    """Whether a duct-leakage test is planned."""
    duct_leakage: Airflow | None = None
    """Leakage of the whole duct system, measured at 25 Pa."""
    historic: bool | None = None
    """Whether the house is listed or stands in a listed district."""
    energy_path: (
        Literal[
            "R-values", "total U and area", "simulated performance", "rating index", "existing-building alternative"
        ]
        | None
    ) = None
    """Way by which the energy code is to be met."""
    was: HouseSays | None = None
    """What the house was before the work."""


class LevelSays(Says):
    """What can be said of a level."""

    use: Literal["basement", "storey", "habitable attic", "attic", "crawl space"] | None = None
    """What the level is."""
    floor_to_floor: Length | None = None
    """Finished floor of this level to finished floor of the level above."""
    floor_thickness: Length | None = None
    """Thickness of this level's own floor, from its finish to the ceiling below it."""
    ceiling_height: Length | None = None
    """Finished floor to finished ceiling where the ceiling is level."""
    floor_area: Area | None = None
    """Floor area inside the exterior walls."""
    habitable_area: Area | None = None
    """Floor area of the habitable rooms with the spaces that serve them."""


class Level(Worked, LevelSays):
    """A floor of the house."""

    kind: ClassVar[str] = "level"
    meaning: ClassVar[str] = "a floor of the house: basement, storey or attic"
    trade: ClassVar[str] = "rooms"

    below: Annotated[Ident | None, LinkTo("level", inverse="above", inverse_to_one=True, loops=False)] = None
    """The level under this one."""
    walls: Annotated[Ident | None, LinkTo("assembly", inverse="walls_of")] = None
    """How its outside walls are built, where rooms are drawn as rectangles."""
    ceiling: Annotated[Ident | None, LinkTo("assembly", inverse="ceilings_of")] = None
    """How the ceiling or roof over it is built, where no heated room lies above."""
    floor: Annotated[Ident | None, LinkTo("assembly", inverse="floors_of")] = None
    """How its floor is built, where no heated room lies below."""
    was: LevelSays | None = None
    """What the level was before the work."""


class ExteriorWallSays(Says):
    """What can be said of an exterior wall."""

    distance_to_lot_line: Length | None = None
    """From the face of the wall to the lot line it faces, or to the middle of a street or alley."""
    fire_resistance: Time | None = None
    """Fire-resistance rating of the wall, exposed from both sides unless the code says otherwise."""
    area: Area | None = None
    """Area of the wall with its openings, in the storey it is measured for."""
    opening_area: Area | None = None
    """Area of all windows and doors in the wall."""
    follows_existing_wall: bool | None = None
    """Whether a new wall stands straight above an existing one."""
    unprotected_penetrations: bool | None = None
    """Whether pipes, ducts or cables pass the wall without a listed penetration fire stop."""


class ExteriorWall(Worked, ExteriorWallSays):
    """An outside wall, or the side of a dormer, that faces a lot line."""

    kind: ClassVar[str] = "exterior-wall"
    meaning: ClassVar[str] = "an outside wall, or the side of a dormer, that faces a lot line"
    trade: ClassVar[str] = "fire"

    faces: Annotated[Ident | None, LinkTo("lot-line", inverse="exterior_walls")] = None
    """The lot line that the wall faces."""
    windows: Annotated[list[Ident] | None, LinkTo("window", inverse="wall", inverse_to_one=True)] = None
    """Windows in the wall."""
    doors: Annotated[list[Ident] | None, LinkTo("door", inverse="wall", inverse_to_one=True)] = None
    """Doors in the wall."""
    part: Literal["main house", "wing", "dormer", "garage", "porch"] | None = None
    """Which part of the house the wall belongs to."""
    was: ExteriorWallSays | None = None
    """What the wall was before the work."""


class EaveSays(Says):
    """What can be said of an eave or another projection."""

    distance_to_lot_line: Length | None = None
    """From the outer edge of the projection to the lot line."""
    fire_resistance: Time | None = None
    """Fire-resistance rating of the underside."""
    projection: Length | None = None
    """How far it stands out from the wall."""


class Eave(Worked, EaveSays):
    """An eave, cornice, rake or other projection from an exterior wall."""

    kind: ClassVar[str] = "eave"
    meaning: ClassVar[str] = "an eave, cornice, rake or other projection from an exterior wall"
    trade: ClassVar[str] = "fire"

    of: Annotated[Ident | None, LinkTo("exterior-wall", inverse="eaves")] = None
    """The wall that it projects from."""
    was: EaveSays | None = None
    """What the projection was before the work."""
