"""The two reckonings of reckon.rs in numpy and scipy; prints their median times in microseconds."""
import time

import numpy as np
from scipy import stats

NEEDLES = 0.01 * np.array([
    0.0, 1.5, 3.0, 4.5, 5.0, 5.0, 4.0, 3.0, 1.5, 0.0, -1.5, -2.5, -3.0, -3.5, -3.5, -3.5, -3.0,
    -2.5, -2.0, -1.5, -1.0, -1.0, -0.5, -0.5])
PULLS = 0.01 * np.array([6.0, 6.5, 8.5])
ROUNDS, REPEATS = 21, 20


def combine(parts):
    """Root sum of squares with effective degrees of freedom (GUM G.4.1)."""
    u = np.sqrt(sum(part * part for part, _ in parts))
    weight = sum((part / u) ** 4 / dof for part, dof in parts if dof)
    return u, 1.0 / weight if weight > 0 else np.inf


def guarded(y, u, dof, limit):
    band = stats.t.ppf(0.95, dof) * u
    return stats.norm.cdf((limit - y) / u), y <= limit - band, y > limit + band


def budget(repeat, flex, more=()):
    resolution, third = 0.01 / np.sqrt(6), np.sqrt(3)
    return combine([repeat, (resolution, None), (0.01 / third, None), (flex / third, None), *more])


def runout():
    n = len(NEEDLES)
    angles = 2 * np.pi * np.arange(n) / n
    design = np.stack([np.ones(n), np.cos(angles), np.sin(angles), np.cos(2 * angles), np.sin(2 * angles)], 1)
    found, _, _, _ = np.linalg.lstsq(design, NEEDLES, rcond=None)
    rest = NEEDLES - design @ found
    inverse = np.linalg.inv(design.T @ design)
    lever = np.einsum("ij,jk,ik->i", design, inverse, design)
    spare = n - 5
    off = rest / (1 - lever)
    worst = np.argmax(off ** 2 * (1 - lever))
    if 3 * abs(off[worst]) >= np.ptp(NEEDLES):
        stats.t.ppf(1 - 0.025 / n, spare - 1)
    s = np.sqrt(rest @ rest / spare)
    u = max(s, 0.01 / np.sqrt(12)) * np.sqrt(np.linalg.eigvalsh(inverse[1:3, 1:3]).max())
    whole = np.hypot(2 * u, 0.01 / np.sqrt(3))
    stats.ncx2.cdf((2 * np.hypot(found[1], found[2]) / whole) ** 2, 2, (0.05 / whole) ** 2)
    now, other = complex(found[1], found[2]), 0.03 * np.exp(1j * np.radians(40))
    w = np.exp(2j * np.pi * np.arange(10) / 10)
    from_other, from_now = (w[4] - w) / (w[4] - w[0]), (w - w[0]) / (w[4] - w[0])
    arrows = other * from_other + now * from_now
    sure = np.hypot(0.002 * abs(from_other), u * abs(from_now))
    order = np.argsort(abs(arrows))
    return order, abs(arrows), np.degrees(np.angle(arrows)), sure


def play():
    mean, s = PULLS.mean(), PULLS.std(ddof=1)
    u, dof = budget((s / np.sqrt(3), 2), 0.005, [(0.002 / np.sqrt(3), None)])
    stats.t.ppf(0.975, dof)
    return guarded(mean, u, dof, 0.05)


def median(work):
    times = []
    for _ in range(ROUNDS):
        begin = time.perf_counter()
        for _ in range(REPEATS):
            work()
        times.append((time.perf_counter() - begin) * 1e6 / REPEATS)
    return sorted(times)[ROUNDS // 2]


print(median(runout), median(play))
