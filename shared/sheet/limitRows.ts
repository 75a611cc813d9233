import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, factor, fixedFactor, MILLISECOND } from './factor.ts';
import { convertedRow, type SheetRow, type SheetSection, setRow } from './row.ts';

const ROOT_2 = fixedFactor('√2', Math.SQRT2);
const ROOT_3 = fixedFactor('√3', Math.sqrt(3));

/** Limits of the simulated axis, for a drive that is set in amperes RMS and counts. */
export function limitSection(p: Parameters, basis: Basis): SheetSection {
  const bus = factor('V_dc', p.busVoltage, 'V');
  const steady = factor('i_c', p.continuousCurrent, 'A peak');
  return {
    id: 'limits',
    title: 'Limits of the simulated axis',
    text: ['For the first moves, set all of them far lower: a tenth of the current, a tenth of the speed.'],
    rows: [
      setRow('Peak current, amplitude', 'i_pk', p.peakCurrent, 'A peak'),
      convertedRow(
        'Peak current, RMS',
        'i_pk',
        converted('i_pk in A RMS', [basis.peakCurrent], [ROOT_2], 'A RMS'),
      ),
      convertedRow(
        'Peak force at 20 °C',
        'F_pk',
        converted('F_pk', [basis.peakCurrent, basis.forcePerAmp], [], 'N'),
      ),
      setRow('Continuous current, amplitude', 'i_c', p.continuousCurrent, 'A peak'),
      convertedRow('Continuous current, RMS', 'i_c', converted('i_c in A RMS', [steady], [ROOT_2], 'A RMS')),
      setRow('Time at peak current', 't_pk', p.overloadTime, 's'),
      setRow('DC bus', 'V_dc', p.busVoltage, 'V'),
      convertedRow('Maximum voltage amplitude', '', converted('V_dc / √3', [bus], [ROOT_3], 'V')),
      ...lengths('Following error limit (trip)', 'e_max', p.followingErrorLimit, basis),
      ...lengths('Settling window', 'w', p.window, basis),
      ...lengths('Travel limit, lower', 'x_min', p.travelMin, basis),
      ...lengths('Travel limit, upper', 'x_max', p.travelMax, basis),
      ...speeds('Speed limit (trip)', 'v_max', p.speedLimit, basis),
    ],
  };
}

function lengths(label: string, symbol: string, value: number, { count }: Basis): SheetRow[] {
  const si = setRow(label, symbol, value, 'm');
  if (count === null) return [si];
  const inCounts = converted(`${symbol} / q`, [factor(symbol, value, 'm')], [count], 'counts');
  return [si, convertedRow(`${label}, in counts`, symbol, inCounts)];
}

function speeds(label: string, symbol: string, value: number, { count, positionPeriod }: Basis): SheetRow[] {
  const si = setRow(label, symbol, value, 'm/s');
  if (count === null) return [si];
  const speed = factor(symbol, value, 'm/s');
  return [
    si,
    convertedRow(
      `${label}, in counts/ms`,
      symbol,
      converted(`${symbol} in counts/ms`, [speed, MILLISECOND], [count], 'counts/ms'),
    ),
    convertedRow(
      `${label}, in counts/sample`,
      symbol,
      converted(`${symbol} in counts/sample`, [speed, positionPeriod], [count], 'counts/sample'),
    ),
  ];
}
