import { ranged, shortest } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Unit } from '../../shared/core/units.ts';
import type { Band, Trace } from '../plot/strip/trace.ts';
import type { ScaleLimits } from '../plot/strip/verticalScale.ts';

export interface RowSpec {
  readonly title: string;
  /** Family of the unit and the largest one it is shown in. */
  readonly unit: Unit;
  readonly scale: ScaleLimits;
  readonly traces: readonly [first: Trace, ...others: Trace[]];
  /** A channel whose value, plus and minus, the others must stay within. */
  readonly limit?: Trace;
  /** In a scan the scale is that of its constant speed: run-up and return may leave it, which is said. */
  readonly scanAlone?: boolean;
  readonly band?: (p: Parameters) => Band;
}

/** The six charts, top to bottom. */
export const ROWS: readonly RowSpec[] = [
  {
    title: 'Position',
    unit: 'mm',
    scale: { minSpan: 4e-9, zero: false },
    traces: [
      { channel: 'tablePosition', name: 'Table', quantity: 'position', dash: 'solid', width: 2 },
      { channel: 'setpoint', name: 'Setpoint', quantity: 'setpoint', dash: 'dashed', width: 1.5 },
    ],
  },
  {
    title: 'Following error',
    unit: 'mm',
    scanAlone: true,
    scale: { minSpan: 2e-9, zero: true },
    traces: [
      { channel: 'followingError', name: 'Encoder', quantity: 'error', dash: 'solid', width: 2 },
      { channel: 'toolError', name: 'Tool', quantity: 'error', dash: 'dotted', width: 1.5 },
    ],
    band: (p) => ({ name: `window ±${ranged(p.window, 'µm')}`, low: -p.window, high: p.window }),
  },
  {
    title: 'Speed',
    unit: 'm/s',
    scale: { minSpan: 1e-5, zero: true },
    traces: [
      { channel: 'tableSpeed', name: 'Table', quantity: 'speed', dash: 'solid', width: 2 },
      { channel: 'setSpeed', name: 'Set', quantity: 'setpoint', dash: 'dashed', width: 1.5 },
    ],
  },
  {
    title: 'Current',
    unit: 'A',
    scale: { minSpan: 0.02, zero: true },
    traces: [
      { channel: 'forceCurrent', name: 'Force', quantity: 'current', dash: 'solid', width: 2 },
      {
        channel: 'circulatingCurrent',
        name: 'Circulating',
        quantity: 'current',
        dash: 'dotted',
        width: 1.5,
        relevant: (p) => p.motorCount > 1,
      },
    ],
    limit: { channel: 'currentLimit', name: 'Limit ±', quantity: 'current', dash: 'dashDot', width: 1.5 },
  },
  {
    title: 'Force',
    unit: 'N',
    scale: { minSpan: 0.2, zero: true },
    traces: [
      { channel: 'motorForce', name: 'Motor', quantity: 'force', dash: 'solid', width: 2 },
      { channel: 'coggingForce', name: 'Cogging', quantity: 'force', dash: 'dashed', width: 1.5 },
      { channel: 'guideForce', name: 'Friction', quantity: 'force', dash: 'dotted', width: 2 },
      {
        channel: 'dragForce',
        name: 'Drag',
        quantity: 'force',
        dash: 'dashDot',
        width: 1.5,
        relevant: (p) => p.eddyDrag + p.hysteresisDrag + p.nutDrag + p.nutViscous > 0,
      },
      {
        channel: 'processForce',
        name: 'Process',
        quantity: 'force',
        dash: 'solid',
        width: 1,
        relevant: (p) => p.process !== 'none',
      },
    ],
  },
  {
    title: 'Temperature',
    unit: '°C',
    scale: { minSpan: 2, zero: false },
    traces: [
      { channel: 'windingTemperature', name: 'Winding', quantity: 'heat', dash: 'solid', width: 2 },
      { channel: 'carrierTemperature', name: 'Carrier', quantity: 'heat', dash: 'dashed', width: 1.5 },
      { channel: 'tableTemperature', name: 'Table', quantity: 'heat', dash: 'dotted', width: 2 },
      {
        channel: 'screwTemperature',
        name: 'Screw',
        quantity: 'heat',
        dash: 'dashDot',
        width: 1.5,
        relevant: (p) => p.lead > 0,
      },
    ],
    band: (p) => ({
      name: `fold-back at ${shortest(p.foldbackTemperature, '°C')}, limit ${shortest(p.windingLimit, '°C')}`,
      low: p.foldbackTemperature,
      high: p.windingLimit,
    }),
  },
];
