"""Heat and moisture through the envelope of a house.

assembly      thermal resistance and U of layered and framed constructions
section       steady temperatures through a construction
moisture      saturation, dew point, vapour pressures, a condensation check, insulation ratios
monthly       condensation over a year of monthly means
rafter_bay    insulation and air space in the depth of a rafter
ground        slabs and walls against soil
infiltration  air leakage and ventilation
room_loss     losses of rooms and of a house
climate       degree days and the share of a season that a stage of heating carries

Resistances are listed from inside to outside, surface films included where a function says so.
Clause and equation numbers of ISO standards and ASHRAE handbooks in the references are from memory; what was read
and what was not is said row by row in the published checks.
"""
