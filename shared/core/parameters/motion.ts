import { choice, linear, log, toggle } from './row.ts';

/** What the axis is commanded to do. */
export const moveRows = {
  program: choice(
    '',
    ['hold', 'shuttle', 'scan', 'sine', 'staircase', 'step', 'chirp', 'stepped sine', 'force pulse', 'list'],
    'shuttle',
    'Motion program, repeated',
  ),
  start: linear('x₀', 'mm', [-2, 2], -0.1, 'Start position of each cycle'),
  stroke: linear('s', 'mm', [-2, 2], 0.2, 'Length of one move; negative reverses it'),
  speed: log('v', 'm/s', [1e-5, 6], 1, 'Maximum commanded speed'),
  acceleration: log('a', 'm/s²', [1e-3, 200], 10, 'Maximum commanded acceleration'),
  jerk: log(
    'j',
    'm/s³',
    [1e-2, 1e5],
    500,
    'Maximum commanded jerk; more is quicker, and excites vibration more',
  ),
  dwell: log('t_d', 'ms', [1e-3, 60], 0.2, 'Dwell after each move', { zero: true }),
  scanSpeed: log('v_s', 'mm/s', [1e-6, 2], 0.002, 'Constant speed of the scan'),
  sineAmplitude: log('x̂', 'mm', [1e-9, 0.5], 0.005, 'Amplitude of the sine motion'),
  sineFrequency: log('f', 'Hz', [0.01, 500], 2, 'Frequency of the sine motion'),
  stairStep: log('Δx', 'nm', [1e-10, 1e-3], 5e-9, 'Height of one step of the staircase'),
  stairCount: linear('n', '', [1, 100], 5, 'Steps up, then the same number down', { integer: true }),
  stepSize: log('Δx', 'µm', [1e-9, 1e-2], 1e-5, 'Size of the unprofiled position step'),
  pulseForce: linear(
    'F_p',
    'N',
    [-5000, 5000],
    20,
    'Force of the commanded test pulse, added at the loop output',
  ),
  pulseTime: log('t_p', 'ms', [1e-4, 10], 0.05, 'Duration of the test pulse'),
  sweepForce: log('F_e', 'N', [1e-3, 2000], 5, 'Amplitude of the sine or chirp added at the loop output'),
  sweepFrom: log('f₁', 'Hz', [0.1, 8000], 5, 'Start frequency of the sweep'),
  sweepTo: log('f₂', 'Hz', [0.1, 8000], 1000, 'End frequency of the sweep'),
  sweepTime: log('T', 's', [0.05, 600], 4, 'Duration of the sweep'),
  sweepPoints: linear('n', '', [2, 400], 40, 'Number of frequencies of the stepped sine', { integer: true }),
};

/** The load, and the slope of the axis. */
export const loadRows = {
  payload: log('m_p', 'kg', [0.01, 2000], 5, 'Payload on the table', { zero: true }),
  tableMass: log('m_t', 'kg', [0.1, 2000], 8, 'Mass of the table without payload'),
  coilMass: log('m_c', 'kg', [0.05, 500], 1.2, 'Mass of one moving coil unit with its mounting'),
  motorCount: linear('N', '', [1, 4], 1, 'Motors in parallel on one amplifier', {
    integer: true,
    restart: true,
  }),
  inclination: linear(
    'θ',
    '°',
    [-Math.PI / 2, Math.PI / 2],
    0,
    'Inclination of the axis; 90° is vertical, upwards',
  ),
  counterbalance: linear('F_cb', 'N', [-20000, 20000], 0, 'Constant force of the counterbalance, along +x'),
};

/** External forces on the load. */
export const processRows = {
  process: choice(
    '',
    ['none', 'constant', 'pulse', 'sine', 'feed'],
    'none',
    'Process force on the tool; feed opposes the motion',
  ),
  processForce: linear('F', 'N', [-5000, 5000], 0, 'Process force along +x (amplitude for sine)'),
  processFrequency: log('f', 'Hz', [0.01, 2000], 20, 'Frequency of the sine, repeat rate of the pulse'),
  processTime: log('t', 'ms', [1e-4, 60], 0.02, 'Duration of one pulse'),
  handStiffness: log('k_h', 'N/m', [10, 1e6], 2000, 'Stiffness of the spring between hand and table'),
  handDamping: log('c_h', 'N·s/m', [1, 1e4], 60, 'Damping in parallel with the hand spring', { zero: true }),
};

/** Steel chips from a neighbouring machine. */
export const chipRows = {
  chipCount: linear('', '', [0, 200], 0, 'Steel chips poured on the machine; another number pours anew', {
    integer: true,
  }),
  chipSize: log('d', 'mm', [1e-4, 5e-3], 1e-3, 'Mean size of the chips; they run from 0.6 to 1.4 times it'),
  cover: toggle('', false, 'Bellows or strip over the magnets: no chip reaches them'),
};

/** The machine base on its mounts. */
export const baseRows = {
  base: toggle('', false, 'Machine base on soft mounts instead of fixed', { restart: true }),
  baseMass: log('m_b', 'kg', [5, 50000], 800, 'Mass of the machine base'),
  baseFrequency: log('f_b', 'Hz', [0.5, 200], 15, 'Natural frequency of the base on its mounts'),
  baseDamping: log('D_b', '', [0.001, 1], 0.08, 'Damping ratio of the mounts'),
};
