import '../gauges/gauges.css';
import { continuousForce } from '../../shared/axis/motor.ts';
import { fixed, ranged } from '../../shared/core/format.ts';
import { errorPlace } from '../gauges/errorGauge.ts';
import { linearFraction, logFraction, percent } from '../gauges/fractions.ts';
import { Gauge } from '../gauges/gauge.ts';
import { type Instrument, MEAN_TIME, PEAK_TIME, type Reading } from '../gauges/reading.ts';

/** The scale of settling runs over four decades, s. */
const [SHORTEST, LONGEST] = [1e-3, 10];

/** What a candidate comes to, one line each, in the order in which drives are compared. */
export function candidateGauges(): readonly Instrument[] {
  return [
    errorGauge('Following error', 'followingError', 'following error at the encoder'),
    errorGauge('Tool error', 'toolError', 'position error at the tool'),
    settlingGauge(),
    shareGauge(
      new Gauge(
        'Force, RMS',
        `Root mean square of the motor force over the last ${MEAN_TIME} s, as a share of the continuous force.`,
        'force',
      ),
      (reading) => reading.rms('motorForce') / continuousForce(reading.p),
      1,
    ),
    windingGauge(),
    shareGauge(
      new Gauge(
        'Current, peak',
        `Largest force current of the last ${PEAK_TIME} s, as a share of the current limit.`,
        'current',
      ),
      (reading) => reading.peak('forceCurrent') / reading.value('currentLimit'),
      // At the limit there is none left, before a share of 1 is printed.
      0.99,
    ),
  ];
}

function errorGauge(name: string, channel: 'followingError' | 'toolError', what: string): Instrument {
  const gauge = new Gauge(
    name,
    `Largest ${what} of the last ${PEAK_TIME} s, on a logarithmic scale. Tint: settling window.`,
    'error',
  );
  return {
    element: gauge.element,
    move(reading) {
      gauge.setFill(errorPlace(reading.peak(channel)));
      gauge.setZone(0, errorPlace(reading.p.window));
    },
    write(reading) {
      const peak = reading.peak(channel);
      gauge.write(
        { value: ranged(peak, 'µm'), notes: [], alarm: false },
        { low: 0, high: 10, now: peak * 1e3 },
      );
    },
  };
}

function settlingGauge(): Instrument {
  const gauge = new Gauge(
    'Settling',
    'Time from the end of the last move until the following error stays in the window, from 1 ms to 10 s in decades.',
    'position',
  );
  const read = ({ lastMove }: Reading) => {
    const time = lastMove?.settlingTime ?? null;
    return { time: time ?? Number.NaN, never: lastMove !== null && time === null };
  };
  return {
    element: gauge.element,
    move(reading) {
      const { time, never } = read(reading);
      gauge.setFill(never ? 1 : logFraction(time, SHORTEST, LONGEST));
    },
    write(reading) {
      const { time, never } = read(reading);
      gauge.write(
        {
          value: never ? 'not settled' : time === 0 ? 'at once' : ranged(time, 's'),
          notes: [],
          alarm: never,
        },
        { low: 0, high: LONGEST, now: time },
      );
    },
  };
}

function windingGauge(): Instrument {
  const gauge = new Gauge(
    'Winding',
    'Winding temperature between ambient and the limit of its class.',
    'heat',
  );
  return {
    element: gauge.element,
    move(reading) {
      const { p } = reading;
      gauge.setFill(linearFraction(reading.value('windingTemperature'), p.ambient, p.windingLimit));
    },
    write(reading) {
      const { p } = reading;
      const winding = reading.value('windingTemperature');
      gauge.write(
        { value: fixed(winding, '°C', 1), notes: [], alarm: winding > p.foldbackTemperature },
        { low: p.ambient, high: p.windingLimit, now: winding },
      );
    },
  };
}

/** How much of something is used; at a share of `max` none is left. */
function shareGauge(gauge: Gauge, shareOf: (reading: Reading) => number, max: number): Instrument {
  return {
    element: gauge.element,
    move: (reading) => gauge.setFill(linearFraction(shareOf(reading), 0, 1)),
    write(reading) {
      const share = shareOf(reading);
      gauge.write(
        { value: percent(share), notes: [], alarm: share >= max },
        { low: 0, high: 100, now: 100 * share },
      );
    },
  };
}
