"""The flap as a rigid body, its torques (sections 1 and 2 of the model page), and one piece of its motion.

A piece is a stretch in which omega keeps its sign and no torque changes its formula: it ends at a turning point, at the next
angle of a sorted list of thresholds, or at a given time. Inside a piece the equation is smooth; scipy's DOP853 steps it.
State y = [theta, omega, work into viscous, work into air]; hinge and seal work follow from the path length.
"""

import bisect
import math

import numpy as np
from scipy.integrate import DOP853
from scipy.optimize import brentq

from doorfile import G
from magnet_tables import DENSITY, MagnetTable, stack

RTOL, ATOL = 1e-11, 1e-13
TEN_DEGREES = math.radians(10.0)


class Flap:
    def __init__(self, door):
        f, m = door["flap"], door["magnets"]
        self.door = door
        self.width, self.o, self.b = f["width"], f["hingeOffset"], f["hingeOffset"] + f["height"]
        plate = f["density"] * f["width"] * f["height"] * f["thickness"]
        centre = self.o + f["height"] / 2
        points = list(f["extra"])
        if m:
            one = DENSITY * math.pi * m["diameter"] ** 2 / 4 * m["thickness"]
            drop = 0.0 if m["arrangement"] == "jamb" else m["thickness"] / 2  # sill: distance is to the lower pole face
            points += [(m["sides"] * one, r - drop) for r in stack(m)]
        self.mass = plate + sum(p for p, _ in points)
        self.moment = plate * centre + sum(p * r for p, r in points)
        self.inertia = plate * (f["height"] ** 2 + f["thickness"] ** 2) / 12 + plate * centre**2 + sum(p * r * r for p, r in points)
        self.sg = self.moment * G
        self.period = 2 * math.pi * math.sqrt(self.inertia / self.sg)

        h, a = door["hinge"], door["air"]
        self.delta = door["opening"]["outOfPlumb"]
        self.stop, self.e, self.ks, self.c = h["stopAngle"], h["stopRestitution"], h["staticRatio"], h["viscousDamping"]
        self.hinge = h["frictionTorque"]
        self.seal, self.seal_angle = door["seal"]["frictionTorque"], door["seal"]["contactAngle"]
        self.cd, self.d_angle = door["damper"]["coefficient"], door["damper"]["withinAngle"]
        self.half = 0.5 * a["density"] * a["dragCoefficient"] * self.width
        self.kappa, self.wind, self.dp = a["swingFactor"], a["windSpeed"], a["pressureDifference"]
        self.area2 = (self.b**2 - self.o**2) / 2
        self.dp_torque = self.dp * self.width * self.area2
        self.table = None
        if m:
            m["peakWithin"] = self.stop
            self.table = MagnetTable(m, max(self.stop, math.pi / 2) + 0.3)

    # static torques, scalar
    def mag(self, theta):
        return self.table.torque(theta) if self.table else 0.0

    def wind_torque(self, theta):
        u = self.wind * math.cos(theta)
        return self.half * u * abs(u) * self.area2

    def pressure_torque(self, theta):
        return self.dp_torque * max(0.0, 1.0 - abs(theta) / TEN_DEGREES)

    def tau0(self, theta):
        return -self.sg * math.sin(theta - self.delta) + self.mag(theta) + self.wind_torque(theta) + self.pressure_torque(theta)

    def tau0_many(self, theta):
        u = self.wind * np.cos(theta)
        out = -self.sg * np.sin(theta - self.delta) + self.half * u * np.abs(u) * self.area2
        out += self.dp_torque * np.maximum(0.0, 1.0 - np.abs(theta) / TEN_DEGREES)
        return out + self.table.torques(theta) if self.table else out

    def friction(self, theta):
        return self.hinge + (self.seal if abs(theta) <= self.seal_angle else 0.0)

    def strip(self, theta, omega):
        """Integral of u|u| r dr from o to b, u = V cos(theta) - omega r, times half rho Cd W."""
        v = self.wind * math.cos(theta)

        def primitive(r):
            return v * v * r * r / 2 - 2 * v * omega * r**3 / 3 + omega * omega * r**4 / 4

        lo, hi = self.o, self.b
        if omega != 0.0 and lo < v / omega < hi:
            z = v / omega
            first = math.copysign(1.0, v - omega * 0.5 * (lo + z))
            return self.half * first * (2 * primitive(z) - primitive(lo) - primitive(hi))
        u = v - omega * 0.5 * (lo + hi)
        return self.half * math.copysign(1.0, u) * (primitive(hi) - primitive(lo)) if u else 0.0

    def air_torque(self, theta, omega):
        still = self.wind_torque(theta)
        return still + self.kappa * (self.strip(theta, omega) - still)

    # energies: conservative part seen by the ledger; and with steady wind and pressure, for runs without dry friction
    def potential(self, theta):
        u = self.sg * (math.cos(self.delta) - math.cos(theta - self.delta))
        return u + (self.table.energy(theta) if self.table else 0.0)

    def static_potential(self, theta):
        a = min(abs(theta), TEN_DEGREES)
        dp = math.copysign(self.dp_torque * (a - a * a / (2 * TEN_DEGREES)), theta)
        k = self.half * self.wind * abs(self.wind) * self.area2
        c = abs(theta)
        q = math.pi / 2
        turned = c / 2 + math.sin(2 * c) / 4 if c <= q else q - (c / 2 + math.sin(2 * c) / 4)
        return self.potential(theta) - dp - math.copysign(k * turned, theta)

    def thresholds(self, extra=()):
        points = [0.0, *extra, -self.stop, self.stop]
        for on, angle in ((self.seal, self.seal_angle), (self.cd, self.d_angle), (self.dp, TEN_DEGREES)):
            if on and angle < self.stop:
                points += [-angle, angle]
        if self.table:  # not formula changes: only so that no step can leap over the magnets' narrow well
            points += [s * f * self.table.peak_angle for f in (0.5, 1.0, 2.0, 4.0) for s in (-1, 1)]
        return sorted({p for p in points if abs(p) <= self.stop})


def make_rhs(flap, direction, middle, extra_friction):
    """Right-hand side for a piece moving in `direction` through the angles around `middle`."""
    damping = flap.c + (flap.cd if abs(middle) <= flap.d_angle else 0.0)
    dry = direction * (flap.friction(middle) + extra_friction)
    side = math.copysign(1.0, middle)
    dp = flap.dp_torque if abs(middle) < TEN_DEGREES else 0.0
    slope = side * dp / TEN_DEGREES
    table, sg, delta, inertia = flap.table, flap.sg, flap.delta, flap.inertia
    still_air, k = flap.wind == 0.0, flap.kappa * flap.half * (flap.b**4 - flap.o**4) / 4
    sin = math.sin

    def rhs(_t, y):
        theta, omega = float(y[0]), float(y[1])
        air = -k * abs(omega) * omega if still_air else flap.air_torque(theta, omega)
        air += dp - slope * theta
        tau = -sg * sin(theta - delta) + air - damping * omega - dry
        if table:
            tau += table.torque(theta)
        return np.array([omega, tau / inertia, damping * omega * omega, -air * omega])

    return rhs


def advance(rhs, t, y, t_end):
    """State at t_end, by as many steps as it takes."""
    if t_end <= t:
        return y
    solver = DOP853(rhs, t, y, t_end, rtol=RTOL, atol=ATOL)
    while solver.status == "running":
        message = solver.step()
        if solver.status == "failed":
            raise RuntimeError(message)
    return solver.y


def polish(rhs, t, y, index, target):
    """Move (t, y) by a second-order Taylor step so that y[index] = target; the step is of the dense output's error."""
    d = rhs(t, y)
    h = (target - y[index]) / d[index]
    d2 = (rhs(t + 1e-7, y + 1e-7 * d) - d) / 1e-7
    y = y + h * d + 0.5 * h * h * d2
    y[index] = target
    return t + h, y


def run_piece(flap, t, y, direction, target, t_bound, extra_friction, energy_floor, log):
    """Run until omega turns, theta reaches target, or t_bound. Returns (reason, t, y). Logs (t, y, rhs) per step for later look-up."""
    middle = 0.5 * (y[0] + target)
    rhs = make_rhs(flap, direction, middle, extra_friction)
    alpha = rhs(t, y)[1]
    first = None
    if y[1] != 0.0 and alpha * y[1] < 0:
        first = 0.1 * abs(y[1] / alpha)
    cap = flap.period / 15
    if first is not None:
        first = min(first, cap, (t_bound - t) if t_bound > t else cap)
    if t_bound <= t:
        return "time", t, y
    solver = DOP853(rhs, t, y, t_bound, rtol=RTOL, atol=ATOL, max_step=cap, first_step=first)
    while True:
        t0, y0 = solver.t, solver.y.copy()
        message = solver.step()
        if solver.status == "failed":
            raise RuntimeError(message)
        log.append((t0, y0, rhs))
        t1, y1 = solver.t, solver.y
        dense = None
        turn = find_turn(solver, t0, t1, y0, y1, direction)
        if turn is not None:
            dense = solver.dense_output()
            t1, y1 = turn, dense(turn)
        if direction * (y1[0] - target) >= 0:
            dense = dense or solver.dense_output()
            t_hit = t1 if y1[0] == target else brentq(lambda s: dense(s)[0] - target, t0, t1, xtol=1e-15, rtol=1e-15)
            y_hit = advance(rhs, t0, y0, t_hit)
            t_hit, y_hit = polish(rhs, t_hit, y_hit, 0, target)
            if energy_floor is not None and below_floor(flap, y_hit, energy_floor):
                return energy_end(flap, rhs, dense, t0, t_hit, y0, energy_floor)
            return "angle", t_hit, y_hit
        if turn is not None:
            y_turn = advance(rhs, t0, y0, t1)
            t_turn, y_turn = polish(rhs, t1, y_turn, 1, 0.0)
            if energy_floor is not None and below_floor(flap, y_turn, energy_floor):
                return energy_end(flap, rhs, dense, t0, t_turn, y0, energy_floor)
            return "turn", t_turn, y_turn
        if energy_floor is not None and below_floor(flap, y1, energy_floor):
            return energy_end(flap, rhs, solver.dense_output(), t0, t1, y0, energy_floor)
        if solver.status == "finished":
            return "time", t1, y1.copy()


def find_turn(solver, t0, t1, y0, y1, direction):
    """First zero of omega in the step after its start, or None. Looked for between the steps' ends too."""
    start_zero = y0[1] == 0.0
    if direction * y1[1] > 0 and not start_zero:
        if min(abs(y0[1]), abs(y1[1])) > 0.2 * max(abs(y0[1]), abs(y1[1])):
            return None
    dense = solver.dense_output()
    grid = np.linspace(t0, t1, 17)
    w = direction * dense(grid)[1]
    w[0], w[-1] = direction * y0[1], direction * y1[1]
    for k in range(1, 17):
        if w[k] <= 0:
            lo = grid[k - 1]
            if w[k - 1] <= 0:  # a start at rest: the turn, if real, is inside this first cell
                return None if k == 1 and start_zero and abs(w[k]) < 1e-14 else grid[k]
            return brentq(lambda s: dense(s)[1], lo, grid[k], xtol=1e-15, rtol=1e-15)
    return None


def below_floor(flap, y, floor):
    return 0.5 * flap.inertia * y[1] ** 2 + flap.static_potential(y[0]) - floor < 1e-9


def energy_end(flap, rhs, dense, t0, t1, y0, floor):
    def g(s):
        y = dense(s)
        return 0.5 * flap.inertia * y[1] ** 2 + flap.static_potential(y[0]) - floor - 1e-9

    t_end = t0 if g(t0) <= 0 else (t1 if g(t1) > 0 else brentq(g, t0, t1, xtol=1e-12))
    return "energy", t_end, advance(rhs, t0, y0, t_end)


def next_threshold(points, theta, direction):
    if direction > 0:
        return points[bisect.bisect_right(points, theta)]
    return points[bisect.bisect_left(points, theta) - 1]
