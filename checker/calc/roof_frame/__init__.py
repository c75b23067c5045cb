"""Geometry and statics of rafter roofs.

geometry  pitch, ridge, rafters, birdsmouths, heel heights, ties
meeting   planes of unlike pitch, dormers against a main roof, headroom under a changed roof
thrust    thrust at the plates, ties, heel joints, ridge beams, uplift

A pitch is the rise for one of run. A run is on plan, from the outside of the plate to the middle of the ridge;
heights are over the top of the plate. The line of a roof plane is the top of its rafters.
"""
