"""The report as one HTML page, for a screen and for paper."""

from checker.report.html.page import html_page

__all__ = ["html_page"]
