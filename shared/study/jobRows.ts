import { choice, linear, log, type Row, toggle } from '../core/parameters/row.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import { dutyRows } from './dutyRows.ts';

/** What is carried, and how. */
const loadRows = {
  payload: PARAMETERS.payload,
  tableMass: PARAMETERS.tableMass,
  travel: linear('', 'mm', [0.005, 4], 0.4, 'Travel that the machine needs'),
  inclination: PARAMETERS.inclination,
  counterbalanced: linear('', '%', [0, 1.2], 0, 'Share of the weight that a counterbalance carries'),
};

/** What it has to do, over and over. */
const motionRows = {
  motion: choice(
    '',
    ['back and forth', 'move list'],
    'back and forth',
    'One move and back, or a list of moves',
  ),
  stroke: linear('s', 'mm', [1e-4, 2], 0.25, 'Distance of one move'),
  moveTime: log('t_m', 'ms', [0.01, 60], 0.4, 'Time allowed for one move'),
  dwell: PARAMETERS.dwell,
  process: PARAMETERS.process,
  processForce: PARAMETERS.processForce,
  processFrequency: PARAMETERS.processFrequency,
  processTime: PARAMETERS.processTime,
};

/** How well it has to do it. */
const accuracyRows = {
  window: { ...PARAMETERS.window, default: 1e-7 },
  smallestStep: log('', 'nm', [1e-10, 1e-4], 0, 'Smallest step that the tool has to make; 0: not required', {
    zero: true,
  }),
  rippleLimit: log(
    '',
    '%',
    [1e-5, 1],
    0,
    'Largest speed ripple of a scan, peak over set speed; 0: no scan is required',
    { zero: true },
  ),
  scanSpeed: { ...PARAMETERS.scanSpeed, default: 0.1 },
  scanLength: linear('', 'mm', [1e-4, 2], 0.2, 'Length of the scan at constant speed'),
  rippleBandwidth: log(
    '',
    'Hz',
    [10, 5000],
    100,
    'Bandwidth in which the speed ripple is judged; the process does not see anything faster',
  ),
  growthLimit: log(
    '',
    'µm',
    [1e-8, 1e-3],
    0,
    'Thermal drift allowed at the tool over a day; 0: not required',
    { zero: true },
  ),
  wear: log('', 'µm', [1e-7, 1e-4], 0, 'Backlash that wear adds to a nut over its life; 0: not considered', {
    zero: true,
  }),
  peakSensitivity: linear('M_S', '', [1.2, 3], 1.5, 'Peak sensitivity that every drive is tuned to'),
};

/** Where and how long it does it. */
const placeRows = {
  busVoltage: PARAMETERS.busVoltage,
  ambient: PARAMETERS.ambient,
  cooling: toggle('', false, 'A coolant is available'),
  coolantTemperature: PARAMETERS.coolantTemperature,
  ...dutyRows,
};

/** By what drives are comparable, and what decides between those that do the job. */
const choiceRows = {
  comparableBy: choice(
    '',
    [
      'continuous force',
      'utilisation',
      'installed length',
      'coil mass',
      'copper loss',
      'winding temperature',
    ],
    'continuous force',
    'What is equal in the candidate drives when they are chosen for you',
  ),
  decidedBy: choice(
    '',
    ['total cost', 'time in position'],
    'total cost',
    'What decides first between drives that meet every requirement',
  ),
  years: linear('', '', [1, 25], 5, 'Years within which the machine is to pay for itself', { integer: true }),
  priceLow: linear('', '', [0, 1e6], 300, 'Cost of a part of low effort, in your currency'),
  priceMedium: linear('', '', [0, 1e6], 800, 'Cost of a part of medium effort, in your currency'),
  priceHigh: linear('', '', [0, 1e6], 2000, 'Cost of a part of high effort, in your currency'),
  energyPrice: linear('', '1/kWh', [0, 10 / 3.6e6], 0.25 / 3.6e6, 'Price of energy, in your currency'),
  regeneration: toggle('', false, 'The supply feeds braking energy back to the mains'),
  busCapacitance: log('C', 'mF', [1e-5, 1], 1e-3, 'Capacitance of the DC bus'),
  savingThatCounts: log(
    '',
    '',
    [0.01, 1e6],
    200,
    'Difference in total cost, in your currency, from which one drive is preferred to another',
    { zero: true },
  ),
};

/** The groups of a job in the order a person is asked for them. */
export const JOB_GROUPS = [
  { id: 'load', title: 'Load', rows: loadRows },
  { id: 'motion', title: 'Motion', rows: motionRows },
  { id: 'accuracy', title: 'Accuracy', rows: accuracyRows },
  { id: 'place', title: 'Place and hours', rows: placeRows },
  { id: 'choice', title: 'What decides', rows: choiceRows },
] as const;

/** Entries that no simulation depends on: they weigh what it found. */
export const DECISION_ENTRIES: readonly string[] = Object.keys(choiceRows);

/** The one table of what a job is. Form, file, link and report read it. */
export const JOB_ROWS = {
  ...loadRows,
  ...motionRows,
  ...accuracyRows,
  ...placeRows,
  ...choiceRows,
} satisfies Record<string, Row>;
