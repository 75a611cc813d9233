import { decibels } from '../../shared/core/decibels.ts';
import { inUnit, ranged } from '../../shared/core/format.ts';
import { placeOn, power, straight } from '../plot/interpolate.ts';
import type { Analysed } from './panes/loopData.ts';

/** Every response at a frequency (Hz), in words for eye and ear. */
export function readoutAt({ analysis }: Analysed, frequency: number): string {
  const { openLoop, sensitivity, closedLoop, stiffness } = analysis;
  const place = placeOn(analysis.frequency, frequency);
  const size = ({ magnitude }: typeof openLoop) => {
    const value = power(magnitude, place);
    return `${inUnit(value, '')} (${decibels(value).toFixed(1).replace('-', '−')} dB)`;
  };
  const phase = Math.round((straight(openLoop.phase, place) * 180) / Math.PI);
  return [
    `${ranged(frequency, 'Hz')}: |L| ${size(openLoop)}, phase ${String(phase).replace('-', '−')}°`,
    `|S| ${size(sensitivity)}`,
    `|T| ${size(closedLoop)}`,
    `stiffness ${ranged(power(stiffness.magnitude, place), 'N/µm')}`,
  ].join('; ');
}
