import { inUnit, shortest } from '../core/format.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import { fromSI, toSI, type Unit, type UnitSystem, unitIn } from '../core/units.ts';
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
export function moveTimeProblem(
  distance: number,
  time: number,
  system: UnitSystem = 'metric',
): string | null {
  const limits = moveLimits(distance, time);
  if (LIMITED.every(([name]) => limits[name] >= PARAMETERS[name].min && limits[name] <= PARAMETERS[name].max))
    return null;
  const { min, max } = moveTimeRange(distance);
  const text = (value: number, unit: Unit) => shortest(value, unitIn(system, unit));
  const end = time < min ? 'max' : 'min';
  const bounds = LIMITED.map(
    ([name]) => `${name} ${text(PARAMETERS[name][end], PARAMETERS[name].unit)}`,
  ).join(', ');
  const over = `${text(time, 'ms')} is too ${end === 'max' ? 'short' : 'long'} for a move over ${text(distance, 'mm')}`;
  return end === 'max'
    ? `${over}. Give at least ${inwards(min, Math.ceil)} (at most ${bounds}).`
    : `${over}. Give at most ${inwards(max, Math.floor)} and stand still for the rest (at least ${bounds}).`;
}

/** Three digits, rounded so that the limit is kept. */
function inwards(time: number, round: (value: number) => number): string {
  const shown = fromSI(time, 'ms');
  const grain = 10 ** (Math.floor(Math.log10(shown)) - 2);
  return inUnit(toSI(round(shown / grain) * grain, 'ms'), 'ms', 3);
}
