"""Reference solution of the axis: the equations of workers/MODEL.md under a stiff solver, restarted at every edge.

    node tests/reference/resolve.mjs RUN | python3 tests/reference/reference.py > tests/reference/RUN.json

Standard input: {"run", "scene", "changes", "duration", "parameters"}, all SI. Standard output: the fixture.
`convergence` holds the largest change of each column when the tolerance is a hundredth.
"""

import json
import platform
import sys

import numpy
import scipy
from scipy.integrate import Radau

from drive import CurrentLimit, CurrentLoop, PositionLoop, encoder_reading
from motion import Program
from plant import CURRENTS, TT, TW, V1, V2, V_SQUARE, X1, X2, XB, Z, Plant

RELATIVE_TOLERANCE = 1e-10
POINTS = 400
COLUMNS = ['time', 'x2', 'x1', 'v2', 'iq', 'id', 'followingError', 'windingTemperature', 'basePosition']


def absolute_tolerances(size, relative):
    """Per state, so far below what matters that the relative tolerance rules except near zero."""
    floor = numpy.full(size, 1e-9)  # K
    floor[[X1, X2, XB]] = 1e-14  # m moved within one period
    floor[[V1, V2, V_SQUARE]] = 1e-11  # m/s
    floor[Z] = 1e-15  # m
    floor[CURRENTS:] = 1e-9  # A
    return floor * (relative / RELATIVE_TOLERANCE)


def integrate(plant, y, period, relative):
    """State after one current period under the voltages and the process force that the plant holds."""
    solver = Radau(
        plant.rhs, 0.0, y, period, rtol=relative, atol=absolute_tolerances(plant.size, relative),
        first_step=period / 4,
    )
    while solver.status == 'running':
        message = solver.step()
        if solver.status == 'failed':
            raise ArithmeticError(message)
    return solver.y


def process_force(p, t, v_set):
    kind, force = p['process'], p['processForce']
    if kind == 'constant':
        return force
    if kind == 'sine':
        return force * numpy.sin(2 * numpy.pi * p['processFrequency'] * t)
    if kind == 'pulse':
        return force if t % (1 / p['processFrequency']) < p['processTime'] else 0.0
    if kind == 'feed':
        return -force * float(numpy.sign(v_set))
    return 0.0


def check(p, y, x2, error):
    """A reference run that would trip, or that asks for what is not covered here, is a mistake in its choice."""
    if p['drive'] != 'on' or p['encoderNoise'] != 0:
        raise ValueError('a reference run needs drive "on" and encoderNoise 0')
    tripped = (
        abs(error) > p['followingErrorLimit']
        or not p['travelMin'] <= x2 <= p['travelMax']
        or abs(y[V2]) > p['speedLimit']
        or y[TW] > p['windingLimit']
    )
    if tripped:
        raise ValueError(f'the drive would trip: error {error} m, x2 {x2} m, v2 {y[V2]} m/s, T_w {y[TW]} degC')


def simulate(p, duration, relative=RELATIVE_TOLERANCE):
    """One row per current period, and whether current or voltage was ever limited."""
    divider = p['positionDivider']
    rate = p['currentRate']
    period = 1 / rate
    plant = Plant(p)
    program = Program(p, divider * period)
    position_loop = PositionLoop(p, plant.motor.kf, divider * period)
    current_loop = CurrentLoop(p, plant.motor, period)
    limit = CurrentLimit(p, period)
    y = numpy.array(plant.start)
    command = error = 0.0
    waiting = (0.0, 0.0)
    rows, limited = [], False
    for n in range(round(duration * rate) + 1):
        t = n / rate
        x1, x2 = plant.origin1, plant.origin2
        i_d, i_q = plant.currents(y.tolist())
        current_limit = limit.step(i_d, i_q, y[TW])
        if n % divider == 0:
            setpoint = program.at(n // divider)
            reading = encoder_reading(p, x2 if p['encoderSide'] == 'load' else x1, y[TT])
            command, error = position_loop.step(setpoint, reading, current_limit)
            check(p, y, x2, error)
            limited = limited or abs(command) >= current_limit
        v_d, v_q = current_loop.step(command, i_d, i_q, position_loop.speed)
        limited = limited or bool(numpy.hypot(v_d, v_q) >= current_loop.largest * (1 - 1e-12))
        rows.append([t, x2, x1, y[V2], i_q, i_d, error, y[TW], y[XB]])
        plant.v_d, plant.v_q = waiting
        waiting = (v_d, v_q)
        plant.process = process_force(p, t, setpoint[1])
        y = integrate(plant, y, period, relative)
        plant.origin1 += y[X1]
        plant.origin2 += y[X2]
        y[X1] = y[X2] = 0.0
    return numpy.array(rows), limited


def main():
    run = json.load(sys.stdin)
    p = run['parameters']
    rows, limited = simulate(p, run['duration'])
    finer, _ = simulate(p, run['duration'], RELATIVE_TOLERANCE / 100)
    # A multiple of the position period, so that the following error is as old as the row.
    stride = p['positionDivider'] * -(-len(rows) // (POINTS * p['positionDivider']))
    fixture = {
        **run,
        'solver': 'SciPy Radau (Radau IIA, order 5), restarted at every current period, bristle rate not capped',
        'relativeTolerance': RELATIVE_TOLERANCE,
        'versions': {'python': platform.python_version(), 'numpy': numpy.__version__, 'scipy': scipy.__version__},
        'convergence': dict(zip(COLUMNS, numpy.abs(finer - rows).max(axis=0).tolist())),
        'limited': limited,
        'peakFollowingError': numpy.abs(rows[:, COLUMNS.index('followingError')]).max(),
        'peakCurrent': numpy.hypot(rows[:, COLUMNS.index('iq')], rows[:, COLUMNS.index('id')]).max(),
        'stride': stride,
        'columns': COLUMNS,
        'rows': rows[::stride].tolist(),
    }
    json.dump(fixture, sys.stdout)


if __name__ == '__main__':
    main()
