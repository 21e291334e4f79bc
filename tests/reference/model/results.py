"""Closed formulas and the assembly of every result of the contract (sections 4 to 6 of the model page)."""

import math

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar

import magnet_tables
from doorfile import G
from motion import TEN_DEGREES, Flap
from swing import Swing, dead_band, relatch

NAMES = """flap.mass flap.inertia flap.firstMoment flap.smallAnglePeriod
magnets.peakTorque magnets.peakAngle magnets.centreStiffness magnets.axialForce magnets.fluxIndex
swing.releaseAngle swing.settleTime swing.restTime swing.restAngle swing.deadBand swing.centrePasses
energy.initial energy.hinge energy.viscous energy.seal energy.air energy.stops energy.left
latch.captureAngle latch.blockAngle latch.boltRiseTime
push.force push.limit push.energy wind.gustSpeed
solenoid.resistance solenoid.current solenoid.pullInVoltage solenoid.pullInTime solenoid.releaseTime
solenoid.sideLoadLimit solenoid.holdTemperature solenoid.continuousTemperature
driver.dissipation supply.current regulator.dissipation regulator.temperature
timer.nominal timer.shortest timer.longest fit.heightSpare fit.widthSpare fit.stepSpare
passage.arrivalTime passage.passTime passage.letGoTime hold.required hold.setting""".split()


def latch_numbers(latch):
    r = latch["distanceFromHinge"]
    up = -1.0 if latch["boltPoints"] == "up" else 1.0
    net = latch["springForce"] + up * latch["boltMass"] * G
    return {
        "thetaC": math.asin((latch["slotWidth"] - latch["boltWidth"]) / (2 * r)),
        "thetaB": math.asin((latch["edgeHalfWidth"] + latch["boltWidth"] / 2) / r),
        "off": math.asin(latch["offset"] / r), "net": net, "mass": latch["boltMass"], "g0": latch["tipGap"],
        "e": latch["engagement"], "dragTorque": latch["frictionCoefficient"] * net * r,
        "rise": math.sqrt(2 * (latch["tipGap"] + latch["engagement"]) * latch["boltMass"] / net),
    }


def pull_at(solenoid, stroke):
    xs, fs = zip(*solenoid["pull"])
    return float(np.interp(stroke, xs, fs))


def coil(door, out):
    """Solenoid, driver and supply results; returns the release time to use in a relatch."""
    s, d, v, latch, timer = (door[k] for k in ("solenoid", "driver", "supply", "latch", "timer"))
    if s:
        out["solenoid.resistance"] = s["ratedVoltage"] / s["ratedCurrent"]
    if v:
        regulator(v, out)
    if not s:
        return 0.0

    def resistance(temp):
        return s["ratedVoltage"] / s["ratedCurrent"] * (1 + 0.00393 * (temp - 20))

    r = resistance(s["ambient"])
    tau = s["inductance"] / r
    needed = needed_without_side = None
    if latch:
        sign = -1.0 if latch["boltPoints"] == "up" else 1.0
        needed_without_side = latch["springForce"] + sign * latch["boltMass"] * G
        needed = needed_without_side + latch["guideFactor"] * latch["frictionCoefficient"] * latch["sideLoad"]
    if not d:
        return 0.0
    mosfet = d["kind"] == "mosfet"
    i_pull = s["ratedCurrent"] * math.sqrt(needed / pull_at(s, s["stroke"])) if latch else None
    if latch:
        out["solenoid.pullInVoltage"] = i_pull * (r + d["onResistance"]) if mosfet else i_pull * r + d["dropVoltage"]
    if not v:
        return 0.0

    def current(temp):
        return v["voltage"] / (resistance(temp) + d["onResistance"]) if mosfet else (v["voltage"] - d["dropVoltage"]) / resistance(temp)

    i = current(s["ambient"])
    out["solenoid.current"] = i
    out["driver.dissipation"] = i * i * d["onResistance"] if mosfet else d["dropVoltage"] * i
    out["supply.current"] = i + regulator_input(v)
    heating(s, current, resistance, timer, out)
    if not latch:
        return 0.0
    if i_pull < i:
        out["solenoid.pullInTime"] = -tau * math.log(1 - i_pull / i)
    if latch["frictionCoefficient"] > 0:
        hot = current(out["solenoid.continuousTemperature"])
        force = pull_at(s, s["stroke"]) * (hot / s["ratedCurrent"]) ** 2
        out["solenoid.sideLoadLimit"] = (force - needed_without_side) / (latch["guideFactor"] * latch["frictionCoefficient"])
    if d["clamp"] == "none":
        return 0.0
    i_r = s["ratedCurrent"] * math.sqrt(needed_without_side / pull_at(s, 0.0))
    extra = d["clampVoltage"] / r
    out["solenoid.releaseTime"] = tau * math.log((i + extra) / (i_r + extra))
    return out["solenoid.releaseTime"]


def heating(s, current, resistance, timer, out):
    def power(temp):
        return current(temp) ** 2 * resistance(temp)

    def balance(temp):
        return s["ambient"] + s["thermalResistance"] * power(temp) - temp

    top = s["ambient"] + s["thermalResistance"] * power(s["ambient"]) + 1.0
    while balance(top) > 0:
        top += 50.0
    out["solenoid.continuousTemperature"] = brentq(balance, s["ambient"], top, xtol=1e-12)
    if timer:
        run = solve_ivp(lambda _t, y: [balance(y[0]) / s["thermalTimeConstant"]], (0, out["timer.nominal"]), [s["ambient"]],
                        method="DOP853", rtol=1e-12, atol=1e-12)
        out["solenoid.holdTemperature"] = float(run.y[0, -1])


def regulator_input(v):
    if v["regulator"] == "linear":
        return v["logicCurrent"]
    return v["logicVoltage"] * v["logicCurrent"] / (v["efficiency"] * v["voltage"])


def regulator(v, out):
    if v["regulator"] == "linear":
        p = (v["voltage"] - v["logicVoltage"]) * v["logicCurrent"]
    else:
        p = v["logicVoltage"] * v["logicCurrent"] * (1 / v["efficiency"] - 1)
    out["regulator.dissipation"], out["regulator.temperature"] = p, v["ambient"] + p * v["thermalResistance"]


def timer_results(timer, out):
    nominal = timer["resistor"] * timer["capacitor"] * math.log(3) if "resistor" in timer else timer["holdTime"]
    r, c = timer["resistorTolerance"], timer["capacitorTolerance"]
    out["timer.nominal"], out["timer.shortest"], out["timer.longest"] = nominal, nominal * (1 - r) * (1 - c), nominal * (1 + r) * (1 + c)


def maximum(f, lo, hi, n=4001):
    """Largest value of a scalar function on [lo, hi], smooth inside."""
    if hi <= lo:
        return f(lo)
    grid = np.linspace(lo, hi, n)
    values = [f(v) for v in grid]
    k = int(np.argmax(values))
    out = minimize_scalar(lambda v: -f(v), bounds=(grid[max(k - 1, 0)], grid[min(k + 1, n - 1)]), method="bounded", options={"xatol": 1e-13})
    return max(values[k], -out.fun)


def piecewise_maximum(flap, f, lo, hi):
    """f(angle, dry friction): split at the seal's edge, where the friction drops (the edge itself counts as sealed), and at 10 deg."""
    cuts = [lo] + [c for c in sorted((flap.seal_angle, TEN_DEGREES)) if lo < c < hi] + [hi]
    if hi <= lo:
        return f(lo, flap.friction(lo))
    return max(maximum(lambda v, m=0.5 * (a + b): f(v, flap.friction(m)), a, b) for a, b in zip(cuts[:-1], cuts[1:]))


class Animal:
    def __init__(self, flap, door, given):
        o, det = door["opening"], door["detection"]
        self.given = given
        self.zh = o["sillHeight"] + door["flap"]["bottomClearance"] + flap.b
        self.lift = math.acos(max(-1.0, min(1.0, (self.zh - given["shoulder"]) / flap.b)))
        self.pass_time = (given["body"] + flap.b * math.sin(self.lift)) / given["speed"]
        self.arrival = det["range"] / given["speed"]
        self.let_go = self.arrival + self.pass_time
        self.last_pulse = max(0.0, min(self.let_go, self.arrival + det["farSideRange"] / given["speed"] - det["pulseInterval"]))
        self.limit = given["comfortablePush"]
        self.push(flap)

    def push(self, flap):
        arm = self.zh - self.given["pushHeight"]
        self.force = self.energy = None
        if arm <= 0:
            return
        top = min(self.lift, math.acos(min(1.0, arm / flap.b)))

        def f(v, dry):
            return (flap.sg * math.sin(v + abs(flap.delta)) - flap.mag(v) + flap.ks * dry) / arm

        self.force = piecewise_maximum(flap, f, 0.0, top)
        self.energy = 0.5 * flap.inertia * (self.given["speed"] / arm) ** 2


def gust_speed(flap, theta_c, theta_off):
    unit = flap.half * flap.area2
    best = math.inf
    for s in (1.0, -1.0):
        def f(v, dry):
            bracket = flap.sg * math.sin(v - s * flap.delta) - flap.mag(v) - s * flap.pressure_torque(v) + flap.ks * dry
            return bracket / math.cos(v) ** 2 / unit

        best = min(best, piecewise_maximum(flap, f, 0.0, max(0.0, theta_c + s * theta_off)))
    return math.sqrt(best) if best >= 0 else None


def swing_for(flap, door, animal, latch):
    """Both directions where something tells them apart; the one that settles later (never is later; neither: +)."""
    angle = animal.lift if door["release"]["angle"] is None else door["release"]["angle"]
    angle = min(angle, flap.stop)
    theta_c, off = (latch["thetaC"], latch["off"]) if latch else (None, 0.0)
    plus = Swing(flap, angle, door["release"]["speed"], theta_c, off)
    if not (flap.wind or flap.dp or flap.delta or off):
        return plus
    if plus.settle_time is None:
        return plus
    minus = Swing(flap, -angle, -door["release"]["speed"], theta_c, off)
    if minus.settle_time is None or minus.settle_time > plus.settle_time:
        return minus
    return plus


def need_of(animal, swing, door):
    if swing.settle_time is None:
        return None
    if door["timer"] is None or door["timer"]["retriggers"]:
        return max(swing.settle_time + animal.let_go - animal.last_pulse, 2 * door["detection"]["pulseInterval"])
    return animal.let_go + swing.settle_time


def swing_results(flap, swing, out):
    out["swing.releaseAngle"] = swing.start[0] + 0.0  # no minus zero
    out["swing.settleTime"], out["swing.restTime"], out["swing.restAngle"] = swing.settle_time, swing.rest_time, swing.rest_angle
    out["swing.centrePasses"] = swing.centre_passes
    out["energy.initial"], out["energy.left"] = swing.initial, swing.left
    for key, value in swing.work.items():
        out["energy." + key] = value
    out["energy.viscous"], out["energy.air"] = float(swing.end_state[2]), float(swing.end_state[3])
    gap = swing.ledger_gap()
    if abs(gap) > 1e-7 * max(abs(swing.initial), 1e-3):
        print(f"   ledger gap {gap:.2e} J of {swing.initial:.3e}")


def magnet_results(flap, out):
    t = flap.table
    out["magnets.peakTorque"], out["magnets.peakAngle"], out["magnets.centreStiffness"] = t.peak_torque, t.peak_angle, t.centre_stiffness
    out["magnets.axialForce"], out["magnets.fluxIndex"] = magnet_tables.axial_force(t.m), magnet_tables.flux_index(t.m)


def compute(door):
    """(results, relatch or None) of a door as read by doorfile.read_door."""
    out = dict.fromkeys(NAMES)
    flap = Flap(door)
    latch = latch_numbers(door["latch"]) if door["latch"] else None
    out["flap.mass"], out["flap.inertia"], out["flap.firstMoment"] = flap.mass, flap.inertia, flap.moment
    out["flap.smallAnglePeriod"] = flap.period
    if flap.table:
        magnet_results(flap, out)
    if door["timer"]:
        timer_results(door["timer"], out)
    release_time = coil(door, out)
    if latch:
        out["latch.captureAngle"], out["latch.blockAngle"], out["latch.boltRiseTime"] = latch["thetaC"], latch["thetaB"], latch["rise"]
        out["wind.gustSpeed"] = gust_speed(flap, latch["thetaC"], latch["off"])
    fits(door, out)
    animals = [Animal(flap, door, a) for a in door["animals"]]
    worst = min(animals, key=lambda a: a.limit - a.force if a.force is not None else -math.inf)
    out["push.force"], out["push.limit"], out["push.energy"] = worst.force, worst.limit, worst.energy

    off = latch["off"] if latch else 0.0
    out["swing.deadBand"], sets = dead_band(flap, off)
    sure = latch is not None and all(abs(e - off) <= latch["thetaC"] for s in sets for e in s)
    runs = [(a, swing_for(flap, door, a, latch)) for a in animals]
    needs = [need_of(a, s, door) if sure else None for a, s in runs]
    k = max(range(len(runs)), key=lambda j: (math.inf if needs[j] is None else needs[j], -j))
    animal, swing = runs[k]
    swing_results(flap, swing, out)
    out["passage.arrivalTime"], out["passage.passTime"], out["passage.letGoTime"] = animal.arrival, animal.pass_time, animal.let_go
    if needs[k] is not None:
        out["hold.required"] = (1 + door["margin"]) * needs[k]
        if door["timer"]:
            out["hold.setting"] = out["hold.required"] * out["timer.nominal"] / out["timer.shortest"]
    return out, relatch_of(door, flap, latch, animal, swing, out, release_time), sets


def fits(door, out):
    o = door["opening"]
    out["fit.heightSpare"] = min(o["height"] - (a["shoulder"] - o["sillHeight"] + o["heightMargin"]) for a in door["animals"])
    out["fit.widthSpare"] = min(o["width"] - a["chest"] - o["widthMargin"] for a in door["animals"])
    out["fit.stepSpare"] = min(a["stepRatio"] * a["shoulder"] - o["sillHeight"] for a in door["animals"])


def relatch_of(door, flap, latch, animal, swing, out, release_time):
    if not latch or not door["timer"]:
        return None
    zero = animal.last_pulse if door["timer"]["retriggers"] else 0.0
    hold_ends = zero + out["timer.nominal"] - animal.let_go
    return relatch(flap, swing, latch, hold_ends, release_time)
