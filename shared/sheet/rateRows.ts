import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, factor, fixedFactor } from './factor.ts';
import { convertedRow, type SheetSection, setRow } from './row.ts';

const ONE = fixedFactor('1', 1);
const HALF = fixedFactor('½', 0.5);

/** The rates the gains hold for, and the delays the margins reckon with. */
export function rateSection(p: Parameters, basis: Basis): SheetSection {
  const { currentRate, currentPeriod, positionRate, positionPeriod } = basis;
  const divider = factor('n_p', p.positionDivider, '');
  const fromReading = currentPeriod.value + positionPeriod.value / 2;
  return {
    id: 'rates',
    title: 'Loop rates and delays',
    text: [
      'Gains per sample hold for these rates only. A drive with other rates needs them worked out anew from the SI values, and new margins: a slower loop has less.',
    ],
    rows: [
      setRow('Current loop, rate', 'f_c', currentRate.value, 'Hz'),
      convertedRow('Current loop, period', 'T_s', converted('T_s', [ONE], [currentRate], 's')),
      setRow('Current-loop periods per position-loop sample', 'n_p', p.positionDivider),
      convertedRow('Position loop, rate', 'f_p', converted('f_p', [currentRate], [divider], 'Hz')),
      convertedRow('Position loop, period', 'T_p', converted('T_p', [divider], [currentRate], 's')),
      convertedRow(
        'Computed voltage is applied after',
        '',
        converted('one current-loop period', [currentPeriod], [], 's'),
      ),
      convertedRow(
        'Held voltage acts later by',
        '',
        converted('half a current-loop period', [HALF, currentPeriod], [], 's'),
      ),
      {
        ...setRow('Encoder reading to the middle of the voltage it causes', '', fromReading, 's'),
        how: `T_s + ½ · T_p = ${currentPeriod.text} + ½ · ${positionPeriod.text} = ${factor('', fromReading, 's').text}`,
      },
      convertedRow(
        'Speed reading is old by, without its filter',
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
