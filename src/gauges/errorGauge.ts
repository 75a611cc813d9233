import { ranged } from '../../shared/core/format.ts';
import { fromSI } from '../../shared/core/units.ts';
import { logFraction } from './fractions.ts';
import { Gauge } from './gauge.ts';
import { type Instrument, PEAK_TIME } from './reading.ts';

/** The scale runs over seven decades, m. */
const LOW = 1e-9;
const HIGH = 1e-2;

/** Place of an error, m, on a scale of decades. */
export const errorPlace = (error: number) => logFraction(error, LOW, HIGH);

/** Following error on a scale of decades: its size now, its peak of late, and the window that counts as settled. */
export function errorGauge(): Instrument {
  const gauge = new Gauge(
    'Following error',
    'Bar: size of the following error now. Dark mark: peak of the last second. Red line: error that trips the drive. Tint: settling window.',
    'error',
    2,
  );
  gauge.setTicks([
    [errorPlace(1e-9), '1 nm'],
    [errorPlace(1e-6), '1 µm'],
    [errorPlace(1e-3), '1 mm'],
  ]);
  return {
    element: gauge.element,
    move(reading) {
      gauge.setFill(errorPlace(Math.abs(reading.value('followingError'))));
      gauge.setMark('peak', errorPlace(reading.peak('followingError')));
      gauge.setMark('limit', errorPlace(reading.p.followingErrorLimit));
      gauge.setZone(0, errorPlace(reading.p.window));
    },
    write(reading) {
      const error = Math.abs(reading.value('followingError'));
      const { window, followingErrorLimit } = reading.p;
      gauge.write(
        {
          value: ranged(error, 'µm'),
          // A table that is free follows nothing.
          alarm: reading.p.drive === 'on' && error > followingErrorLimit,
          notes: [
            `peak ${ranged(reading.peak('followingError'), 'µm')} in ${PEAK_TIME} s`,
            `${error <= window ? 'inside' : 'outside'} window ±${ranged(window, 'µm')}`,
          ],
        },
        { low: fromSI(LOW, 'nm'), high: fromSI(HIGH, 'nm'), now: fromSI(error, 'nm') },
      );
    },
  };
}
