"""Proof that the air moves: airflow, static pressure, and what another speed would do."""
