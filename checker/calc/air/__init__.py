"""Air that heats, ventilates and feeds flames.

air_properties  density and viscosity of air, pressure at an altitude
equipment       output, derating, size against the load, airflow and temperature rise
duct            friction, sizes, velocities and fittings of one duct
duct_system     pressure budget, shares of the air, a tree of runs, filters, returns, transfer openings
ventilation     rates, balance, tightness, depressurisation and make-up air
combustion      room volume and openings for combustion air, sizes of flues against their outlets

Airflows are volume flows at the density that is given beside them. Coefficients and limits that a code sets
are parameters.
"""
