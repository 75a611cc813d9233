import '../gauges/gauges.css';
import { continuousForce } from '../../shared/axis/motor.ts';
import { fixed, ranged } from '../../shared/core/format.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { errorPlace } from '../gauges/errorGauge.ts';
import { linearFraction, logFraction } from '../gauges/fractions.ts';
import { Gauge } from '../gauges/gauge.ts';
import { MEAN_TIME, PEAK_TIME, type Reading } from '../gauges/reading.ts';

/** The scale of settling runs over four decades, s. */
const [SHORTEST, LONGEST] = [1e-3, 10];

/** A gauge of a candidate: one line, told with its last move. */
export interface CandidateGauge {
  readonly element: HTMLElement;
  write(reading: Reading, lastMove: MoveFigures | null): void;
}

/** What a candidate comes to, in the order in which drives are compared. */
export function candidateGauges(): readonly CandidateGauge[] {
  return [
    errorGauge('Following error', 'followingError', 'following error at the encoder'),
    errorGauge('Tool error', 'toolError', 'position error at the tool'),
    settlingGauge(),
    forceGauge(),
    windingGauge(),
    currentGauge(),
  ];
}

function errorGauge(name: string, channel: 'followingError' | 'toolError', what: string): CandidateGauge {
  const gauge = new Gauge(
    name,
    `Largest ${what} of the last ${PEAK_TIME} s, from 1 nm to 10 mm in decades. Tint: window that counts as settled.`,
    'error',
    0,
  );
  return {
    element: gauge.element,
    write(reading) {
      const peak = reading.peak(channel);
      gauge.setFill(errorPlace(peak));
      gauge.setZone(0, errorPlace(reading.p.window));
      gauge.write(
        { value: ranged(peak, 'µm'), notes: [], alarm: false },
        { low: 0, high: 10, now: peak * 1e3 },
      );
    },
  };
}

function settlingGauge(): CandidateGauge {
  const gauge = new Gauge(
    'Settling',
    'Time from the end of the last move until the following error stays in the window, from 1 ms to 10 s in decades.',
    'position',
    0,
  );
  return {
    element: gauge.element,
    write(_, lastMove) {
      const time = lastMove?.settlingTime ?? null;
      const never = lastMove !== null && time === null;
      gauge.setFill(never ? 1 : logFraction(time ?? Number.NaN, SHORTEST, LONGEST));
      gauge.write(
        {
          value: never ? 'not settled' : time === 0 ? 'at once' : ranged(time ?? Number.NaN, 's'),
          notes: [],
          alarm: never,
        },
        { low: 0, high: LONGEST, now: time ?? Number.NaN },
      );
    },
  };
}

function forceGauge(): CandidateGauge {
  const gauge = new Gauge(
    'Force, rms',
    `Root mean square of the motor force over the last ${MEAN_TIME} s, as a share of the continuous force.`,
    'force',
    0,
  );
  return {
    element: gauge.element,
    write(reading) {
      writeShare(gauge, reading.rms('motorForce') / continuousForce(reading.p), 1);
    },
  };
}

function currentGauge(): CandidateGauge {
  const gauge = new Gauge(
    'Current, peak',
    `Largest force current of the last ${PEAK_TIME} s, as a share of the current limit.`,
    'current',
    0,
  );
  return {
    element: gauge.element,
    write: (reading) =>
      // At the limit there is none left, before a share of 1 is printed.
      writeShare(gauge, reading.peak('forceCurrent') / reading.value('currentLimit'), 0.99),
  };
}

function windingGauge(): CandidateGauge {
  const gauge = new Gauge(
    'Winding',
    'Winding temperature on its way from the ambient to the limit of its class.',
    'heat',
    0,
  );
  return {
    element: gauge.element,
    write(reading) {
      const { p } = reading;
      const winding = reading.value('windingTemperature');
      gauge.setFill(linearFraction(winding, p.ambient, p.windingLimit));
      gauge.write(
        { value: fixed(winding, '°C', 1), notes: [], alarm: winding > p.foldbackTemperature },
        { low: p.ambient, high: p.windingLimit, now: winding },
      );
    },
  };
}

function writeShare(gauge: Gauge, share: number, max: number): void {
  gauge.setFill(linearFraction(share, 0, 1));
  gauge.write(
    {
      value: Number.isFinite(share) ? `${Math.round(100 * share)} %` : '—',
      notes: [],
      alarm: share >= max,
    },
    { low: 0, high: 100, now: 100 * share },
  );
}
