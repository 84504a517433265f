"""Fan laws: what the same fan in the same ducts does at another speed or in other air.

Flow goes with speed, pressure with its square, power with its cube; in air of another density the flow
stays, pressure and power go with the density (AMCA 201, from memory; published worked examples stand in
the tests). They hold along one system curve only: ducts, filter and coil unchanged.
"""

from dataclasses import dataclass

from matcher.airflow.entry import measured


@dataclass(frozen=True, slots=True)
class FanPoint:
    """One working point: airflow in CFM, static in inches of water, shaft power in hp, speed in rpm."""

    rpm: float
    cfm: float
    static_in_wc: float | None = None
    power_hp: float | None = None
    amps: float | None = None
    """Motor current; it is predicted with the power, which holds near full load only."""
    watts: float | None = None
    """Motor input; predicted with the shaft power, as if the motor's efficiency stayed."""


def at_speed(point: FanPoint, rpm: float, density_ratio: float = 1.0) -> FanPoint:
    """Return the point at another speed, and in air of `density_ratio` times the density.

    Example: 1200 -> 1500 rpm takes 10,000 CFM, 2.0 in., 5 hp to 12,500 CFM, 3.125 in., 9.766 hp.
    """
    old = measured("the speed", point.rpm, low=0, high=30_000, unit="rpm", above=True)
    new = measured("the other speed", rpm, low=0, high=30_000, unit="rpm", above=True)
    density = measured("the density ratio", density_ratio, low=0, high=3, unit="", above=True)
    ratio = new / old
    cube = ratio**3 * density
    return FanPoint(
        rpm=new,
        cfm=point.cfm * ratio,
        static_in_wc=None if point.static_in_wc is None else point.static_in_wc * ratio**2 * density,
        power_hp=None if point.power_hp is None else point.power_hp * cube,
        amps=None if point.amps is None else point.amps * cube,
        watts=None if point.watts is None else point.watts * cube,
    )
