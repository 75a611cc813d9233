"""
The axis in C with its plant integrated by stiff solvers of SciPy, restarted at every edge of the current loop as the model's own are:
LSODA, which is compiled, and Radau, which is not. Derivatives are those of axis.c, called through ctypes.

python3 stiff.py LIBRARY METHOD RUN: the compiled axis.c, LSODA or Radau, and the file of a run. Prints the seconds of the processor
taken, where the table ended, m, and how often the derivatives were asked for in a period.
"""

import ctypes
import sys

import numpy as np
from scipy.integrate import Radau, ode

RELATIVE = 1e-9
# Of positions, in m, and of currents, in A, as the model asks of its own solver; speeds and energies as the currents.
POSITION, OTHER = 1e-12, 1e-8
POSITIONS = [0, 2, 4]

INTEGRATOR = ctypes.CFUNCTYPE(None, ctypes.POINTER(ctypes.c_double), ctypes.c_int)

library = ctypes.CDLL(sys.argv[1])
library.derivative.argtypes = [ctypes.c_void_p, ctypes.c_void_p]
library.derivative.restype = None
library.run.argtypes = [ctypes.c_char_p, INTEGRATOR, ctypes.POINTER(ctypes.c_double)]

evaluations = periods = 0


def slope(_, y):
    global evaluations
    evaluations += 1
    d = np.zeros_like(y)
    y = np.ascontiguousarray(y)
    library.derivative(y.ctypes.data, d.ctypes.data)
    return d


def tolerances(size):
    absolute = np.full(size, OTHER)
    absolute[POSITIONS] = POSITION
    return absolute


def lsoda(y, span):
    solver = ode(slope).set_integrator("lsoda", rtol=RELATIVE, atol=tolerances(len(y)), nsteps=10000)
    return solver.set_initial_value(y, 0).integrate(span)


def radau(y, span):
    solver = Radau(slope, 0, y, span, rtol=RELATIVE, atol=tolerances(len(y)))
    while solver.status == "running":
        solver.step()
    return solver.y


def carry(advance, span):
    def over_one_period(pointer, size):
        global periods
        periods += 1
        y = np.ctypeslib.as_array(pointer, (size,))
        y[:] = advance(y.copy(), span)

    return INTEGRATOR(over_one_period)


method, path = sys.argv[2:4]
period = np.fromfile(path, count=2)[1]
result = (ctypes.c_double * 3)()
step = carry({"LSODA": lsoda, "Radau": radau}[method], period)
if library.run(path.encode(), step, result) != 0:
    sys.exit(f"cannot read {path}")
print(result[0], result[1], evaluations / periods)
