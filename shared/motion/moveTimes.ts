import { PARAMETERS } from '../core/parameters/table.ts';
import { approx, exactly, type Quantity, type Sentence, sentence } from '../core/sentence.ts';
import { fromSI, toSI } from '../core/units.ts';
import { moveLimits } from './moveLimits.ts';

/** What limits a move, and with which power of its time each limit falls: v ∝ 1/t, a ∝ 1/t², j ∝ 1/t³. */
const LIMITED = [
  ['speed', 1],
  ['acceleration', 2],
  ['jerk', 3],
] as const;

/** Shortest and longest time, s, that a move over `distance` may take under the limits of the parameter table. */
export function moveTimeRange(distance: number): { readonly min: number; readonly max: number } {
  const inOneSecond = moveLimits(distance, 1);
  const timeAt = (end: 'min' | 'max') =>
    LIMITED.map(([name, power]) => (inOneSecond[name] / PARAMETERS[name][end]) ** (1 / power));
  return { min: Math.max(...timeAt('max')), max: Math.min(...timeAt('min')) };
}

/** Why a move over `distance` cannot take `time`, and what can be done; null when it can. */
export function moveTimeProblem(distance: number, time: number): Sentence | null {
  const limits = moveLimits(distance, time);
  if (LIMITED.every(([name]) => limits[name] >= PARAMETERS[name].min && limits[name] <= PARAMETERS[name].max))
    return null;
  const { min, max } = moveTimeRange(distance);
  const over = sentence`for a move over ${exactly(distance, 'mm')}`;
  return time < min
    ? sentence`${exactly(time, 'ms')} is too short ${over}.
        Enter at least ${inwards(min, Math.ceil)} (at most ${bounds('max')}).`
    : sentence`${exactly(time, 'ms')} is too long ${over}.
        Enter at most ${inwards(max, Math.floor)} and dwell for the rest (at least ${bounds('min')}).`;
}

/** 'speed 6 m/s, acceleration 200 m/s², jerk 100000 m/s³'. */
function bounds(end: 'min' | 'max'): Sentence {
  return LIMITED.flatMap(([name], index) => {
    const row = PARAMETERS[name];
    return sentence`${index > 0 ? ', ' : ''}${name} ${exactly(row[end], row.unit)}`;
  });
}

/** Three digits, rounded so that the limit is kept. */
function inwards(time: number, round: (value: number) => number): Quantity {
  const shown = fromSI(time, 'ms');
  const grain = 10 ** (Math.floor(Math.log10(shown)) - 2);
  return approx(toSI(round(shown / grain) * grain, 'ms'), 'ms');
}
