"""Writes water.json: water, steam and transport properties by an independent implementation.

Needs Debian's python3-iapws. Run once: python3 water.py > water.json
"""
import json
from iapws import IAPWS97
from iapws._iapws import _Viscosity, _ThCond, _Tension
from iapws.iapws97 import _PSat_T, _TSat_P, _Region1, _Region2

rows = []
for celsius in (0.5, 5, 15, 25, 37, 50, 65, 75, 95, 110, 130, 150):
    for mpa in (0.6, 2.0):
        state = _Region1(celsius + 273.15, mpa)
        rho = 1 / state["v"]
        rows.append({
            "degC": celsius, "kPa": mpa * 1000,
            "density": rho, "heatCapacity": state["cp"] * 1000, "enthalpy": state["h"] * 1000,
            "viscosity": _Viscosity(rho, celsius + 273.15), "conductivity": _ThCond(rho, celsius + 273.15),
            "surfaceTension": _Tension(celsius + 273.15), "saturationPressure": _PSat_T(celsius + 273.15) * 1e6,
        })
saturated = []
for mpa in (0.005, 0.02, 0.07, 0.15, 0.2, 0.25, 0.6, 0.8, 1.2, 1.6, 2.5, 4.0):
    t = _TSat_P(mpa)
    saturated.append({
        "kPa": mpa * 1000, "temperature_degC": t - 273.15,
        "steamEnthalpy_kJkg": _Region2(t, mpa)["h"], "waterEnthalpy_kJkg": _Region1(t, mpa)["h"],
        "steamVolume": _Region2(t, mpa)["v"],
    })
print(json.dumps({"liquid": rows, "saturated": saturated}, indent=1))
