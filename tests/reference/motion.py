"""Commanded motion: rest-to-rest moves under limits of speed, acceleration and jerk, one after the other."""

import math


class Move:
    """Time-optimal move over `distance` (signed, m). Its jerk is a sum of steps, so that position, speed and
    acceleration are sums of truncated powers of the time since each step.

    tj: time of one jerk phase, ta: time of the whole acceleration, tv: time at constant speed. With the peak
    acceleration J*tj the peak speed is J*tj*(ta - tj) and the distance J*tj*(ta - tj)*(ta + tv).
    """

    def __init__(self, distance, speed, acceleration, jerk):
        length = abs(distance)
        tj = min(acceleration / jerk, math.sqrt(speed / jerk), (length / (2 * jerk)) ** (1 / 3))
        if tj < acceleration / jerk:  # the acceleration limit is never reached
            ta = 2 * tj
        else:
            by_speed = tj + speed / acceleration
            by_length = (tj + math.sqrt(tj * tj + 4 * length / acceleration)) / 2
            ta = min(by_speed, by_length)
        peak_speed = jerk * tj * (ta - tj)
        tv = max(length / peak_speed - ta, 0) if peak_speed > 0 else 0
        brake = ta + tv
        signed = math.copysign(jerk, distance)
        self.distance = distance
        self.duration = brake + ta
        self.jerk_steps = [
            (0, signed), (tj, -signed), (ta - tj, -signed), (ta, signed),
            (brake, -signed), (brake + tj, signed), (brake + ta - tj, signed),
        ]

    def at(self, t):
        """Position from the start of the move, speed and acceleration at time t after its start."""
        if t >= self.duration:
            return self.distance, 0.0, 0.0
        x = v = a = 0.0
        for begin, jerk in self.jerk_steps:
            dt = t - begin
            if dt > 0:
                x += jerk * dt**3 / 6
                v += jerk * dt**2 / 2
                a += jerk * dt
        return x, v, a


class Program:
    """The commanded motion of a scene: a cycle of moves, each followed by the dwell, repeated for ever. Every move and
    every dwell begins at a position-loop sample, `period` apart; a sample within a nanosecond of the end will do."""

    def __init__(self, p, period):
        stroke, stair, count = p['stroke'], p['stairStep'], p['stairCount']
        legs = {
            'hold': [],
            'shuttle': [(stroke, p['speed']), (-stroke, p['speed'])],
            'scan': [(stroke, p['scanSpeed']), (-stroke, p['speed'])],
            'staircase': [(stair, p['speed'])] * count + [(-stair, p['speed'])] * count,
        }[p['program']]

        def samples(duration):
            return math.ceil((duration - 1e-9) / period)

        self.start, self.period = p['start'], period
        self.moves = [Move(distance, speed, p['acceleration'], p['jerk']) for distance, speed in legs]
        self.lengths = [samples(move.duration) + samples(p['dwell']) for move in self.moves]

    def at(self, sample):
        """Commanded position, speed and acceleration at a position-loop sample, counted from 0."""
        position = self.start
        if self.moves:
            sample %= sum(self.lengths)
        for move, length in zip(self.moves, self.lengths):
            if sample < length:
                x, v, a = move.at(sample * self.period)
                return position + x, v, a
            sample -= length
            position += move.distance
        return position, 0.0, 0.0
