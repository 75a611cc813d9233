"""A sampled loop by SciPy, put together a second time from workers/MODEL.md alone.

    python3 tests/workers/analysis/reference/loop_reference.py FILE.json ...

Reads `parameters` (SI) and `friction` of each file and writes the results into it. The axis stands, carries no current and has
no cogging, so that the continuous equations are linear as they stand. The timing rule is not lifted by algebra: one position-loop sample is
played through, period by period, from each unit vector.
"""

import json
import platform
import sys

import numpy as np
import scipy
from scipy import signal, special

POINTS = 40
# Smaller ones are the dead times and the memories of the filters, whose number depends on how a filter is written.
LOWEST_EIGENVALUE = 0.3


def motor(p):
    screw = p['lead'] > 0
    kf_rms = p['torqueConstant'] * 2 * np.pi / p['lead'] if screw else p['forceConstant']
    tau = p['lead'] / (2 * p['polePairs']) if screw else p['polePitch']
    kf = kf_rms / np.sqrt(2)
    return kf, tau, p['resistance'] / 2, p['inductance'] / 2, kf / (1.5 * np.pi / tau)


def flux(p, tau, psi20):
    """At x1 = start and the temperatures of the start, without current."""
    magnet = p['ambient'] + p['magnetFollow'] * (p['carrierStart'] - p['ambient'])
    u = np.pi * p['coilOffset'] / tau
    fit = {
        'none': 1.0,
        'cosh': np.cosh(u),
        'bessel': special.i0(u),
        'gap': (p['magnetHeight'] + p['recoilPermeability'] * p['nominalGap'])
        / (p['magnetHeight'] + p['recoilPermeability'] * p['airGap']),
    }[p['fieldLaw']]
    angle = np.pi * p['start'] / tau
    ripple = (
        1
        + p['ripple6'] * np.cos(6 * angle + p['ripple6Phase'])
        + p['ripple12'] * np.cos(12 * angle + p['ripple12Phase'])
    )
    return psi20 * (1 + p['magnetTempCoefficient'] * (magnet - 20)) * fit * ripple


def continuous_plant(p, friction):
    """Order: x1, v1, x2, v2, (xb, vb,) i_d1, i_q1, i_d2, ... Inputs v_d, v_q, force on the table."""
    kf, tau, r20, inductance, psi20 = motor(p)
    psi = flux(p, tau, psi20)
    n_motors = p['motorCount']
    resistance = r20 * (1 + 0.00393 * (p['windingStart'] - 20))
    rotating = p['rotorInertia'] * (2 * np.pi / p['lead']) ** 2 if p['lead'] > 0 else 0.0
    m1 = n_motors * p['coilMass'] + rotating
    m2 = p['tableMass'] + p['payload']
    compliance = 1 / p['linkStiffness']
    if p['screwRigidity'] > 0:
        compliance += (p['start'] + p['screwSpan']) / p['screwRigidity']
    k, c = 1 / compliance, p['linkDamping']
    presliding = friction == 'presliding'
    k_guide = p['bristleStiffness'] if presliding else 0.0
    c_guide = p['viscous'] + (p['bristleDamping'] if presliding else 0.0)
    dry = n_motors * p['hysteresisDrag'] + p['nutDrag'] if presliding else 0.0
    c_motor = n_motors * p['eddyDrag'] + p['nutViscous'] + dry / 0.5e-3

    base = 2 if p['base'] else 0
    size = 4 + base + 2 * n_motors
    # Internal forces as rows over the states: on the motor, on the table.
    f1, f2 = np.zeros(size), np.zeros(size)
    f1[:4] = [-k, -c - c_motor, k, c]
    f2[:4] = [k, c, -k - k_guide, -c - c_guide]
    offsets = [0, p['misalignment2'], p['misalignment3'], p['misalignment4']]
    a, b = np.zeros((size, size)), np.zeros((size, 3))
    for j in range(n_motors):
        cos, sin = np.cos(np.pi * offsets[j] / tau), np.sin(np.pi * offsets[j] / tau)
        d, q = 4 + base + 2 * j, 5 + base + 2 * j
        f1[q] += 1.5 * np.pi / tau * psi * cos
        f1[d] -= 1.5 * np.pi / tau * psi * sin
        a[d, d] = a[q, q] = -resistance / inductance
        a[d, 1] = np.pi / tau * psi * sin / inductance
        a[q, 1] = -np.pi / tau * psi * cos / inductance
        b[d, 0] = b[q, 1] = 1 / inductance
    a[0, 1] = a[2, 3] = 1
    a[1], a[3] = f1 / m1, f2 / m2
    b[3, 2] = 1 / m2
    if base:
        mb, wb = p['baseMass'], 2 * np.pi * p['baseFrequency']
        ab = -(f1 + f2) / mb
        ab[4] -= wb**2
        ab[5] -= 2 * p['baseDamping'] * wb
        if p['lead'] > 0:
            raise ValueError('a screw on a moving base is not covered here')
        a[4, 5] = 1
        a[5] = ab
        a[1] -= ab
        a[3] -= ab
        b[5, 2] = -1 / mb
        b[1, 2] += 1 / mb
        b[3, 2] += 1 / mb
    current_d = np.array([float(i >= 4 + base and (i - 4 - base) % 2 == 0) for i in range(size)])
    current_q = np.array([float(i >= 4 + base and (i - 4 - base) % 2 == 1) for i in range(size)])
    return a, b, current_d, current_q


def sections(p, rate):
    """Coefficients of the filters that are on, by SciPy's bilinear transform of the analogue ones."""
    found = []
    for name in ('notch1', 'notch2'):
        if p[name]:
            w = 2 * rate * np.tan(np.pi * p[name + 'Frequency'] / rate)
            width, depth = p[name + 'Width'], p[name + 'Depth']
            found.append(
                signal.bilinear([1, 2 * depth * width * w, w**2], [1, 2 * width * w, w**2], rate)
            )
    if p['lowpass']:
        w = 2 * rate * np.tan(np.pi * p['lowpassFrequency'] / rate)
        found.append(signal.bilinear([w**2], [1, 2 * p['lowpassDamping'] * w, w**2], rate))
    return found


class Loop:
    """State: plant, I_d, I_q, waiting v_d, v_q, v_hat, last reading, I, and four memories per filter."""

    def __init__(self, p, friction):
        self.p = p
        self.kf, self.tau, self.r20, self.inductance, self.psi20 = motor(p)
        a, b, self.current_d, self.current_q = continuous_plant(p, friction)
        self.ts = 1 / p['currentRate']
        self.phi, self.gamma, *_ = signal.cont2discrete((a, b, np.eye(len(a)), np.zeros(b.shape)), self.ts)
        self.n = len(a)
        self.filters = sections(p, p['currentRate'] / p['positionDivider'])
        self.size = self.n + 7 + 4 * len(self.filters)
        side = 2 if p['encoderSide'] == 'load' else 0
        u = p['start']
        w = 2 * np.pi / p['signalPeriod']
        slope = 1 + w * p['interpolation1'] * np.cos(w * u) + 2 * w * p['interpolation2'] * np.cos(2 * w * u)
        self.reading = np.zeros(self.n)
        self.reading[side] = slope

    def sample(self, state, command=None, forces=None):
        """One position-loop sample; `command` opens the loop. Returns the next state and what the loop asks for, A."""
        p = self.p
        state = np.array(state, dtype=float)
        plant = state[: self.n]
        i_d, i_q, w_d, w_q, speed, last, integral = state[self.n : self.n + 7]
        memory = state[self.n + 7 :].reshape(-1, 4)
        tp = p['positionDivider'] * self.ts

        x_m = self.reading @ plant
        speed = speed + tp / (p['derivativeTime'] + tp) * ((x_m - last) / tp - speed)
        last = x_m
        integral = integral - p['Ki'] * tp * x_m
        x = -p['Kp'] * x_m + integral - p['Kd'] * speed
        for (num, den), m in zip(self.filters, memory):
            y = num[0] * x + num[1] * m[0] + num[2] * m[1] - den[1] * m[2] - den[2] * m[3]
            m[:] = [x, m[0], y, m[2]]
            x = y
        asked = x / self.kf
        used = asked if command is None else command

        wbw = 2 * np.pi * p['currentBandwidth']
        n = p['motorCount']
        kp, ki = wbw * self.inductance / n, wbw * self.r20 / n
        for tick in range(p['positionDivider']):
            measured_d, measured_q = self.current_d @ plant, self.current_q @ plant
            i_d -= ki * self.ts * measured_d
            i_q += ki * self.ts * (used - measured_q)
            v_d = -kp * measured_d + i_d
            v_q = kp * (used - measured_q) + i_q + np.pi / self.tau * self.psi20 * speed
            force = 0.0 if forces is None else forces[tick]
            plant = self.phi @ plant + self.gamma @ np.array([w_d, w_q, force])
            w_d, w_q = v_d, v_q
        after = np.concatenate([plant, [i_d, i_q, w_d, w_q, speed, last, integral], memory.ravel()])
        return after, asked

    def matrices(self):
        p = self.p
        unit, zero = np.eye(self.size), np.zeros(self.size)
        open_a = np.array([self.sample(e, command=0.0)[0] for e in unit]).T
        asked = np.array([self.sample(e, command=0.0)[1] for e in unit])
        open_b = self.sample(zero, command=1.0)[0]
        closed = np.array([self.sample(e)[0] for e in unit]).T
        ticks = np.eye(p['positionDivider'])
        force = np.array([self.sample(zero, forces=t)[0] for t in ticks]).T
        return open_a, open_b, asked, closed, force


def response(a, b, c, z):
    """c (zI - A)^-1 b. Not scipy.signal.dfreqresp: it goes through polynomials, which are ill conditioned at this order."""
    return np.array([c @ np.linalg.solve(each * np.eye(len(a)) - a, b) for each in z])


def analyse(case):
    p = case['parameters']
    loop = Loop(p, case['friction'])
    open_a, open_b, asked, closed, force = loop.matrices()
    tp = p['positionDivider'] * loop.ts
    f = np.geomspace(1, 0.49 / tp, POINTS)
    z = np.exp(2j * np.pi * f * tp)
    table = np.zeros(loop.size)
    table[2] = 1
    compliance = sum(
        response(closed, force[:, tick], table, z) * np.exp(2j * np.pi * f * tick * loop.ts)
        for tick in range(p['positionDivider'])
    )
    values = np.linalg.eigvals(closed)
    values = values[np.argsort(-np.abs(values))]
    return {
        'solver': 'SciPy cont2discrete and bilinear, NumPy solve and eigvals',
        'versions': {'python': platform.python_version(), 'numpy': np.__version__, 'scipy': scipy.__version__},
        'frequency': f.tolist(),
        'openLoop': [[each.real, each.imag] for each in -response(open_a, open_b, asked, z)],
        'compliance': [[each.real, each.imag] for each in compliance],
        'eigenvalues': [[each.real, each.imag] for each in values if abs(each) > LOWEST_EIGENVALUE],
    }


def main():
    for path in sys.argv[1:]:
        with open(path, encoding='utf-8') as file:
            case = json.load(file)
        case['results'] = analyse(case)
        with open(path, 'w', encoding='utf-8') as file:
            json.dump(case, file, indent=1, ensure_ascii=False)
            file.write('\n')


if __name__ == '__main__':
    main()
