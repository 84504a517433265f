"""Samespin's window: Qt only, no rule of fit, no unit conversion, no SQL."""
