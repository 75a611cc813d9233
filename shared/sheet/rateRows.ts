import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, factor, fixedFactor } from './factor.ts';
import { convertedRow, type SheetSection, setRow } from './row.ts';

const ONE = fixedFactor('1', 1);
const HALF = fixedFactor('½', 0.5);

/** The sampling rates for which the gains apply, and the delays included in the margins. */
export function rateSection(p: Parameters, basis: Basis): SheetSection {
  const { currentRate, currentPeriod, positionRate, positionPeriod } = basis;
  const divider = factor('n_p', p.positionDivider, '');
  const fromReading = currentPeriod.value + positionPeriod.value / 2;
  return {
    id: 'rates',
    title: 'Loop rates and delays',
    text: [
      'Gains per sample apply at these rates only. For a drive with other rates, recalculate them from the SI values and check the margins again: a slower loop has smaller margins.',
    ],
    rows: [
      setRow('Current loop, rate', 'f_c', currentRate.value, 'Hz'),
      convertedRow('Current loop, period', 'T_s', converted('T_s', [ONE], [currentRate], 's')),
      setRow('Current-loop periods per position-loop sample', 'n_p', p.positionDivider),
      convertedRow('Position loop, rate', 'f_p', converted('f_p', [currentRate], [divider], 'Hz')),
      convertedRow('Position loop, period', 'T_p', converted('T_p', [divider], [currentRate], 's')),
      convertedRow(
        'Delay until the calculated voltage is applied',
        '',
        converted('one current-loop period', [currentPeriod], [], 's'),
      ),
      convertedRow(
        'Delay of the held voltage',
        '',
        converted('half a current-loop period', [HALF, currentPeriod], [], 's'),
      ),
      {
        ...setRow('Delay from encoder reading to the middle of the resulting voltage', '', fromReading, 's'),
        how: `T_s + ½ · T_p = ${currentPeriod.text} + ½ · ${positionPeriod.text} = ${factor('', fromReading, 's').text}`,
      },
      convertedRow(
        'Delay of the speed reading, without its filter',
        '',
        converted('half a position-loop period', [HALF, positionPeriod], [], 's'),
      ),
      setRow('Bandwidth of the current loop', 'f_bw', p.currentBandwidth, 'Hz'),
      setRow(
        'Rate of the position loop over that bandwidth',
        'f_p / f_bw',
        positionRate.value / p.currentBandwidth,
      ),
    ],
  };
}
