"""Loads on a house and their way down to the footings.

gravity       a layer of material; a filled tub; what acts together
weights       layers together, members, loads on the slope and on plan
live          roof live load and its reduction; a heavy thing on joists
snow          roof snow of ASCE 7: flat, sloped, least, unbalanced, with rain
snow_drift    drifts on a lower roof and snow that slides onto it
snow_canada   specified snow loads of the Canadian code; spacing for a higher load
take_down     line loads along bearing lines, by kind of load
lateral       wind on a line of walls, braced length, overturning of a panel

Pressures are on the horizontal projection unless a function says otherwise. Figures that a code sets come in as
parameters; constants inside a published equation stand with it. Section numbers of ASCE 7 are from memory; what was
read and what was not is said row by row in the published checks.
"""
