"""Members of wood: sections, design values, demand and capacity, spans, columns, connections.

Two published methods share one path: allowable-stress design (NDS) and limit-states design (CSA O86). Which
of them holds, with its factors, comes in a `TimberStandard`; the reference values of a species and grade come
in a `Lumber`. Both are data of a ruleset.
"""
