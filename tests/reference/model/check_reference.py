"""Checks of the reference against published or exact values, and of its piecewise motion against a plain fixed-step one.

    python3 tests/reference/model/check_reference.py
"""

import math
import pathlib
import sys

import numpy as np

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

import magnet_tables as mt  # noqa: E402
from doorfile import read_door  # noqa: E402
from motion import Flap  # noqa: E402
from results import Animal, latch_numbers, swing_for  # noqa: E402
from swing import Swing  # noqa: E402

FAILED = []


def check(name, got, wanted, tolerance):
    good = abs(got - wanted) <= tolerance * max(abs(wanted), 1e-30)
    print(f"{'ok  ' if good else 'FAIL'} {name}: {got:.9g} (wanted {wanted:.9g}, within {tolerance:g})")
    if not good:
        FAILED.append(name)


def free_flap(**changes):
    door = read_door(HERE / "doors" / "01-plain.door.json")
    door["hinge"].update(frictionTorque=0.0, viscousDamping=0.0, stopAngle=3.1)
    door["air"]["density"] = 1e-12
    for key, value in changes.items():
        section, name = key.split("__")
        door[section][name] = value
    return Flap(door)


def crossings(flap, angle, count):
    import swing as module

    kept, module.BOUND = module.BOUND, flap.period * (count + 2)
    run = Swing(flap, angle, 0.0, None, 0.0)
    module.BOUND = kept
    return run


def pendulum():
    table = {30: 1.017409, 60: 1.073182, 90: 1.180341, 120: 1.372881, 150: 1.762204}  # 2K(sin(a/2))/pi
    for degrees, ratio in table.items():
        flap = free_flap()
        c = crossings(flap, math.radians(degrees), 6).crossings
        check(f"period at {degrees} deg / small-angle period", (c[2] - c[0]) / flap.period, ratio, 1e-6)


def decay():
    flap = free_flap(hinge__frictionTorque=1e-3)
    tops = turns(crossings(flap, 0.05, 4))
    check("Coulomb: loss of amplitude per cycle", tops[0] - tops[2], 4 * 1e-3 / flap.sg, 2e-3)
    flap = free_flap(hinge__viscousDamping=2e-3)
    tops = turns(crossings(flap, 0.02, 4))
    zeta = 2e-3 / (2 * math.sqrt(flap.inertia * flap.sg))
    check("viscous: logarithmic decrement", math.log(tops[0] / tops[2]), 2 * math.pi * zeta / math.sqrt(1 - zeta**2), 1e-4)
    flap = free_flap(air__density=1.204)
    tops = turns(crossings(flap, 0.02, 4))
    k = flap.half * (flap.b**4 - flap.o**4) / 4
    check("still air: growth of 1/A per cycle", 1 / tops[2] - 1 / tops[0], 8 / 3 * k / flap.inertia, 5e-3)


def turns(run):
    return [abs(y[0]) for _, y, _ in run.log if y[1] == 0.0]


def magnets():
    m = {"arrangement": "jamb", "sides": 1, "perSide": 1, "pitch": 0.025, "polarity": "like", "force": "attract", "diameter": 0.01,
         "thickness": 0.005, "remanence": 1.32, "gap": 0.2, "distanceFromHinge": 0.3, "temperature": 20.0}
    moment = 1.32 * math.pi * 0.005**2 * 0.005 / mt.MU0
    check("far coaxial force over 3 mu0 m^2/(2 pi z^4)", mt.axial_force(m), 3 * mt.MU0 * moment**2 / (2 * math.pi * 0.205**4), 3e-3)
    near = dict(m, gap=0.003)
    rho = np.array([1e-9])
    for z, wanted in ((1e-9, 0.466690), (0.005, 0.123631), (0.010, 0.035809)):
        field = 1.32 / (4 * math.pi) * (mt.disc_field(0.005, rho, np.array([z]))[1] - mt.disc_field(0.005, rho, np.array([z + 0.005]))[1])
        check(f"cylinder, on the axis, {z * 1e3:.0f} mm", float(field[0]), wanted, 5e-6)
    # Lateral force of one pair: charged discs (the sill's code) against the Hankel integral (the jamb's).
    for s in (0.002, 0.008, 0.02):
        check(f"lateral force at {s * 1e3:.0f} mm, discs against Hankel", lateral(near, s), -mt.hankel(near, s, lambda q, s=s: mt.j1(q * s)), 1e-9)
    sill = dict(near, arrangement="sill")
    check("sill torque, quadrature refined", mt.sill_torque(sill, 0.012), mt.sill_torque(sill, 0.012, 48, 64, 800), 1e-9)


def lateral(m, s):
    radius = m["diameter"] / 2
    x, w = np.polynomial.legendre.leggauss(40)
    rad, psi = 0.5 * radius * (x + 1), (np.arange(80) + 0.5) * math.pi / 80
    a, b = s + rad[:, None] * np.cos(psi), rad[:, None] * np.sin(psi)
    area = (0.5 * radius * w * rad)[:, None] * 2 * math.pi / 80
    total = 0.0
    for z, factor in ((m["gap"], -1), (m["gap"] + m["thickness"], 2), (m["gap"] + 2 * m["thickness"], -1)):
        radial, _ = mt.disc_field(radius, np.hypot(a, b), np.full_like(a, z))
        total += factor * float(np.sum(area * radial * a / np.hypot(a, b)))
    return total * (mt.remanence(m) / mt.MU0) ** 2 * mt.MU0 / (4 * math.pi)


def plain_settle(flap, theta, omega, theta_c, off, dt=2e-5):
    """Fixed-step RK4 with friction's sign taken from the last speed: first order at every event, but simple."""

    def accel(th, om, sgn):
        damping = flap.c + (flap.cd if abs(th) <= flap.d_angle else 0.0)
        static = -flap.sg * math.sin(th - flap.delta) + flap.mag(th) + flap.pressure_torque(th)
        return (static + flap.air_torque(th, om) - damping * om - sgn * flap.friction(th)) / flap.inertia

    t, sgn, entry, inside = 0.0, float(np.sign(omega)), 0.0, abs(theta - off) <= theta_c
    while t < 60.0:
        if omega * sgn <= 0.0:
            tau = flap.tau0(theta)
            if abs(tau) <= flap.ks * flap.friction(theta):
                return (entry if inside else None), t, theta
            omega, sgn = 0.0, math.copysign(1.0, tau)
        a1 = accel(theta, omega, sgn)
        a2 = accel(theta + dt / 2 * omega, omega + dt / 2 * a1, sgn)
        a3 = accel(theta + dt / 2 * (omega + dt / 2 * a1), omega + dt / 2 * a2, sgn)
        a4 = accel(theta + dt * (omega + dt / 2 * a2), omega + dt * a3, sgn)
        theta += dt * (omega + dt / 6 * (a1 + a2 + a3))
        omega += dt / 6 * (a1 + 2 * a2 + 2 * a3 + a4)
        t += dt
        if abs(theta) > flap.stop and theta * omega > 0:
            back = (theta - math.copysign(flap.stop, theta)) / omega  # to the wall, first order
            theta, t = theta - back * omega, t - back
            omega, sgn = -flap.e * omega, -sgn
        now = abs(theta - off) <= theta_c
        if now and not inside:
            entry = t
        inside = now
    return None, t, theta


def motion():
    for name in ("10-wind-out", "12-pressure", "13-wide-seal", "15-damper", "22-steep-stop", "09-out-of-plumb"):
        door = read_door(HERE / "doors" / f"{name}.door.json")
        flap, latch = Flap(door), latch_numbers(door["latch"])
        run = swing_for(flap, door, Animal(flap, door, door["animals"][0]), latch)
        settle, rest, angle = plain_settle(flap, *run.start, latch["thetaC"], latch["off"])
        if run.settle_time is not None:
            check(f"{name}: settle time, plain steps", settle, run.settle_time, 2e-4)
        check(f"{name}: rest time, plain steps", rest, run.rest_time, 5e-4)
        check(f"{name}: rest angle, plain steps", angle, run.rest_angle, 5e-2)


if __name__ == "__main__":
    pendulum()
    decay()
    magnets()
    motion()
    print("all good" if not FAILED else f"{len(FAILED)} failed")
    sys.exit(1 if FAILED else 0)
