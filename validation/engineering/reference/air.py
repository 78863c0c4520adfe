"""Writes air.json: viscosity and conductivity of air by the US Standard Atmosphere 1976 as an independent library has it.

Needs Debian's python3-fluids. Run once: python3 air.py > air.json
"""
import json
from fluids.atmosphere import ATMOSPHERE_1976

print(json.dumps([
    {"kelvin": t, "viscosity": ATMOSPHERE_1976.viscosity(t), "conductivity": ATMOSPHERE_1976.thermal_conductivity(t)}
    for t in (273.15, 283.15, 293.15, 303.15, 323.15, 353.15, 373.15)
], indent=1))
