"""Sizes of the units in which ASCE 7 prints equations that are not free of units."""

from __future__ import annotations

FOOT_M = 0.3048
POUND_N = 4.4482216152605
PSF_PA = POUND_N / FOOT_M**2
PCF_N_M3 = POUND_N / FOOT_M**3
FOOT2_M2 = FOOT_M**2
