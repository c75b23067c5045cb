"""Facts of heat losses, equipment, ducts, ventilation and air for flames."""
