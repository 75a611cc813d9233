import { choice, log } from './row.ts';

/** What the command passes on its way from the program to the position loop. Each stage takes time and spares the machine. */
export const shapingRows = {
  jerkRamp: log(
    'T_j',
    'ms',
    [1e-4, 1],
    0,
    'Jerk ramp time: how long the jerk takes to build up. Makes a third-order profile a fourth-order one, 0 leaves it third-order',
    { zero: true },
  ),
  shaper: choice(
    '',
    ['none', 'ZV', 'ZVD', 'ZVDD'],
    'none',
    'Input shaper for one resonance: zero vibration, with its first, or its first two derivatives zero as well',
  ),
  shaperFrequency: log('f_sh', 'Hz', [0.5, 1000], 30, 'Resonance that the input shaper does not excite'),
  shaperDamping: log('D_sh', '', [1e-4, 0.9], 0.02, 'Damping ratio of that resonance', { zero: true }),
  setpointFilter: log(
    'T_w',
    'ms',
    [1e-5, 1],
    0,
    'Time constant of the setpoint filter, a first-order low-pass on the command. 0 leaves it out',
    { zero: true },
  ),
};
