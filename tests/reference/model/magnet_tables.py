"""Centring magnets: torque table, peak, stiffness, axial force, flux index (section 3 of the model page).

Jamb: the page's Hankel integral by panelled Gauss-Legendre. Sill: charged discs, the inner integral reduced to the rim
(Gauss's theorem in the plane of the disc; periodic trapezoid), the outer one by product quadrature over the flap magnet's faces.
The torque is splined (quintic) in x = asinh(theta / scale), which puts the knots where the torque turns.
"""

import math

import numpy as np
from scipy.interpolate import make_interp_spline
from scipy.optimize import minimize_scalar
from scipy.special import j0, j1

MU0 = 4e-7 * math.pi
ALPHA = -0.0011  # per kelvin, NdFeB
DENSITY = 7500.0
GL16 = np.polynomial.legendre.leggauss(16)


def panels(q_max, length):
    """Gauss-Legendre nodes and weights on 0..q_max, fine enough for oscillations of the given total length."""
    count = max(40, math.ceil(q_max * length / math.pi))
    edges = np.linspace(0.0, q_max, count + 1)
    half = 0.5 * (edges[1] - edges[0])
    middle = 0.5 * (edges[1:] + edges[:-1])
    return (middle[:, None] + half * GL16[0]).ravel(), np.tile(half * GL16[1], count)


def remanence(m):
    return m["remanence"] * (1.0 + ALPHA * (m["temperature"] - 20.0))


def hankel(m, s, kind):
    """Integral of kind(q s) J1(qR)^2 (1-e^-qt)^2 e^(-q gap) / q dq, times pi Br^2 R^2 / mu0."""
    radius = m["diameter"] / 2
    q, w = panels(40.0 / m["gap"], s + 2 * radius + m["gap"])
    f = j1(q * radius) ** 2 * (-np.expm1(-q * m["thickness"])) ** 2 * np.exp(-q * m["gap"]) / q
    return math.pi * remanence(m) ** 2 / MU0 * radius**2 * float(np.dot(w * f, kind(q)))


def sign(m):
    return 1.0 if m["force"] == "attract" else -1.0


def axial_force(m):
    return sign(m) * hankel(m, 0.0, np.ones_like)


def stack(m):
    return [m["distanceFromHinge"] - k * m["pitch"] for k in range(int(m["perSide"]) if m["arrangement"] == "jamb" else 1)]


def jamb_torque(m, theta):
    """tau = -dE/dtheta summed over the pairs of one side, times sides. dE/ds = +p K; ds/dtheta = ri rj sin / s."""
    total, seen = 0.0, {}
    for i, ri in enumerate(stack(m)):
        for j, rj in enumerate(stack(m)):
            s = math.sqrt(max((ri - rj) ** 2 + 4 * ri * rj * math.sin(theta / 2) ** 2, 0.0))
            if s == 0.0:
                continue
            key = (min(i, j), max(i, j))
            if key not in seen:
                seen[key] = hankel(m, s, lambda q: j1(q * s))
            alternate = (-1) ** (i + j) if m["polarity"] == "alternating" else 1
            total -= sign(m) * alternate * seen[key] * ri * rj * math.sin(theta) / s
    return m["sides"] * total


def disc_field(radius, rho, z, n=320):
    """Integral of r/|r|^3 over a disc in the plane z = 0, at (rho, z): radial and axial part, by rim integrals."""
    phi = (np.arange(n // 2) + 0.5) * (2 * math.pi / n)  # half the rim, doubled
    c = np.cos(phi)
    s2 = rho[..., None] ** 2 + radius**2 - 2 * radius * rho[..., None] * c
    root = np.sqrt(s2 + z[..., None] ** 2)
    step = 4 * math.pi / n
    radial = step * radius * np.sum(c / root, axis=-1)
    az = np.abs(z)[..., None]
    axial = np.sign(z) * step * np.sum(radius * (radius - rho[..., None] * c) / (root * (root + az)), axis=-1)
    return radial, axial


def sill_torque(m, theta, nr=24, npsi=24, nrim=320):
    radius, t, d, gap = m["diameter"] / 2, m["thickness"], m["distanceFromHinge"], m["gap"]
    x, w = np.polynomial.legendre.leggauss(nr)
    rad, wr = 0.5 * radius * (x + 1), 0.5 * radius * w
    psi = (np.arange(npsi) + 0.5) * math.pi / npsi
    a = rad[:, None] * np.cos(psi)  # along the swing
    b = rad[:, None] * np.sin(psi)  # along the width
    area = (wr * rad)[:, None] * (2 * math.pi / npsi) * np.ones_like(a)
    total = 0.0
    for depth, flap_sign in ((d, 1.0), (d - t, -1.0)):
        px = depth * math.sin(theta) + a * math.cos(theta)
        py = -depth * math.cos(theta) + a * math.sin(theta)
        rho = np.hypot(px, b)
        for low, sill_sign in ((d + gap, -1.0), (d + gap + t, 1.0)):  # facing faces carry opposite charge when attracting
            radial, axial = disc_field(radius, rho, py + low, nrim)
            fx = radial * px / rho
            total += flap_sign * sill_sign * float(np.sum(area * (px * axial - py * fx)))
    sigma2 = (remanence(m) / MU0) ** 2
    return m["sides"] * sign(m) * MU0 / (4 * math.pi) * sigma2 * total


def flux_index(m):
    """(greatest normal flux density 0.38 mm above the pole face, kG)^2 x pole area in mm^2, at 20 degC."""
    radius, z = m["diameter"] / 2, 0.38e-3
    q, w = panels(40.0 / z, 2 * radius)
    f = w * j1(q * radius) * (np.exp(-q * z) - np.exp(-q * (z + m["thickness"])))

    def bz(rho):
        return m["remanence"] * radius / 2 * float(np.dot(f, j0(q * rho)))

    rhos = np.linspace(0.0, 1.02 * radius, 103)
    values = [bz(r) for r in rhos]
    k = int(np.argmax(values))
    best = values[0]
    if k > 0:
        out = minimize_scalar(lambda r: -bz(r), bounds=(rhos[k - 1], rhos[min(k + 1, 102)]), method="bounded", options={"xatol": 1e-9})
        best = max(best, -out.fun)
    return (best * 10.0) ** 2 * math.pi * (radius * 1e3) ** 2


class MagnetTable:
    """Odd quintic spline of tau_mag(theta) out to the given angle."""

    def __init__(self, m, reach, n=320):
        exact = jamb_torque if m["arrangement"] == "jamb" else sill_torque
        self.m, self.exact = m, exact
        self.scale = 0.3 * (m["gap"] + m["diameter"] / 2) / m["distanceFromHinge"]
        self.reach = reach
        top = math.asinh(reach / self.scale)
        x = np.linspace(0.0, top, n + 1)
        theta = self.scale * np.sinh(x)
        tau = np.array([0.0] + [exact(m, v) for v in theta[1:]])
        xs = np.concatenate([-x[:0:-1], x])
        self.spline = make_interp_spline(xs, np.concatenate([-tau[:0:-1], tau]), k=5)
        self.dx, self.n = x[1], n
        self.poly = self._local_polynomials(x)
        self.energy_knots = self._energies(x)
        self.x = x
        self._peak(theta, tau)

    def _local_polynomials(self, x):
        d = [self.spline.derivative(k) if k else self.spline for k in range(6)]
        mid = 0.5 * (x[1:] + x[:-1])
        rows = np.stack([d[k](mid) / math.factorial(k) for k in range(6)], axis=1)
        return [tuple(r) for r in rows.tolist()]

    def _energies(self, x):
        sums = [0.0]
        for lo, hi in zip(x[:-1], x[1:]):
            sums.append(sums[-1] + self._work(lo, hi))
        return sums

    def _work(self, lo, hi):
        v = 0.5 * (lo + hi) + 0.5 * (hi - lo) * GL16[0]
        return -0.5 * (hi - lo) * float(np.dot(GL16[1], self.spline(v) * self.scale * np.cosh(v)))

    def torque(self, theta):
        """Scalar, quick: one quintic."""
        a = abs(theta)
        x = math.asinh(a / self.scale)
        k = min(int(x / self.dx), self.n - 1)
        c0, c1, c2, c3, c4, c5 = self.poly[k]
        u = x - (k + 0.5) * self.dx
        tau = c0 + u * (c1 + u * (c2 + u * (c3 + u * (c4 + u * c5))))
        return tau if theta >= 0 else -tau

    def torques(self, theta):
        return self.spline(np.arcsinh(np.asarray(theta) / self.scale))

    def energy(self, theta):
        """E(theta) - E(0)."""
        x = math.asinh(abs(theta) / self.scale)
        k = min(int(x / self.dx), self.n - 1)
        return self.energy_knots[k] + self._work(self.x[k], x)

    def _peak(self, theta, tau):
        inside = theta <= self.m.get("peakWithin", self.reach)
        k = int(np.argmax(np.where(inside, np.abs(tau), -1.0)))
        lo, hi = theta[max(k - 1, 0)], theta[min(k + 1, self.n)]
        out = minimize_scalar(lambda v: -abs(self.torque(v)), bounds=(lo, hi), method="bounded", options={"xatol": 1e-12})
        self.peak_torque, self.peak_angle = abs(self.torque(out.x)), float(out.x)
        self.centre_stiffness = -float(self.spline.derivative(1)(0.0)) / self.scale
