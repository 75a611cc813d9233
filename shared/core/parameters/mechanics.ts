import { type ChoiceRow, choice, linear, log, type NumberRow } from './row.ts';

/** Between motor and table. */
export const linkRows = {
  linkStiffness: log(
    'k₁₂',
    'N/µm',
    [1e5, 2e9],
    1.2e8,
    'Stiffness of the coil mounting, or of screw nut and bearings',
  ),
  linkDamping: log('c₁₂', 'N·s/m', [1, 1e6], 2000, 'Damping of the coil mounting, or of nut and bearings', {
    zero: true,
  }),
  backlash: log('b', 'µm', [1e-8, 1e-3], 0, 'Lost motion between motor and table', { zero: true }),
  screwRigidity: log('EA', 'kN', [1e4, 1e9], 0, 'Axial rigidity E·A of the screw shaft; 0: not modelled', {
    zero: true,
  }),
  screwSpan: linear('l₀', 'mm', [0.01, 5], 0.5, 'Screw length from the fixed bearing to the nut at x = 0'),
  screwSupport: choice(
    '',
    ['supported', 'fixed', 'free'],
    'supported',
    'Far end of the screw; the end at the motor is always fixed',
    { words: { supported: 'fixed–supported', fixed: 'fixed–fixed', free: 'fixed–free' } },
  ),
  screwPretension: linear(
    'ϑ_p',
    'K',
    [0, 20],
    0,
    'Stretch of a screw with both ends fixed: the warming that uses it up',
  ),
  nutDrag: log('F_n', 'N', [0.01, 1000], 0, 'Friction of nut and bearings, referred to the table', {
    zero: true,
  }),
  nutViscous: log('d_n', 'N·s/m', [0.1, 1e5], 0, 'Viscous drag of nut and bearings', {
    label: 'Viscous drag of the nut',
    zero: true,
  }),
  nutRating: log('C_a', 'kN', [100, 1e6], 0, 'Dynamic load rating of the ball nut; 0: not stated', {
    zero: true,
  }),
};

type ModeRows<N extends 1 | 2 | 3> = {
  [K in `mode${N}`]: ChoiceRow<'off' | 'table' | 'motor side'>;
} & { [K in `mode${N}${'Mass' | 'Frequency' | 'Damping'}`]: NumberRow };

/** A part of the machine that swings on a spring of its own. Its mass is contained in that of its side. */
function modeRows<N extends 1 | 2 | 3>(n: N, frequency: number): ModeRows<N> {
  return {
    [`mode${n}`]: choice(
      '',
      ['off', 'table', 'motor side'],
      'off',
      `Flexible part ${n} and where it is mounted; on the table it is part of table or payload`,
      { restart: true },
    ),
    [`mode${n}Mass`]: log(
      `m_f${n}`,
      'kg',
      [1e-3, 1000],
      0.5,
      `Mass that takes part in mode ${n}; contained in the mass of its side`,
    ),
    [`mode${n}Frequency`]: log(
      `f_f${n}`,
      'Hz',
      [1, 3000],
      frequency,
      `Natural frequency of mode ${n} with its side held: where the response has its anti-resonance`,
    ),
    [`mode${n}Damping`]: log(`D_f${n}`, '', [1e-3, 1], 0.02, `Damping ratio of mode ${n} with its side held`),
  } as ModeRows<N>;
}

/** Flexible parts beside the link between motor and table. */
export const flexibleRows = { ...modeRows(1, 80), ...modeRows(2, 200), ...modeRows(3, 400) };

/** The guide, with load-dependent bristle friction. With sliding and breakaway forces of zero it is an air bearing. */
export const guideRows = {
  frictionCoefficient: log('μ_c', '', [1e-4, 0.5], 0.004, 'Sliding friction coefficient', { zero: true }),
  stictionCoefficient: log('μ_s', '', [1e-4, 0.8], 0.006, 'Breakaway friction coefficient', { zero: true }),
  sealFriction: log('F_c0', 'N', [0.01, 500], 3, 'Load-independent sliding friction: seals and wipers', {
    zero: true,
  }),
  sealStiction: log('F_s0', 'N', [0.01, 800], 4, 'Load-independent breakaway force', { zero: true }),
  stribeckSpeed: log(
    'v_s',
    'mm/s',
    [1e-5, 0.2],
    0.003,
    'Stribeck speed: where breakaway friction gives way to sliding friction',
  ),
  bristleStiffness: log('σ₀', 'N/µm', [1e4, 1e9], 3e7, 'Presliding stiffness of the whole guide'),
  bristleDamping: log('σ₁', 'N·s/m', [0.1, 1e6], 3000, 'Presliding damping', { zero: true }),
  dampingFadeSpeed: log('v_d', 'mm/s', [1e-5, 1], 0.002, 'Speed above which presliding damping fades'),
  viscous: log('σ₂', 'N·s/m', [0.01, 5000], 15, 'Viscous friction of the guide', {
    label: 'Viscous friction',
    zero: true,
  }),
};

/** What use does to nut and guide. */
export const wearRows = {
  kilometresTravelled: linear('s', 'km', [0, 2e7], 0, 'Distance travelled since the machine was new'),
  nutWear: log('k_w', 'nm/km', [1e-14, 1e-10], 5e-13, 'Wear of the ball nut; 0: it does not wear', {
    zero: true,
  }),
  nutPreload: log(
    'δ_p',
    'µm',
    [1e-8, 1e-4],
    2e-6,
    'Wear that uses up the preload of the nut; only after it does lost motion grow',
    { zero: true },
  ),
  guideDistance: log(
    'L_g',
    'km',
    [1e5, 1e9],
    2e7,
    'Distance after which a rolling guide has lost its preload; 0: it does not wear',
    { zero: true },
  ),
};

/** What the position loop measures. */
export const encoderRows = {
  encoderSide: choice(
    '',
    ['load', 'motor'],
    'load',
    'Encoder location: linear scale on the table, or on the motor of a screw (semi-closed)',
  ),
  encoderResolution: log('q', 'nm', [1e-11, 1e-3], 1e-9, 'Encoder resolution: one count', { zero: true }),
  motorEncoderResolution: log(
    'q_m',
    'nm',
    [1e-11, 1e-3],
    1e-8,
    'Resolution of the motor encoder in dual-loop control, as travel of the table',
    { zero: true },
  ),
  signalPeriod: log('p', 'µm', [1e-7, 1e-2], 2e-5, 'Signal period from which the counts are interpolated'),
  interpolation1: log('a₁', 'nm', [1e-11, 1e-5], 0, 'Interpolation error, once per signal period', {
    label: 'Interpolation error 1',
    zero: true,
  }),
  interpolation2: log('a₂', 'nm', [1e-11, 1e-5], 0, 'Interpolation error, twice per signal period', {
    label: 'Interpolation error 2',
    zero: true,
  }),
  longError: log(
    'a_l',
    'µm',
    [1e-9, 1e-3],
    0,
    'Error of the scale, or of the screw’s lead, over a long stretch; amplitude',
    { zero: true },
  ),
  longErrorPeriod: log('λ_l', 'mm', [0.01, 10], 1, 'Stretch in which the long error repeats'),
  leadError: log(
    'a_h',
    'µm',
    [1e-9, 1e-4],
    0,
    'Error of the screw’s lead once per revolution, amplitude; an encoder on the motor does not see it',
    { zero: true },
  ),
  encoderNoise: log('σ_x', 'nm', [1e-12, 1e-6], 3e-10, 'Noise of one reading, RMS', { zero: true }),
  scaleExpansion: linear('α_s', 'µm/(m·K)', [0, 30e-6], 8e-6, 'Thermal expansion of the scale'),
};

/** Limits the machine must not exceed, and the window that counts as settled. */
export const limitRows = {
  travelMin: linear('x_min', 'mm', [-3, 3], -0.3, 'Travel limit, lower'),
  travelMax: linear('x_max', 'mm', [-3, 3], 0.3, 'Travel limit, upper'),
  followingErrorLimit: log('e_max', 'mm', [1e-7, 0.1], 0.002, 'Following error at which the drive trips'),
  speedLimit: log('v_max', 'm/s', [0.01, 20], 5, 'Speed at which the drive trips'),
  window: log('w', 'µm', [1e-10, 1e-2], 1e-6, 'Settling window, plus or minus'),
};
