import { choice, log, toggle } from './row.ts';

/** Forces that the controller adds because it knows the machine. Viscous drag is cancelled by the speed feedforward. */
export const compensationRows = {
  coggingCompensation: toggle('', false, 'Cogging compensation: adds the force of the learned table'),
  coggingPosition: choice(
    '',
    ['set', 'measured'],
    'set',
    'Position at which the cogging table is read: of the command, which is free of noise, or of the encoder',
  ),
  learningBandwidth: log(
    'f_L',
    'Hz',
    [1, 1000],
    30,
    'Learning bandwidth: up to this frequency a repeated move is learned from its following error',
  ),
  coulombCompensation: log(
    'F_cc',
    'N',
    [0.01, 2000],
    0,
    'Coulomb friction compensation: force in the direction of the commanded speed. 0 leaves it out',
    { zero: true },
  ),
  breakawayCompensation: log(
    'F_bc',
    'N',
    [0.01, 2000],
    0,
    'Breakaway boost: force added to the Coulomb friction compensation at low commanded speed',
    { zero: true },
  ),
  breakawaySpeed: log(
    'v_bc',
    'mm/s',
    [1e-5, 1],
    2e-3,
    'Commanded speed over which the breakaway boost fades',
  ),
  compensationSpeed: log(
    'v_cc',
    'mm/s',
    [1e-6, 0.1],
    1e-4,
    'Commanded speed over which the friction compensation builds up after a reversal',
  ),
};
