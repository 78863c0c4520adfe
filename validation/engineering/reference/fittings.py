"""Writes fittings.json: friction factors and fittings by an independent library.

Needs Debian's python3-fluids. Run once: python3 fittings.py > fittings.json
"""
import json
import fluids

friction = []
for re in (5e3, 2e4, 1.5e5, 8e5, 5e6, 1e8):
    for eps in (0.0, 2e-5, 5e-4, 5e-3, 0.04):
        friction.append({
            "reynolds": re, "relativeRoughness": eps,
            "colebrook": fluids.friction.Colebrook(re, eps), "haaland": fluids.friction.Haaland(re, eps),
            "swameeJain": fluids.friction.Swamee_Jain_1976(re, eps),
            "serghides": fluids.friction.Serghides_1(re, eps), "churchill": fluids.friction.Churchill_1977(re, eps),
        })
contraction = [{"ratio": b, "K": fluids.fittings.contraction_sharp(Di1=0.1, Di2=0.1 * b)} for b in (0.2, 0.4, 0.6, 0.8, 0.95)]
expansion = [{"ratio": b, "K": fluids.fittings.diffuser_sharp(Di1=0.1 * b, Di2=0.1)} for b in (0.2, 0.4, 0.6, 0.8)]
bends = [{"angle_deg": a, "radiusRatio": r, "friction": f, "K": fluids.fittings.bend_rounded(Di=0.05, angle=a, fd=f, rc=0.05 * r, method="Rennels")}
         for a in (30, 45, 90, 180) for r in (1.0, 1.5, 3.0) for f in (0.015, 0.025)]
print(json.dumps({"friction": friction, "contraction": contraction, "expansion": expansion, "bends": bends}, indent=1))
