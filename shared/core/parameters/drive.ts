import { choice, linear, log, toggle } from './row.ts';

/** Two structures of the position loop, observer, feedforward. */
export const loopRows = {
  controller: choice(
    '',
    ['PID', 'cascade'],
    'PID',
    'Structure of the position loop: PID on position, or a proportional position loop around a PI velocity loop',
  ),
  Kp: log('K_p', 'N/m', [1e2, 1e9], 2.8e6, 'Position gain: force per position error', {
    label: 'Position gain',
    zero: true,
  }),
  Ki: log(
    'K_i',
    'N/(m·s)',
    [1e3, 1e12],
    2.2e8,
    'Integral gain: removes the error that remains at standstill',
    {
      label: 'Integral gain',
      zero: true,
    },
  ),
  Kd: log('K_d', 'N·s/m', [1, 1e7], 7.1e3, 'Damping gain: force per speed error', {
    label: 'Damping gain',
    zero: true,
  }),
  positionLoopGain: log(
    'K_v',
    '1/s',
    [0.1, 2000],
    90,
    'Position loop gain of the cascade: speed per position error',
  ),
  velocityGain: log(
    'K_vel',
    'N·s/m',
    [1, 1e7],
    7.1e3,
    'Velocity loop gain of the cascade: force per speed error',
  ),
  resetTime: log('T_n', 'ms', [1e-4, 10], 0.01, 'Reset time of the velocity loop; 0: no integral action', {
    zero: true,
  }),
  derivativeTime: log('T_f', 'ms', [1e-6, 0.01], 1e-4, 'Time constant of the speed filter', { zero: true }),
  velocityFeedforward: linear(
    'w_v',
    '%',
    [0, 1.2],
    1,
    'Share of the commanded speed added to the velocity command of the cascade',
  ),
  speedFeedforward: log(
    'K_vff',
    'N·s/m',
    [0.01, 1e5],
    15,
    'Force per commanded speed: cancels viscous drag',
    { zero: true },
  ),
  accelerationFeedforward: log(
    'K_aff',
    'kg',
    [0.01, 5000],
    14.2,
    'Force per commanded acceleration: the moved mass',
    { zero: true },
  ),
  forceBias: linear('F_b', 'N', [-5000, 5000], 0, 'Constant force, for example to hold a vertical load'),
  setSpeedDelay: log(
    'T_sd',
    'ms',
    [1e-6, 0.01],
    0,
    'Delay of the commanded speed before it is compared with the measured one, which lags as well',
    { zero: true },
  ),
  velocityCommandFilter: log(
    'T_vc',
    'ms',
    [1e-6, 0.1],
    0,
    'Time constant of the filter on the velocity command of the cascade; 0: none',
    { zero: true },
  ),
  velocityCommandLimit: log('v_lim', 'm/s', [1e-3, 20], 10, 'Limit of the velocity command in the cascade'),
  speedSource: choice(
    '',
    ['position encoder', 'motor encoder'],
    'position encoder',
    'Encoder from which the speed is measured: dual-loop control takes it from the motor',
  ),
  observer: toggle('', false, 'Disturbance observer: estimates the load force and cancels it'),
  observerBandwidth: log('f_o', 'Hz', [0.5, 2000], 40, 'Bandwidth of the disturbance observer'),
  observerMass: log('M_o', 'kg', [0.01, 5000], 14.2, 'Moving mass that the disturbance observer assumes'),
};

/** The amplifier: current loop, rates, voltage and current limits. */
export const amplifierRows = {
  drive: choice(
    '',
    ['on', 'off', 'shorted'],
    'on',
    'Drive enabled, off with windings open, or off with windings shorted',
  ),
  currentBandwidth: log('f_bw', 'Hz', [50, 6000], 1000, 'Bandwidth of the current loop'),
  currentRate: linear('f_c', 'kHz', [4000, 64000], 16000, 'Sampling rate of the current loop', {
    restart: true,
  }),
  positionDivider: linear('n_p', '', [1, 16], 2, 'Current-loop periods per position-loop sample', {
    integer: true,
    restart: true,
  }),
  busVoltage: log('V_dc', 'V', [12, 800], 325, 'DC bus voltage', { form: 'dc' }),
  peakCurrent: log(
    'i_pk',
    'A',
    [0.1, 1000],
    25,
    'Peak current of the amplifier, all motors together, in A peak (amplitude)',
    { form: 'peak' },
  ),
  continuousCurrent: log(
    'i_c',
    'A',
    [0.05, 500],
    10,
    'Continuous current of the amplifier, in A peak (amplitude)',
    {
      form: 'peak',
    },
  ),
  overloadTime: log('t_pk', 's', [0.05, 120], 2, 'Time at peak current before fold-back'),
};

/** Four heat nodes: winding, coil carrier or housing, table, screw. Capacities and conductances of the whole axis. */
export const heatRows = {
  ambient: linear('T_a', '°C', [-20, 60], 22, 'Ambient temperature'),
  cooling: toggle('', false, 'Coil carrier liquid-cooled instead of cooled by air'),
  coolantTemperature: linear('T_c', '°C', [0, 60], 20, 'Coolant temperature'),
  windingStart: linear('T_w0', '°C', [-20, 200], 22, 'Winding temperature at the start'),
  carrierStart: linear('T_h0', '°C', [-20, 150], 22, 'Carrier or housing temperature at the start'),
  windingCapacity: log('C_w', 'J/K', [1, 1e5], 150, 'Heat capacity of the winding'),
  carrierCapacity: log('C_h', 'J/K', [10, 1e6], 900, 'Heat capacity of the coil carrier or motor housing'),
  tableCapacity: log('C_t', 'J/K', [10, 1e7], 7000, 'Heat capacity of the table'),
  screwCapacity: log('C_s', 'J/K', [10, 1e6], 1000, 'Heat capacity of the screw'),
  windingToCarrier: log('G_wh', 'W/K', [0.01, 1000], 4, 'Thermal conductance, winding to carrier'),
  carrierToAir: log('G_ha', 'W/K', [0.01, 1000], 1.2, 'Thermal conductance, carrier to air'),
  carrierToCoolant: log(
    'G_hc',
    'W/K',
    [0.01, 1000],
    10,
    'Thermal conductance, carrier to coolant, when it is cooled',
  ),
  carrierToTable: log('G_ht', 'W/K', [1e-3, 100], 0.5, 'Thermal conductance, carrier to table', {
    zero: true,
  }),
  tableToAir: log('G_ta', 'W/K', [0.01, 1000], 4, 'Thermal conductance, table to air'),
  screwToAir: log('G_sa', 'W/K', [0.01, 1000], 2, 'Thermal conductance, screw to air'),
  speedCooling: log('c_h', '√(s/m)', [0.01, 10], 0.6, 'How much cooling improves with speed (exposed coil)', {
    zero: true,
  }),
  foldbackTemperature: linear(
    'T_f',
    '°C',
    [40, 200],
    110,
    'Winding temperature at which current fold-back begins',
    { label: 'Fold-back temperature' },
  ),
  windingLimit: linear(
    'T_max',
    '°C',
    [60, 220],
    130,
    'Winding temperature at which the drive trips: limit of the insulation class',
  ),
  tableExpansion: linear('α_t', 'µm/(m·K)', [0, 30e-6], 23e-6, 'Thermal expansion of the table'),
  toolArm: linear('l_t', 'mm', [-0.5, 0.5], 0.08, 'Distance from scale head to tool, along the axis'),
  screwExpansion: linear('α_k', 'µm/(m·K)', [0, 30e-6], 0, 'Thermal expansion of the screw; steel: 11.7'),
};

/** What makes a run repeatable. */
export const runRows = {
  seed: linear('', '', [0, 2147483647], 1, 'Seed of the encoder noise', { integer: true, restart: true }),
};
