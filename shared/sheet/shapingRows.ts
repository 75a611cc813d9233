import type { Parameters } from '../core/parameters/table.ts';
import { isShaped, shaperImpulses, shapingTimes } from '../motion/shaping.ts';
import type { Basis } from './basis.ts';
import { converted, factor } from './factor.ts';
import { onOff } from './gainRows.ts';
import { convertedRow, type SheetRow, type SheetSection, setRow } from './row.ts';

const TITLE = 'Command shaping';

/** What the command passes between program and position loop, as impulses, and the time that each stage takes. */
export function shapingSection(p: Parameters, basis: Basis): SheetSection {
  const section = { id: 'shaping', title: TITLE };
  if (!isShaped(p)) return { ...section, text: [], rows: [setRow(TITLE, '', onOff(false))] };
  return {
    ...section,
    text: [
      'Position, speed and acceleration of the command pass the same stages: mean over the jerk ramp time, impulses of the input shaper, first-order low-pass. Feedforward acts on their output.',
    ],
    rows: [
      setRow('Order of the profile', '', p.jerkRamp > 0 ? 'fourth' : 'third'),
      ...stage('Jerk ramp', 'T_j', p.jerkRamp, basis),
      ...impulseRows(p, basis),
      ...stage('Setpoint filter', 'T_w', p.setpointFilter, basis),
      addedTime(p),
    ],
  };
}

function stage(label: string, symbol: string, time: number, { positionPeriod }: Basis): SheetRow[] {
  if (time === 0) return [setRow(label, symbol, 'none')];
  const of = factor(symbol, time, 's');
  return [
    convertedRow(label, symbol, converted(symbol, [of], [], 'ms', 1e3)),
    convertedRow(
      `${label}, in samples`,
      symbol,
      converted(`${symbol} / T_p`, [of], [positionPeriod], 'samples'),
    ),
  ];
}

function impulseRows(p: Parameters, basis: Basis): SheetRow[] {
  if (p.shaper === 'none') return [setRow('Input shaper', '', 'none')];
  return shaperImpulses(p).flatMap(({ share, delay }, index) => [
    setRow(`Input shaper, share of impulse ${index + 1}`, `A_${index + 1}`, share),
    ...(index === 0
      ? []
      : stage(`Input shaper, delay of impulse ${index + 1}`, `t_${index + 1}`, delay, basis)),
  ]);
}

function addedTime(p: Parameters): SheetRow {
  const { jerkRamp, shaper, setpointFilter } = shapingTimes(p);
  return {
    ...setRow('Time added to each move', '', 1e3 * (jerkRamp + shaper + setpointFilter), 'ms'),
    how: 'jerk ramp + last delay of the input shaper + one time constant of the setpoint filter',
  };
}
