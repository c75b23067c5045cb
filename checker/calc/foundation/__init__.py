"""Footings and the soil beside and under them.

footing  soil pressure, width for a load, projections, adjusted table widths, pads, frost
soil     digging beside a footing, unbalanced backfill, pressure of soil on a wall
"""
