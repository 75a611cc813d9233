import { continuousForce, motorConstants, voltageLimit } from '../../shared/axis/motor.ts';
import type { ChannelName, Quantity } from '../../shared/core/channels.ts';
import { plainAmperes } from '../../shared/core/currentUnit.ts';
import { fixed } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { fromSI, printedUnit, type Unit } from '../../shared/core/units.ts';
import { decimalsFor, linearFraction, percent } from './fractions.ts';
import { Gauge } from './gauge.ts';
import { type Instrument, MEAN_TIME, type Reading } from './reading.ts';

/** A peak above this share of what there is counts as having none left. */
const USED_UP = 0.99;

interface Headroom {
  readonly name: string;
  readonly meaning: string;
  readonly quantity: Quantity;
  readonly channel: ChannelName;
  readonly unit: Unit;
  /** The end of the bar: the most the hardware gives, SI. */
  full(p: Parameters): number;
  /** What is allowed at present, SI, if that may be less. */
  limit?(reading: Reading): number;
  /** What the root mean square must stay below, SI. */
  continuous?(p: Parameters): number;
}

/** How much of something is used, now and at the peak of late, of what there is. */
function headroomGauge(kind: Headroom): Instrument {
  const { channel, unit } = kind;
  const gauge = new Gauge(kind.name, kind.meaning, kind.quantity, kind.continuous ? 2 : 1);
  const limitOf = (reading: Reading) => kind.limit?.(reading) ?? kind.full(reading.p);
  return {
    element: gauge.element,
    move(reading) {
      const full = kind.full(reading.p);
      const at = (value: number) => linearFraction(value, 0, full);
      gauge.setFill(at(Math.abs(reading.value(channel))));
      gauge.setMark('peak', at(reading.peak(channel)));
      if (kind.limit) gauge.setMark('limit', at(kind.limit(reading)));
      if (kind.continuous) gauge.setMark('limit', at(kind.continuous(reading.p)));
    },
    write(reading) {
      const full = kind.full(reading.p);
      const limit = limitOf(reading);
      const value = Math.abs(reading.value(channel));
      const peak = reading.peak(channel);
      const text = (size: number, digits = 3) => fixed(size, unit, decimalsFor(full, digits));
      // The unit stands behind the limit; of what kind amperes are, above.
      const most = (size: number) => plainAmperes(text(size));
      const bare = (size: number) => fixed(fromSI(size, printedUnit(unit)), '', decimalsFor(full, 3));
      const usedUp = peak >= USED_UP * limit;
      const notes = [
        `peak ${bare(peak)} ${usedUp ? 'at limit' : 'of'} ${most(limit)}, ${percent(peak / limit)}`,
      ];
      let overloaded = false;
      if (kind.continuous) {
        const continuous = kind.continuous(reading.p);
        const rms = reading.rms(channel);
        overloaded = rms > continuous;
        gauge.setMark('mean', linearFraction(rms, 0, full));
        notes.push(
          `RMS ${bare(rms)} ${overloaded ? 'above' : 'of'} ${most(continuous)}, ${percent(rms / continuous)}`,
        );
      }
      gauge.write(
        { value: text(value, 4), notes, alarm: usedUp || overloaded },
        { low: 0, high: full, now: value },
      );
    },
  };
}

/** Current amplitude against the amplifier's limit, which fold-back lowers. */
export const currentGauge = (): Instrument =>
  headroomGauge({
    name: 'Current',
    meaning:
      'Bar: force current now. Dark mark: peak of the last second. Red line: current limit. End: peak current of the amplifier.',
    quantity: 'current',
    channel: 'forceCurrent',
    unit: 'A',
    full: (p) => p.peakCurrent,
    limit: (reading) => reading.value('currentLimit'),
  });

/** Motor force against what peak current gives, and its mean over time against what the winding can lose. */
export const forceGauge = (): Instrument =>
  headroomGauge({
    name: 'Motor force',
    meaning: `Bar: motor force now. Dark mark: peak of the last second. Wedge: RMS of the last ${MEAN_TIME} seconds. Red line: continuous force. End: force at peak current.`,
    quantity: 'force',
    channel: 'motorForce',
    unit: 'N',
    full: (p) => p.peakCurrent * motorConstants(p).forcePerAmp,
    continuous: continuousForce,
  });

/** Voltage amplitude against the largest one that a DC bus gives with space-vector modulation, V_dc/√3. */
export const voltageGauge = (): Instrument =>
  headroomGauge({
    name: 'Voltage',
    meaning: 'Bar: voltage amplitude now. Dark mark: peak of the last second. End: limit of the bus.',
    quantity: 'voltage',
    channel: 'voltage',
    unit: 'V',
    full: voltageLimit,
  });
