"""Dryfit: a rules-engine compliance pre-checker for house-retrofit plans."""

__version__ = "0.1.0"
