import { choice, linear, log, toggle } from './row.ts';

/** What the axis is asked to do. */
export const moveRows = {
  program: choice(
    '',
    ['hold', 'shuttle', 'scan', 'sine', 'staircase', 'step', 'chirp', 'stepped sine', 'force pulse', 'list'],
    'shuttle',
    'What the axis is commanded to do, over and over',
  ),
  start: linear('x₀', 'mm', [-2, 2], -0.1, 'Position where each cycle starts'),
  stroke: linear('s', 'mm', [-2, 2], 0.2, 'Distance of one move; negative moves the other way'),
  speed: log('v', 'm/s', [1e-5, 6], 1, 'Largest commanded speed of a move'),
  acceleration: log('a', 'm/s²', [1e-3, 200], 10, 'Largest commanded acceleration'),
  jerk: log('j', 'm/s³', [1e-2, 1e5], 500, 'Largest commanded jerk; higher is snappier and shakes more'),
  dwell: log('t_d', 'ms', [1e-3, 60], 0.2, 'Standstill after each move', { zero: true }),
  scanSpeed: log('v_s', 'mm/s', [1e-6, 2], 0.002, 'Constant speed of the scan'),
  sineAmplitude: log('x̂', 'mm', [1e-9, 0.5], 0.005, 'Amplitude of the sine motion'),
  sineFrequency: log('f', 'Hz', [0.01, 500], 2, 'Frequency of the sine motion'),
  stairStep: log('Δx', 'nm', [1e-10, 1e-3], 5e-9, 'Height of one stair'),
  stairCount: linear('n', '', [1, 100], 5, 'Stairs up, then as many down', { integer: true }),
  stepSize: log('Δx', 'µm', [1e-9, 1e-2], 1e-5, 'Size of the unprofiled position step'),
  pulseForce: linear(
    'F_p',
    'N',
    [-5000, 5000],
    20,
    'Force of the commanded test pulse, added at the loop output',
  ),
  pulseTime: log('t_p', 'ms', [1e-4, 10], 0.05, 'Length of the test pulse'),
  sweepForce: log('F_e', 'N', [1e-3, 2000], 5, 'Amplitude of the sine or chirp added at the loop output'),
  sweepFrom: log('f₁', 'Hz', [0.1, 8000], 5, 'First frequency of the sweep'),
  sweepTo: log('f₂', 'Hz', [0.1, 8000], 1000, 'Last frequency of the sweep'),
  sweepTime: log('T', 's', [0.05, 600], 4, 'Length of the sweep'),
  sweepPoints: linear('n', '', [2, 400], 40, 'Frequencies of the stepped sine', { integer: true }),
};

/** What is carried, and in which direction it falls. */
export const loadRows = {
  payload: log('m_p', 'kg', [0.01, 2000], 5, 'Mass the customer puts on the table', { zero: true }),
  tableMass: log('m_t', 'kg', [0.1, 2000], 8, 'Mass of the table itself'),
  coilMass: log('m_c', 'kg', [0.05, 500], 1.2, 'Mass of one moving coil unit with its mounting'),
  motorCount: linear('N', '', [1, 4], 1, 'Motors in parallel on one amplifier', {
    integer: true,
    restart: true,
  }),
  inclination: linear('θ', '°', [-Math.PI / 2, Math.PI / 2], 0, 'Rise of the axis; 90° moves straight up'),
  counterbalance: linear('F_cb', 'N', [-20000, 20000], 0, 'Constant force of the counterbalance, along +x'),
};

/** What pushes on the load from outside. */
export const processRows = {
  process: choice(
    '',
    ['none', 'constant', 'pulse', 'sine', 'feed'],
    'none',
    'Process force on the tool; feed acts against the motion',
  ),
  processForce: linear('F', 'N', [-5000, 5000], 0, 'Process force along +x (amplitude for sine)'),
  processFrequency: log('f', 'Hz', [0.01, 2000], 20, 'Frequency of the sine, repeat rate of the pulse'),
  processTime: log('t', 'ms', [1e-4, 60], 0.02, 'Length of one pulse'),
  handStiffness: log('k_h', 'N/m', [10, 1e6], 2000, 'Spring between the pulling hand and the table'),
  handDamping: log('c_h', 'N·s/m', [1, 1e4], 60, 'Damper beside the hand spring', { zero: true }),
};

/** The machine base on its mounts. */
export const baseRows = {
  base: toggle('', false, 'The base moves on soft mounts instead of standing fixed', { restart: true }),
  baseMass: log('m_b', 'kg', [5, 50000], 800, 'Mass of the machine base'),
  baseFrequency: log('f_b', 'Hz', [0.5, 200], 15, 'Natural frequency of the base on its mounts'),
  baseDamping: log('D_b', '', [0.001, 1], 0.08, 'Damping ratio of the mounts'),
};
