"""Random positioning tests, evaluated after ISO 230-2:2014, clause 3 (formulas from memory), with numpy alone.

python3 tests/outside/iso230_reference.py > tests/outside/iso230-random.json
Deviations are whole nanometres, index [target][approach]; figures in nanometres.
"""

import json

import numpy as np

SETS = 100


def figures(up, down):
    n = up.shape[1]
    x = np.stack([up, down])
    mean = x.sum(axis=2) / n
    s = np.sqrt(((x - mean[:, :, None]) ** 2).sum(axis=2) / (n - 1))
    b = mean[0] - mean[1]
    r = np.maximum.reduce([2 * s[0] + 2 * s[1] + np.abs(b), 4 * s[0], 4 * s[1]])
    high, low = mean + 2 * s, mean - 2 * s
    return {
        "reversal": np.abs(b).max(),
        "meanReversal": b.sum() / b.size,
        "repeatability": r.max(),
        "repeatabilityUp": 4 * s[0].max(),
        "repeatabilityDown": 4 * s[1].max(),
        "systematic": np.ptp(mean),
        "systematicUp": np.ptp(mean[0]),
        "systematicDown": np.ptp(mean[1]),
        "meanRange": np.ptp(mean.mean(axis=0)),
        "accuracy": high.max() - low.min(),
        "accuracyUp": high[0].max() - low[0].min(),
        "accuracyDown": high[1].max() - low[1].min(),
    }


def drawn(random):
    targets, approaches = random.integers(1, 8), random.integers(2, 6)
    # Spread, lost motion and slope of any relation to each other: every branch of a maximum is taken by some set.
    spread, lost, slope = 10.0 ** random.uniform(0, 4, size=3)
    place = np.arange(targets)[:, None] * slope
    noise = random.normal(0, spread, size=(2, targets, approaches)) * random.uniform(0.1, 1, size=(2, targets, 1))
    up = np.rint(place + noise[0] + random.normal(0, lost))
    down = np.rint(place + noise[1] + random.normal(0, lost))
    return up, down


random = np.random.default_rng(230)
sets = []
for _ in range(SETS):
    up, down = drawn(random)
    sets.append(
        {
            "up": up.astype(int).tolist(),
            "down": down.astype(int).tolist(),
            "figures": {name: float(f"{value:.12g}") for name, value in figures(up, down).items()},
        }
    )
print("[\n" + ",\n".join(json.dumps(each, separators=(",", ":")) for each in sets) + "\n]")
