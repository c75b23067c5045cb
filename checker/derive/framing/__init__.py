"""Facts of the frame: weights and loads, members, bearing lines, footings, roofs."""
