import { choice, linear, log } from './row.ts';

/**
 * The motor as its datasheet prints it (wye connection, line to line, RMS), per motor. With a screw (`lead` > 0)
 * the rotary constants apply, and everything is referred to the table through lead/2π.
 */
export const motorRows = {
  forceConstant: log('K_f', 'N/A', [0.5, 500], 50, 'Force constant at 20 °C, per A RMS', {
    form: 'rms',
  }),
  fluxDeviation: linear(
    'Δψ',
    '%',
    [-0.3, 0.3],
    0,
    'Magnet flux of this motor above or below its datasheet; the drive goes by the datasheet',
  ),
  backEmfConstant: log(
    'K_e',
    'V·s/m',
    [0.1, 500],
    0,
    'Back-EMF constant line to line, V RMS per m/s; 0: derived from the force constant',
    { zero: true, form: 'rms', perPhase: Math.sqrt(3) },
  ),
  resistance: log('R_ll', 'Ω', [0.05, 200], 5, 'Winding resistance, line to line, at 20 °C', {
    perPhase: 2,
  }),
  inductance: log('L_ll', 'mH', [2e-5, 0.5], 0.006, 'Winding inductance, line to line', { perPhase: 2 }),
  polePitch: log('τ', 'mm', [0.004, 0.12], 0.03, 'Pole pitch: distance from north to south pole'),
  continuousForce: log(
    'F_c',
    'N',
    [1, 20000],
    200,
    'Continuous force of one motor, winding at its temperature limit',
  ),
  lead: log('p_h', 'mm', [5e-4, 0.1], 0, 'Screw lead; 0 for a direct drive', { zero: true }),
  torqueConstant: log('K_t', 'N·m/A', [0.01, 20], 0.7, 'Torque constant at 20 °C, per A RMS (screw drive)', {
    form: 'rms',
  }),
  polePairs: linear('p', '', [1, 20], 4, 'Pole pairs of the rotary motor (screw drive)', { integer: true }),
  rotorInertia: log('J', 'kg·cm²', [1e-7, 0.1], 3e-4, 'Inertia of rotor, coupling and screw (screw drive)'),
  ripple6: log('r₆', '%', [1e-4, 0.2], 0.005, 'Force and back-EMF ripple, 6th order', { zero: true }),
  ripple6Phase: linear('φ₆', '°', [-Math.PI, Math.PI], 0, 'Phase of the 6th-order ripple'),
  ripple12: log('r₁₂', '%', [1e-4, 0.2], 0.002, 'Force and back-EMF ripple, 12th order', { zero: true }),
  ripple12Phase: linear('φ₁₂', '°', [-Math.PI, Math.PI], 0, 'Phase of the 12th-order ripple'),
  saturationCurrent: log(
    'i_sat',
    'A',
    [0.1, 1000],
    0,
    'Peak current at which flux has fallen to 71 %; 0: no saturation',
    { zero: true, form: 'peak' },
  ),
  magnetTempCoefficient: linear(
    'α_B',
    '1/K',
    [-0.005, 0],
    -0.0011,
    'Temperature coefficient of the magnet flux',
    { label: 'Magnet temperature coefficient' },
  ),
  magnetFollow: linear(
    'κ',
    '',
    [0, 1],
    0.2,
    'Share of the coil unit’s temperature rise that the magnets follow',
  ),
  misalignment2: linear(
    'δ₂',
    'mm',
    [-0.02, 0.02],
    0,
    'Misalignment of the second motor to the electrical angle of the first',
  ),
  misalignment3: linear(
    'δ₃',
    'mm',
    [-0.02, 0.02],
    0,
    'Misalignment of the third motor to the electrical angle of the first',
  ),
  misalignment4: linear(
    'δ₄',
    'mm',
    [-0.02, 0.02],
    0,
    'Misalignment of the fourth motor to the electrical angle of the first',
  ),
};

/** Iron, gap and attraction: what differs between drives besides the winding. */
export const magnetRows = {
  fieldLaw: choice(
    '',
    ['none', 'gap', 'cosh', 'bessel'],
    'bessel',
    'How flux depends on gap and eccentricity: iron over magnets, coil between two magnet rows, or around a magnet shaft',
    {
      words: {
        gap: 'iron over magnets',
        cosh: 'coil between two magnet rows',
        bessel: 'coil around a magnet shaft',
      },
    },
  ),
  airGap: log('g', 'mm', [2e-4, 0.01], 0.001, 'Mechanical air gap, on each side of the coil'),
  nominalGap: log('g₀', 'mm', [2e-4, 0.01], 0.001, 'Air gap to which the datasheet applies'),
  magnetHeight: log('h_m', 'mm', [0.001, 0.05], 0.005, 'Magnet height (gap law)'),
  recoilPermeability: linear(
    'μ_r',
    '',
    [1, 1.3],
    1.05,
    'Recoil permeability of the magnets (gap and cosh laws)',
  ),
  coilOffset: linear(
    'e',
    'mm',
    [-0.003, 0.003],
    0,
    'Eccentricity: offset of the coil from centre; of a flat motor, by how much the gap is wider at one edge',
  ),
  attraction: log(
    'F_att',
    'N',
    [1, 50000],
    0,
    'Magnetic attraction of one coil unit to the track at the nominal gap',
    { zero: true },
  ),
  cogging1: log('A₁', 'N', [1e-3, 500], 0, 'Cogging amplitude, first term', { zero: true }),
  cogging1Period: log('λ₁', 'mm', [1e-4, 0.25], 0.004, 'Cogging period, first term'),
  cogging1Phase: linear('φ₁', '°', [-Math.PI, Math.PI], 0, 'Cogging phase, first term'),
  cogging2: log('A₂', 'N', [1e-3, 500], 0, 'Cogging amplitude, second term', { zero: true }),
  cogging2Period: log('λ₂', 'mm', [1e-4, 0.25], 0.024, 'Cogging period, second term'),
  cogging2Phase: linear('φ₂', '°', [-Math.PI, Math.PI], 0, 'Cogging phase, second term'),
  cogging3: log('A₃', 'N', [1e-3, 500], 0, 'Cogging amplitude, third term', { zero: true }),
  cogging3Period: log('λ₃', 'mm', [1e-4, 0.25], 0.048, 'Cogging period, third term'),
  cogging3Phase: linear('φ₃', '°', [-Math.PI, Math.PI], 0, 'Cogging phase, third term'),
  eddyDrag: log('c_e', 'N·s/m', [1e-3, 500], 0, 'Eddy-current drag coefficient of one motor', { zero: true }),
  hysteresisDrag: log('F_h', 'N', [1e-3, 200], 0, 'Hysteresis drag of one motor', { zero: true }),
};
