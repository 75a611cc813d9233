"""Encoder, position loop and current loop, sample by sample. Written from workers/MODEL.md alone."""

import math


class Biquad:
    """(s^2 + top s + bottom)/(s^2 + damp s + w^2) by the bilinear transform, prewarped at w; without s^2 and s on top
    for a low-pass."""

    def __init__(self, numerator, denominator, omega, period):
        warp = omega / math.tan(omega * period / 2)
        b = self._discrete(numerator, warp)
        a = self._discrete(denominator, warp)
        self.b = [value / a[0] for value in b]
        self.a = [value / a[0] for value in a]
        self.x = [0.0, 0.0]
        self.y = [0.0, 0.0]

    @staticmethod
    def _discrete(polynomial, k):
        s2, s1, s0 = polynomial
        return [s2 * k * k + s1 * k + s0, 2 * (s0 - s2 * k * k), s2 * k * k - s1 * k + s0]

    def step(self, x):
        b, a = self.b, self.a
        y = b[0] * x + b[1] * self.x[0] + b[2] * self.x[1] - a[1] * self.y[0] - a[2] * self.y[1]
        self.x = [x, self.x[0]]
        self.y = [y, self.y[0]]
        return y


def loop_filters(p, period):
    """Those of the four filters that are switched on; the runs have notches and low-passes."""
    filters = []
    for k in (1, 2, 3, 4):
        kind = p[f'filter{k}']
        w = 2 * math.pi * p[f'filter{k}Frequency']
        damping = p[f'filter{k}Damping']
        poles = (1, 2 * damping * w, w * w)
        if kind == 'notch':
            filters.append(Biquad((1, 2 * p[f'filter{k}Depth'] * damping * w, w * w), poles, w, period))
        elif kind == 'low-pass':
            filters.append(Biquad((0, 0, w * w), poles, w, period))
        elif kind != 'off':
            raise ValueError(f'filter {k} is a {kind}, which the reference does not have')
    return filters


def encoder_reading(p, x, table_temperature):
    """Reading of a noiseless encoder."""
    u = x * (1 - p['scaleExpansion'] * (table_temperature - p['ambient']))
    phase = 2 * math.pi * u / p['signalPeriod']
    u += p['interpolation1'] * math.sin(phase) + p['interpolation2'] * math.sin(2 * phase)
    q = p['encoderResolution']
    return q * math.floor(u / q + 0.5) if q > 0 else u


class PositionLoop:
    def __init__(self, p, force_per_amp, period):
        self.p, self.force_per_amp, self.period = p, force_per_amp, period
        self.filters = loop_filters(p, period)
        self.integral = self.speed = 0.0
        self.previous = None

    def step(self, setpoint, reading, current_limit):
        """Current command and following error."""
        p, period = self.p, self.period
        x_set, v_set, a_set = setpoint
        if self.previous is None:
            self.previous = reading
        error = x_set - reading
        difference = (reading - self.previous) / period
        self.previous = reading
        self.speed += period / (p['derivativeTime'] + period) * (difference - self.speed)
        increment = p['Ki'] * period * error
        self.integral += increment
        force = (
            p['Kp'] * error
            + self.integral
            + p['Kd'] * (v_set - self.speed)
            + p['speedFeedforward'] * v_set
            + p['accelerationFeedforward'] * a_set
            + p['forceBias']
        )
        for biquad in self.filters:
            force = biquad.step(force)
        command = force / self.force_per_amp
        if abs(command) > current_limit:
            command = math.copysign(current_limit, command)
            if increment * command > 0:
                self.integral -= increment
        return command, error


class CurrentLimit:
    """Peak current, overload fold-back and temperature fold-back."""

    def __init__(self, p, period):
        self.p, self.period = p, period
        self.overload = 0.0

    def step(self, i_d, i_q, winding):
        p = self.p
        rated, span = p['continuousCurrent'] ** 2, p['peakCurrent'] ** 2 - p['continuousCurrent'] ** 2
        if span <= 0:
            raise ValueError('peakCurrent must exceed continuousCurrent in a reference run')
        rate = (i_d * i_d + i_q * i_q - rated) / (span * p['overloadTime'])
        self.overload = max(self.overload + self.period * rate, 0.0)
        fold = math.sqrt(rated + span * min(max((1 - self.overload) / 0.1, 0.0), 1.0))
        warm = (p['windingLimit'] - winding) / (p['windingLimit'] - p['foldbackTemperature'])
        return min(p['peakCurrent'], fold) * min(max(warm, 0.0), 1.0)


class CurrentLoop:
    def __init__(self, p, motor, period):
        count, bandwidth = p['motorCount'], 2 * math.pi * p['currentBandwidth']
        self.motor, self.inductance = motor, motor.L / count
        self.gain = bandwidth * motor.L / count
        self.step_gain = bandwidth * motor.R20 / count * period
        self.largest = p['busVoltage'] / math.sqrt(3)
        self.integral_d = self.integral_q = 0.0

    def step(self, command, i_d, i_q, speed):
        per_metre = math.pi / self.motor.tau
        omega = per_metre * speed
        step_d, step_q = -self.step_gain * i_d, self.step_gain * (command - i_q)
        self.integral_d += step_d
        self.integral_q += step_q
        v_d = -self.gain * i_d + self.integral_d - omega * self.inductance * i_q
        v_q = (
            self.gain * (command - i_q)
            + self.integral_q
            + omega * self.inductance * i_d
            + per_metre * self.motor.psi20 * speed
        )
        amplitude = math.hypot(v_d, v_q)
        if amplitude > self.largest:
            v_d, v_q = v_d * self.largest / amplitude, v_q * self.largest / amplitude
            self.integral_d -= step_d
            self.integral_q -= step_q
        return v_d, v_q
