"""Facts of layers, assemblies and surfaces: resistance, moisture, rafter bays."""
