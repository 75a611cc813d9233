import { fixed, shortest } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { linearFraction } from './fractions.ts';
import { Gauge } from './gauge.ts';
import type { Instrument } from './reading.ts';

/** What an idle winding settles to, °C. */
function coldest(p: Parameters): number {
  return p.cooling ? Math.min(p.ambient, p.coolantTemperature) : p.ambient;
}

/** Winding temperature on its way from cold to the limit of its class, which is the end of the bar. */
export function windingGauge(): Instrument {
  const gauge = new Gauge(
    'Winding',
    'Bar: winding temperature between cold and the limit of its class. Red line and tint: where the current limit folds back.',
    'heat',
    2,
  );
  return {
    element: gauge.element,
    move(reading) {
      const { p } = reading;
      const at = (temperature: number) => linearFraction(temperature, coldest(p), p.windingLimit);
      gauge.setFill(at(reading.value('windingTemperature')));
      gauge.setMark('limit', at(p.foldbackTemperature));
      gauge.setZone(at(p.foldbackTemperature), 1);
    },
    write(reading) {
      const { p } = reading;
      const winding = reading.value('windingTemperature');
      const foldingBack = winding > p.foldbackTemperature;
      gauge.write(
        {
          value: fixed(winding, '°C', 1),
          alarm: foldingBack,
          notes: [
            `${foldingBack ? 'folding back' : 'fold-back'} ${shortest(p.foldbackTemperature, '')}, limit ${shortest(p.windingLimit, '°C')}`,
            `carrier ${fixed(reading.value('carrierTemperature'), '', 1)}, table ${fixed(reading.value('tableTemperature'), '°C', 1)}`,
          ],
        },
        { low: coldest(p), high: p.windingLimit, now: winding },
      );
    },
  };
}
