"""The axis as differential equations: windings, link, guide with the published bristle law, base, heat.

Written from workers/MODEL.md alone, without sight of the program it checks. Two things differ from that page on
purpose: the bristle rate is not capped, and the temperatures are states like the others.
"""

import math
from types import SimpleNamespace

from scipy.special import i0

GRAVITY = 9.80665
COPPER_ALPHA = 0.00393
TANH_SPEED = 0.5e-3
BUFFER_GAP, BUFFER_STIFFNESS, BUFFER_DAMPING = 3e-3, 1e6, 2e3

# State vector: the first entries, then i_d of every motor, then i_q of every motor.
X1, V1, X2, V2, Z, XB, VB, TW, TH, TT, TS, V_SQUARE, CURRENTS = range(13)


def motor_constants(p):
    """Phase values referred to the table. A screw motor counts as a linear motor."""
    screw = p['lead'] > 0
    kf_rms = p['torqueConstant'] * 2 * math.pi / p['lead'] if screw else p['forceConstant']
    tau = p['lead'] / (2 * p['polePairs']) if screw else p['polePitch']
    kf = kf_rms / math.sqrt(2)
    return SimpleNamespace(
        kf=kf, tau=tau, R20=p['resistance'] / 2, L=p['inductance'] / 2, psi20=kf / (1.5 * math.pi / tau)
    )


def field_fit(p, tau):
    """Flux over nominal flux, and the same for the forces that go with its square: only the gap law moves those."""
    law = p['fieldLaw']
    if law == 'gap':
        magnet, mu = p['magnetHeight'], p['recoilPermeability']
        fit = (magnet + mu * p['nominalGap']) / (magnet + mu * p['airGap'])
        return fit, fit
    if law == 'cosh':
        return math.cosh(math.pi * p['coilOffset'] / tau), 1.0
    if law == 'bessel':
        return float(i0(math.pi * p['coilOffset'] / tau)), 1.0
    return 1.0, 1.0


class Plant:
    """Right-hand side of the axis. `v_d`, `v_q` and `process` are held by the caller for one current period.

    The position states are counted from `origin1`, `origin2`, which the caller moves along, so that relative
    tolerances concern the movement within one period and not the place on the table.
    """

    def __init__(self, p):
        m = motor_constants(p)
        count = p['motorCount']
        rotating = p['rotorInertia'] * (2 * math.pi / p['lead']) ** 2 if p['lead'] > 0 else 0.0
        m1 = count * p['coilMass'] + rotating
        m2 = p['tableMass'] + p['payload']
        slope = GRAVITY * math.sin(p['inclination'])
        fit, iron_fit = field_fit(p, m.tau)
        per_metre = math.pi / m.tau
        offsets = [0.0] + [p[f'misalignment{j}'] for j in range(2, count + 1)]
        cosines = [math.cos(per_metre * d) for d in offsets]
        sines = [math.sin(per_metre * d) for d in offsets]
        cogging = [
            (count * iron_fit**2 * p[f'cogging{k}'], 2 * math.pi / p[f'cogging{k}Period'], p[f'cogging{k}Phase'])
            for k in (1, 2, 3)
        ]
        load = abs(m2 * GRAVITY * math.cos(p['inclination']) + count * iron_fit**2 * p['attraction'])
        coulomb = p['frictionCoefficient'] * load + p['sealFriction']
        static = max(p['stictionCoefficient'] * load + p['sealStiction'], coulomb)
        base_mass, base_omega = p['baseMass'], 2 * math.pi * p['baseFrequency']
        base_stiffness = base_mass * base_omega**2
        base_damping = 2 * p['baseDamping'] * base_mass * base_omega
        sink = p['coolantTemperature'] if p['cooling'] else p['ambient']

        self.v_d = self.v_q = self.process = 0.0
        self.origin1 = self.origin2 = p['start']
        self.motor = m
        self.size = CURRENTS + 2 * count
        self.count = count
        self.start = [0.0] * self.size
        self.start[XB] = -(m1 + m2) * slope / base_stiffness if p['base'] else 0.0
        self.start[TW], self.start[TH] = p['windingStart'], p['carrierStart']
        self.start[TT] = self.start[TS] = p['ambient']

        exp, cos, sin, tanh, sqrt = math.exp, math.cos, math.sin, math.tanh, math.sqrt
        L, R20, psi20, ambient, backlash = m.L, m.R20, m.psi20, p['ambient'], p['backlash']
        saturation, rigidity = p['saturationCurrent'], p['screwRigidity']
        sigma0, sigma1, sigma2 = p['bristleStiffness'], p['bristleDamping'], p['viscous']
        stribeck, fade = p['stribeckSpeed'], p['dampingFadeSpeed']
        link_k, link_c, span, growth = p['linkStiffness'], p['linkDamping'], p['screwSpan'], p['screwExpansion']
        ripple6, phase6, ripple12, phase12 = (
            p['ripple6'], p['ripple6Phase'], p['ripple12'], p['ripple12Phase']
        )
        alpha_b, follow = p['magnetTempCoefficient'], p['magnetFollow']
        eddy, hysteresis = count * p['eddyDrag'], count * p['hysteresisDrag']
        nut_force, nut_viscous = p['nutDrag'], p['nutViscous']
        balance = p['counterbalance']
        upper, lower = p['travelMax'] + BUFFER_GAP, p['travelMin'] - BUFFER_GAP
        on_mounts = p['base']

        def link(x1, v1, x2, v2, screw_temperature):
            """Force on the motor side (as F_link) and on the table."""
            gamma = growth * (screw_temperature - ambient)
            s = x1 - x2 + gamma * (x2 + span)
            if s > backlash / 2:
                s -= backlash / 2
            elif s < -backlash / 2:
                s += backlash / 2
            else:
                s = 0.0
            k, slope_k = link_k, 0.0
            if rigidity > 0:
                reach = max(x2 + span, 1e-3)
                k = 1 / (1 / link_k + reach / rigidity)
                slope_k = -k * k / rigidity if x2 + span > 1e-3 else 0.0
            force = k * s + link_c * (v1 - v2)
            if backlash > 0:
                force = max(force, 0.0) if s > 0 else min(force, 0.0) if s < 0 else 0.0
            return force, force * (1 - gamma) - slope_k * s * s / 2

        def guide(v2, z):
            """Bristle speed and friction force."""
            if static == 0:
                return 0.0, sigma2 * v2
            g = coulomb + (static - coulomb) * exp(-((v2 / stribeck) ** 2))
            z_dot = v2 - sigma0 * abs(v2) / g * z
            return z_dot, sigma0 * z + sigma1 * exp(-((v2 / fade) ** 2)) * z_dot + sigma2 * v2

        def buffers(x2, v2):
            if x2 > upper:
                return -max(BUFFER_STIFFNESS * (x2 - upper) + BUFFER_DAMPING * v2, 0.0)
            if x2 < lower:
                return max(BUFFER_STIFFNESS * (lower - x2) - BUFFER_DAMPING * v2, 0.0)
            return 0.0

        def rhs(_, y):
            y = y.tolist()
            v1, v2, xb, vb = y[V1], y[V2], y[XB], y[VB]
            x1, x2 = self.origin1 + y[X1], self.origin2 + y[X2]
            tw, th, tt, ts = y[TW], y[TH], y[TT], y[TS]
            out = [0.0] * self.size

            resistance = R20 * (1 + COPPER_ALPHA * (tw - 20))
            magnets = ambient + follow * (th - ambient)
            ripple = (
                1 + ripple6 * cos(6 * per_metre * x1 + phase6) + ripple12 * cos(12 * per_metre * x1 + phase12)
            )
            flux = psi20 * (1 + alpha_b * (magnets - 20)) * fit * ripple
            omega = per_metre * v1
            motor_force = current_square = 0.0
            for j in range(count):
                i_d, i_q = y[CURRENTS + j], y[CURRENTS + count + j]
                psi = flux / sqrt(1 + (i_q / saturation) ** 2) if saturation > 0 else flux
                c, s = cosines[j], sines[j]
                e_d, e_q = -per_metre * psi * s * v1, per_metre * psi * c * v1
                out[CURRENTS + j] = (self.v_d - resistance * i_d + omega * L * i_q - e_d) / L
                out[CURRENTS + count + j] = (self.v_q - resistance * i_q - omega * L * i_d - e_q) / L
                motor_force += 1.5 * per_metre * psi * (i_q * c - i_d * s)
                current_square += i_d * i_d + i_q * i_q

            cogging_force = 0.0
            for amplitude, wave, phase in cogging:
                if amplitude:
                    cogging_force += amplitude * sin(wave * x1 + phase)
            smooth_sign = tanh(v1 / TANH_SPEED)
            iron = eddy * v1 + hysteresis * smooth_sign
            nut = nut_force * smooth_sign + nut_viscous * v1
            link_motor, link_table = link(x1, v1, x2, v2, ts)
            z_dot, friction = guide(v2, y[Z])

            pull1 = motor_force - cogging_force - iron - nut - link_motor
            pull2 = link_table - friction + balance + self.process + buffers(x2, v2)
            base_acceleration = 0.0
            if on_mounts:
                base_acceleration = (-pull1 - pull2 - base_stiffness * xb - base_damping * vb) / base_mass
            out[X1], out[X2], out[XB] = v1, v2, vb
            out[V1] = pull1 / m1 - slope - base_acceleration
            out[V2] = pull2 / m2 - slope - base_acceleration
            out[VB] = base_acceleration
            out[Z] = z_dot

            half_guide = 0.5 * friction * v2
            cooling = 1 + p['speedCooling'] * max(y[V_SQUARE], 0.0) ** 0.25
            to_carrier = p['windingToCarrier'] * (tw - th)
            to_table = p['carrierToTable'] * (th - tt)
            out[TW] = (1.5 * resistance * current_square - to_carrier) / p['windingCapacity']
            way_out = p['carrierToCoolant'] if p['cooling'] else p['carrierToAir'] * cooling
            to_sink = way_out * (th - sink)
            out[TH] = (to_carrier + iron * v1 - to_sink - to_table) / p['carrierCapacity']
            out[TT] = (to_table + half_guide - p['tableToAir'] * (tt - ambient)) / p['tableCapacity']
            out[TS] = (nut * v1 + half_guide - p['screwToAir'] * (ts - ambient)) / p['screwCapacity']
            out[V_SQUARE] = v1 * v1 - y[V_SQUARE]
            return out

        self.rhs = rhs

    def currents(self, y):
        """Summed i_d and i_q as the amplifier sees them."""
        return sum(y[CURRENTS : CURRENTS + self.count]), sum(y[CURRENTS + self.count :])
