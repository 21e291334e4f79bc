"""One free swing and what it reports (section 2); rest positions; the relatch after a hold (section 4)."""

import bisect
import math

import numpy as np
from scipy.optimize import brentq, minimize_scalar

from motion import TEN_DEGREES, advance, next_threshold, run_piece

BOUND = 600.0
STILL = 1e-6  # rad/s at a stop


class Swing:
    """Runs at construction. theta_c may be None (no latch)."""

    def __init__(self, flap, theta, omega, theta_c, theta_off, extra_points=()):
        self.flap, self.theta_c, self.off = flap, theta_c, theta_off
        self.start = (theta, omega)
        marks = [theta_off, *extra_points]
        self.edges = [] if theta_c is None else [theta_off - theta_c, theta_off + theta_c]
        self.points = flap.thresholds(marks + self.edges)
        self.log, self.crossings, self.entries = [], [], []
        self.work = {"hinge": 0.0, "seal": 0.0, "stops": 0.0}
        self.rest_time = self.rest_angle = self.end_time = None
        self.frictionless = flap.hinge == 0.0 and flap.seal == 0.0
        self.initial = 0.5 * flap.inertia * omega**2 + flap.potential(theta)
        self.ever_outside = theta_c is not None and abs(theta - theta_off) > theta_c
        self._run(theta, omega)

    def _run(self, theta, omega):
        flap = self.flap
        t, y = 0.0, np.array([theta, omega, 0.0, 0.0])
        direction, floor = 0.0, None
        while True:
            y, direction = self._settle_direction(t, y)
            if direction == 0.0:
                return self._finish(t, y, True)
            if self.frictionless and (floor is None or y[1] == 0.0):
                floor = well_floor(flap, y)
            target = next_threshold(self.points, y[0], direction)
            before = y[0]
            reason, t, y = run_piece(flap, t, y, direction, target, BOUND, 0.0, floor, self.log)
            self._dry_work(before, y[0])
            if reason == "angle":
                self._note(t, y[0], direction)
            elif reason in ("time", "energy"):
                return self._finish(t, y, False, reason)

    def _settle_direction(self, t, y):
        """Bounce, stick or start: the direction of the next piece, 0 for rest."""
        flap = self.flap
        outward = math.copysign(1.0, y[0])
        at_stop = abs(y[0]) >= flap.stop
        if at_stop and y[1] * outward > 0:
            new = -flap.e * y[1]
            self.work["stops"] += 0.5 * flap.inertia * (y[1] ** 2 - new**2)
            y = np.array([y[0], new, y[2], y[3]])
        if at_stop and abs(y[1]) < STILL and flap.tau0(y[0]) * outward >= 0:
            self.work["stops"] += 0.5 * flap.inertia * y[1] ** 2
            return np.array([y[0], 0.0, y[2], y[3]]), 0.0
        if y[1] != 0.0:
            return y, math.copysign(1.0, y[1])
        tau = flap.tau0(y[0])
        if abs(tau) <= flap.ks * flap.friction(y[0]):
            return y, 0.0
        return y, math.copysign(1.0, tau)

    def _dry_work(self, a, b):
        length = abs(b - a)
        self.work["hinge"] += self.flap.hinge * length
        if abs(0.5 * (a + b)) <= self.flap.seal_angle:
            self.work["seal"] += self.flap.seal * length

    def _note(self, t, theta, direction):
        if theta == self.off:
            self.crossings.append(t)
        if self.edges and theta in self.edges:
            if (theta == self.edges[0]) == (direction > 0):
                self.entries.append(t)
            else:
                self.ever_outside = True

    def _finish(self, t, y, rested, reason="rest"):
        self.end_time, self.end_state, self.reason = t, y, reason
        if rested:
            self.rest_time, self.rest_angle = t, float(y[0])
        self.left = 0.5 * self.flap.inertia * y[1] ** 2 + self.flap.potential(y[0])
        self.settle_time = None
        if self.theta_c is not None and reason != "time" and self._inside(y[0]):
            self.settle_time = (self.entries[-1] if self.entries else 0.0) if self.ever_outside else 0.0
        upto = self.settle_time if self.settle_time is not None else t
        self.centre_passes = sum(1 for c in self.crossings if c <= upto)

    def _inside(self, theta):
        return abs(theta - self.off) <= self.theta_c * (1 + 1e-13)

    def state(self, t):
        """(theta, omega, moving) at time t."""
        if t >= self.end_time or not self.log:
            return float(self.end_state[0]), 0.0, False
        k = bisect.bisect_right([entry[0] for entry in self.log], t) - 1
        t0, y0, rhs = self.log[max(k, 0)]
        y = advance(rhs, t0, y0, t)
        return float(y[0]), float(y[1]), True

    def ledger_gap(self):
        y = self.end_state
        return self.initial - self.left - sum(self.work.values()) - y[2] - y[3]


def well_floor(flap, y):
    """Least static potential in the connected stretch of angles the flap can still reach."""
    energy = 0.5 * flap.inertia * y[1] ** 2 + flap.static_potential(y[0])
    grid = np.linspace(-flap.stop, flap.stop, 2001)
    u = np.array([flap.static_potential(v) for v in grid])
    k = int(np.argmin(np.abs(grid - y[0])))
    lo = hi = k
    while lo > 0 and u[lo - 1] <= energy:
        lo -= 1
    while hi < 2000 and u[hi + 1] <= energy:
        hi += 1
    lo, hi = max(lo - 1, 0), min(hi + 1, 2000)
    best = lo + int(np.argmin(u[lo : hi + 1]))
    a, b = grid[max(best - 1, 0)], grid[min(best + 1, 2000)]
    if flap.tau0(a) > 0 > flap.tau0(b):
        return flap.static_potential(brentq(flap.tau0, a, b, xtol=1e-15))
    return float(u[best])


def rest_sets(flap):
    """Connected sets of rest positions within the stops, as sorted [lo, hi]; stable points where there is no dry friction."""
    inner = {0.0}
    for angle in (flap.seal_angle if flap.seal else 0.0, TEN_DEGREES if flap.dp else 0.0, math.pi / 2):
        inner |= {-angle, angle}
    cuts = sorted({p for p in inner if abs(p) < flap.stop} | {-flap.stop, flap.stop})
    found = []
    for lo, hi in zip(cuts[:-1], cuts[1:]):
        found += segment_sets(flap, lo, hi, flap.ks * flap.friction(0.5 * (lo + hi)))
    for end in (-flap.stop, flap.stop):
        if flap.tau0(end) * math.copysign(1.0, end) >= 0:
            found.append([end, end])
    found.sort()
    merged = []
    for lo, hi in found:
        if merged and lo <= merged[-1][1] + 1e-12:
            merged[-1][1] = max(merged[-1][1], hi)
        else:
            merged.append([lo, hi])
    return merged


def scan_grid(flap, lo, hi):
    n = 6001
    grid = np.linspace(lo, hi, n)
    if flap.table:
        fine = flap.table.scale * np.sinh(np.linspace(0, math.asinh(flap.stop / flap.table.scale), 4001))
        fine = np.concatenate([-fine, fine])
        grid = np.concatenate([grid, fine[(fine > lo) & (fine < hi)]])
    return np.unique(grid)


def segment_sets(flap, lo, hi, limit):
    grid = scan_grid(flap, lo, hi)
    tau = flap.tau0_many(grid)
    if limit == 0.0:
        roots = []
        spans = [(lo - 1e-7, lo + 1e-7), *zip(grid[:-1], grid[1:]), (hi - 1e-7, hi + 1e-7)]  # a root may sit on a cut
        signs = [(flap.tau0(lo - 1e-7), flap.tau0(lo + 1e-7)), *zip(tau[:-1], tau[1:]), (flap.tau0(hi - 1e-7), flap.tau0(hi + 1e-7))]
        for (a, b), (ta, tb) in zip(spans, signs):
            if ta > 1e-13 and tb < -1e-13 and abs(a) < flap.stop and abs(b) < flap.stop:
                roots.append(brentq(flap.tau0, a, b, xtol=1e-16))
        return [[r, r] for r in roots]

    def h(v):
        return abs(flap.tau0(v)) - limit

    values = np.abs(tau) - limit
    extra = []
    for k in range(1, len(grid) - 1):
        dip = values[k] > 0 and values[k] <= values[k - 1] and values[k] <= values[k + 1]
        bump = values[k] <= 0 and values[k] >= values[k - 1] and values[k] >= values[k + 1]
        if dip or bump:
            s = 1 if dip else -1
            out = minimize_scalar(lambda v: s * h(v), bounds=(grid[k - 1], grid[k + 1]), method="bounded", options={"xatol": 1e-13})
            if s * out.fun < 0 and dip or bump and -out.fun > 0:
                extra.append(out.x)
    if extra:
        grid = np.unique(np.concatenate([grid, extra]))
        values = np.array([h(v) for v in grid])
    sets, start = [], None
    for k, v in enumerate(values):
        if v <= 0 and start is None:
            start = grid[k] if k == 0 else brentq(h, grid[k - 1], grid[k], xtol=1e-15)
        if v > 0 and start is not None:
            sets.append([start, brentq(h, grid[k - 1], grid[k], xtol=1e-15)])
            start = None
    if start is not None:
        sets.append([start, hi])
    return sets


def dead_band(flap, theta_off):
    """Largest distance from theta_off in the rest set nearest it; and every set."""
    sets = rest_sets(flap)
    if not sets:
        return None, sets
    gap = [max(lo - theta_off, theta_off - hi, 0.0) for lo, hi in sets]
    lo, hi = sets[int(np.argmin(gap))]
    return max(abs(lo - theta_off), abs(hi - theta_off)), sets


def relatch(flap, swing, latch, hold_ends, release_time):
    """Outcome, time after let-go, kinetic energy then. latch: dict with thetaC, thetaB, net, mass, g0, e, dragTorque."""
    if hold_ends < 0:
        return {"holdEnds": hold_ends, "outcome": "under the animal", "time": hold_ends + release_time, "energy": 0.0}
    fall = math.sqrt(2 * latch["g0"] * latch["mass"] / latch["net"])
    start = hold_ends + release_time
    t = start + fall
    whole = start + math.sqrt(2 * (latch["g0"] + latch["e"]) * latch["mass"] / latch["net"])
    again = math.sqrt(2 * latch["e"] * latch["mass"] / latch["net"])
    off, tc, tb = swing.off, latch["thetaC"], latch["thetaB"]
    theta, omega, moving = swing.state(t)

    def done(outcome, when, speed):
        return {"holdEnds": hold_ends, "outcome": outcome, "time": when, "energy": 0.5 * flap.inertia * speed**2}

    rel = abs(theta - off)
    if rel > tb:
        return done("shut out", t, omega)
    inside = rel <= tc * (1 + 1e-13)
    if not moving:
        return done("caught", whole, 0.0) if inside else done("stuck", t, 0.0)
    points = flap.thresholds([off, off - tc, off + tc, off - tb, off + tb])
    y = np.array([theta, omega, 0.0, 0.0])
    deadline = whole
    while True:
        drag = 0.0 if inside else latch["dragTorque"]
        y, direction = ride_direction(flap, y, drag)
        if direction == 0.0:
            return done("caught", deadline, 0.0) if inside else done("stuck", t, 0.0)
        target = next_threshold(points, y[0], direction)
        reason, t, y = run_piece(flap, t, y, direction, target, deadline if inside else t + BOUND, drag, None, [])
        if reason == "time":
            return done("caught" if inside else "none", t, y[1])
        if reason == "angle":
            edge = y[0] in (off - tc, off + tc)
            if y[0] in (off - tb, off + tb) and (y[0] - off) * direction > 0:
                return done("shut out", t, y[1])
            if edge:
                inside = (y[0] - off) * direction < 0
                deadline = t + again


def ride_direction(flap, y, drag):
    outward = math.copysign(1.0, y[0])
    at_stop = abs(y[0]) >= flap.stop
    if at_stop and y[1] * outward > 0:
        y = np.array([y[0], -flap.e * y[1], y[2], y[3]])
    tau = flap.tau0(y[0])
    if at_stop and abs(y[1]) < STILL and tau * outward >= 0:
        return np.array([y[0], 0.0, y[2], y[3]]), 0.0
    if y[1] != 0.0:
        return y, math.copysign(1.0, y[1])
    if abs(tau) <= flap.ks * (flap.friction(y[0]) + drag):
        return y, 0.0
    return y, math.copysign(1.0, tau)
