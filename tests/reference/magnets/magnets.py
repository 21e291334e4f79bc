"""Outside truth for the centring magnets: fields by magpylib, face charges integrated over them.

    pip install numpy scipy magpylib && python3 tests/reference/magnets/magnets.py

magpylib's Cylinder (its own closed forms, its own elliptic integrals) gives the field of the frame's magnet; the flap's
magnet is its two charged pole faces, sigma = Br/mu0, integrated over them by Gauss-Legendre rings and midpoint spokes.
The torque about the hinge is sum(sigma B . dP/dtheta), dP/dtheta the path of a face point per radian.
Writes magnets.json beside itself. SI; positive angles towards +x, the flap hanging along -z, the hinge along y.
"""

import json
import math
import pathlib

import magpylib
import numpy as np
from scipy.optimize import minimize_scalar

MU0 = 4e-7 * math.pi
PROBE = 0.38e-3


def cylinder(br, diameter, thickness, axis):
    magnet = magpylib.magnet.Cylinder(polarization=(0, 0, br), dimension=(diameter, thickness))
    if axis == "y":
        magnet.rotate_from_angax(-90, "x")  # +z to +y
    return magnet


def face(diameter, rings, spokes):
    """Points (a, b) on a disc and their areas."""
    x, w = np.polynomial.legendre.leggauss(rings)
    r = 0.25 * diameter * (x + 1)
    psi = (np.arange(spokes) + 0.5) * 2 * math.pi / spokes
    a = np.outer(r, np.cos(psi)).ravel()
    b = np.outer(r, np.sin(psi)).ravel()
    area = np.outer(0.25 * diameter * w * r, np.full(spokes, 2 * math.pi / spokes)).ravel()
    return a, b, area


def jamb_torque(m, theta, rings, spokes):
    a, b, area = face(m["diameter"], rings, spokes)
    rows = [m["distanceFromHinge"] - i * m["pitch"] for i in range(m["perSide"])]
    sign = 1 if m["force"] == "attract" else -1
    total = 0.0
    for j, jamb in enumerate(rows):
        fixed = cylinder(m["remanence"], m["diameter"], m["thickness"], "y")
        fixed.position = (0, m["gap"] + m["thickness"] / 2, -jamb)
        for i, flap in enumerate(rows):
            along, depth = a, flap - b  # in the flap: along the swing, below the hinge
            p = lambda y: np.stack([depth * np.sin(theta) + along * np.cos(theta), np.full_like(a, y), along * np.sin(theta) - depth * np.cos(theta)], 1)
            path = np.stack([depth * np.cos(theta) - along * np.sin(theta), 0 * a, along * np.cos(theta) + depth * np.sin(theta)], 1)
            polarity = (-1) ** (i + j) if m["polarity"] == "alternating" else 1
            for y, charge in ((0.0, 1), (-m["thickness"], -1)):
                field = fixed.getB(p(y))
                total += sign * polarity * charge * m["remanence"] / MU0 * np.sum(area * np.sum(field * path, 1))
    return m["sides"] * total


def sill_torque(m, theta, rings, spokes):
    a, b, area = face(m["diameter"], rings, spokes)
    d, t, gap = m["distanceFromHinge"], m["thickness"], m["gap"]
    fixed = cylinder(m["remanence"], m["diameter"], t, "z")
    fixed.position = (0, 0, -(d + gap + t / 2))
    sign = 1 if m["force"] == "attract" else -1
    total = 0.0
    for depth, charge in ((d, -1), (d - t, 1)):  # magnetised up, as the sill's
        p = np.stack([depth * np.sin(theta) + a * np.cos(theta), b, a * np.sin(theta) - depth * np.cos(theta)], 1)
        path = np.stack([depth * np.cos(theta) - a * np.sin(theta), 0 * a, a * np.cos(theta) + depth * np.sin(theta)], 1)
        total += sign * charge * m["remanence"] / MU0 * np.sum(area * np.sum(fixed.getB(p) * path, 1))
    return m["sides"] * total


def axial_force(m, rings, spokes):
    a, b, area = face(m["diameter"], rings, spokes)
    fixed = cylinder(m["remanence"], m["diameter"], m["thickness"], "z")
    total = 0.0
    for z, charge in ((m["thickness"] / 2 + m["gap"], -1), (m["thickness"] / 2 + m["gap"] + m["thickness"], 1)):
        field = fixed.getB(np.stack([a, b, np.full_like(a, z)], 1))[:, 2]
        total += charge * m["remanence"] / MU0 * np.sum(area * field)
    return -total if m["force"] == "attract" else total


def flux_index(m):
    magnet = cylinder(m["remanence"], m["diameter"], m["thickness"], "z")
    field = lambda rho: float(magnet.getB((rho, 0, m["thickness"] / 2 + PROBE))[2])
    radius = m["diameter"] / 2
    rhos = np.linspace(0, radius, 401)
    k = int(np.argmax([field(r) for r in rhos]))
    best = field(rhos[k])
    if k > 0:
        span = (rhos[k - 1], rhos[min(k + 1, 400)])
        best = max(best, -minimize_scalar(lambda r: -field(r), bounds=span, method="bounded", options={"xatol": 1e-12}).fun)
    return (10 * best) ** 2 * math.pi * (1e3 * radius) ** 2


BASE = dict(
    arrangement="jamb", sides=2, perSide=1, pitch=0.025, polarity="like", force="attract",
    diameter=0.01, thickness=0.005, remanence=1.32, gap=0.003, distanceFromHinge=0.3, temperature=20,
)
CASES = {
    "jamb": {},
    "jamb, repelling, narrow gap": dict(force="repel", gap=0.001, sides=1),
    "jamb, three rows alternating": dict(perSide=3, pitch=0.014, polarity="alternating", diameter=0.012, thickness=0.003, gap=0.004),
    "jamb, two rows alike": dict(perSide=2, pitch=0.03, diameter=0.02, thickness=0.01, gap=0.006, distanceFromHinge=0.42),
    "sill": dict(arrangement="sill"),
    "sill, squat and near": dict(arrangement="sill", sides=1, diameter=0.02, thickness=0.003, gap=0.004, distanceFromHinge=0.22),
    "sill, repelling, short flap": dict(arrangement="sill", force="repel", sides=1, diameter=0.015, thickness=0.015, gap=0.005, distanceFromHinge=0.08),
}
ANGLES = [0.003, 0.01, 0.02, 0.04, 0.07, 0.15, 0.5, 1.3]


def solve(over):
    m = {**BASE, **over}
    torque = jamb_torque if m["arrangement"] == "jamb" else sill_torque
    rows, coarse = [], 0.0
    for theta in ANGLES:
        fine = torque(m, theta, 64, 200)
        coarse = max(coarse, abs(fine - torque(m, theta, 48, 140)))
        rows.append([theta, fine])
    return {
        "magnets": m,
        "torque": rows,
        "quadratureError": coarse,  # N m, greatest change from 48 x 140 to 64 x 200 points
        "axialForce": axial_force(m, 64, 200),
        "fluxIndex": flux_index(m),
    }


if __name__ == "__main__":
    out = {"magpylib": magpylib.__version__, "cases": {name: solve(over) for name, over in CASES.items()}}
    path = pathlib.Path(__file__).with_name("magnets.json")
    path.write_text(json.dumps(out, indent=1) + "\n")
    for name, case in out["cases"].items():
        print(name, case["quadratureError"], case["axialForce"], case["fluxIndex"])
